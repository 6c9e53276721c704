// Times paths given on standard input for tests/oracle/motion.py; no part of the product.
//   feed_mm_s accel tolerance thickness hole_mm count (x y bulge)*   -> cutting_s length_mm slow_share
#include <cstdio>

#include "core/motion/travel.hpp"

using namespace torchside;

int main() {
    double feed, accel, tolerance, thickness, hole;
    int count;
    while (std::scanf("%lf %lf %lf %lf %lf %d", &feed, &accel, &tolerance, &thickness, &hole, &count) == 6) {
        part::Run run;
        run.role = hole > 0 ? part::Role::inner : part::Role::outer;
        run.hole_mm = hole;
        run.path.resize(static_cast<std::size_t>(count));
        for (part::Vertex& v : run.path) {
            if (std::scanf("%lf %lf %lf", &v.at.x, &v.at.y, &v.bulge) != 3) {
                return 1;
            }
        }
        motion::Drive drive;
        drive.feed = {Speed{feed, mm_s}, Speed{feed, mm_s}, Speed{feed, mm_s}, {}};
        drive.acceleration = Acceleration{accel, mm_s2};
        drive.corner_tolerance = Length{tolerance, mm};
        drive.thickness = Length{thickness, mm};
        const motion::Report r = motion::travel({{run}}, drive);
        std::printf("%.17g %.17g %.17g\n", r.cutting.value.in(second), r.cut.in(mm), r.slow_share);
    }
}
