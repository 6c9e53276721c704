// Reading SVG: every shape and path command against closed forms, transforms, units, uses, and what is refused.
#include <numbers>
#include <string>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/drawing/drawing.hpp"
#include "core/part/measure.hpp"
#include "tests/core/drawing_text.hpp"

using namespace torchside;
using namespace torchside::drawing;
using namespace torchside::part;
using namespace torchside::test;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using std::numbers::pi;

namespace {

double area(const std::string& inside) {
    return area_mm2(read(svg(inside)).outline);
}

bool says(const std::string& text, const std::string& words) {
    INFO(why(text));
    return why(text).find(words) != std::string::npos;
}

} // namespace

TEST_CASE("shapes of SVG") {
    CHECK_THAT(area("<rect x='1' y='2' width='30' height='20'/>"), WithinRel(600.0, 1e-12));
    CHECK_THAT(area("<rect width='30' height='20' rx='5'/>"), WithinRel(600 - (4 - pi) * 25, 1e-12));
    CHECK_THAT(area("<rect width='30' height='20' rx='99' ry='99'/>"), WithinRel(pi * 15 * 10, 5e-5));
    CHECK_THAT(area("<circle cx='9' cy='9' r='7'/>"), WithinRel(49 * pi, 1e-12));
    CHECK_THAT(area("<ellipse cx='9' cy='9' rx='7' ry='7'/>"), WithinRel(49 * pi, 1e-12));
    CHECK_THAT(area("<ellipse cx='50' cy='50' rx='40' ry='10'/>"), WithinRel(400 * pi, 2e-5));
    CHECK_THAT(area("<polygon points='0,0 10,0 10,10 0 10'/>"), WithinRel(100.0, 1e-12));
    CHECK_THAT(area("<line x1='0' y1='0' x2='10' y2='0'/><polyline points='10 0,10 10,0 0'/>"), WithinRel(50.0, 1e-12));
    CHECK_THAT(area("<circle cx='50%' cy='50%' r='10%'/>"), WithinRel(100 * pi, 1e-12));
    CHECK_THAT(area("<rect width='1in' height='2.54cm'/>"), WithinRel(96.0 * 96.0, 1e-12));
}

TEST_CASE("commands of a path") {
    CHECK_THAT(area("<path d='M10 10H20V20H10Z'/>"), WithinRel(100.0, 1e-12));
    CHECK_THAT(area("<path d='m10,10h10v10h-10z m2 2v6h6v-6z'/>"), WithinRel(64.0, 1e-12)); // relative to the start
    CHECK_THAT(area("<path d='M0,0 10 0 10 10'/><path d='M10 10L0,0'/>"), WithinRel(50.0, 1e-12));
    CHECK_THAT(area("<path d='M10 0A10 10 0 0110 20a10 10 0 11.0-20z'/>"), WithinRel(100 * pi, 1e-12));
    CHECK_THAT(area("<path d='M0 0A10 10 0 0 1 10 10L0 10z'/>"), WithinRel(25 * pi, 1e-12));
    CHECK_THAT(area("<path d='M0 0a1 1 0 0 0 20 0z'/>"), WithinRel(50 * pi, 1e-12)); // radii too small grow
    CHECK_THAT(area("<path d='M0 0A20 10 90 0 1 20 0z'/>"), WithinRel(pi * 100, 2e-5));
    // Under a parabola: 2/3 of the box; T goes on with its mirror image.
    CHECK_THAT(area("<path d='M0 0Q10 20 20 0z'/>"), WithinRel(20 * 10 * 2.0 / 3, 1e-4));
    const Drawing wave = read(svg("<path d='M0 0q10 20 20 0t20 0v-30h-40z'/>"));
    CHECK_THAT(area_mm2(wave.outline), WithinRel(1200.0, 1e-4));
    // A cubic that is a parabola; S goes on with its mirror image.
    CHECK_THAT(
        area("<path d='M0 0c6.666666666666667 13.333333333333333 13.333333333333333 13.333333333333333 20 0z'/>"),
        WithinRel(20 * 10 * 2.0 / 3, 1e-4));
    CHECK_THAT(area("<path d='M0 0C5 10 15 10 20 0S35-10 40 0V-30H0z'/>"), WithinRel(1200.0, 1e-4));
}

TEST_CASE("transforms keep circles where they can") {
    const Drawing d = read(svg("<g transform='translate(50,50) rotate(30) scale(-2,2)'><circle r='5'/></g>"));
    CHECK(d.outline.contours[0].points.size() == 2);
    CHECK_THAT(area_mm2(d.outline), WithinRel(100 * pi, 1e-12));
    const Box box = box_of(d.outline);
    CHECK_THAT(box.low.x, WithinAbs(40, 1e-9));
    CHECK_THAT(box.high.y, WithinAbs(-40, 1e-9)); // y runs up
    CHECK_THAT(area("<g transform='skewX(30)'><rect width='10' height='10' rx='3'/></g>"),
               WithinRel(100 - (4 - pi) * 9, 1e-4));
    CHECK_THAT(area("<path transform='matrix(0,3 -1,0 5,5)' d='M0 0h10v10h-10z'/>"), WithinRel(300.0, 1e-12));
    CHECK_THAT(area("<rect transform='rotate(90 50 50)skewY(10)' width='10' height='10'/>"), WithinRel(100.0, 1e-12));
}

TEST_CASE("units of SVG") {
    const std::string square = "<rect width='10' height='10'/>";
    const auto side2 = [&](const std::string& head) { return area_mm2(read(svg(square, head)).outline); };
    CHECK_THAT(side2("width='2in' height='2in' viewBox='0 0 20 20'"), WithinRel(25.4 * 25.4, 1e-12));
    CHECK_THAT(side2("width='100mm' viewBox='0 0 50 50'"), WithinRel(400.0, 1e-12));
    CHECK_THAT(side2("width='100mm' height='50mm' viewBox='0 0 50 50'"), WithinRel(100.0, 1e-12)); // fits into both
    CHECK_THAT(side2("width='100mm' height='50mm' viewBox='0 0 50 50' preserveAspectRatio='none'"),
               WithinRel(200.0, 1e-12));
    CHECK_THAT(side2("width='96' height='96'"), WithinRel(100 * (25.4 / 96) * (25.4 / 96), 1e-12));
    const Drawing px = read(svg(square, "width='96' height='96'"));
    CHECK_FALSE(px.unit_known);
    CHECK(px.unit == DrawingUnit::px);
    CHECK(px.problems[0].code == std::string("unit_unknown"));
    const Drawing inches = read(svg(square, "width='2in' height='2in' viewBox='0 0 20 20'"));
    CHECK(inches.unit_known);
    CHECK(inches.unit == DrawingUnit::inch);
    ReadSettings told;
    told.unit = DrawingUnit::mm;
    CHECK_THAT(area_mm2(read(svg(square, "viewBox='0 0 20 20'"), told).outline), WithinRel(100.0, 1e-12));
}

TEST_CASE("uses, symbols and what is not displayed") {
    CHECK_THAT(area("<defs><g id='a'><circle r='1'/></g></defs><use href='#a' x='5' y='5'/>"
                    "<use xlink:href='#a' transform='translate(20 20) scale(3)'/>"),
               WithinRel(10 * pi, 1e-12));
    CHECK_THAT(area("<symbol id='s' viewBox='0 0 10 10'><rect width='10' height='10'/></symbol>"
                    "<use href='#s' width='30' height='30'/>"),
               WithinRel(900.0, 1e-12));
    CHECK_THAT(area("<svg x='10' y='10' width='20' height='20' viewBox='0 0 1 1'><rect width='1' height='1'/></svg>"),
               WithinRel(400.0, 1e-12));
    const Drawing d =
        read(svg("<rect width='9' height='9'/><g style='fill:red; display:none'><rect width='5' height='5'/></g>"
                 "<g visibility='hidden'><circle r='3'/><circle visibility='visible' cx='4' cy='4' r='1'/></g>"
                 "<text>6</text><clipPath><circle r='40'/></clipPath><use href='other.svg#x'/>"));
    CHECK_THAT(area_mm2(d.outline), WithinRel(81 - pi, 1e-12));
    CHECK(d.counts.hidden == 2);
    CHECK(d.counts.not_read == 2);
}

TEST_CASE("XML that is not drawn is passed over") {
    CHECK_THAT(
        area_mm2(
            read("\xef\xbb\xbf<?xml version='1.0'?>\n<!DOCTYPE svg [<!ENTITY e \"<circle r='9'/>\">]>\n<!-- < -->" +
                 svg("<style><![CDATA[ a > b { } ]]></style><rect width='3' height='3'/>&e;"))
                .outline),
        WithinRel(9.0, 1e-12));
    CHECK_THAT(area_mm2(read("<s:svg xmlns:s='http://www.w3.org/2000/svg' width='9mm' height='9mm' viewBox='0 0 9 9'>"
                             "<s:rect width='3' height='3'/><o:rect width='8' height='8'/></s:svg>")
                            .outline),
               WithinRel(9.0, 1e-12));
}

TEST_CASE("a style that moves or hides is named, and one marked important is read") {
    const auto styled = [](const std::string& sheet) {
        return count(read(svg("<style>" + sheet + "</style><rect width='9' height='9'/>")), "style_transform");
    };
    CHECK(styled("rect { transform: scale(2) }") == 1);
    CHECK(styled("<![CDATA[.a{fill:red}.h{display:none}]]>") == 1);
    CHECK(styled(".h { Visibility : hidden }") == 1);
    CHECK(styled("text{text-transform:none;display:inline;transform:none}") == 0);
    const Drawing d = read(svg("<g style='display : none !important'><circle r='3'/></g><rect width='9' height='9'/>"));
    CHECK(d.outline.contours.size() == 1);
    CHECK(d.counts.hidden == 1);
    const std::string turned = "transform-origin='center' transform='scale(2)'";
    CHECK(count(read(svg("<rect width='9' height='9' " + turned + "/>")), "style_transform") == 1);
}

TEST_CASE("points and paths with an error are drawn up to it") {
    const Drawing odd = read(svg("<polygon points='0,0 10,0 10,10 5'/>"));
    CHECK_THAT(area_mm2(odd.outline), WithinRel(50.0, 1e-12));
    CHECK(count(odd, "cut_short") == 1);
    const Drawing tail = read(svg("<path d='M0 0 10 0 10 10z X'/>"));
    CHECK_THAT(area_mm2(tail.outline), WithinRel(50.0, 1e-12));
    CHECK(count(tail, "cut_short") == 1);
}

TEST_CASE("broken SVG is refused with its line") {
    CHECK(says("<svg", "line 1 is not whole: a tag does not end"));
    CHECK(says("<svg>\n<g></svg>", "line 2 is not whole: a closing tag closes what is not open"));
    CHECK(says("<svg><g>", "the file ends within an element"));
    CHECK(says("<html></html>", "an element that is not svg"));
    CHECK(says("<svg><rect width=3 /></svg>", "not in quotes"));
    CHECK(says(svg("<path d='L0 0'/>"), "does not begin with M"));
    CHECK(says(svg("<path d='M0 0L1'/>"), "a number or flag missing"));
    CHECK(says(svg("<path d='M0 0X1 1'/>"), "a command that does not exist"));
    CHECK(says(svg("<path d='M0 0A1 1 0 2 0 5 5'/>"), "a number or flag missing"));
    CHECK(says(svg("<path d='M0 0L1e9 0'/>"), "farther out than 1 km"));
    CHECK(says(svg("<path d='M0 0L1e999 0'/>"), "a number or flag missing"));
    CHECK(says(svg("<rect width='3em' height='2'/>"), "wrong length"));
    CHECK(says(svg("<rect width='-3' height='2'/>"), "below 0"));
    CHECK(says(svg("<g transform='turn(3)'/>"), "wrong transform"));
    CHECK(says(svg("<g transform='matrix(1 2 3)'/>"), "wrong transform"));
    CHECK(says(svg("<polygon points='1 2 3'/>"), "pairs of numbers"));
    CHECK(says(svg("<use href='#no'/>"), "\"#no\", which is not there"));
    CHECK(says(svg("<g id='a'><use href='#a'/></g>"), "within itself"));
    CHECK(says("<svg viewBox='0 0 0 9'></svg>", "wrong viewBox"));
    CHECK(says(svg(""), "has no line or curve"));
    std::string deep, many = "<g id='g0'><circle r='1'/></g>";
    for (int i = 0; i < 300; ++i) {
        deep += "<g>";
    }
    CHECK(says("<svg>" + deep, "too deep in each other"));
    for (int i = 1; i < 25; ++i) {
        const std::string use = "<use href='#g" + std::to_string(i - 1) + "'/>";
        many += "<g id='g" + std::to_string(i) + "'>" + use + use + use + "</g>";
    }
    CHECK((says(svg(many), "too many pieces") || says(svg(many), "uses more than can be drawn")));
}
