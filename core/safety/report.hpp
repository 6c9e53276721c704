// Eye protection and the cautions that this metal and this shop call for. What a caution says at length is not in here:
// core/safety/words.hpp.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/gear/country.hpp"
#include "core/quantity/quantity.hpp"
#include "core/words/message.hpp"

namespace torchside::safety {

enum class Group { shock, eyes, fume, fire, ears, moving, people, last };

struct Caution {
    std::string_view code; // a short stable word, e.g. "zinc_fume"
    Group group = Group::last;
    Severity severity = Severity::note;
    std::string_view head; // one line for the first screen; empty when that has another row for it, or none
    std::size_t row = 0;   // of assets/data/cautions.json
};

struct LensShade {
    int us = 8; // legal minimum with the arc in view
    int en = 0; // EN 169 as reproduced; 0: it lists none at this current
};

struct Report {
    Country country = Country::us;
    Current current{};
    LensShade shade{};
    int shade_min = 8;               // what the screen says first
    std::string shade_text{};        // "Shade 8 or darker, the US minimum"
    std::vector<Caution> cautions{}; // stops before cautions before notes; the employer's and local rules last
};

} // namespace torchside::safety
