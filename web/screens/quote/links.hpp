// The links of the workbook as they are shown and sent: made when first looked at, sealed and drawn as QR codes by the
// page, which answers later.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/link/ledger.hpp"
#include "core/link/link.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside::web {

class Links {
public:
    /// The workbook changed: all links are made anew.
    void reset();
    /// The quote as it would be handed out now; none when the job has no price.
    const document::NextQuote* next(const Workbook& book, const Worksheet& worksheet);
    /// "q=..." with its seal once that has come; empty when the job has no price, and for the example shop.
    const std::string& quote(const Workbook& book, const Worksheet& worksheet);
    const std::string& job(const Workbook& book);
    [[nodiscard]] bool sealed() const { return sealed_; }
    /// Ask the page for the seal, once for each link.
    void seal(const Workbook& book);

    /// The whole address with the link: on the shop's public address when it has one, else where the page stands.
    [[nodiscard]] static std::string address(const Workbook& book, const std::string& link);
    /// The modules of an address's QR code, row by row; empty until they have come. `quote`: the quote's link, when it is one.
    const std::string& qr(const std::string& address, std::string_view quote);
    [[nodiscard]] bool qr_too_long() const { return qr_too_long_; }
    /// The page was asked to copy, share or save this quote's link (empty: something else), and will say so in this notice.
    void hand(std::string_view quote, std::string_view notice);

    /// The page's answers; of what was handed out then, the row for the list.
    using Row = std::optional<price::IssuedQuote>;
    void take_sealed(std::string_view link);
    Row take_qr(std::string_view modules);
    Row handed(std::string_view notice);
    /// The list has another row.
    void noted() { next_.reset(); }
    void fail_qr() { qr_of_.clear(); } // the next look asks again

private:
    [[nodiscard]] Row row(std::string_view link) const;

    std::optional<document::NextQuote> next_;
    Row handing_;
    std::string handing_by_; // the notice that will say so
    Row showing_;            // by the QR code that was asked for
    std::string quote_;
    std::string job_;
    std::string asked_seal_;
    bool sealed_ = false;
    std::string qr_of_;
    std::string qr_;
    bool qr_too_long_ = false;
};

} // namespace torchside::web
