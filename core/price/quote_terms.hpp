// What a quote says to the customer beside the price. Ranges: core/schema/schema_job.cpp.
#pragma once

#include <optional>
#include <string>

namespace torchside::price {

struct QuoteTerms {
    std::string number{};        // the shop's own number of the quote
    int valid_days = 30;         // from the day it is issued
    std::optional<double> tax{}; // share added to the price; none: no tax line
    std::string note{};          // to the customer
    std::string language{};      // the customer's, by its code; empty: the shop's
};

} // namespace torchside::price
