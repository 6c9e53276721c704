// Eye protection and cautions for one job.
//
// Lens shade. The legal minimum with the arc in view comes first (29 CFR 1910.133(a)(5), read), the row of ANSI Z49.1
// second (seen in reproductions only). Rows share their end values: exactly on an edge the darker row holds.
//
//   current A     legal minimum   ANSI minimum / suggested
//   below 20      8               4 / 4
//   20            8               5 / 5
//   40            8               6 / 6     (one reproduction of the 2012 table prints 8 / 8)
//   60            8               8 / 8
//   80            8               8 / 9
//   300           9               9 / 12
//   400 to 800    10              10 / 14
//
// Above 800 A the last row is used; a small torch is far below. Worked example (also a test): 50 A: 8, ANSI 6 / 6 with
// the variant 8 / 8; 300 A: 9.
//
// Cautions are rows of assets/data/cautions.json, worst first, each with its source; the last always hands over to the
// employer's and local rules.
#pragma once

#include "core/gear/country.hpp"
#include "core/quantity/quantity.hpp"
#include "core/safety/report.hpp"
#include "core/stock/metal.hpp"

namespace torchside::safety {

struct Input {
    Metal metal = Metal::mild_steel;
    Current current{45, ampere};
    bool raw_tap = false;     // the controller gets the arc voltage itself, divider 1:1
    bool water_table = false; // water under the plate
    bool by_hand = false;     // the torch is held, not driven
    Country country = Country::us;
};

struct LensShade {
    int legal_min = 8;
    int ansi_min = 0;
    int ansi_suggested = 0;
    int ansi_variant = 0; // what another reproduction of the same table prints as its minimum; 0 when they agree
};

[[nodiscard]] LensShade lens_shade(Current current);

[[nodiscard]] Report assess(const Input& input);

} // namespace torchside::safety
