// How long a large drawing takes: 100 000 LINE entities of 16 MB in all, which make 250 closed outlines, and as much as
// SVG.
#include <cmath>
#include <cstdio>
#include <numbers>
#include <string>

#include "core/drawing/drawing.hpp"
#include "core/part/compensate.hpp"
#include "core/part/measure.hpp"
#include "tests/bench/bench.hpp"

using namespace torchside;
using namespace torchside::drawing;
using namespace torchside::part;

namespace {

constexpr int outlines = 250;
constexpr int points = 400;

// Of star `i`, point `k`: within 55 mm of a grid of 120 mm.
Point star(int i, int k) {
    const double a = 2 * std::numbers::pi * (k % points) / points;
    const double r = 50 + 5 * std::sin(7 * a);
    return {120.0 * (i % 16) + r * std::cos(a), 120.0 * (i / 16) + r * std::sin(a)};
}

// As a drawing program writes it: handle, owner, layer and class markers with each entity, 17 digits, blanks before
// codes.
std::string stars_dxf() {
    std::string out =
        "  0\nSECTION\n  2\nHEADER\n  9\n$INSUNITS\n 70\n     4\n  0\nENDSEC\n  0\nSECTION\n  2\nENTITIES\n";
    char line[400];
    for (int i = 0; i < outlines; ++i) {
        for (int k = 0; k < points; ++k) {
            const Point a = star(i, k), b = star(i, k + 1);
            std::snprintf(
                line, sizeof line,
                "  0\nLINE\n  5\n%X\n330\n17\n100\nDrawnEntity\n  8\n0\n100\nDrawnLine\n 10\n%.17g\n 20\n%.17g\n"
                " 30\n0.0\n 11\n%.17g\n 21\n%.17g\n 31\n0.0\n",
                0x30 + i * points + k, a.x, a.y, b.x, b.y);
            out += line;
        }
    }
    return out + "  0\nENDSEC\n  0\nEOF\n";
}

std::string stars_svg() {
    std::string out =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"2000mm\" height=\"2000mm\" viewBox=\"0 0 2000 2000\">\n";
    char line[200];
    for (int i = 0; i < outlines; ++i) {
        for (int k = 0; k < points; ++k) {
            const Point a = star(i, k), b = star(i, k + 1);
            std::snprintf(line, sizeof line, "<path fill=\"none\" stroke=\"#000\" d=\"M%.17g,%.17gL%.17g,%.17g\"/>\n",
                          a.x, a.y, b.x, b.y);
            out += line;
        }
    }
    return out + "</svg>\n";
}

double read(const std::string& text) {
    const auto drawing = read_drawing(text, {});
    return drawing && drawing.value().outline.contours.size() == outlines && drawing.value().problems.empty()
               ? area_mm2(drawing.value().outline)
               : std::nan("");
}

double read_and_compensate(const std::string& text) {
    const auto drawing = read_drawing(text, {});
    const auto path = compensate(drawing.value().outline, {});
    return path ? length_mm(path.value().outline) : std::nan("");
}

} // namespace

int main() {
    bench::Bench bench;
    const std::string dxf = stars_dxf(), svg = stars_svg();
    std::printf("DXF %.1f MB, SVG %.1f MB\n", static_cast<double>(dxf.size()) / 1e6,
                static_cast<double>(svg.size()) / 1e6);
    if (!(read(dxf) > 0.0) || !(read(svg) > 0.0)) {
        std::printf("the drawing was not read as 250 outlines without a problem\n0 passed, 1 failed\n");
        return 1;
    }
    bench.at_most("a DXF of 100 000 lines: read, joined, nested", 250, [&] { return read(dxf); });
    bench.at_most("the same, and compensated", 500, [&] { return read_and_compensate(dxf); });
    bench.at_most("an SVG of 100 000 paths: read, joined, nested", 250, [&] { return read(svg); });
    return bench.done();
}
