#include "core/part/kerf.hpp"

#include <cmath>
#include <numbers>
#include <string>

namespace torchside::part {
namespace {

constexpr double most_kerf_mm = 15.0;

struct Size {
    const char* field;
    Length measured;
    bool inside;
    bool top;
};

} // namespace

double taper_deg(Length kerf_top, Length kerf_bottom, Length thickness) {
    return std::atan((kerf_top - kerf_bottom) / (2.0 * thickness)) * (180.0 / std::numbers::pi);
}

Outcome<KerfReading> read_coupon(const MeasuredCoupon& c) {
    if (!(c.thickness.in(mm) >= 0.3 && c.thickness.in(mm) <= 150.0))
        return Fault{"thickness_mm", "a thickness is 0.3 to 150 mm"};
    double sum[2] = {};
    double count[2] = {};
    double low[2] = {1e300, 1e300};
    double high[2] = {-1e300, -1e300};
    for (const Size& size :
         {Size{"outside_top_mm", c.outside_top, false, true}, Size{"outside_bottom_mm", c.outside_bottom, false, false},
          Size{"inside_top_mm", c.inside_top, true, true}, Size{"inside_bottom_mm", c.inside_bottom, true, false}}) {
        if (size.measured.in(mm) == 0.0)
            continue;
        const double w = kerf_from(size.inside ? c.inside : c.outside, size.measured, size.inside).in(mm);
        if (!(w > 0.0 && w <= most_kerf_mm))
            return Fault{size.field,
                         std::string("that leaves no kerf: cut on the line, an ") +
                             (size.inside ? "inside size comes out larger" : "outside size comes out smaller") +
                             " than drawn, by at most 15 mm"};
        const int face = size.top ? 0 : 1;
        sum[face] += w;
        count[face] += 1.0;
        low[face] = std::fmin(low[face], w);
        high[face] = std::fmax(high[face], w);
    }
    KerfReading r;
    for (int face = 0; face < 2; ++face)
        if (count[face] > 0.0) {
            (face == 0 ? r.top : r.bottom) = Length{sum[face] / count[face], mm};
            r.spread = Length{std::fmax(r.spread.in(mm), high[face] - low[face]), mm};
        }
    if (!r.top && !r.bottom)
        return Fault{"outside_top_mm", "at least one size of the coupon is needed"};
    r.kerf = r.top && r.bottom ? 0.5 * (*r.top + *r.bottom) : r.top ? *r.top : *r.bottom;
    r.offset = 0.5 * r.kerf;
    if (r.top && r.bottom)
        r.taper_deg = taper_deg(*r.top, *r.bottom, c.thickness);
    return r;
}

} // namespace torchside::part
