#include "core/safety/assess.hpp"

#include <string_view>

#include "core/quantity/print.hpp"

namespace torchside::safety {

namespace {

struct ShadeRow {
    double from_a;
    int legal;
    int ansi_min;
    int ansi_suggested;
    int ansi_variant;
};
constexpr ShadeRow shades[] = {
#include "generated/lens_shades.inc"
};
static_assert(shades[0].from_a == 0.0);

enum class When { always, galvanised, stainless, copper, aluminium_over_water, raw_tap, by_hand };

struct CautionRow {
    std::string_view code;
    When when;
    std::string_view text;
    std::string_view citation;
};
constexpr CautionRow cautions[] = {
#include "generated/cautions.inc"
};
static_assert(cautions[std::size(cautions) - 1].code == "local_rules", "the employer's and local rules close the list");

bool applies(When when, const Input& in) {
    switch (when) {
    case When::always:
        return true;
    case When::galvanised:
        return in.metal == Metal::galvanised;
    case When::stainless:
        return in.metal == Metal::stainless;
    case When::copper:
        return in.metal == Metal::copper;
    case When::aluminium_over_water:
        return in.metal == Metal::aluminium && in.water_table;
    case When::raw_tap:
        return in.raw_tap;
    case When::by_hand:
        return in.by_hand;
    }
    return true;
}

std::string number(int n) {
    return print_fixed(n, 0);
}

/// "8 or darker with the arc in view (29 CFR ...). ANSI Z49.1: ..."
std::string note(const LensShade& s) {
    std::string text =
        number(s.legal_min) +
        " or darker with the arc in view (29 CFR 1910.133). ANSI Z49.1, as reproduced: " + number(s.ansi_min) +
        " at least";
    if (s.ansi_suggested != s.ansi_min) {
        text += ", " + number(s.ansi_suggested) + " suggested";
    }
    if (s.ansi_variant != 0) {
        text += " (one copy prints " + number(s.ansi_variant) + ")";
    }
    text += s.ansi_min < s.legal_min
                ? "; lighter than " + number(s.legal_min) + " only where the plate or a shield hides the arc."
                : ".";
    return text + " Start too dark and go lighter until you see the cut, never below the minimum.";
}

} // namespace

LensShade lens_shade(Current current) {
    const ShadeRow* row = shades;
    for (const ShadeRow& s : shades) {
        if (current.in(ampere) >= s.from_a) {
            row = &s;
        }
    }
    return {row->legal, row->ansi_min, row->ansi_suggested, row->ansi_variant};
}

Report assess(const Input& input) {
    const LensShade shade = lens_shade(input.current);
    Report report{shade.legal_min, note(shade), {}};
    for (const CautionRow& row : cautions) {
        if (applies(row.when, input)) {
            report.cautions.push_back({std::string{row.code}, std::string{row.text}, std::string{row.citation}});
        }
    }
    return report;
}

} // namespace torchside::safety
