// A quote that was handed out, as the shop remembers it. Ranges: core/schema/schema_shop.cpp.
#pragma once

#include <string>

namespace torchside::price {

struct IssuedQuote {
    std::string number{};
    int revision = 0; // 0: as first handed out
    std::string part_name{};
    double to_pay = 0.0; // money, with tax
    std::string currency = "USD";
    int issued_day = 0; // days since 1970-01-01
    int valid_days = 30;
    std::string ending{}; // the last 8 letters of its link's body, its checksum among them: which quote it was
    std::string seal{};   // empty: handed out without one
};

/// A key that sealed quotes before the one in use: what it sealed is still known.
struct OldKey {
    std::string seal_key{}; // 64 hex digits
};

} // namespace torchside::price
