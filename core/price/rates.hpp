// Shop rates and the priced side of a job. Ranges: core/document/schema*.cpp.
#pragma once

#include <optional>
#include <string>

#include "core/quantity/quantity.hpp"

namespace torchside::price {

struct Rates {
    std::string currency = "USD"; // ISO 4217 code
    double labour_per_h = 40.0;
    double machine_per_h = 60.0;
    double energy_per_kwh = 0.25;
};

struct JobPrice {
    Duration setup{15, minute};
    double material_per_kg = 1.4;
    double margin = 0.30; // share of the price, 0..0.9
    std::optional<double> outside_quote_each{};
};

} // namespace torchside::price
