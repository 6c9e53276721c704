// The drawn part in the workbook's file.
#include <cmath>
#include <memory>
#include <string>

#include <catch2/catch_test_macros.hpp>

#include "core/document/intent.hpp"
#include "core/document/outline_json.hpp"
#include "core/document/schema.hpp"
#include "core/document/workbook_file.hpp"
#include "core/drawing/drawing.hpp"
#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tests/core/drawing_text.hpp"

using namespace torchside;
using namespace torchside::document;

namespace {

std::string with_drawing(const std::string& drawing) {
    return R"({"torchside": 1, "job": {"part": {"shape": "drawing", "drawing_name": "a.dxf", "drawing": )" + drawing +
           "}}}";
}

std::string why(const std::string& drawing) {
    const auto read = read_workbook(with_drawing(drawing));
    return read ? "read" : read.fault().field + ": " + read.fault().text;
}

std::string points(std::size_t n) {
    std::string out;
    for (std::size_t i = 0; i < n; ++i) {
        const double a = 6.283185307179586 * static_cast<double>(i) / static_cast<double>(n);
        out += (i == 0 ? "[" : ", [") + number_text(100 * std::cos(a)) + ", " + number_text(100 * std::sin(a)) + "]";
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
    const auto drawn = part::draw(back.value().job.part);
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
    const auto drawn = part::draw(read.value().job.part);
    REQUIRE_FALSE(drawn);
    CHECK(drawn.fault().text == "is not there, accepted is a DXF or SVG: open it again");
}

TEST_CASE("a part with an open line is never said to be fit to cut as drawn") {
    auto read = read_workbook(with_drawing(
        R"([{"role": "outer", "points": [[0, 0], [80, 0], [80, 60], [0, 60]]}, {"role": "open", "points": [[10, 10], [19, 10]]}])"));
    REQUIRE(read);
    const Worksheet sheet = evaluate(read.value());
    std::size_t open = 0;
    for (const part::Problem& p : sheet.part->problems) {
        open += std::string_view(p.code) == "open_contour" && p.severity == part::Problem::Severity::stop ? 1 : 0;
    }
    CHECK(open == 1);
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
