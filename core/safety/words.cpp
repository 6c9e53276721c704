#include "core/safety/words.hpp"

#include "core/quantity/in_units.hpp"
#include "core/quantity/joined.hpp"

namespace torchside::safety {

namespace {

// The two ends are what tools/split_wasm finds it by. Cells end in a zero: text and citation of each caution, then
// caution, countries and text of each limit; an empty one ends the limits.
constexpr char texts[] = "\001later-texts\0"
#include "generated/cautions_later.inc"
                         "\0"
#include "generated/safety_limits_later.inc"
                         "\0"
                         "\001texts-later";

std::string_view next(const char*& at) {
    const std::string_view cell{at};
    at += cell.size() + 1;
    return cell;
}

const char* first_cell() {
    const char* at = texts;
    next(at); // the mark
    return at;
}

std::string_view name_of(Country country) {
    return country == Country::us ? "us" : country == Country::uk ? "uk" : country == Country::eu ? "eu" : "none";
}

} // namespace

CautionWords words_of(const Caution& caution, UnitSystem units) {
    const char* at = first_cell();
    for (std::size_t i = 0; i < 2 * caution.row; ++i) {
        next(at);
    }
    const std::string_view text = next(at);
    return {in_units(text, units), std::string(next(at))};
}

std::vector<std::string_view> limits_of(const Caution& caution, Country country) {
    const char* at = first_cell();
    while (!next(at).empty()) {
    }
    std::vector<std::string_view> all;
    std::size_t kept = 0; // up to the laxest of the shop's own
    for (std::string_view code = next(at); !code.empty(); code = next(at)) {
        const std::string_view where = next(at);
        const std::string_view text = next(at);
        if (code == caution.code) {
            all.push_back(text);
            kept = where.find(name_of(country)) != std::string_view::npos ? all.size() : kept;
        }
    }
    if (kept > 0) {
        all.resize(kept);
    }
    return all;
}

std::string shade_note(const Report& r) {
    const std::string us = std::to_string(r.shade.us);
    const std::string own = joined({us, " is the legal minimum in the US with the arc in view (29 CFR 1910.133). "});
    const std::string en =
        r.shade.en != 0 ? joined({"EN 169, as reproduced, asks for ", std::to_string(r.shade.en), " at this current. "})
                        : std::string("EN 169, as reproduced, lists none below 50 A; it asks for 11 from there. ");
    return joined(
        {r.country == Country::us ? own + en : en + own,
         "Lighter only where the plate or a shield hides the arc. Start too dark and go lighter until you see "
         "the cut, never below the minimum."});
}

} // namespace torchside::safety
