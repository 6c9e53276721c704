#include "core/worksheet/figures.hpp"

namespace torchside {
namespace {

template <class K>
Unit<K> file_unit(UnitSystem units) {
    const bool metric = units == UnitSystem::metric;
    if constexpr (std::is_same_v<K, LengthKind>)
        return metric ? mm : inch;
    else if constexpr (std::is_same_v<K, SpeedKind>)
        return metric ? mm_min : in_min;
    else if constexpr (std::is_same_v<K, PressureKind>)
        return metric ? bar : psi;
    else if constexpr (std::is_same_v<K, DurationKind>)
        return second;
    else
        return volt;
}

template <class K>
std::optional<Estimate<double>> in_file(const Estimate<Quantity<K>>& e, UnitSystem units) {
    const Unit<K> unit = file_unit<K>(units);
    return Estimate<double>{e.value.in(unit), e.low.in(unit), e.high.in(unit), e.basis};
}

template <class K>
std::optional<Estimate<double>> in_file(const std::optional<Estimate<Quantity<K>>>& e, UnitSystem units) {
    return e ? in_file(*e, units) : std::nullopt;
}

template <auto member>
std::optional<Estimate<double>> get(const cut::Settings& settings, UnitSystem units) {
    return in_file(settings.*member, units);
}

using S = cut::Settings;

constexpr Figure rows[] = {
    {"feed", "feed", "Feed",
     "A typical production feed: the heat of the arc against the heat to melt the kerf and to warm the plate, shifted "
     "by shop practice and by your own cuts. Too fast throws sparks back over the top; too slow leaves dross that "
     "comes off easily.",
     Measure::feed, get<&S::feed>},
    {"arc", "arc", "Arc volts",
     "At the torch, over the plate, at the cut height. Volts rise with height, current and thickness, and drift as the "
     "electrode wears.",
     Measure::volts, get<&S::arc>},
    {"cut_height", "cut_height", "Cut height",
     "From the nozzle to the plate while it cuts. Higher rounds the top edge and widens the kerf; lower wears the "
     "nozzle.",
     Measure::length, get<&S::cut_height>},
    {"pierce_height", "pierce_height", "Pierce height",
     "One and a half to two and a half cut heights, so that the spray of the pierce stays off the nozzle.",
     Measure::length, get<&S::pierce_height>},
    {"pierce_delay", "pierce_delay", "Pierce delay",
     "Time from the arc until the torch may move. Too short leaves an uncut tail at the lead-in; too long wears the "
     "nozzle. Take off 0.1 s until the lead-in skips, then add 0.2 s.",
     Measure::duration, get<&S::pierce_delay>},
    {"kerf", "kerf", "Kerf", "Width of the slot, the mean of top and bottom edge.", Measure::length, get<&S::kerf>},
    {"lead_in", "lead_in", "Lead-in", "Far enough that the crater of the pierce stays in the scrap.", Measure::length,
     get<&S::lead_in>},
    {"min_hole", "min_hole", "Smallest hole",
     "Smaller holes come out tapered and rough. Drill them, or mark their center with the torch.", Measure::least_hole,
     get<&S::min_hole>},
    {"pressure", "pressure_flowing", "Air pressure",
     "On the machine's gauge while air flows, not at rest. Too low starves the arc and wears the nozzle; too high "
     "blows it out. Set it in the air sheet; the machine's manual comes first.",
     Measure::pressure, get<&S::pressure>},
    {"post_flow", "post_flow", "Post-flow",
     "Air after the arc goes out: it cools nozzle and electrode. Most machines time it themselves. Do not cut it short "
     "by switching off.",
     Measure::duration, get<&S::post_flow>},
};

} // namespace

std::span<const Figure> figures() {
    return rows;
}

const Figure* figure_of(std::string_view key) {
    for (const Figure& row : rows)
        if (row.key == key)
            return &row;
    return nullptr;
}

std::string file_key(const Figure& figure, UnitSystem units) {
    const bool metric = units == UnitSystem::metric;
    const std::string key{figure.stem};
    switch (figure.measure) {
    case Measure::feed:
        return key + (metric ? "_mm_min" : "_in_min");
    case Measure::length:
    case Measure::least_hole:
        return key + (metric ? "_mm" : "_in");
    case Measure::pressure:
        return key + (metric ? "_bar" : "_psi");
    case Measure::duration:
        return key + "_s";
    case Measure::volts:
        break;
    }
    return key + "_v";
}

int file_decimals(Measure measure, UnitSystem units) {
    const bool metric = units == UnitSystem::metric;
    switch (measure) {
    case Measure::feed:
        return metric ? 0 : 1;
    case Measure::length:
    case Measure::least_hole:
        return metric ? 2 : 3;
    case Measure::pressure:
        return metric ? 1 : 0;
    case Measure::duration:
        return 2;
    case Measure::volts:
        break;
    }
    return 0;
}

} // namespace torchside
