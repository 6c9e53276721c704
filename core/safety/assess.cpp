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
    metal,            // a row of its metal_cautions in metals.json
    metal_over_water, // the same, with a water table under it
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

struct MetalCaution {
    std::string_view code;
    Metal metal;
};
constexpr MetalCaution metal_cautions[] = {
#include "generated/metal_cautions.inc"
};

constexpr bool of_metal(std::string_view code, Metal metal) {
    for (const MetalCaution& row : metal_cautions) {
        if (row.code == code && row.metal == metal) {
            return true;
        }
    }
    return false;
}

// Every metal has a fume to be drawn off, and every row speaks of a caution that waits for a metal.
constexpr bool all_spoken_of() {
    for (const MetalCaution& row : metal_cautions) {
        if (std::none_of(std::begin(cautions), std::end(cautions), [&](const CautionRow& c) {
                return c.code == row.code && (c.when == When::metal || c.when == When::metal_over_water);
            })) {
            return false;
        }
    }
    for (const Metal metal : all_metals) {
        if (std::none_of(std::begin(cautions), std::end(cautions), [&](const CautionRow& c) {
                return c.group == Group::fume && c.when == When::metal && of_metal(c.code, metal);
            })) {
            return false;
        }
    }
    return true;
}
static_assert(all_spoken_of(), "assets/data/metals.json leaves out a metal's fume, or names no caution");

bool applies(const CautionRow& row, const Input& in) {
    switch (row.when) {
    case When::always:
        return true;
    case When::metal:
        return of_metal(row.code, in.metal);
    case When::metal_over_water:
        return of_metal(row.code, in.metal) && in.water_table;
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
        if (applies(row, input)) {
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
