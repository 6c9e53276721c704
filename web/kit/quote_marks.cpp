#include "web/kit/stroke.hpp"

namespace torchside::web {

void draw_quote_mark(const Stroke& s, Mark mark) {
    switch (mark) {
    case Mark::send: // a sheet that leaves upwards
        s.path({{-3, -2}, {-10, -2}, {-10, 11}, {10, 11}, {10, -2}, {3, -2}});
        s.post(0, -11, 5, stroke);
        s.path({{-5, -6}, {0, -11}, {5, -6}});
        break;
    case Mark::rates: // a clock and a coin
        s.circle(-3, -3, 8);
        s.path({{-3, -8}, {-3, -3}, {1, -3}});
        s.circle(7, 7, 4.5F);
        break;
    case Mark::costs: // lines that add up
        s.bar(-10, 4, -9, stroke);
        s.bar(-10, 4, -3, stroke);
        s.bar(-10, 4, 3, stroke);
        s.dot(9, -9, 1.6F);
        s.dot(9, -3, 1.6F);
        s.dot(9, 3, 1.6F);
        s.bar(-11, 11, 7, 1.5F);
        s.bar(-11, 11, 11, 1.5F);
        break;
    case Mark::quantities: // one, and many
        s.path({{-11, 2}, {-4, 2}, {-4, 10}, {-11, 10}}, true);
        s.path({{1, -10}, {11, -10}, {11, -2}, {1, -2}}, true);
        s.path({{1, 1}, {11, 1}, {11, 10}, {1, 10}}, true);
        break;
    case Mark::terms: // what is written under it, signed
        s.bar(-10, 10, -9, stroke);
        s.bar(-10, 10, -4, stroke);
        s.bar(-10, 2, 1, stroke);
        s.path({{-9, 10}, {-5, 6}, {-3, 10}, {1, 6}, {3, 10}, {10, 10}});
        break;
    case Mark::issued: // sheets that lie one on the other
        s.path({{-5, -11}, {10, -11}, {10, 6}});
        s.path({{-10, -6}, {5, -6}, {5, 11}, {-10, 11}}, true);
        s.path({{-6, 2}, {-3, 5}, {2, -1}});
        break;
    default:
        break;
    }
}

} // namespace torchside::web
