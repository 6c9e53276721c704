#include "core/worksheet/figures.hpp"

#include "generated/words/figure.hpp"
#include "generated/words/figure_more.hpp"

namespace torchside {
namespace {

template <class K>
Unit<K> file_unit(UnitSystem units) {
    const bool metric = units == UnitSystem::metric;
    if constexpr (std::is_same_v<K, LengthKind>) {
        return metric ? mm : inch;
    } else if constexpr (std::is_same_v<K, SpeedKind>) {
        return metric ? mm_min : in_min;
    } else if constexpr (std::is_same_v<K, PressureKind>) {
        return metric ? bar : psi;
    } else if constexpr (std::is_same_v<K, DurationKind>) {
        return second;
    } else {
        return volt;
    }
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
    {"feed", "feed", words::figure::feed, words::figure_more::feed, Measure::feed, get<&S::feed>},
    {"arc", "arc", words::figure::arc, words::figure_more::arc, Measure::volts, get<&S::arc>},
    {"cut_height", "cut_height", words::figure::cut_height, words::figure_more::cut_height, Measure::length,
     get<&S::cut_height>},
    {"pierce_height", "pierce_height", words::figure::pierce_height, words::figure_more::pierce_height, Measure::length,
     get<&S::pierce_height>},
    {"pierce_delay", "pierce_delay", words::figure::pierce_delay, words::figure_more::pierce_delay, Measure::duration,
     get<&S::pierce_delay>},
    {"kerf", "kerf", words::figure::kerf, words::figure_more::kerf, Measure::length, get<&S::kerf>},
    {"lead_in", "lead_in", words::figure::lead_in, words::figure_more::lead_in, Measure::length, get<&S::lead_in>},
    {"min_hole", "min_hole", words::figure::min_hole, words::figure_more::min_hole, Measure::least_hole,
     get<&S::min_hole>},
    {"pressure", "pressure_flowing", words::figure::pressure, words::figure_more::pressure, Measure::pressure,
     get<&S::pressure>},
    {"post_flow", "post_flow", words::figure::post_flow, words::figure_more::post_flow, Measure::duration,
     get<&S::post_flow>},
};

} // namespace

std::span<const Figure> figures() {
    return rows;
}

const Figure* figure_of(std::string_view key) {
    for (const Figure& row : rows) {
        if (row.key == key) {
            return &row;
        }
    }
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
