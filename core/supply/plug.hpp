// Plugs and sockets: what one may carry, the supply it is made for, and the largest breaker that may feed it.
//
// Source     assets/data/plugs.json. NEMA numbers: letters and the number after the dash are the amperes. A socket of
//            15 A may stand on a breaker of 20 A, one of 50 A on 40 or 50 A: NEC Table 210.21(B)(3). UK 13 A: the fuse
//            in the plug. Schuko and the round industrial plugs: their rating.
// Range      a supply within 15 % of the plug's voltage fits it: 208 V on a 250 V plug.
// Example    NEMA 6-50: 50 A, 240 V, breaker to 50 A. UK 13 A: 13 A on a ring of 32 A.
#pragma once

#include <span>
#include <string_view>

#include "core/gear/country.hpp"
#include "core/supply/circuit.hpp"

namespace torchside::supply {

enum class PlugWhere { us, uk, eu, iec }; // iec: the United Kingdom, the European Union and elsewhere

struct PlugRow {
    Plug plug;
    std::string_view name;
    double amps, volts, breaker_max;
    int phases;
    PlugWhere where;
    std::string_view status;
};

[[nodiscard]] const PlugRow& row_of(Plug plug);
[[nodiscard]] std::span<const PlugRow> all_plugs();
[[nodiscard]] bool is_used_in(const PlugRow& plug, Country country);

} // namespace torchside::supply
