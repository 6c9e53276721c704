// Eye protection and cautions for one job.
//
// Lens shade. Whose minimum it is is said with it: the legal one of the United States with the arc in view (29 CFR
// 1910.133(a)(5), read), or the scale number of EN 169 (seen in a reproduction only), which is darker.
//
//   current A     United States   EN 169
//   below 50      8               not listed
//   50 to 149     8               11
//   150 to 249    8               12
//   250 to 299    8               13
//   300 to 399    9               13
//   400 to 800    10              13 (listed to 400)
//
// A shop in the United States is told its own; elsewhere EN 169 speaks, and where that lists nothing the American
// minimum, named as such. Above 800 A the last row is used; a small torch is far below. Worked example (also a test):
// 45 A anywhere: 8; 50 A: 8 in the United States, else 11.
//
// Cautions are rows of assets/data/cautions.json: stops, then cautions, then notes, worst first; the last always hands
// over to the employer's and local rules.
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
    bool water_table = false; // water under the plate, whoever holds the torch
    bool by_hand = false;     // the torch is held, not driven
    Country country = Country::us;
};

[[nodiscard]] LensShade lens_shade(Current current);

[[nodiscard]] Report assess(const Input& input);

/// What the first screen says: the two worst of those that have a line for it. Fewer when there are fewer.
[[nodiscard]] std::vector<Caution> worst_two(const Report& report);

} // namespace torchside::safety
