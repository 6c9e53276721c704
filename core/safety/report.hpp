// Eye protection and the cautions that this metal and this shop call for.
#pragma once

#include <string>
#include <vector>

namespace torchside::safety {

struct Caution {
    std::string code; // a short stable word, e.g. "zinc_fume"
    std::string text; // one sentence fit for the screen
    std::string source;
};

struct Report {
    int shade_min = 8; // the legal minimum with the arc in view comes first
    std::string shade_note{};
    std::vector<Caution> cautions{};
};

} // namespace torchside::safety
