// The exact conduction series against 60-digit arithmetic.
#include <cmath>

#include <catch2/catch_test_macros.hpp>

#include "core/cut/conduction.hpp"
#include "tests/exact_conduction.hpp"

namespace {

struct Row {
    double p, i0, i3, k0, k3, f, g;
};

constexpr Row rows[] = {
#include "tests/published/conduction_rows.inc"
};

double error(double got, double want) {
    return std::abs(got / want - 1.0);
}

} // namespace

TEST_CASE("Bessel functions against 60 digits", "[cut][published]") {
    using namespace torchside::cut;
    using namespace torchside::test;
    for (const Row& r : rows) {
        CAPTURE(r.p);
        CHECK(error(bessel_i(0, r.p), r.i0) < 1e-14);
        CHECK(error(bessel_i(3, r.p), r.i3) < 1e-14);
        CHECK(error(bessel_k(0, r.p), r.k0) < 1e-14);
        CHECK(error(bessel_k(3, r.p), r.k3) < 1e-14);
    }
}

TEST_CASE("The exact series keeps the errors its header states", "[cut][published]") {
    using namespace torchside::cut;
    using namespace torchside::test;
    for (const Row& r : rows) {
        CAPTURE(r.p);
        const double allowed = r.p <= 4.0 ? 1e-13 : r.p <= 8.0 ? 5e-9 : 1e-5;
        CHECK(error(heat_shape_exact(r.p), r.f) < allowed);
        CHECK(error(conduction_shape_exact(r.p), r.g) < allowed);
        CHECK(error(conduction_shape(r.p), r.g) < 0.0019);
    }
}
