// Eye protection and the cautions that this metal and this shop call for.
#pragma once

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
    Word title{}, remedy{};  // for the first screen; none when that has another row for it, or none
    Word text{}, citation{}; // sentences for the sheet, what to do first; the source as shown
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
    Text shade_text{};               // "Shade 8 or darker, the US minimum"
    std::vector<Caution> cautions{}; // stops before cautions before notes; the employer's and local rules last
};

} // namespace torchside::safety
