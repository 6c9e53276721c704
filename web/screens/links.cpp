#include "web/screens/links.hpp"

#include "core/document/public_address.hpp"
#include "web/platform/platform.hpp"

namespace torchside::web {

void Links::reset() {
    *this = Links{};
}

const std::string& Links::quote(const Workbook& book, const Worksheet& sheet) {
    if (quote_.empty() && !book.shop.example && sheet.price && sheet.part) {
        quote_ = document::quote_link(document::make_quote(book, sheet.part->outline, *sheet.price, platform::today()));
    }
    return quote_;
}

const std::string& Links::job(const Workbook& book) {
    if (job_.empty() && !book.shop.example) {
        job_ = document::job_link(book);
    }
    return job_;
}

void Links::seal(const Workbook& book) {
    if (!quote_.empty() && !sealed_ && asked_seal_ != quote_ && !book.shop.seal_key.empty()) {
        asked_seal_ = quote_;
        platform::seal(quote_, book.shop.seal_key);
    }
}

std::string Links::address(const Workbook& book, const std::string& link) {
    return document::link_base(book.shop.public_url, platform::address()) + '#' + link;
}

const std::string& Links::qr(const std::string& address) {
    if (qr_of_ != address) {
        qr_of_ = address;
        qr_.clear();
        qr_too_long_ = false;
        platform::qr(address);
    }
    return qr_;
}

void Links::take_sealed(std::string_view link) {
    // An answer to a link that has changed since is of no use.
    if (!sealed_ && !quote_.empty() && link.starts_with(quote_)) {
        quote_ = link;
        sealed_ = true;
    }
}

void Links::take_qr(std::string_view modules) {
    qr_ = modules;
    qr_too_long_ = modules.empty();
}

} // namespace torchside::web
