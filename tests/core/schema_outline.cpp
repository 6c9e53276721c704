// The drawn part in the workbook's file.
#include <algorithm>
#include <cmath>
#include <memory>
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "core/codec/decimal.hpp"
#include "core/drawing/drawing.hpp"
#include "core/drawing/problems.hpp"
#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"
#include "core/schema/intent.hpp"
#include "core/schema/outline_json.hpp"
#include "core/schema/schema.hpp"
#include "core/store/workbook_file.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/core/drawing_text.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::document;

namespace {

std::string with_drawing(const std::string& drawing) {
    return R"({"torchside": 1, "job": {"part": {"shape": "drawing", "drawing_name": "a.dxf", "drawing": )" + drawing +
           "}}}";
}

std::string why(const std::string& drawing) {
    const auto read = read_workbook(with_drawing(drawing));
    return read ? "read" : read.fault().field + ": " + test::said(read.fault().text);
}

std::string points(std::size_t n) {
    std::string out;
    for (std::size_t i = 0; i < n; ++i) {
        const double a = 6.283185307179586 * static_cast<double>(i) / static_cast<double>(n);
        out += (i == 0 ? "[" : ", [") + codec::decimal_text(100 * std::cos(a)) + ", " +
               codec::decimal_text(100 * std::sin(a)) + "]";
    }
    return "[" + out + "]";
}

} // namespace

TEST_CASE("a drawn part is kept to the last bit") {
    const std::string slot = test::dxf_pairs({{0, "LWPOLYLINE"},
                                              {90, "4"},
                                              {70, "1"},
                                              {10, "0.1"},
                                              {20, "0.2"},
                                              {10, "1.3"},
                                              {20, "0.7"},
                                              {42, "0.3333333333333333"},
                                              {10, "1"},
                                              {20, "3"},
                                              {10, "0"},
                                              {20, "2"}});
    const auto drawing = drawing::read_drawing(test::dxf(slot + test::dxf_circle(0.7, 1, 0.1), 1), {});
    REQUIRE(drawing);
    Workbook w;
    w.job.part.shape = part::Shape::drawing;
    w.job.part.drawing_name = "slot.dxf";
    w.job.part.drawing = std::make_shared<part::Outline>(drawing.value().outline);
    const std::string json = write_workbook(w);
    const auto back = read_workbook(json);
    REQUIRE(back);
    REQUIRE(back.value().job.part.drawing);
    CHECK(*back.value().job.part.drawing == drawing.value().outline);
    CHECK(back.value().job.part.drawing_name == "slot.dxf");
    CHECK(write_workbook(back.value()) == json);
    const auto drawn = part::make_outline(back.value().job.part);
    REQUIRE(drawn);
    CHECK(drawn.value() == drawing.value().outline);
    CHECK(set(w, "job.quantity", 3).value().job.part.drawing == w.job.part.drawing); // the same one, not a copy
}

TEST_CASE("contours are turned the way their role runs") {
    const auto read =
        read_workbook(with_drawing(R"([{"role": "outer", "points": [[0, 0], [0, 10], [10, 10, 0.5], [10, 0]]}])"));
    REQUIRE(read);
    CHECK(part::area_mm2(read.value().job.part.drawing->contours[0]) > 0);
    CHECK(read_workbook(with_drawing("null")).value().job.part.drawing == nullptr);
}

TEST_CASE("a drawing that is not there is asked for") {
    const auto read = read_workbook(with_drawing("null"));
    const auto drawn = part::make_outline(read.value().job.part);
    REQUIRE_FALSE(drawn);
    CHECK(test::said(drawn.fault().text) == "The drawing is not here. Open it again: a DXF or SVG.");
}

TEST_CASE("a part with an open line is never said to be fit to cut as drawn") {
    auto read = read_workbook(with_drawing(
        R"([{"role": "outer", "points": [[0, 0], [80, 0], [80, 60], [0, 60]]}, {"role": "open", "points": [[10, 10], [19, 10]]}])"));
    REQUIRE(read);
    const Worksheet sheet = evaluate(read.value());
    std::size_t open = 0;
    for (const part::Problem& p : sheet.part->problems) {
        open += std::string_view(p.code) == "open_contour" && p.severity == Severity::stop ? 1 : 0;
    }
    CHECK(open == 1);
}

TEST_CASE("what reading a drawing found is kept with the job, listed with the part, and goes with the drawing") {
    const std::string square = test::dxf_circle(0, 0, 30);
    const std::string text =
        square + square + test::dxf_circle(200, 0, 5) + test::dxf_circle(203.004, 0, 5) + test::dxf_line(0, 50, 10, 50);
    // Lines that do not close and lines that cross are seen in the outline itself, and not kept as well.
    const auto read = drawing::read_drawing(test::dxf(text, 4), {});
    REQUIRE(read);
    const auto outline = std::make_shared<part::Outline>(read.value().outline);
    const auto drawn = set_drawing({}, "found.dxf", outline, drawing::kept(read.value().problems));
    REQUIRE(drawn);
    const auto back = read_workbook(write_workbook(drawn.value()));
    REQUIRE(back);
    CHECK(back.value().job.part.findings == drawn.value().job.part.findings);
    const auto count = [](const Workbook& w, std::string_view code) {
        const Worksheet sheet = evaluate(w);
        return std::count_if(sheet.part->problems.begin(), sheet.part->problems.end(),
                             [&](const part::Problem& p) { return p.code == code; });
    };
    CHECK(count(back.value(), "duplicate") == 2); // two half circles
    CHECK(count(back.value(), "crossing") == 2);
    CHECK(count(back.value(), "open_contour") == 1);
    const Worksheet sheet = evaluate(back.value());
    for (const part::Problem& p : sheet.part->problems) {
        if (std::string_view(p.code) == "crossing") { // half way between the two circles
            CHECK(std::abs(p.at.x - 201.502) < 0.006);
            CHECK(p.severity == Severity::stop);
        }
    }
    const auto again = set_drawing(back.value(), "clean.dxf", outline, {});
    CHECK(count(again.value(), "duplicate") == 0);
    CHECK(count(again.value(), "crossing") == 2);
    const auto shape = choose_shape(back.value(), "ring");
    REQUIRE(shape);
    CHECK(shape.value().job.part.findings.empty());
    CHECK(shape.value().job.part.drawing == nullptr);
    CHECK(shape.value().job.part.drawing_name.empty());
    CHECK(count(shape.value(), "crossing") == 0);
    CHECK(choose_shape(back.value(), "star").fault().field == "job.part.shape");
}

TEST_CASE("of each kind of finding the first twenty are kept, places within a kilometre") {
    std::vector<part::Problem> problems;
    for (int i = 0; i < 30; ++i) {
        for (const drawing::Found found :
             {drawing::Found::branch, drawing::Found::crossing, drawing::Found::not_read, drawing::Found::elsewhere,
              drawing::Found::open_contour, drawing::Found::unit_unknown}) {
            problems.push_back(drawing::problem(found, {1e300 * i, std::nan("")}, 1.23456));
        }
    }
    const auto kept = drawing::kept(problems);
    CHECK(kept.size() == 3 * drawing::most_kept);
    CHECK(set_drawing({}, "far.dxf", std::make_shared<part::Outline>(), kept));
    CHECK(kept.front().size.in(mm) == 1.23);
    CHECK(std::string(drawing::problem(kept[1]).code) == "not_read");
    CHECK(drawing::problem(kept[1]).severity == Severity::note);
    CHECK(drawing::problem(kept[2]).severity == Severity::caution); // the same code, another weight
}

TEST_CASE("a closed line without area is named once, as that") {
    auto read = read_workbook(with_drawing(
        R"([{"role": "outer", "points": [[0, 0], [80, 0], [80, 60], [0, 60]]}, {"role": "open", "points": [[10, 10], [19, 10], [10, 10]]}])"));
    REQUIRE(read);
    const Worksheet sheet = evaluate(read.value());
    std::string codes;
    for (const part::Problem& p : sheet.part->problems) {
        codes += std::string(p.code) + ' ';
    }
    CHECK(codes.find("no_area") != std::string::npos);
    CHECK(codes.find("open_contour") == std::string::npos);
}

TEST_CASE("a drawing in a workbook is checked as one that is read") {
    const std::string big = R"({"role": "outer", "points": [[0, 0], [100, 0], [100, 100], [0, 100]]})";
    const std::string small = R"("points": [[20, 20], [60, 20], [60, 60], [20, 60]]})";
    const std::string rows[][2] = {
        {R"({"role": "outer", "points": [[0, 0], [100, 100], [100, 0], [0, 100]]})", "crossing"}, // a bow tie
        {big + R"(, {"role": "outer", "points": [[50, 50], [150, 50], [150, 150], [50, 150]]})", "crossing"},
        {big + "," + big, "overlap"},
        {big + R"(, {"role": "inner", "points": [[-10, -10], [-10, 150], [150, 150], [150, -10]]})", "inside_out"},
        {big + R"(, {"role": "inner", "points": [[200, 200], [250, 200], [250, 250]]})", "inside_out"},
        {R"({"role": "inner", )" + small, "inside_out"},
        {big + R"(, {"role": "outer", )" + small, "inside_out"},
    };
    for (const auto& [contours, code] : rows) {
        INFO(contours);
        const auto read = read_workbook(with_drawing("[" + contours + "]"));
        REQUIRE(read);
        const Worksheet sheet = evaluate(read.value());
        const auto named = [&wanted = code](const auto& w) { return w.code == wanted; };
        const auto warning = std::find_if(sheet.warnings.begin(), sheet.warnings.end(), named);
        REQUIRE(warning != sheet.warnings.end());
        CHECK(warning->severity == Severity::stop);
        CHECK(sheet.part->path.runs.empty());
        CHECK(sheet.part->area_mm2 == 0.0);
        CHECK(sheet.part->sheet.count == 0);
        CHECK(sheet.part->sheet.use == 0.0);
        CHECK_FALSE(sheet.mass);
        CHECK_FALSE(sheet.price);
    }
    // A hole where it belongs, and a part in a hole: nothing to say, and a price.
    const auto whole = read_workbook(with_drawing(
        "[" + big + R"(, {"role": "inner", )" + small +
        R"(, {"role": "outer", "points": [[30, 30], [50, 30], [50, 30], [50, 50], [30, 50]]}])")); // a point twice
    const Worksheet sheet = evaluate(whole.value());
    CHECK(sheet.part->problems.empty());
    CHECK(sheet.price);
}

TEST_CASE("findings out of range are refused by their path") {
    const auto with = [](const std::string& entry) {
        const auto r = read_workbook(R"({"torchside": 1, "job": {"part": {"findings": [)" + entry + "]}}}");
        return r ? "read" : r.fault().field + ": " + test::said(r.fault().text);
    };
    const std::string good = R"({"code": "crossing", "x_mm": 1, "y_mm": -2.5})";
    CHECK(with(good) == "read");
    CHECK(with(R"({"code": "hole", "x_mm": 1, "y_mm": 1})")
              .starts_with("job.part.findings[0].code: \"hole\" is not accepted, accepted is unit_unknown, not_read"));
    CHECK(with(good + R"(, {"code": "branch", "x_mm": 1000001, "y_mm": 1})") ==
          "job.part.findings[1].x_mm: 1000001 is not accepted, accepted is -1000000 to 1000000 mm");
    CHECK(with(R"({"code": "branch", "x_mm": 1, "y_mm": 1, "size_mm": -1})") ==
          "job.part.findings[0].size_mm: -1 is not accepted, accepted is 0 to 1000000 mm");
    CHECK(with(R"({"code": "branch", "x_mm": 1})") ==
          "job.part.findings[0].y_mm: missing, accepted is -1000000 to 1000000 mm");
    std::string many = good;
    for (int i = 0; i < 380; ++i) {
        many += ',' + good;
    }
    CHECK(with(many) == "job.part.findings: 381 entries, accepted is a list of 0 to 380 entries");
}

TEST_CASE("what is no outline is refused by its path") {
    CHECK(why("3") == "job.part.drawing: is not understood, accepted is a list of contours, or null");
    CHECK(why("[]") == "job.part.drawing: is not understood, accepted is a list of contours, or null");
    CHECK(why("[{}]") == "job.part.drawing[0]: is not understood, accepted is an object with role, then points");
    CHECK(why(R"([{"role": "hole", "points": [[0,0],[1,0],[1,1]]}])") ==
          "job.part.drawing[0].role: is not understood, accepted is outer, inner or open");
    CHECK(
        why(R"([{"role": "open", "points": [[0,0]]}])") ==
        "job.part.drawing[0].points: is not understood, accepted is a list of 2 points or more, 10000 in all contours "
        "together");
    for (const char* wrong : {"[1]", "[1,2,3,4]", "[1,null]", "\"a\"", "[1,1000001]", "[1,-1e300]"}) {
        CHECK(
            why(std::string(R"([{"role": "open", "points": [[0,0],)") + wrong + "]}]") ==
            "job.part.drawing[0].points[1]: is not understood, accepted is [x, y] or [x, y, bulge], within +-1000000");
    }
}

TEST_CASE("ten thousand points are kept, one more is not") {
    const std::string most = R"([{"role": "outer", "points": )" + points(most_kept_points) + "}]";
    const auto read = read_workbook(with_drawing(most));
    REQUIRE(read);
    const std::string json = write_workbook(read.value());
    CHECK(json.size() < largest_file);
    CHECK(*read_workbook(json).value().job.part.drawing == *read.value().job.part.drawing);
    Workbook larger = read.value();
    auto outline = std::make_shared<part::Outline>(*larger.job.part.drawing);
    outline->contours[0].points.push_back({{0, 0}, 0});
    larger.job.part.drawing = outline;
    const auto back = read_workbook(write_workbook(larger));
    REQUIRE(back);
    CHECK(back.value().job.part.drawing == nullptr);
    CHECK(back.value().job.part.drawing_name == "a.dxf");
    const std::string two = R"({"role": "outer", "points": )" + points(most_kept_points / 2 + 1) + "}";
    CHECK(why("[" + two + "," + two + "]").find("job.part.drawing[1].points: ") == 0);
}
