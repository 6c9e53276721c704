// Links of jobs and quotes: what is in them, what is refused and how.
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <cmath>
#include <string>

#include "core/codec/cbor.hpp"
#include "core/link/link.hpp"
#include "core/part/shapes.hpp"
#include "core/quote/date.hpp"
#include "core/schema/intent.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/core/said.hpp"
#include "tests/property/link_bytes.hpp"
#include "tests/property/random_quote.hpp"

using namespace torchside;
using namespace torchside::document;
using namespace std::string_view_literals;

namespace {

std::string fault_of(std::string_view link) {
    const auto read = open_job_link(link);
    return read ? "" : read.fault().field + ": " + test::said(read.fault().text);
}

std::string content_of(const std::string& link) {
    const std::string bytes = test::link_bytes(link);
    return bytes.substr(0, bytes.size() - 4);
}

// A job link whose map is written by hand.
std::string job_of(std::string_view cbor) {
    return test::checked_link('j', std::string("\x01\x01") + std::string(cbor));
}

part::Outline plate() {
    part::PartSpec spec;
    spec.length = spec.width = Length{120, mm};
    spec.hole = Length{13, mm};
    spec.hole_edge = Length{18, mm};
    spec.corner = Length{6, mm};
    return part::make_outline(spec).value();
}

} // namespace

TEST_CASE("the default workbook's link holds nothing") {
    // version 1, kind 1, an empty map; CRC-32 of 01 01 a0
    CHECK(content_of(job_link(Workbook{})) == "\x01\x01\xA0");
    CHECK(open_job_link(job_link(Workbook{})).ok());
}

TEST_CASE("a link is found at the end of an address") {
    const std::string link = job_link(Workbook{});
    CHECK(open_job_link("#" + link).ok());
    CHECK(open_job_link("file:///torchside.html#" + link).ok());
    CHECK(link_kind("#" + link).value() == LinkKind::job);
    CHECK(link_kind("q=").value() == LinkKind::quote);
    CHECK_FALSE(link_kind("").ok());
    CHECK_FALSE(link_kind("#cut").ok());
}

TEST_CASE("a quote stands behind the first # and has one seal, or the link is refused") {
    const std::string quote = quote_link(Quote{});
    const std::string seal(24, 'A');
    const std::string longer(28, 'B');
    const auto refused = [](const std::string& text) {
        const auto read = open_sealed_quote(text);
        return !read && test::said(read.fault().text).starts_with("damaged: ");
    };
    CHECK(open_sealed_quote("https://x/#" + quote).value().seal.empty());
    CHECK(open_sealed_quote("https://x/#" + quote + '.' + seal).value().seal == seal);
    CHECK(open_sealed_quote('#' + quote + '.' + longer + '\n').value().seal == longer);
    CHECK(open_sealed_quote('#' + quote + '.' + longer).value().body == quote);
    for (const std::string& text :
         {quote + '.' + seal + ".x#" + quote, quote + '.' + seal + '#' + quote, quote + ".#" + quote + '.' + seal,
          quote + '#' + quote, quote + '.' + seal + '.' + seal, quote + ".." + seal, quote + '.',
          quote + '.' + seal + 'A', quote + '.' + std::string(27, 'A') + '=', quote + "=." + seal, quote + ' ' + quote,
          quote + '.' + seal.substr(1)}) {
        INFO(text);
        CHECK(refused(text));
        CHECK(refused('#' + text));
        CHECK(refused("https://x/#" + text));
    }
    CHECK_FALSE(open_sealed_quote("#cut#" + quote).ok()); // the first # decides
}

TEST_CASE("blanks and line ends copied along with a link do not matter") {
    const std::string link = job_link(Workbook{});
    for (const std::string& text : {link + '\n', "  " + link, "\r\n" + link + " \t\r\n", "https://x/#" + link + '\n'}) {
        INFO(text);
        CHECK(link_kind(text).ok());
        CHECK(open_job_link(text).ok());
    }
    CHECK_FALSE(link_kind(" \n").ok());
    std::string cut = link;
    cut.insert(link.size() / 2, " ");
    CHECK_FALSE(open_job_link(cut).ok());
}

TEST_CASE("what a link refuses, and how it says so") {
    const std::string link = job_link(set(Workbook{}, "job.thickness_mm", 8).value());
    CHECK(fault_of(link).empty());
    const std::string damaged =
        "link: damaged: letters are missing or changed, accepted is the whole link as it was sent";
    std::string changed = link;
    changed[4] = changed[4] == 'A' ? 'B' : 'A';
    CHECK(fault_of(changed) == damaged);
    CHECK(fault_of(link.substr(0, link.size() - 1)) == damaged);
    CHECK(fault_of(link + "=") == damaged);
    CHECK(fault_of(link + ".AAAAAAAAAAAAAAAAAAAAAAAA") == damaged); // only quotes are sealed
    CHECK(fault_of("j=") == damaged);
    CHECK(fault_of("https") == "link: not one of Torchside, accepted is what begins with j= or q=");
    CHECK(fault_of("j=" + std::string(longest_link, 'A')) == "link: 100 002 letters, accepted is up to 100 000");
    CHECK(fault_of(test::checked_link('j', "\x02\x01\xA0")) ==
          "link: version 2 is too new, accepted is 1: update Torchside first");
    CHECK(fault_of(quote_link(Quote{})) == "link: a quote, accepted is a job");
    CHECK(fault_of(test::checked_link('j', "\x01\x02\xA0")) == "link: a quote, accepted is a job");
    CHECK(test::said(open_quote_link(link).fault().text) == "a job, accepted is a quote");
}

TEST_CASE("a link that was made by hand is judged field by field") {
    // {1: {3: 8}} is job.thickness_mm 8
    CHECK(open_job_link(job_of("\xA1\x01\xA1\x03\x08"sv)).value().job.thickness.in(mm) == 8.0);
    CHECK(fault_of(job_of("\xA1\x01\xA1\x03\x18\xC8"sv)) ==
          "job.thickness_mm: 200 is not accepted, accepted is 0.3 to 150 mm");
    CHECK(fault_of(job_of("\xA1\x01\xA1\x03\xF9\x7E\x00"sv)).starts_with("job.thickness_mm: "));          // NaN
    CHECK(fault_of(job_of("\xA1\x01\xA1\x03\x61\x38"sv)).starts_with("job.thickness_mm: no such value")); // "8"
    CHECK(fault_of(job_of("\xA1\x01\xA1\x02\x07"sv)) ==
          "job.material: no such value, accepted is " + test::said(accepted(*field("job.material"))));
    CHECK(fault_of(job_of("\xA1\x01\xA1\x18\xFA\x05"sv)) ==
          "job.number 250: unknown field, accepted is what this Torchside knows: update it");
    CHECK(fault_of(job_of("\xA1\x01\xA2\x03\x08\x03\x09"sv)) == "job.thickness_mm: given twice, accepted is once");
    CHECK(fault_of(job_of("\xA1\x00\xA1\x17\x19\x01\xF5"sv)) == // 501 test cuts
          "shop.tests: not a list in range, accepted is a list of 0 to 500 entries");
    CHECK(fault_of(job_of("\xA1\x00\xA1\x17\x9A\xFF\xFF\xFF\xFF"sv)).starts_with("shop.tests: not a list in range"));
    CHECK(fault_of(job_of("\xA1\x00\xA1\x17\xBB\xFF\xFF\xFF\xFF\xFF\xFF\xFF\xFF"sv)).starts_with("shop.tests: "));
    CHECK(fault_of(job_of("\xA0\x00"sv)).starts_with("link: damaged"));
    CHECK(fault_of(job_of("\xA1\x01"sv)).starts_with("job: "));
    // A rule between two fields: cut-out below cut-in.
    CHECK(fault_of(job_of("\xA1\x00\xA1\x18\x30\xA1\x18\x59\x02"sv)).starts_with("shop.air.cut_out_bar: "));
}

TEST_CASE("texts lose what could pose as other text") {
    // shop.name: A, right-to-left override, zero-width space, tab, B, soft hyphen, C
    const std::string text = "A\xE2\x80\xAE\xE2\x80\x8B\tB\xC2\xAD"
                             "C";
    std::string cbor("\xA1\x00\xA1\x16"sv);
    codec::cbor_text(cbor, text);
    CHECK(open_job_link(job_of(cbor)).value().shop.name == "ABC");
    std::string bad("\xA1\x00\xA1\x16\x62\xC3\x28"sv); // no UTF-8
    CHECK(fault_of(job_of(bad)).starts_with("shop.name: no such value"));
    std::string longer("\xA1\x00\xA1\x16"sv);
    codec::cbor_text(longer, std::string(61, 'x'));
    CHECK(fault_of(job_of(longer)).starts_with("shop.name: "));
}

TEST_CASE("the seal's keys and the list of quotes cannot be put into a link") {
    Workbook w;
    w.shop.seal_key = std::string(64, 'a');
    w.shop.old_keys.push_back({std::string(64, 'b')});
    w.shop.issued.push_back({"Q-118", 1, "Base plate", 194.4, "USD", 20782, 30, "abcdefgh", "1AAAAA"});
    CHECK(job_link(w) == job_link(Workbook{}));
}

TEST_CASE("a link never says that a shop is the example") {
    Workbook w;
    w.shop.example = true;
    CHECK(job_link(w) == job_link(Workbook{}));
}

TEST_CASE("the public address of a shop travels in its job link") {
    Workbook w;
    w.shop.public_url = "https://shop.example/torchside/";
    CHECK(open_job_link(job_link(w)).value().shop.public_url == w.shop.public_url);
}

TEST_CASE("a plate with holes is one polygon and circles") {
    const Simplified s = simplified(plate());
    CHECK(s.length.in(mm) == 120.0);
    CHECK(s.width.in(mm) == 120.0);
    CHECK(std::fabs(s.tolerance.in(mm)-0.06) < 0.02);
    REQUIRE(s.outline.contours.size() == 5);
    const auto circles = std::count_if(s.outline.contours.begin(), s.outline.contours.end(), [](const QuoteContour& c) {
        return c.circle_mm == 13.0;
    }); // it used to be 13.008
    CHECK(circles == 4);
    QuoteOutline back;
    REQUIRE(unpack_outline(pack_outline(s.outline), back));
    CHECK(test::same(s.outline, back));
    CHECK(pack_outline(s.outline).size() < 130);
}

namespace {

double far_from(const QuoteContour& c, part::Point p) {
    if (c.circle_mm > 0.0) {
        return std::fabs(std::hypot(p.x - c.points[0].x, p.y - c.points[0].y) - c.circle_mm / 2.0);
    }
    double nearest = 1e9;
    for (std::size_t i = 0; i + (c.open ? 1 : 0) < c.points.size(); ++i) {
        const part::Point a = c.points[i];
        const part::Point b = c.points[(i + 1) % c.points.size()];
        const double dx = b.x - a.x;
        const double dy = b.y - a.y;
        const double size = dx * dx + dy * dy;
        const double t = size > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / size, 0.0, 1.0) : 0.0;
        nearest = std::min(nearest, std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy));
    }
    return nearest;
}

} // namespace

TEST_CASE("a long wavy contour keeps its stated tolerance and its most points") {
    part::Outline wavy;
    part::Contour c;
    for (int i = 0; i < 20000; ++i) {
        const double turn = i * 2.0 * 3.14159265358979 / 20000.0;
        const double radius = 400.0 + 30.0 * std::sin(40.0 * turn) + 2.0 * std::sin(1300.0 * turn);
        c.points.push_back({{radius * std::cos(turn), radius * std::sin(turn)}, 0.0});
    }
    wavy.contours.push_back(c);
    const Simplified s = simplified(wavy);
    REQUIRE(s.outline.contours.size() == 1);
    CHECK(s.outline.contours[0].points.size() <= most_points);
    CHECK(s.outline.contours[0].points.size() > 100);
    double low_x = 1e9;
    double low_y = 1e9;
    for (const part::Vertex& v : c.points) {
        low_x = std::min(low_x, v.at.x);
        low_y = std::min(low_y, v.at.y);
    }
    double furthest = 0.0;
    for (const part::Vertex& v : c.points) {
        furthest = std::max(furthest, far_from(s.outline.contours[0], {v.at.x - low_x, v.at.y - low_y}));
    }
    CHECK(furthest <= s.tolerance.in(mm));
    CHECK(s.tolerance.in(mm) < 20.0);
}

TEST_CASE("more holes than fit are left out, smallest first, and that is said") {
    part::Outline sieve;
    for (int i = 0; i < 400; ++i) {
        sieve.contours.push_back(part::circle({i * 5.0, 0.0}, i < 100 ? 1.0 : 2.0, part::Role::inner));
    }
    const Simplified s = simplified(sieve);
    CHECK(s.outline.partly);
    CHECK(s.outline.contours.size() == 160);
    CHECK(std::all_of(s.outline.contours.begin(), s.outline.contours.end(),
                      [](const QuoteContour& c) { return c.circle_mm > 3.0; }));
    CHECK(simplified(part::Outline{}).outline.contours.empty());
}

TEST_CASE("bytes that are no outline in range are refused") {
    QuoteOutline out;
    CHECK_FALSE(unpack_outline("", out));
    CHECK_FALSE(unpack_outline("\x00\x00"sv, out));                     // no grid
    CHECK_FALSE(unpack_outline("\x28\x01"sv, out));                     // a contour is missing
    CHECK_FALSE(unpack_outline("\x28\x00\x00"sv, out));                 // something follows
    CHECK_FALSE(unpack_outline("\x28\x01\x06\x00\x00\x02\x02"sv, out)); // a polygon of two points
    CHECK_FALSE(unpack_outline("\x28\x01\xF2\x2E\x01\x00"sv, out));     // a circle left of the box
    CHECK_FALSE(unpack_outline("\x28\xFF\xFF\xFF\xFF\x0F", out));       // 2^32 contours
}

TEST_CASE("a quote whose amounts do not fit together is refused") {
    test::Rng rng(5);
    Quote q = test::random_quote(rng);
    q.currency = "USD";
    q.price_each = 7.5;
    q.price_total = 180.0;
    q.tax = 0.08;
    q.tax_amount = 14.4;
    q.to_pay = 194.4;
    CHECK_FALSE(check_quote(q));
    Quote other = q;
    other.to_pay = 194.41;
    CHECK(check_quote(other)->field == "to_pay");
    other = q;
    other.price_each = 7.501;
    CHECK(test::said(check_quote(other)->text) == "7.501 is not accepted, accepted is an amount of 2 decimals");
    other = q;
    other.tax_amount.reset();
    CHECK(check_quote(other)->field == "to_pay");
    other = q;
    other.currency = "us1";
    CHECK(check_quote(other)->field == "currency");
}

TEST_CASE("a quote is made of what the customer may see") {
    Workbook w;
    w.shop.name = "Gate Shop";
    w.shop.contact = "555 0142";
    w.job.name = "Base plate";
    w.job.quote.tax = 0.08;
    price::Report report;
    report.each = {750};
    report.total = {18000};
    report.tax = price::Money{1440};
    report.to_pay = {19440};
    report.cost = {12600};
    const Quote q = make_quote(w, plate(), report, 20782);
    CHECK_FALSE(check_quote(q));
    CHECK(q.price_each == 7.5);
    CHECK(q.to_pay == 194.4);
    CHECK(q.tax == 0.08);
    const std::string json = write_quote(q);
    CHECK(json.find("\"issued\": \"2026-11-25\"") != std::string::npos);
    CHECK(json.find("\"valid_until\": \"2026-12-25\"") != std::string::npos);
    CHECK(json.find("126") == std::string::npos); // the cost
    CHECK(quote_link(q).size() < 500);
}

TEST_CASE("days of the calendar") {
    CHECK(read_day("1970-01-01") == 0);
    CHECK(read_day("2026-11-25") == 20782);
    CHECK(read_day("2024-02-29") == 19782);
    CHECK(iso_day(19782) == "2024-02-29");
    CHECK(test::said(day_words(20782)) == "25 Nov 2026");
    CHECK(test::said(day_words(0)) == "1 Jan 1970");
    for (int day = 0; day <= last_day; ++day) {
        REQUIRE(read_day(iso_day(day)) == day);
    }
    CHECK(iso_day(last_day) == "2134-04-11");
    for (const char* bad : {"", "2026-1-1", "2026-02-29", "2026-13-01", "2026-00-10", "2026/11/25", "1969-12-31",
                            "9999-12-31", "2026-11-25 ", "2O26-11-25", "20261125--"}) {
        INFO(bad);
        CHECK_FALSE(read_day(bad));
    }
}
