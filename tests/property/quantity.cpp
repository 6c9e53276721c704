// Properties of reading, printing and gauges. Seeds are fixed: a failure is the same on every run and platform.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <string_view>

#include <catch2/catch_test_macros.hpp>

#include "core/quantity/field_unit.hpp"
#include "core/quantity/print.hpp"
#include "core/stock/gauge.hpp"
#include "core/stock/thickness.hpp"
#include "tests/core/typed_readers.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::test;
using torchside::test::Rng;

namespace {

constexpr int tries = 10000;

/// The worth of the last digit of a printed number; the whole of it for "3 min 20 s".
double last_digit(std::string_view number) {
    const std::size_t point = number.find('.');
    return point == std::string_view::npos ? 1.0 : std::pow(10.0, -static_cast<double>(number.size() - 1 - point));
}

/// Prints, reads, and holds the two together to half a step of the last digit.
template <class Kind>
void round_trip(const Printed& shown, const Reading<Quantity<Kind>>& read, Quantity<Kind> q, Unit<Kind> unit) {
    INFO(shown.text());
    REQUIRE(read.answer());
    const double step = last_digit(shown.number);
    CHECK(std::abs(read.answer()->value.in(unit)-q.in(unit)) <= 0.5 * step * (1 + 1e-9) + 1e-12 * std::abs(q.in(unit)));
}

} // namespace

TEST_CASE("What is printed reads back within its step", "[property][read][print]") {
    Rng rng{20240501};
    for (int i = 0; i < tries; ++i) {
        const double x = rng.by_factor(0.001, 50000);
        for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
            const UnitSystem other = units == UnitSystem::metric ? UnitSystem::inch : UnitSystem::metric;
            const bool m = units == UnitSystem::metric;
            const Length length{x, mm};
            const Printed l = print(length, units);
            round_trip(l, read_length(l.text(), other), length,
                       l.unit == "m"    ? metre
                       : l.unit == "ft" ? foot
                       : m              ? mm
                                        : inch);
            const Speed speed{x, mm_min};
            round_trip(print(speed, units), read_speed(print(speed, units).text(), other), speed, m ? mm_min : in_min);
            const Pressure pressure{x, bar};
            round_trip(print(pressure, units), read_pressure(print(pressure, units).text(), other), pressure,
                       m ? bar : psi);
            const Flow flow{x, litre_min};
            round_trip(print(flow, units), read_flow(print(flow, units).text(), other), flow, m ? litre_min : cfm);
            const Volume volume{x, litre};
            round_trip(print(volume, units), read_volume(print(volume, units).text(), other), volume,
                       m ? litre : us_gallon);
            const Mass mass{x, kg};
            round_trip(print(mass, units), read_mass(print(mass, units).text(), other), mass, m ? kg : lb);
            const Acceleration a{x, mm_s2};
            round_trip(print(a, units), read_acceleration(print(a, units).text(), other), a, m ? mm_s2 : in_s2);
        }
        round_trip(print(Current{x, ampere}), read_current(print(Current{x, ampere}).text()), Current{x, ampere},
                   ampere);
        round_trip(print(Voltage{x, volt}), read_voltage(print(Voltage{x, volt}).text()), Voltage{x, volt}, volt);
    }
}

TEST_CASE("Times read back within their step", "[property][read][print]") {
    Rng rng{7};
    for (int i = 0; i < tries; ++i) {
        const Duration t{rng.by_factor(0.01, 300000), second};
        const Printed shown = print(t);
        INFO(shown.text());
        const auto read = read_duration(shown.text(), hour);
        REQUIRE(read.answer());
        const double step = shown.text().find('h') != std::string::npos     ? 60.0
                            : shown.text().find("min") != std::string::npos ? 1.0
                                                                            : last_digit(shown.number);
        CHECK(std::abs(read.answer()->value.in(second)-t.in(second)) <= 0.5 * step * (1 + 1e-9));
    }
}

TEST_CASE("An inch fraction is what it says, and the nearest", "[property][read][print]") {
    Rng rng{64};
    for (int i = 0; i < tries; ++i) {
        const Length length{rng.by_factor(0.2, 2000), mm};
        const auto f = inch_fraction(length);
        REQUIRE(f);
        INFO(f->text);
        const auto read = read_length(f->text, UnitSystem::metric);
        REQUIRE(read.answer());
        CHECK(std::abs((read.answer()->value - length - f->error).in(mm)) < 1e-9);
        CHECK(std::abs(f->error.in(inch)) <= 1.0 / 128 + 1e-12);
    }
}

TEST_CASE("Units there and back", "[property]") {
    Rng rng{254};
    for (int i = 0; i < tries; ++i) {
        const double x = rng.by_factor(1e-6, 1e6);
        const auto same = [&](double y) { return std::abs(y - x) <= 4e-16 * x; };
        CHECK(same(Length{Length{x, mm}.in(inch), inch}.in(mm)));
        CHECK(same(Length{Length{x, metre}.in(foot), foot}.in(metre)));
        CHECK(same(Speed{Speed{x, in_min}.in(mm_s), mm_s}.in(in_min)));
        CHECK(same(Pressure{Pressure{x, psi}.in(kilopascal), kilopascal}.in(psi)));
        CHECK(same(Flow{Flow{x, cfm}.in(litre_min), litre_min}.in(cfm)));
        CHECK(same(Volume{Volume{x, us_gallon}.in(litre), litre}.in(us_gallon)));
        CHECK(same(Mass{Mass{x, lb}.in(kg), kg}.in(lb)));
        CHECK(same(Duration{Duration{x, hour}.in(second), second}.in(hour)));
    }
}

TEST_CASE("Typed in inches and in millimetres, the same", "[property][read]") {
    Rng rng{16};
    for (int i = 0; i < tries; ++i) {
        const std::size_t under = std::size_t{2} << rng.below(6), over = 1 + rng.below(under - 1),
                          whole = rng.below(12);
        const std::string fraction = std::to_string(over) + "/" + std::to_string(under);
        const double inches = static_cast<double>(whole) + static_cast<double>(over) / static_cast<double>(under);
        const std::string gap = rng.chance(0.5) ? " " : "-";
        const std::string typed = whole > 0 ? std::to_string(whole) + gap + fraction : fraction;
        INFO(typed);
        const auto a = read_length(typed, UnitSystem::metric),
                   b = read_length(print_trimmed(inches, 9) + " in", UnitSystem::metric);
        REQUIRE(a.answer());
        REQUIRE(b.answer());
        CHECK(a.answer()->value == b.answer()->value);
    }
}

namespace {

/// A text answer may hold no byte that did not come from this program: printable, no mark-up, of bounded
/// size.
void harmless(std::string_view text) {
    bool ok = text.size() < 240;
    for (const char c : text) {
        ok = ok && static_cast<unsigned char>(c) >= 0x20 && c != '<' && c != '>' && c != '&';
    }
    if (!ok) {
        FAIL("not fit for a screen: " << std::string{text});
    }
}

template <class Q>
void sound(const Reading<Q>& r) {
    const auto finite = [](Q q) {
        if constexpr (std::is_same_v<Q, double>) {
            return std::isfinite(q);
        } else {
            return std::isfinite(q.in(Unit<typename Q::kind>{1.0})) && q.in(Unit<typename Q::kind>{1.0}) >= 0;
        }
    };
    const int held = (r.answer() ? 1 : 0) + (r.question() ? 1 : 0) + (r.gauge() ? 1 : 0) + (r.refusal() ? 1 : 0);
    bool ok = held == 1;
    if (const auto* a = r.answer()) {
        ok = ok && finite(a->value) && !a->as.empty();
        harmless(a->as);
    }
    if (const auto* q = r.question()) {
        ok = ok && q->answers.size() >= 2 && q->answers.size() <= 3;
        for (const auto& a : q->answers) {
            ok = ok && finite(a.value);
            harmless(a.as);
        }
    }
    if (!ok) {
        FAIL("not a sound reading");
    }
}

void read_all(std::string_view text) {
    const UnitSystem u = UnitSystem::inch;
    sound(read_length(text, u));
    sound(stock::read_thickness(text, Metal::aluminium, u));
    sound(read_speed(text, u));
    sound(read_duration(text, second));
    sound(read_flow(text, u));
    sound(read_percent(text));
    for (int unit = 0; unit <= static_cast<int>(FieldUnit::kilohm); ++unit) {
        sound(read_field(text, static_cast<FieldUnit>(unit), u));
    }
}

} // namespace

TEST_CASE("Any bytes at all get a sound answer", "[property][read]") {
    Rng rng{0xBAD};
    std::string text;
    for (int i = 0; i < tries; ++i) {
        text.clear();
        for (std::size_t n = rng.below(60); n > 0; --n) {
            text += static_cast<char>(rng.below(256));
        }
        read_all(text);
    }
}

TEST_CASE("Pieces of real entries in any order get a sound answer", "[property][read]") {
    constexpr std::string_view pieces[] = {"1",  "6",      "0", "16",   "999", "000", "123456", ".",   ",", "/",  "-",
                                           " ",  "\u2009", "'", "\"",   "½",   "⅟",   "³",      "₁",   "#", "ga", "mm",
                                           "in", "mil",    "m", "/min", "ipm", "per", "e",      "nan", "%", "°",  "C",
                                           "$",  "+",      "−", "h",    "min", "s",   "\xff",   "<b>", "&"};
    Rng rng{0xC0FFEE};
    std::string text;
    for (int i = 0; i < tries * 3; ++i) {
        text.clear();
        for (std::size_t n = rng.below(9); n > 0; --n) {
            text += pieces[rng.below(std::size(pieces))];
        }
        read_all(text);
    }
}

TEST_CASE("A thinner gauge number is never thicker", "[property][stock]") {
    for (const Metal metal : all_metals) {
        for (int n = stock::thickest_gauge; n < stock::thinnest_gauge && !stock::gauges(metal).empty(); ++n) {
            CHECK(stock::gauge_thickness(metal, n).value() > stock::gauge_thickness(metal, n + 1).value());
        }
        for (const stock::GaugeRow& row : stock::gauges(metal)) {
            CHECK(stock::nearest_gauge(metal, stock::gauge_thickness(metal, row.gauge).value())->gauge == row.gauge);
        }
    }
    // Within the series there is always a nearest gauge, off by at most half the widest gap.
    Rng rng{24};
    for (int i = 0; i < tries; ++i) {
        const Length t{rng.uniform(0.0276, 0.1793), inch};
        const auto near = stock::nearest_gauge(Metal::mild_steel, t);
        REQUIRE(near);
        CHECK(std::abs(near->difference.in(inch)) <= 0.5 * 0.0150 + 1e-9);
    }
}

TEST_CASE("Rounding to a band moves a figure by at most a fiftieth of it", "[property][print]") {
    Rng rng{50};
    for (int i = 0; i < tries; ++i) {
        const double spread = rng.by_factor(1e-4, 1e5), value = spread * rng.uniform(0.1, 30);
        const PrintedBand band = print_band(value, value, value + spread, "");
        std::string plain;
        std::copy_if(band.value.begin(), band.value.end(), std::back_inserter(plain),
                     [](char c) { return (c >= '0' && c <= '9') || c == '.'; }); // without the gaps between thousands
        CHECK(std::abs(std::stod(plain) - value) <= spread / 50 * (1 + 1e-9));
    }
}
