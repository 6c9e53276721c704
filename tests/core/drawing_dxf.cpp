// Reading DXF: every entity against closed forms, units, blocks, layers, and what is refused.
#include <cmath>
#include <numbers>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/drawing/drawing.hpp"
#include "core/part/measure.hpp"
#include "tests/core/drawing_text.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::drawing;
using namespace torchside::part;
using namespace torchside::test;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

TEST_CASE("a circle in inches is two half arcs in millimetres") {
    const Drawing d = read(dxf(dxf_circle(0, 0, 0.5), 1));
    REQUIRE(d.outline.contours.size() == 1);
    const Contour& c = d.outline.contours[0];
    CHECK(c.role == Role::outer);
    REQUIRE(c.points.size() == 2);
    CHECK_THAT(c.points[0].bulge, WithinAbs(1.0, 1e-15));
    CHECK(c.points[0].at == Point{12.7, 0.0});
    CHECK(d.unit == DrawingUnit::inch);
    CHECK(d.unit_known);
    CHECK(d.problems.empty());
}

TEST_CASE("lines in any order and direction close; what is inside runs clockwise") {
    const Drawing d = read(dxf(dxf_square(0, 0, 50) + dxf_circle(25, 25, 5) + dxf_square(22, 22, 6)));
    REQUIRE(d.outline.contours.size() == 3);
    for (const Contour& c : d.outline.contours) {
        CHECK((area_mm2(c) > 0) == (c.role == Role::outer));
    }
    CHECK_THAT(area_mm2(d.outline), WithinRel(2500 - 25 * pi + 36, 1e-12));
    CHECK(d.problems.empty());
}

TEST_CASE("arcs, bulges and old polylines keep true arcs") {
    // A slot: two lines and two half arcs; the same as LWPOLYLINE and as POLYLINE.
    const std::string slot = dxf_line(0, 0, 30, 0) + dxf_line(30, 10, 0, 10) +
                             dxf_pairs({{0, "ARC"}, {10, "30"}, {20, "5"}, {40, "5"}, {50, "270"}, {51, "90"}}) +
                             dxf_pairs({{0, "ARC"}, {10, "0"}, {20, "5"}, {40, "5"}, {50, "90"}, {51, "270"}});
    const std::string light = dxf_pairs({{0, "LWPOLYLINE"},
                                         {90, "4"},
                                         {70, "1"},
                                         {10, "0"},
                                         {20, "0"},
                                         {10, "30"},
                                         {20, "0"},
                                         {42, "1"},
                                         {10, "30"},
                                         {20, "10"},
                                         {10, "0"},
                                         {20, "10"},
                                         {42, "1"}});
    const std::string old = dxf_pairs({{0, "POLYLINE"},
                                       {66, "1"},
                                       {70, "1"},
                                       {0, "VERTEX"},
                                       {10, "0"},
                                       {20, "0"},
                                       {0, "VERTEX"},
                                       {10, "30"},
                                       {20, "0"},
                                       {42, "1"},
                                       {0, "VERTEX"},
                                       {10, "30"},
                                       {20, "10"},
                                       {0, "VERTEX"},
                                       {10, "0"},
                                       {20, "10"},
                                       {42, "1"},
                                       {0, "SEQEND"}});
    for (const std::string& text : {slot, light, old}) {
        const Drawing d = read(dxf(text));
        REQUIRE(d.outline.contours.size() == 1);
        CHECK(d.outline.contours[0].points.size() == 4);
        CHECK_THAT(area_mm2(d.outline), WithinRel(300 + 25 * pi, 1e-12));
        CHECK_THAT(length_mm(d.outline), WithinRel(60 + 10 * pi, 1e-12));
        CHECK(d.problems.empty());
    }
}

TEST_CASE("curves are followed within the tolerance") {
    const std::string ellipse = dxf_pairs({{0, "ELLIPSE"},
                                           {10, "5"},
                                           {20, "6"},
                                           {11, "0"},
                                           {21, "20"},
                                           {40, "0.5"},
                                           {41, "0"},
                                           {42, "6.283185307179586"}});
    CHECK_THAT(area_mm2(read(dxf(ellipse)).outline), WithinRel(pi * 200, 2e-5));
    CHECK(read(dxf(ellipse)).outline.contours[0].points.size() < 60);
    ReadSettings fine;
    fine.flatten_mm = 0.001;
    CHECK_THAT(area_mm2(read(dxf(ellipse), fine).outline), WithinRel(pi * 200, 2e-6));
    // A quarter circle as a rational spline, closed by two lines.
    const std::string spline = dxf_pairs({{0, "SPLINE"},
                                          {70, "4"},
                                          {71, "2"},
                                          {40, "0"},
                                          {40, "0"},
                                          {40, "0"},
                                          {40, "1"},
                                          {40, "1"},
                                          {40, "1"},
                                          {41, "1"},
                                          {41, "0.7071067811865476"},
                                          {41, "1"},
                                          {10, "10"},
                                          {20, "0"},
                                          {10, "10"},
                                          {20, "10"},
                                          {10, "0"},
                                          {20, "10"}}) +
                               dxf_line(0, 10, 0, 0) + dxf_line(0, 0, 10, 0);
    const Drawing d = read(dxf(spline));
    REQUIRE(d.outline.contours.size() == 1);
    CHECK_THAT(area_mm2(d.outline), WithinRel(25 * pi, 1e-9)); // the arcs that follow it lie on it
}

TEST_CASE("fit points alone give a smooth closed curve") {
    std::string points = dxf_pairs({{0, "SPLINE"}, {70, "1"}, {71, "3"}});
    for (int i = 0; i < 24; ++i) {
        const double a = 2 * pi * i / 24;
        points += "11\n" + std::to_string(20 * std::cos(a)) + "\n21\n" + std::to_string(20 * std::sin(a)) + "\n";
    }
    const Drawing d = read(dxf(points));
    REQUIRE(d.outline.contours.size() == 1);
    CHECK_THAT(area_mm2(d.outline), WithinRel(400 * pi, 1e-4));
}

TEST_CASE("blocks are scaled, turned, mirrored, repeated and nested") {
    const std::string blocks = dxf_pairs({{0, "BLOCK"}, {2, "HOLE"}, {10, "1"}, {20, "0"}}) + dxf_circle(1, 0, 2) +
                               "0\nENDBLK\n" +
                               dxf_pairs({{0, "BLOCK"},
                                          {2, "Row"},
                                          {10, "0"},
                                          {20, "0"},
                                          {0, "INSERT"},
                                          {2, "hole"},
                                          {10, "0"},
                                          {20, "0"},
                                          {70, "3"},
                                          {44, "10"},
                                          {0, "ENDBLK"}});
    const Drawing d = read(dxf(dxf_pairs({{0, "INSERT"},
                                          {2, "ROW"},
                                          {10, "5"},
                                          {20, "5"},
                                          {41, "-2"},
                                          {42, "2"},
                                          {50, "90"},
                                          {71, "2"},
                                          {45, "40"}}),
                               4, blocks));
    REQUIRE(d.outline.contours.size() == 6);
    CHECK_THAT(area_mm2(d.outline), WithinRel(6 * pi * 16, 1e-12));
    for (const Contour& c : d.outline.contours) {
        CHECK(c.points.size() == 2);
    }
    // Rows run along the turned y axis: to the left. Along each, three holes downwards.
    const Box box = box_of(d.outline);
    CHECK_THAT(box.low.x, WithinAbs(5 - 40 - 4, 1e-9));
    CHECK_THAT(box.high.x, WithinAbs(5 + 4, 1e-9));
    CHECK_THAT(box.low.y, WithinAbs(5 - 40 - 4, 1e-9));
    // Scaled unevenly, a circle is an ellipse.
    const Drawing e = read(dxf(dxf_pairs({{0, "INSERT"}, {2, "HOLE"}, {10, "0"}, {20, "0"}, {41, "3"}}), 4, blocks));
    CHECK_THAT(area_mm2(e.outline), WithinRel(pi * 2 * 6, 1e-4));
    CHECK(e.outline.contours[0].points.size() > 4);
}

TEST_CASE("seen from behind, x runs the other way") {
    const std::string back =
        dxf_pairs({{0, "ARC"}, {10, "-10"}, {20, "0"}, {40, "5"}, {50, "0"}, {51, "90"}, {230, "-1"}});
    const Drawing d = read(dxf(back));
    REQUIRE(d.outline.contours.size() == 1);
    const Point from = d.outline.contours[0].points.front().at;
    CHECK_THAT(from.x, WithinAbs(5, 1e-12));
    CHECK_THAT(d.outline.contours[0].points.back().at.x, WithinAbs(10, 1e-12));
    CHECK(count(read(dxf(dxf_circle(0, 0, 5) +
                         dxf_pairs({{0, "CIRCLE"}, {10, "0"}, {20, "0"}, {40, "2"}, {210, "1"}, {230, "0"}}))),
                "not_flat") == 1);
}

TEST_CASE("units come from the header, and are asked for when it does not say") {
    CHECK_THAT(area_mm2(read(dxf(dxf_square(0, 0, 1), 5)).outline), WithinRel(100.0, 1e-12));
    const Drawing d = read(dxf(dxf_square(0, 0, 10), 0));
    CHECK_FALSE(d.unit_known);
    CHECK(count(d, "unit_unknown") == 1);
    ReadSettings in_inches;
    in_inches.unit = DrawingUnit::inch;
    const Drawing told = read(dxf(dxf_square(0, 0, 10), 0), in_inches);
    CHECK(told.unit_known);
    CHECK(told.problems.empty());
    CHECK_THAT(area_mm2(told.outline), WithinRel(64516.0, 1e-12));
}

TEST_CASE("what is not drawn is named") {
    const std::string layers =
        dxf_pairs({{0, "LAYER"}, {2, "Off"}, {70, "0"}, {62, "-7"}, {0, "LAYER"}, {2, "ICE"}, {70, "1"}, {62, "7"}});
    const Drawing d = read(dxf(dxf_square(0, 0, 10) + dxf_pairs({{0, "CIRCLE"},
                                                                 {8, "OFF"},
                                                                 {10, "5"},
                                                                 {20, "5"},
                                                                 {40, "1"},
                                                                 {0, "CIRCLE"},
                                                                 {8, "Ice"},
                                                                 {10, "5"},
                                                                 {20, "5"},
                                                                 {40, "2"},
                                                                 {0, "CIRCLE"},
                                                                 {8, "0"},
                                                                 {67, "1"},
                                                                 {10, "5"},
                                                                 {20, "5"},
                                                                 {40, "3"},
                                                                 {0, "TEXT"},
                                                                 {1, "6 mm"}}),
                               4, "", layers));
    CHECK(d.outline.contours.size() == 1);
    CHECK(d.counts.hidden == 3);
    CHECK(count(d, "hidden") == 3);
    CHECK(count(d, "not_read") == 1);
}

TEST_CASE("what encloses something and is left out is a caution, a text a note") {
    const Drawing d = read(dxf(dxf_square(0, 0, 10) + "0\nREGION\n8\n0\n0\n3DFACE\n10\n1\n20\n2\n0\nMTEXT\n1\n6\n"));
    REQUIRE(d.problems.size() == 3);
    CHECK(d.counts.not_read == 3);
    CHECK(d.problems[0].severity == Severity::caution);
    CHECK(test::said(part::message_of(d.problems[0])).find("region") != std::string::npos);
    CHECK(d.problems[1].severity == Severity::caution);
    CHECK(d.problems[2].severity == Severity::note);
}

TEST_CASE("one circle without a radius does not cost the drawing") {
    const Drawing d = read(dxf(dxf_square(0, 0, 10) + dxf_circle(5, 5, 0)));
    CHECK(d.outline.contours.size() == 1);
    CHECK(count(d, "short_piece") == 1);
}

TEST_CASE("a polyline in space that lies flat is flat") {
    const auto polyline = [](const std::string& height) {
        const auto vertex = [](const std::string& x, const std::string& y, const std::string& z) {
            return "0\nVERTEX\n70\n32\n10\n" + x + "\n20\n" + y + "\n30\n" + z + "\n";
        };
        return dxf("0\nPOLYLINE\n66\n1\n70\n9\n" + vertex("0", "0", "2") + vertex("9", "0", "2") +
                   vertex("9", "9", height) + "0\nSEQEND\n");
    };
    CHECK(read(polyline("2")).problems.empty());
    CHECK(count(read(polyline("3")), "not_flat") == 1);
}

TEST_CASE("what is left out is named at its place") {
    const std::string row = "0\nLWPOLYLINE\n60\n1\n90\n2\n10\n3\n20\n4\n10\n5\n20\n6\n";
    const Drawing d = read(dxf(dxf_circle(0, 0, 0.5) + "0\nTEXT\n10\n1\n20\n2\n11\n8\n21\n9\n1\n6 mm\n" +
                                   "0\nHATCH\n10\nx\n20\n\n10\n7\n20\n1\n" + row,
                               1));
    REQUIRE(d.problems.size() == 3);
    CHECK(std::string(d.problems[0].code) == "not_read");
    CHECK_THAT(d.problems[0].at.x, WithinRel(25.4, 1e-12));
    CHECK_THAT(d.problems[0].at.y, WithinRel(50.8, 1e-12));
    CHECK(std::string(d.problems[1].code) == "not_read"); // its first numbers are none: the next are taken
    CHECK_THAT(d.problems[1].at.x, WithinRel(177.8, 1e-12));
    CHECK_THAT(d.problems[1].at.y, WithinRel(25.4, 1e-12));
    CHECK(std::string(d.problems[2].code) == "hidden");
    CHECK_THAT(d.problems[2].at.x, WithinRel(76.2, 1e-12));
    CHECK_THAT(d.problems[2].at.y, WithinRel(101.6, 1e-12));
}

TEST_CASE("broken DXF is refused with its line") {
    const std::string good = dxf(dxf_circle(0, 0, 5));
    CHECK(why("") == "drawing: is empty. Use a DXF as text (ASCII) or an SVG.");
    CHECK(why("hello") == "drawing: is neither DXF nor SVG. Use a DXF as text (ASCII) or an SVG.");
    CHECK(why(std::string("0\nSECTION\0", 10)).find("not plain text") != std::string::npos);
    CHECK(why(good.substr(0, good.size() - 6)).find("end of the file") != std::string::npos);
    CHECK(why(dxf("0\nCIRCLE\n10\n0\n20\n0\n40\n-1\n")).find("has no line or curve") != std::string::npos);
    CHECK(why(dxf("0\nCIRCLE\n10\n0\n20\n0\n")) ==
          "drawing: line 27 begins a \"CIRCLE\" without its group 40. Use one that has it.");
    CHECK(why(dxf("0\nCIRCLE\n10\nzero\n")).find("has no number as its value") != std::string::npos);
    CHECK(why(dxf("0\nCIRCLE\n10\nnan\n")).find("has no number as its value") != std::string::npos);
    CHECK(why(dxf("0\nCIRCLE\nx\n0\n")).find("is not a group code") != std::string::npos);
    CHECK(why(dxf("0\nINSERT\n2\nNO\n10\n0\n20\n0\n")).find("inserts the block \"NO\", which is not there") !=
          std::string::npos);
    const std::string loop =
        dxf_pairs({{0, "BLOCK"}, {2, "A"}, {0, "INSERT"}, {2, "A"}, {10, "0"}, {20, "0"}, {0, "ENDBLK"}});
    CHECK(why(dxf("0\nINSERT\n2\nA\n10\n0\n20\n0\n", 4, loop)).find("into itself") != std::string::npos);
    CHECK(why(dxf(dxf_line(0, 0, 1e9, 0))).find("farther out than 1 km") != std::string::npos);
    CHECK(why(dxf("")).find("has no line or curve") != std::string::npos);
    CHECK(why("0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n").find("no section ENTITIES") != std::string::npos);
}

TEST_CASE("blocks that multiply are stopped") {
    std::string blocks = "0\nBLOCK\n2\nB0\n" + dxf_circle(0, 0, 1) + "0\nENDBLK\n";
    for (int i = 1; i < 20; ++i) {
        blocks += "0\nBLOCK\n2\nB" + std::to_string(i) + "\n0\nINSERT\n2\nB" + std::to_string(i - 1) +
                  "\n10\n0\n20\n0\n70\n10\n71\n10\n44\n1\n45\n1\n0\nENDBLK\n";
    }
    CHECK(why(dxf("0\nINSERT\n2\nB19\n10\n0\n20\n0\n", 4, blocks)).find("too many pieces") != std::string::npos);
    blocks.replace(blocks.find("0\nCIRCLE"), dxf_circle(0, 0, 1).size(), "0\nTEXT\n");
    CHECK(why(dxf("0\nINSERT\n2\nB19\n10\n0\n20\n0\n", 4, blocks)).find("inserts more than can be drawn") !=
          std::string::npos);
}

TEST_CASE("reading tells how far it is and can be stopped") {
    std::string lines;
    for (int i = 0; i < 3000; ++i) {
        lines += dxf_line(i, 0, i, 1);
    }
    struct Seen {
        double last = 0.0;
        int calls = 0, stop_after = 1000;
    } seen;
    ReadSettings settings;
    settings.progress.context = &seen;
    settings.progress.tell = [](void* context, double share) {
        Seen& s = *static_cast<Seen*>(context);
        CHECK(share >= s.last);
        s.last = share;
        return ++s.calls < s.stop_after;
    };
    CHECK(read_drawing(dxf(lines), settings).ok());
    CHECK(seen.last == 1.0);
    CHECK(seen.calls > 6);
    seen = {0.0, 0, 3};
    const auto stopped = read_drawing(dxf(lines), settings);
    REQUIRE_FALSE(stopped.ok());
    CHECK(test::said(stopped.fault().text) == "reading was stopped. Read it to the end.");
}
