// Parts on a sheet, and how often a cut starts again on stock with openings.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/measure.hpp"
#include "core/part/mesh.hpp"
#include "core/part/near.hpp"
#include "core/part/shapes.hpp"
#include "core/part/sheet.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::part;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

Outline shape_of(Shape shape, double length_mm, double width_mm) {
    PartSpec s;
    s.shape = shape;
    s.length = {length_mm, mm};
    s.width = {width_mm, mm};
    s.holes = 0;
    return make_outline(s).value();
}

SheetFit fitted(const Outline& o, const Sheet& s) {
    const auto fit = fit_sheet(o, s);
    REQUIRE(fit.ok());
    return fit.value();
}

// Least distance between parts, and from parts to the sheet's edge.
struct Room {
    double between = 1e300;
    double edge = 1e300;
};
Room room_of(const Outline& part, const Sheet& sheet, const SheetFit& fit) {
    Outline all;
    for (const Placed& p : fit.places) {
        all.contours.push_back(placed(part, p).contours[0]);
    }
    Near near(all);
    Room room;
    for (std::size_t i = 0; i < all.contours.size(); ++i) {
        const Box box = box_of(all.contours[i]);
        room.edge =
            std::min({room.edge, box.low.x, box.low.y, sheet.width.in(mm)-box.high.x, sheet.height.in(mm)-box.high.y});
        for (std::size_t k = 0; k < all.contours[i].points.size(); ++k) {
            for (int s = 0; s < 8; ++s) {
                const auto other = near.nearest(point_at(piece_of(all.contours[i], k), s / 8.0), 30.0, i);
                if (other.contour != Near::none) {
                    room.between = std::min(room.between, other.mm);
                }
            }
        }
    }
    return room;
}

} // namespace

TEST_CASE("Rectangles: as many as rows and columns, the better way round", "[part]") {
    const Outline part = shape_of(Shape::plate, 100, 50);
    const SheetFit fit = fitted(part, {});
    CHECK(fit.count == 451);
    CHECK(fit.places.size() == 451);
    CHECK(fit.turned);
    CHECK_FALSE(fit.alternate);
    CHECK_THAT(fit.use, WithinRel(0.7216, 1e-12));
    CHECK_THAT(fit.part.in(kg), WithinRel(0.2355, 1e-12)); // 5000 mm2 x 6 mm x 7850 kg/m3
    CHECK_THAT(fit.sheet.in(kg), WithinRel(147.1875, 1e-12));
    CHECK_THAT(fit.drop.in(kg), WithinRel(147.1875 - 451 * 0.2355, 1e-12));
    Sheet small;
    small.width = {70, mm};
    small.height = {120, mm};
    CHECK(fitted(part, small).count == 1); // turned, it just fits between the margins
    small.height = {119.9, mm};
    CHECK(fitted(part, small).count == 0);
    CHECK(fitted(part, small).use == 0.0);
}

TEST_CASE("Triangles and angles close up when every second one is turned", "[part]") {
    Sheet sheet;
    sheet.width = {1000, mm};
    sheet.height = {500, mm};
    const Outline gusset = shape_of(Shape::gusset, 100, 100);
    const SheetFit fit = fitted(gusset, sheet);
    CHECK(fit.alternate);
    CHECK(fit.count > 1.5 * 8 * 4); // boxes alone give 8 columns and 4 rows
    const Outline bracket = shape_of(Shape::bracket, 120, 120);
    CHECK(fitted(bracket, sheet).count > 7 * 3);
}

TEST_CASE("Parts keep their spacing and the margin, whatever their shape", "[part]") {
    test::Rng rng(5);
    constexpr Shape shapes[] = {Shape::plate, Shape::disc, Shape::gusset, Shape::bracket};
    for (int i = 0; i < 60; ++i) {
        PartSpec s;
        s.shape = shapes[rng.below(4)];
        s.length = {rng.uniform(40, 200), mm};
        s.width = {rng.uniform(40, 200), mm};
        s.outside = s.length;
        s.corner = {rng.uniform(0, 6), mm};
        s.leg = {rng.uniform(15, 35), mm};
        s.holes = 0;
        const Outline part = make_outline(s).value();
        Sheet sheet;
        sheet.width = {rng.uniform(300, 1500), mm};
        sheet.height = {rng.uniform(300, 1500), mm};
        sheet.spacing = {rng.uniform(0, 20), mm};
        sheet.margin = {rng.uniform(0, 30), mm};
        const SheetFit fit = fitted(part, sheet);
        const Room room = room_of(part, sheet, fit);
        CHECK(fit.count >= 1);
        CHECK(room.between > sheet.spacing.in(mm)-1e-6);
        CHECK(room.edge > sheet.margin.in(mm)-1e-6);
        CHECK(fit.use <= 1.0);
        // Never fewer than the boxes alone give.
        const Box box = box_of(part);
        const double g = sheet.spacing.in(mm);
        const double w = sheet.width.in(mm)-2 * sheet.margin.in(mm), h = sheet.height.in(mm)-2 * sheet.margin.in(mm);
        const auto grid = [&](double a, double b) {
            return std::max(0.0, std::floor((w + g) / (a + g))) * std::max(0.0, std::floor((h + g) / (b + g)));
        };
        CHECK(fit.count >= std::max(grid(box.width(), box.height()), grid(box.height(), box.width())));
    }
}

TEST_CASE("A sheet's field that is out of range is named", "[part]") {
    const Outline part = shape_of(Shape::plate, 100, 50);
    const auto refused = [&](auto change) {
        Sheet s;
        change(s);
        return fit_sheet(part, s).fault().field;
    };
    CHECK(refused([](Sheet& s) { s.width = {5, mm}; }) == "sheet_width_mm");
    CHECK(refused([](Sheet& s) { s.height = {20001, mm}; }) == "sheet_height_mm");
    CHECK(refused([](Sheet& s) { s.margin = {-1, mm}; }) == "margin_mm");
    CHECK(refused([](Sheet& s) { s.spacing = {1001, mm}; }) == "spacing_mm");
    CHECK(refused([](Sheet& s) { s.thickness = {0, mm}; }) == "thickness_mm");
    CHECK(fit_sheet({}, {}).fault().field == "part");
}

TEST_CASE("Openings crossed for each metre, against lines thrown at random", "[part]") {
    CHECK(crossings_of({}).value().gaps_per_m == 0);
    CHECK(crossings_of({}).value().open_share == 0);
    const auto diamonds = crossings_of({MeshKind::expanded}).value(); // the example of mesh.hpp
    CHECK_THAT(diamonds.gaps_per_m, WithinAbs(45.2, 0.05));
    CHECK_THAT(diamonds.open_share, WithinAbs(0.604, 0.0005));
    // Openings 30 x 70 in 40 x 100: edge 200 mm in 4000 mm2, that is 50 a metre / pi.
    const auto bars = crossings_of({MeshKind::grating, {40, mm}, {30, mm}, {100, mm}, {70, mm}}).value();
    CHECK_THAT(bars.gaps_per_m, WithinAbs(15.915, 0.001));
    CHECK_THAT(bars.open_share, WithinAbs(0.525, 1e-12));
    // Holes of 10 at 20: for each 0.866 x 400 = 346.4 mm2 an edge of 10 pi, that is 10 / 346.4 = 28.87 a metre.
    const auto holes = crossings_of({MeshKind::perforated, {20, mm}, {10, mm}}).value();
    CHECK_THAT(holes.gaps_per_m, WithinAbs(28.868, 0.001));
    CHECK_THAT(holes.open_share, WithinAbs(0.2267, 0.0001));
    for (const MeshKind kind : {MeshKind::solid, MeshKind::expanded, MeshKind::grating, MeshKind::perforated}) {
        CHECK(usual(kind).kind == kind);
        CHECK(crossings_of(usual(kind)));
    }
    test::Rng rng(99);
    for (const Mesh& mesh :
         {Mesh{MeshKind::expanded}, Mesh{MeshKind::grating, {34.3, mm}, {29, mm}, {76, mm}, {70, mm}},
          Mesh{MeshKind::perforated, {14, mm}, {10, mm}, {}, {}}}) {
        const double p = mesh.pitch.in(mm), o = mesh.opening.in(mm), q = mesh.pitch_2.in(mm), r = mesh.opening_2.in(mm);
        const auto open_at = [&](Point at) {
            const auto from_middle = [](double x, double pitch) { return std::abs(x - pitch * std::round(x / pitch)); };
            if (mesh.kind == MeshKind::grating) {
                return from_middle(at.x, p) < 0.5 * o && from_middle(at.y, q) < 0.5 * r;
            }
            const double row = mesh.kind == MeshKind::expanded ? q : p * std::numbers::sqrt3;
            for (const double half : {0.0, 0.5}) { // the second set of openings lies between the first
                const double x = from_middle(at.x + half * p, p), y = from_middle(at.y + half * row, row);
                if (mesh.kind == MeshKind::expanded ? 2 * x / o + 2 * y / r < 1 : x * x + y * y < 0.25 * o * o) {
                    return true;
                }
            }
            return false;
        };
        double gaps = 0, open = 0, steps = 0;
        for (int line = 0; line < 3000; ++line) {
            const double angle = rng.uniform(0, pi);
            const Point from{rng.uniform(0, 500), rng.uniform(0, 500)};
            bool before = open_at(from);
            for (int k = 1; k <= 2000; ++k) {
                const bool now = open_at(from + (0.25 * k) * Point{std::cos(angle), std::sin(angle)});
                gaps += now && !before;
                open += now;
                ++steps;
                before = now;
            }
        }
        const auto found = crossings_of(mesh).value();
        CHECK_THAT(found.gaps_per_m, WithinRel(gaps / (3000 * 0.5), 0.02));
        CHECK_THAT(found.open_share, WithinRel(open / steps, 0.01));
    }
    CHECK(crossings_of({MeshKind::expanded, {62, mm}, {62, mm}}).fault().field == "job.mesh.opening_mm");
    CHECK(crossings_of({MeshKind::grating, {0.5, mm}}).fault().field == "job.mesh.pitch_mm");
    CHECK(crossings_of({MeshKind::grating, {30, mm}, {20, mm}, {501, mm}}).fault().field == "job.mesh.pitch_2_mm");
    CHECK(crossings_of({MeshKind::grating, {30, mm}, {20, mm}, {50, mm}, {0, mm}}).fault().field ==
          "job.mesh.opening_2_mm");
}
