// Shop rates and the priced side of a job. Ranges: core/schema/schema*.cpp.
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
    double compressor_kw_m3_min = 7.0; // power for each m3/min of free air; prior: small piston compressors take 7 to 9
    double minimum_charge = 0.0;       // least price of a job, before tax
};

struct JobPrice {
    Duration setup{15, minute};
    double material_per_kg = 1.4;
    double scrap_share = 0.25;              // share of the plate bought that does not become parts, 0..0.9; prior
    std::optional<double> waste_per_part{}; // or: plate wasted for each part, in parts' masses; goes before the share
    Duration handling{0, minute};           // a person's time for each part: unload, clean, grind
    double margin = 0.30;                   // share of the price, 0..0.9
    std::optional<double> outside_quote_each{};
};

} // namespace torchside::price
