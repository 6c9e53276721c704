// Reads contours, one a line: right_mm, then x y bulge of each vertex. Writes of each: area, length, the summed area
// and length of the loops beside it, how many loops, whether they all closed, and the area after going back.
#include <cmath>
#include <cstdio>
#include <iostream>
#include <sstream>
#include <string>

#include "core/part/measure.hpp"
#include "core/part/offset.hpp"

using namespace torchside::part;

int main() {
    std::string line;
    while (std::getline(std::cin, line)) {
        std::istringstream in(line);
        double right = 0.0;
        in >> right;
        Contour c;
        for (Vertex v; in >> v.at.x >> v.at.y >> v.bulge;) {
            c.points.push_back(v);
        }
        const Offset beside = offset(c, right);
        double area = 0.0;
        double length = 0.0;
        double back = 0.0;
        for (const Contour& loop : beside.loops) {
            area += area_mm2(loop);
            length += length_mm(loop);
            for (const Contour& again : offset(loop, -right).loops) {
                back += area_mm2(again);
            }
        }
        std::printf("%.17g %.17g %.17g %.17g %zu %d %.17g\n", area_mm2(c), length_mm(c), area, length,
                    beside.loops.size(), beside.whole ? 1 : 0, back);
    }
}
