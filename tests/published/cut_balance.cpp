// The energy balance against worked values. Unless a group says otherwise they were computed independently of this code
// (a second implementation), so they check the arithmetic; what checks the physics is the last group.
#include <cmath>
#include <numbers>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/cut/balance.hpp"
#include "core/cut/conduction.hpp"
#include "tests/exact_conduction.hpp"

using namespace torchside;
using Catch::Approx;

namespace {

cut::CutSetup plate(Metal metal, double t_mm, double i_a) {
    return {metal, Length{t_mm, mm}, Current{i_a, ampere}, {}, {}, Length{1.5, mm}};
}

double handbook_feed(Metal metal, double t_mm, double i_a) {
    return cut::balance(plate(metal, t_mm, i_a), cut::handbook(metal)).value().feed.in(mm_min);
}

} // namespace

TEST_CASE("Bessel functions at 1", "[cut][published]") {
    // Abramowitz and Stegun, Tables 9.8 and 9.9 (values from memory), to 1e-5.
    CHECK(test::bessel_i(0, 1.0) == Approx(1.266066).margin(1e-6));
    CHECK(test::bessel_k(0, 1.0) == Approx(0.421024).margin(1e-6));
    CHECK(test::bessel_k(1, 1.0) == Approx(0.601907).margin(1e-6));
}

TEST_CASE("Conduction shape", "[cut][published]") {
    struct Row {
        double p, f_exact, g_exact, g_fit;
    };
    // Own, 50-digit arithmetic; to half a unit of the last digit.
    constexpr Row rows[] = {
        {0.05, 2.0031, 1.8031, 1.8032}, {0.1, 2.5315, 2.1315, 2.1328},   {0.3, 4.0644, 2.8644, 2.8648},
        {0.5, 5.3245, 3.3245, 3.3229},  {1.0, 8.1065, 4.1065, 4.1029},   {2.0, 13.1111, 5.1111, 5.1099},
        {5.0, 26.8755, 6.8755, 6.8827}, {10.0, 48.6315, 8.6315, 8.6266},
    };
    for (const Row& r : rows) {
        CAPTURE(r.p);
        CHECK(test::heat_shape_exact(r.p) == Approx(r.f_exact).margin(5.1e-5));
        CHECK(test::conduction_shape_exact(r.p) == Approx(r.g_exact).margin(5.1e-5));
        CHECK(cut::conduction_shape(r.p) == Approx(r.g_fit).margin(5.1e-5));
    }
}

TEST_CASE("Moving line source", "[cut][published]") {
    struct Row {
        double x_mm, y_mm, rise_k;
    };
    // Rosenthal (1946), Trans. ASME 68, 849 (formula from memory): q 2e5 W/m, k 35 W/mK, alpha 6.46e-6 m2/s,
    // v 0.0153 m/s, x ahead of the source; own values, to 0.5 %.
    constexpr Row rows[] = {{0, 1, 296.0}, {-2, 1, 508.6}, {1, 0, 90.6}};
    for (const Row& r : rows) {
        const double b = 0.0153 / (2.0 * 6.46e-6) / 1000.0; // per mm
        const double distance = std::hypot(r.x_mm, r.y_mm);
        const double rise =
            2e5 / (2.0 * std::numbers::pi * 35.0) * std::exp(-b * r.x_mm) * test::bessel_k(0, b * distance);
        CHECK(rise == Approx(r.rise_k).epsilon(0.005));
    }
}

TEST_CASE("One balance in full", "[cut][published]") {
    // Own: mild steel 6 mm, 45 A, handbook terms.
    const auto b = cut::balance(plate(Metal::mild_steel, 6, 45), cut::handbook(Metal::mild_steel)).value();
    CHECK(b.arc.in(volt) == Approx(104.0).margin(1e-9));
    CHECK(b.power.in(watt) == Approx(4680.0).margin(1e-6));
    CHECK(cut::bore(plate(Metal::mild_steel, 6, 45), cut::handbook(Metal::mild_steel)).in(mm) ==
          Approx(1.0705).margin(5e-5));
    CHECK(b.kerf.in(mm) == Approx(1.6057).margin(5e-5));
    CHECK(b.feed.in(mm_min) == Approx(920.0).margin(0.05));
    CHECK(b.melt.in(watt) == Approx(1711.5).margin(0.05));
    CHECK(b.conduction.in(watt) == Approx(956.1).margin(0.05));
    CHECK((b.melt + b.conduction).in(watt) == Approx(2667.6).margin(0.05));
    // The same plate two millimetres up: 5 V/mm.
    auto high = plate(Metal::mild_steel, 6, 45);
    high.height = Length{2.0, mm};
    CHECK(cut::arc_volts(high, cut::handbook(Metal::mild_steel)).in(volt) == Approx(106.5).margin(1e-9));
}

TEST_CASE("Conduction share", "[cut][published]") {
    struct Row {
        Metal metal;
        double t_mm, i_a, arc_v, kerf_mm, feed, share;
    };
    // Own, handbook terms, to 0.5 %.
    constexpr Row rows[] = {{Metal::stainless, 3, 60, 107, 1.8541, 2452.5, 0.171},
                            {Metal::aluminium, 6, 80, 118, 2.1409, 2045.5, 0.502}};
    for (const Row& r : rows) {
        const auto b = cut::balance(plate(r.metal, r.t_mm, r.i_a), cut::handbook(r.metal)).value();
        CHECK(b.arc.in(volt) == Approx(r.arc_v).margin(1e-9));
        CHECK(b.kerf.in(mm) == Approx(r.kerf_mm).margin(5e-5));
        CHECK(b.feed.in(mm_min) == Approx(r.feed).epsilon(0.005));
        CHECK(b.conduction / (b.melt + b.conduction) == Approx(r.share).epsilon(0.005));
    }
}

TEST_CASE("Feed over thickness and current", "[cut][published]") {
    struct Row {
        double t_mm;
        double feed[7]; // at 20, 30, 40, 45, 60, 80, 100 A
    };
    // Own, mild steel, handbook terms; mm/min, to 0.5 % or half a unit.
    constexpr double currents[] = {20, 30, 40, 45, 60, 80, 100};
    constexpr Row rows[] = {
        {0.5, {8385, 11177, 13772, 15030, 18727, 23605, 28522}},
        {1, {3841, 5251, 6559, 7193, 9055, 11507, 13975}},
        {2, {1665, 2378, 3039, 3359, 4298, 5533, 6776}},
        {3, {979, 1457, 1901, 2116, 2746, 3575, 4407}},
        {4, {654, 1012, 1347, 1509, 1985, 2609, 3236}},
        {6, {350, 587, 811, 920, 1240, 1660, 2082}},
        {8, {213, 387, 555, 637, 879, 1196, 1515}},
        {10, {138, 274, 408, 473, 668, 923, 1180}},
        {12, {94, 203, 313, 368, 530, 745, 960}},
        {16, {47, 122, 202, 243, 365, 528, 691}},
        {20, {25, 78, 140, 173, 270, 401, 534}},
        {25, {12, 48, 95, 120, 198, 304, 411}},
    };
    for (const Row& r : rows) {
        for (int i = 0; i < 7; ++i) {
            CAPTURE(r.t_mm, currents[i]);
            CHECK(std::abs(handbook_feed(Metal::mild_steel, r.t_mm, currents[i]) - r.feed[i]) <=
                  std::max(0.5001, 0.005 * r.feed[i]));
        }
    }
}

TEST_CASE("Feed of the other metals", "[cut][published]") {
    struct Row {
        Metal metal;
        double t_mm, i_a, feed;
    };
    // Own, handbook terms, to 0.5 %.
    constexpr Row rows[] = {
        {Metal::mild_steel, 1, 20, 3840.9}, {Metal::mild_steel, 25, 100, 410.9}, {Metal::mild_steel, 10, 60, 667.6},
        {Metal::copper, 3, 100, 1879.1},    {Metal::stainless, 1, 45, 6350},     {Metal::stainless, 3, 45, 1905},
        {Metal::stainless, 6, 45, 849},     {Metal::stainless, 12, 45, 355},     {Metal::stainless, 1, 60, 7964},
        {Metal::stainless, 3, 60, 2453},    {Metal::stainless, 6, 60, 1128},     {Metal::stainless, 12, 60, 498},
        {Metal::stainless, 1, 100, 12231},  {Metal::stainless, 3, 100, 3894},    {Metal::stainless, 6, 100, 1860},
        {Metal::stainless, 12, 100, 874},   {Metal::aluminium, 1, 45, 11301},    {Metal::aluminium, 3, 45, 2570},
        {Metal::aluminium, 6, 45, 756},     {Metal::aluminium, 12, 45, 121},     {Metal::aluminium, 1, 60, 14836},
        {Metal::aluminium, 3, 60, 3734},    {Metal::aluminium, 6, 60, 1296},     {Metal::aluminium, 12, 60, 317},
        {Metal::aluminium, 1, 100, 24163},  {Metal::aluminium, 3, 100, 6841},    {Metal::aluminium, 6, 100, 2816},
        {Metal::aluminium, 12, 100, 1004},
    };
    for (const Row& r : rows) {
        CAPTURE(static_cast<int>(r.metal), r.t_mm, r.i_a);
        CHECK(handbook_feed(r.metal, r.t_mm, r.i_a) == Approx(r.feed).epsilon(0.005));
    }
}

TEST_CASE("Local exponents", "[cut][published]") {
    struct Row {
        Metal metal;
        double t_mm, i_a, by_thickness, by_current;
    };
    // Own, handbook terms with the bore following the current: d ln v / d ln t and d ln v / d ln I, to 0.02.
    constexpr Row rows[] = {
        {Metal::mild_steel, 1, 45, -1.08, 0.79},  {Metal::mild_steel, 6, 45, -1.25, 1.06},
        {Metal::mild_steel, 20, 45, -1.57, 1.68}, {Metal::mild_steel, 1, 100, -1.04, 0.89},
        {Metal::mild_steel, 6, 100, -1.10, 1.02}, {Metal::mild_steel, 20, 100, -1.17, 1.25},
        {Metal::aluminium, 1, 100, -1.10, 0.98},  {Metal::aluminium, 6, 100, -1.36, 1.38},
        {Metal::aluminium, 20, 100, -2.03, 2.54},
    };
    constexpr double step = 1e-4;
    for (const Row& r : rows) {
        CAPTURE(static_cast<int>(r.metal), r.t_mm, r.i_a);
        const double at = std::log(handbook_feed(r.metal, r.t_mm, r.i_a));
        CHECK((std::log(handbook_feed(r.metal, r.t_mm * std::exp(step), r.i_a)) - at) / step ==
              Approx(r.by_thickness).margin(0.02));
        CHECK((std::log(handbook_feed(r.metal, r.t_mm, r.i_a * std::exp(step))) - at) / step ==
              Approx(r.by_current).margin(0.02));
    }
}

namespace {

struct Published {
    const char* id;
    Metal metal;
    double t_mm, i_a, arc_v, bore_mm, feed;
};

// Key arc_cutting_textbook, Tables 17-2 (SS) and 17-3 (AL), seen; key aws_handbook_2 (CS), from memory.
constexpr Published handbook_rows[] = {
    {"SS01", Metal::stainless, 6.35, 300, 200, 3.2, 5080},  {"SS02", Metal::stainless, 12.7, 300, 200, 3.2, 2540},
    {"SS04", Metal::stainless, 50.8, 500, 200, 4.8, 508},   {"SS05", Metal::stainless, 76.2, 500, 200, 4.8, 406},
    {"SS06", Metal::stainless, 101.6, 500, 200, 4.8, 203},  {"AL01", Metal::aluminium, 6.35, 300, 200, 3.2, 7620},
    {"AL02", Metal::aluminium, 12.7, 250, 200, 3.2, 5080},  {"AL04", Metal::aluminium, 50.8, 400, 200, 4.0, 508},
    {"AL05", Metal::aluminium, 76.2, 450, 200, 4.8, 381},   {"AL06", Metal::aluminium, 101.6, 450, 200, 4.8, 305},
    {"AL07", Metal::aluminium, 152.4, 750, 227, 6.4, 203},  {"CS01", Metal::mild_steel, 6.35, 275, 200, 3.2, 5080},
    {"CS02", Metal::mild_steel, 12.7, 275, 200, 3.2, 2540}, {"CS04", Metal::mild_steel, 50.8, 550, 200, 4.8, 635},
};

double feed_of(const Published& r, const cut::Terms& terms) {
    const cut::CutSetup p{
        r.metal,        Length{r.t_mm, mm}, Current{r.i_a, ampere}, Voltage{r.arc_v, volt}, Length{r.bore_mm, mm},
        Length{1.5, mm}};
    return cut::balance(p, terms).value().feed.in(mm_min);
}

double rms_ln_error(const cut::Terms& (*terms)(Metal)) {
    double sum = 0.0;
    for (const Published& r : handbook_rows) {
        const double e = std::log(feed_of(r, terms(r.metal)) / r.feed);
        sum += e * e;
    }
    return std::sqrt(sum / static_cast<double>(std::size(handbook_rows)));
}

} // namespace

TEST_CASE("Handbook rows are reproduced", "[cut][published]") {
    const double small = rms_ln_error(cut::small_air_torch);
    const double large = rms_ln_error(cut::handbook);
    WARN("RMS ln error of 14 handbook rows: small_air_torch " << small << ", handbook " << large);
    CHECK(small <= 0.22);
    CHECK(large <= 0.22);
    CHECK(small == Approx(0.2095).margin(0.002));
    CHECK(large == Approx(0.216).margin(0.002));
}

TEST_CASE("Four handbook rows one by one", "[cut][published]") {
    struct Row {
        int index;
        double feed;
    };
    // Own values of the balance for SS02, SS05, AL05, CS04, handbook terms, to 1 %.
    constexpr Row rows[] = {{1, 2263}, {3, 359}, {8, 379}, {13, 717}};
    for (const Row& r : rows) {
        const Published& p = handbook_rows[r.index];
        CAPTURE(p.id);
        CHECK(feed_of(p, cut::handbook(p.metal)) == Approx(r.feed).epsilon(0.01));
    }
}

TEST_CASE("Wear steel at 130 A was cut at the feeds the balance gives", "[cut][published]") {
    // Key gazi_2020, abstract, seen: 20 mm quenched and tempered steel, 130 A, cut at 725..850 mm/min. Volts and bore
    // are not stated; own value with handbook terms 736 mm/min, and every run is inside one prior sd (35 %) of it.
    const double v = handbook_feed(Metal::mild_steel, 20, 130);
    CHECK(v == Approx(736).epsilon(0.005));
    for (const double run : {725.0, 750.0, 800.0, 850.0}) {
        CHECK(std::abs(std::log(v / run)) < 0.35);
    }
}

TEST_CASE("Practice rows against the small-torch terms", "[cut][published]") {
    struct Row {
        Metal metal;
        double t_mm, feed;
    };
    // Common practice at 45 A, rounded, from memory, no source. Level 1 alone is low on most of them; this keeps it
    // from drifting further without being seen.
    constexpr Row rows[] = {{Metal::mild_steel, 3, 3300},
                            {Metal::mild_steel, 6, 1700},
                            {Metal::mild_steel, 12, 500},
                            {Metal::stainless, 6, 1200},
                            {Metal::aluminium, 6, 1800}};
    double sum = 0.0, squares = 0.0;
    for (const Row& r : rows) {
        const double v =
            cut::balance(plate(r.metal, r.t_mm, 45), cut::small_air_torch(r.metal)).value().feed.in(mm_min);
        const double e = std::log(v / r.feed);
        CHECK(std::abs(e) < 0.35);
        sum += e;
        squares += e * e;
    }
    WARN("practice rows: mean ln error " << sum / 5.0 << ", RMS " << std::sqrt(squares / 5.0));
    CHECK(std::abs(sum / 5.0) < 0.20);
}
