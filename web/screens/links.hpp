// The links of the workbook as they are shown and sent: made when first looked at, sealed and drawn as QR codes by the
// page, which answers later.
#pragma once

#include <string>
#include <string_view>

#include "core/document/link.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside::web {

class Links {
public:
    /// The workbook changed: all links are made anew.
    void reset();
    /// "q=..." with its seal once that has come; empty when the job has no price, and for the example shop.
    const std::string& quote(const Workbook& book, const Worksheet& sheet);
    const std::string& job(const Workbook& book);
    [[nodiscard]] bool sealed() const { return sealed_; }
    /// Ask the page for the seal, once for each link.
    void seal(const Workbook& book);

    /// The whole address with the link: on the shop's public address when it has one, else where the page stands.
    [[nodiscard]] static std::string address(const Workbook& book, const std::string& link);
    /// The modules of an address's QR code, row by row; empty until they have come.
    const std::string& qr(const std::string& address);
    [[nodiscard]] bool qr_too_long() const { return qr_too_long_; }

    /// The page's answers.
    void take_sealed(std::string_view link);
    void take_qr(std::string_view modules);
    void fail_qr() { qr_of_.clear(); } // the next look asks again

private:
    std::string quote_;
    std::string job_;
    std::string asked_seal_;
    bool sealed_ = false;
    std::string qr_of_;
    std::string qr_;
    bool qr_too_long_ = false;
};

} // namespace torchside::web
