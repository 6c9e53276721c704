#include "web/screens/quote/links.hpp"

#include "core/schema/public_address.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/spoken.hpp"

namespace torchside::web {

void Links::reset() {
    *this = Links{};
}

const document::NextQuote* Links::next(const Workbook& book, const Worksheet& worksheet) {
    if (!worksheet.price || !worksheet.part) {
        return nullptr;
    }
    if (!next_) {
        const std::string device = platform::language();
        next_ = document::next_quote(document::make_quote(book, worksheet.part->outline, *worksheet.price,
                                                          platform::today(), is_spoken(device) ? device : ""),
                                     book.shop.issued);
    }
    return &*next_;
}

const std::string& Links::quote(const Workbook& book, const Worksheet& worksheet) {
    if (quote_.empty() && !book.shop.example) {
        if (const document::NextQuote* made = next(book, worksheet)) {
            quote_ = document::quote_link(made->quote);
        }
    }
    return quote_;
}

Links::Row Links::row(std::string_view link) const {
    return link.empty() || !next_ ? Row{} : Row{document::issued_row(next_->quote, link)};
}

void Links::hand(std::string_view quote, std::string_view notice) {
    handing_ = row(quote);
    handing_by_ = notice;
}

Links::Row Links::handed(std::string_view notice) {
    return notice == handing_by_ ? std::exchange(handing_, Row{}) : Row{};
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

const std::string& Links::qr(const std::string& address, std::string_view quote) {
    if (qr_of_ != address) {
        qr_of_ = address;
        showing_ = row(quote);
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

Links::Row Links::take_qr(std::string_view modules) {
    qr_ = modules;
    qr_too_long_ = modules.empty();
    return qr_too_long_ ? Row{} : std::exchange(showing_, Row{});
}

} // namespace torchside::web
