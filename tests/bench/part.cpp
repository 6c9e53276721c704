// How long a part takes from its outline to its path: what the Part screen waits for after each change.
#include <cmath>
#include <cstddef>
#include <numbers>

#include "core/part/checks.hpp"
#include "core/part/compensate.hpp"
#include "core/part/measure.hpp"
#include "core/part/offset.hpp"
#include "core/part/shapes.hpp"
#include "core/part/sheet.hpp"
#include "tests/bench/bench.hpp"

using namespace torchside;
using namespace torchside::part;

namespace {

// A wavy ring of short straight pieces, as drawings of curves come.
Contour wavy(std::size_t pieces, double radius, Point centre, double wave) {
    Contour c;
    for (std::size_t k = 0; k < pieces; ++k) {
        const double t = 2.0 * std::numbers::pi * static_cast<double>(k) / static_cast<double>(pieces);
        const double r = radius * (1.0 + wave * std::sin(7.0 * t));
        c.points.push_back({{centre.x + r * std::cos(t), centre.y + r * std::sin(t)}, 0.0});
    }
    return c;
}

// A hundred thousand pieces in 250 outlines side by side.
Outline many() {
    Outline o;
    for (int i = 0; i < 250; ++i) {
        o.contours.push_back(wavy(400, 20, {60.0 * (i % 16), 60.0 * (i / 16)}, 0.1));
    }
    return o;
}

// A plate with ten thousand holes.
Outline sieve() {
    Outline o{{{{{{-10, -10}, 0}, {{1000, -10}, 0}, {{1000, 1000}, 0}, {{-10, 1000}, 0}}, Role::outer}}};
    for (int i = 0; i < 10000; ++i) {
        o.contours.push_back(circle({10.0 * (i % 100), 10.0 * (i / 100)}, 3, Role::inner));
    }
    return o;
}

double length_of_path(const Outline& o) {
    double sum = 0;
    const auto compensated = compensate(o, {});
    for (const Contour& c : compensated.value().outline.contours) {
        sum += length_mm(c);
    }
    return sum;
}

double loops_area(const Contour& c, double right_mm) {
    double sum = 0;
    const Offset beside = offset(c, right_mm);
    for (const Contour& loop : beside.loops) {
        sum += area_mm2(loop);
    }
    return sum;
}

} // namespace

int main() {
    bench::Bench bench;
    const Contour large = wavy(100000, 500, {0, 0}, 0.04);
    bench.at_most("offset, 100 000 pieces, outwards", 100, [&] { return loops_area(large, 0.8); });
    bench.at_most("offset, 100 000 pieces, inwards", 100, [&] { return loops_area(large, -0.8); });
    const Outline all = many();
    bench.at_most("compensate, 250 outlines of 400 pieces", 100, [&] { return length_of_path(all); });
    bench.at_most("check, the same", 200, [&] {
        return static_cast<double>(check_part(all, {6, mm}, {1.6, mm}).size());
    });
    const Outline holes = sieve();
    bench.at_most("compensate, a plate with 10 000 holes", 1500, [&] { return length_of_path(holes); });
    PartSpec spec;
    spec.shape = Shape::flange;
    const Outline flange = make_outline(spec).value();
    bench.at_most("compensate, a flange", 0.3, [&] { return length_of_path(flange); });
    bench.at_most("a sheet of flanges", 3, [&] { return fit_sheet(flange, {}).value().use; });
    return bench.done();
}
