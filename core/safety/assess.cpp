#include "core/safety/assess.hpp"

#include <algorithm>
#include <iterator>

#include "generated/words/safety.hpp"
#include "generated/words/safety_source.hpp"
#include "generated/words/safety_text.hpp"

namespace torchside::safety {

namespace {

struct ShadeRow {
    double from_a;
    int us;
    int en;
};
constexpr ShadeRow shades[] = {
#include "generated/lens_shades.inc"
};
static_assert(shades[0].from_a == 0.0);

enum class When {
    always,
    steel,
    galvanised,
    stainless,
    copper,
    aluminium,
    aluminium_over_water,
    raw_tap,
    by_hand,
    driven,
    water,
    dry
};

struct CautionRow {
    std::string_view code;
    Group group;
    When when;
    Severity severity;
    Word title, remedy, text, citation;
};
constexpr CautionRow cautions[] = {
#include "generated/cautions.inc"
};
static_assert(cautions[std::size(cautions) - 1].code == "local_rules", "the employer's and local rules close the list");
static_assert(std::is_sorted(std::begin(cautions), std::end(cautions),
                             [](const CautionRow& a, const CautionRow& b) { return a.severity > b.severity; }),
              "stops, then cautions, then notes");

bool applies(When when, const Input& in) {
    switch (when) {
    case When::always:
        return true;
    case When::steel:
        return in.metal == Metal::mild_steel || in.metal == Metal::galvanised;
    case When::galvanised:
        return in.metal == Metal::galvanised;
    case When::stainless:
        return in.metal == Metal::stainless;
    case When::copper:
        return in.metal == Metal::copper;
    case When::aluminium:
        return in.metal == Metal::aluminium;
    case When::aluminium_over_water:
        return in.metal == Metal::aluminium && in.water_table;
    case When::raw_tap:
        return in.raw_tap;
    case When::by_hand:
        return in.by_hand;
    case When::driven:
        return !in.by_hand;
    case When::water:
        return in.water_table;
    case When::dry:
        return !in.water_table;
    }
    return true;
}

} // namespace

LensShade lens_shade(Current current) {
    const ShadeRow* row = shades;
    for (const ShadeRow& s : shades) {
        if (current.in(ampere) >= s.from_a) {
            row = &s;
        }
    }
    return {row->us, row->en};
}

Report assess(const Input& input) {
    Report report{input.country, input.current, lens_shade(input.current)};
    const bool en = input.country != Country::us && report.shade.en != 0;
    report.shade_min = en ? report.shade.en : report.shade.us;
    if (en) {
        report.shade_text = words::safety::ShadeEn{.shade = report.shade_min};
    } else {
        report.shade_text = words::safety::ShadeUs{.shade = report.shade_min};
    }
    for (const CautionRow& row : cautions) {
        if (applies(row.when, input)) {
            report.cautions.push_back(
                {row.code, row.group, row.severity, row.title, row.remedy, row.text, row.citation});
        }
    }
    return report;
}

std::vector<Caution> worst_two(const Report& report) {
    std::vector<Caution> out;
    for (const Caution& c : report.cautions) {
        if (c.title != Word{} && out.size() < 2) {
            out.push_back(c);
        }
    }
    return out;
}

} // namespace torchside::safety
