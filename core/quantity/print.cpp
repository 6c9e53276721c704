#include "core/quantity/print.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace torchside {

namespace {

constexpr double tens[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};
constexpr int most_decimals_ever = 12;
constexpr std::string_view minus = "−", gap = "\u2009";

/// The nearest integer, a tie (and what is within 2^-50 of one) upward. scaled: 0 to 2^53.
std::uint64_t nearest(double scaled) {
    // Above 2^40 the allowance would come near a whole unit, and the fraction is of no interest to anyone.
    const double allowance = scaled < 0x1p40 ? scaled * 0x1p-50 : 0.0;
    return static_cast<std::uint64_t>(std::round(scaled + allowance));
}

std::string digits(std::uint64_t n) {
    std::string out;
    do {
        out.insert(out.begin(), static_cast<char>('0' + n % 10));
        n /= 10;
    } while (n > 0);
    return out;
}

std::string grouped(std::uint64_t n) {
    std::string out = digits(n);
    if (n >= 10000) {
        for (std::size_t at = out.size(); at > 3;) {
            at -= 3;
            out.insert(at, gap);
        }
    }
    return out;
}

void drop_zeros(std::string& text, std::size_t least_decimals, Units units) {
    const std::size_t point = text.find(units.decimal);
    if (point == std::string::npos) {
        return;
    }
    while (text.back() == '0' && text.size() - 1 - point > least_decimals) {
        text.pop_back();
    }
    if (text.back() == units.decimal) {
        text.pop_back();
    }
}

Printed trimmed(double value, int decimals, std::string_view unit, Units units) {
    return {print_trimmed(value, decimals, units), unit};
}

/// Decimal places for a metric length, and for weights: about four figures, never more than a micrometre or a gram.
int places(double value) {
    return value < 1 ? 3 : value < 100 ? 2 : value < 1000 ? 1 : 0;
}

} // namespace

std::string Printed::text() const {
    return unit.empty() ? number : number + " " + std::string{unit};
}

std::string print_fixed(double value, int decimals, Units units) {
    if (!std::isfinite(value)) {
        return "—";
    }
    const double size = std::abs(value);
    if (size >= 1e15) {
        return value > 0 ? ">1e15" : "<" + std::string{minus} + "1e15";
    }
    const int wanted = decimals < 0 ? 0 : decimals > most_decimals_ever ? most_decimals_ever : decimals;
    int kept = wanted;
    while (kept > 0 && size * tens[kept] >= 0x1p53) {
        --kept; // no digit that a double does not hold
    }
    const std::uint64_t n = nearest(size * tens[kept]), scale = static_cast<std::uint64_t>(tens[kept]);
    std::string text = value < 0 && n > 0 ? std::string{minus} : std::string{};
    text += grouped(n / scale);
    if (wanted > 0) {
        std::string after = digits(n % scale);
        after.insert(0, static_cast<std::size_t>(kept) - (kept > 0 ? after.size() : 0), '0');
        if (kept == 0) {
            after.clear();
        }
        after.append(static_cast<std::size_t>(wanted - kept), '0');
        text += units.decimal + after;
    }
    return text;
}

std::string print_plain(double value, int decimals, Units units) {
    std::string text = print_fixed(value, decimals, units);
    for (std::size_t at = text.find(gap); at != std::string::npos; at = text.find(gap)) {
        text.erase(at, gap.size());
    }
    return text;
}

std::string print_trimmed(double value, int most_decimals, Units units) {
    std::string text = print_fixed(value, most_decimals, units);
    drop_zeros(text, 0, units);
    return text;
}

std::string print_significant(double value, int figures, Units units) {
    const double size = std::abs(value);
    if (!(size > 0.0) || size >= 1e15 || figures < 1) {
        return print_fixed(value, 0, units);
    }
    int leading = 15; // 10^leading <= size
    while (leading > -most_decimals_ever && size < (leading >= 0 ? tens[leading] : 1.0 / tens[-leading])) {
        --leading;
    }
    const int decimals = figures - 1 - leading;
    if (decimals <= 0) {
        const double unit = decimals < -15 ? tens[15] : tens[-decimals];
        return print_fixed(std::copysign(static_cast<double>(nearest(size / unit)) * unit, value), 0, units);
    }
    // 9.996 to 3 figures is 10.0, not 10.00: rounding gained a figure.
    const int kept = decimals > most_decimals_ever ? most_decimals_ever : decimals;
    const bool gained = figures <= 15 && static_cast<double>(nearest(size * tens[kept])) >= tens[figures];
    return print_fixed(value, gained ? kept - 1 : kept, units);
}

Printed print(Length length, Units units) {
    if (units.metric()) {
        const double x = length.in(mm), size = std::abs(x);
        return size < 10000 ? trimmed(x, places(size), "mm", units) : trimmed(length.in(metre), 2, "m", units);
    }
    const double x = length.in(inch);
    if (std::abs(x) >= 240) {
        return trimmed(length.in(foot), 1, "ft", units);
    }
    std::string text = print_fixed(x, std::abs(x) < 1 ? 4 : 3, units);
    drop_zeros(text, 3, units);
    return {text, "in"};
}

Printed print(Speed speed, Units units) {
    if (units.metric()) {
        return {print_fixed(speed.in(mm_min), 0, units), "mm/min"};
    }
    const double x = speed.in(in_min);
    return trimmed(x, std::abs(x) < 100 ? 1 : 0, "in/min", units);
}

Speed to_dial(Speed feed, Speed fastest, Units units) {
    constexpr double hair = 1e-9; // a feed that was fitted under the table's fastest may end on its last bit
    const auto unit = units.metric() ? mm_min : in_min;
    if (!(feed < (1.0 - hair) * fastest) || !(feed.in(unit) > 0.0)) {
        return std::min(feed, fastest);
    }
    double step = 1.0; // of the third figure
    for (; feed.in(unit) >= 1000.0 * step; step *= 10.0) {
    }
    if (!units.metric() && feed.in(unit) < 100.0) {
        step = 0.1; // what print() gives
    }
    return std::min(Speed{std::round(feed.in(unit) / step) * step, unit}, fastest);
}

Printed print(Acceleration acceleration, Units units) {
    return units.metric() ? trimmed(acceleration.in(mm_s2), 0, "mm/s²", units)
                          : trimmed(acceleration.in(in_s2), 1, "in/s²", units);
}

Printed print(Pressure pressure, Units units) {
    if (units.metric()) {
        return trimmed(pressure.in(bar), std::abs(pressure.in(bar)) < 1 ? 2 : 1, "bar", units);
    }
    return trimmed(pressure.in(psi), std::abs(pressure.in(psi)) < 10 ? 1 : 0, "psi", units);
}

Printed print(Flow flow, Units units) {
    return units.metric() ? trimmed(flow.in(litre_min), std::abs(flow.in(litre_min)) < 10 ? 1 : 0, "L/min", units)
                          : trimmed(flow.in(cfm), 1, "cfm", units);
}

Printed print(Volume volume, Units units) {
    return units.metric() ? trimmed(volume.in(litre), std::abs(volume.in(litre)) < 100 ? 1 : 0, "L", units)
                          : trimmed(volume.in(us_gallon), 1, "gal", units);
}

Printed print(Mass mass, Units units) {
    const double x = mass.in(units.metric() ? kg : lb);
    return trimmed(x, places(std::abs(x)), units.metric() ? "kg" : "lb", units);
}

Printed print(Duration duration, Units units) {
    const double s = duration.in(second), size = std::abs(s);
    if (!(size < 59.95)) {
        if (!(size < 1e12)) {
            return {print_fixed(duration.in(hour), 0, units), "h"};
        }
        const bool hours = size >= 3599.5;
        const std::uint64_t n = nearest(hours ? size / 60 : size);
        const std::uint64_t large = n / 60, small = n % 60;
        std::string text = (s < 0 ? std::string{minus} : std::string{}) + grouped(large) + (hours ? " h" : " min");
        if (small > 0 && !(hours && large >= 1000)) {
            text += (small < 10 ? " 0" : " ") + digits(small) + (hours ? " min" : " s");
        }
        return {text, {}};
    }
    return trimmed(s, size < 9.995 ? 2 : 1, "s", units);
}

Printed print(Current current, Units units) {
    return trimmed(current.in(ampere), 1, "A", units);
}

Printed print(Voltage voltage, Units units) {
    return trimmed(voltage.in(volt), 1, "V", units);
}

Printed print_percent(double share, int decimals, Units units) {
    return {print_fixed(100.0 * share, decimals, units), "%"};
}

Printed print_at_most(Length thickness, Units units) {
    constexpr double hair = 1e-9; // 20 mm is not 19.9
    if (units.metric()) {
        return {print_fixed(std::floor(thickness.in(mm)*10.0 + hair) / 10.0, 1, units), "mm"};
    }
    return {print_fixed(std::floor(thickness.in(inch)*100.0 + hair) / 100.0, 2, units), "in"};
}

Printed print_water(double grams, Units units) {
    constexpr double grams_per_ounce = 29.5735295625; // in a US fluid ounce, 1/128 gal
    if (units.metric()) {
        return {print_significant(grams, 2, units), "g"};
    }
    return {print_significant(grams / grams_per_ounce, 2, units), "fl oz"};
}

std::optional<InchFraction> inch_fraction(Length length) {
    const double x = length.in(inch);
    if (!(x >= 1.0 / 128.0 && x <= 1000.0)) {
        return {};
    }
    const std::uint64_t n = nearest(x * 64.0);
    std::uint64_t over = n % 64, under = 64;
    while (over > 0 && over % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    InchFraction out;
    if (n >= 64) {
        out.text = digits(n / 64) + (over > 0 ? " " : "");
    }
    if (over > 0) {
        out.text += digits(over) + "/" + digits(under);
    }
    out.text += " in";
    out.error = Length{static_cast<double>(n) / 64.0, inch} - length;
    out.exact = std::abs(out.error.in(inch)) < 0.00005;
    return out;
}

} // namespace torchside
