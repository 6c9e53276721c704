// Whatever the shop: all that a coupon cuts, its kerf with it, lies in the plate that it asks for.
#include <catch2/catch_test_macros.hpp>

#include "core/part/trace.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/property/random_workbook.hpp"

using namespace torchside;
using tune::CouponKind;

TEST_CASE("Coupons lie inside the plate that they need, kerf and all") {
    test::Rng rng(19);
    int made = 0;
    for (int i = 0; i < 400; ++i) {
        const Workbook w = test::random_workbook(rng);
        for (const CouponKind kind : {CouponKind::ladder, CouponKind::heights, CouponKind::kerf, CouponKind::swirl}) {
            const auto c = coupon(w, kind);
            if (!c.ok()) {
                continue;
            }
            ++made;
            const double half = 0.5 * evaluate(w).settings->kerf.value.in(mm);
            bool inside = true;
            for (const part::Run& run : c.value().path.runs) {
                for (const part::Point& p : part::trace(run.path, false, 0.01)) {
                    inside = inside && p.x - half >= -1e-9 && p.y - half >= -1e-9 &&
                             p.x + half <= c.value().width.in(mm) + 1e-9 &&
                             p.y + half <= c.value().height.in(mm) + 1e-9;
                }
            }
            CAPTURE(i, static_cast<int>(kind), half);
            CHECK(inside);
        }
    }
    CHECK(made > 100);
}
