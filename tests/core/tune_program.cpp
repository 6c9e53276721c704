// Coupons and their programs, run by a small strict interpreter that knows nothing of how they were written.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/part/piece.hpp"
#include "core/part/trace.hpp"
#include "core/tune/coupon.hpp"
#include "core/tune/program.hpp"

using namespace torchside;
using namespace torchside::tune;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

CouponSettings settings() {
    CouponSettings s;
    s.feed = Speed{1400, mm_min};
    return s;
}

struct Run {
    std::vector<std::string> faults{};
    double torch_on_mm = 0.0;                                                   // path with the torch on, in the plane
    double fastest_mm_min = 0.0;                                                // of it
    double lowest_mm = 1e9, left = 1e9, right = -1e9, bottom = 1e9, top = -1e9; // of it
    int pierces = 0;
    double dwell_s = 0.0;
    bool ended = false;
    std::vector<double> feeds{}; // first feed of each leg in the plane
    std::vector<double> heights{};
};

class Interpreter {
public:
    explicit Interpreter(const Controller& words) : words_(words) {}

    Run run(std::string_view text) {
        while (!text.empty()) {
            const std::size_t end = text.find('\n');
            if (end == std::string_view::npos)
                fault("last line has no end");
            block(std::string(text.substr(0, end)));
            text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        }
        if (torch_)
            fault("ends with the torch on");
        if (!run_.ended)
            fault("no end of program");
        return run_;
    }

private:
    void fault(const std::string& what) { run_.faults.push_back(what); }

    void block(const std::string& line) {
        if (run_.ended)
            return fault("goes on after its end");
        if (line.front() == '(') {
            if (line.back() != ')' || line.find_first_of("()", 1) != line.size() - 1)
                fault("bad comment: " + line);
            return;
        }
        if (line == words_.torch_on) {
            if (torch_)
                fault("torch on twice");
            torch_ = true;
            leg_feed_known_ = false;
            ++run_.pierces;
            return;
        }
        if (line == words_.torch_off) {
            torch_ = false;
            return;
        }
        if (line == words_.height_on || line == words_.height_off)
            return;
        words(line);
    }

    void words(const std::string& line) {
        double x = x_, y = y_, z = z_, i = 0, j = 0, p = -1;
        int g = -1;
        const char* at = line.c_str();
        while (*at) {
            const char letter = *at++;
            char* after = nullptr;
            const double value = std::strtod(at, &after);
            if (after == at)
                return fault("no number after a letter: " + line);
            at = after;
            while (*at == ' ')
                ++at;
            switch (letter) {
            case 'G':
                g = static_cast<int>(value);
                break;
            case 'M':
                if (value != 2)
                    fault("unknown word: " + line);
                run_.ended = true;
                return;
            case 'X':
                x = value * scale_;
                break;
            case 'Y':
                y = value * scale_;
                break;
            case 'Z':
                z = value * scale_;
                break;
            case 'I':
                i = value * scale_;
                break;
            case 'J':
                j = value * scale_;
                break;
            case 'F':
                feed_ = value * scale_;
                break;
            case 'P':
                p = value;
                break;
            default:
                fault("unknown letter: " + line);
            }
        }
        act(g, x, y, z, i, j, p, line);
    }

    void act(int g, double x, double y, double z, double i, double j, double p, const std::string& line) {
        switch (g) {
        case 17:
        case 90:
        case 94:
            return;
        case 20:
            scale_ = 25.4;
            return;
        case 21:
            scale_ = 1.0;
            return;
        case 4:
            run_.dwell_s += words_.dwell == DwellUnit::millisecond ? p / 1000 : p;
            if (!torch_ || p <= 0)
                fault("dwell without torch or time: " + line);
            return;
        case 0:
            if (torch_)
                fault("rapid with the torch on: " + line);
            if (z_ < words_.safe_height.in(mm)-0.01 && (x != x_ || y != y_) && words_.z_words)
                fault("rapid across below the safe height: " + line);
            break;
        case 1:
        case 2:
        case 3:
            if (!torch_)
                fault("feed move without the torch: " + line);
            if (!(feed_ > 0))
                fault("no feed: " + line);
            cut(g, x, y, z, i, j, line);
            break;
        default:
            fault("unknown: " + line);
        }
        x_ = x;
        y_ = y;
        z_ = z;
    }

    void cut(int g, double x, double y, double z, double i, double j, const std::string& line) {
        double l = std::hypot(x - x_, y - y_);
        if (g != 1) {
            const double radius = std::hypot(i, j);
            if (std::abs(std::hypot(x - x_ - i, y - y_ - j) - radius) > 0.01)
                fault("arc does not end on its circle: " + line);
            double turn = std::atan2(y - y_ - j, x - x_ - i) - std::atan2(-j, -i);
            turn = g == 2 ? -turn : turn;
            l = radius * (turn <= 1e-6 ? turn + 2 * 3.14159265358979 : turn);
        }
        if (l > 0 && !leg_feed_known_) {
            run_.feeds.push_back(feed_);
            run_.heights.push_back(z);
            leg_feed_known_ = true;
        }
        if (l > 0)
            run_.fastest_mm_min = std::fmax(run_.fastest_mm_min, feed_);
        run_.torch_on_mm += l;
        run_.lowest_mm = std::fmin(run_.lowest_mm, z);
        run_.left = std::fmin(run_.left, std::fmin(x, x_));
        run_.right = std::fmax(run_.right, std::fmax(x, x_));
        run_.bottom = std::fmin(run_.bottom, std::fmin(y, y_));
        run_.top = std::fmax(run_.top, std::fmax(y, y_));
    }

    const Controller& words_;
    Run run_{};
    bool torch_ = false;
    bool leg_feed_known_ = false;
    double scale_ = 1.0, x_ = 0, y_ = 0, z_ = 0, feed_ = 0;
};

Run run(const Coupon& c, const Controller& w, UnitSystem units) {
    const auto text = program(c, w, units, words::verbatim("mild steel 6 mm, 45 A"));
    REQUIRE(text.ok());
    const Run r = Interpreter(w).run(text.value());
    for (const std::string& f : r.faults)
        FAIL_CHECK(f.c_str());
    return r;
}

std::vector<Coupon> all_coupons(const CouponSettings& s) {
    return {ladder_coupon(s, {7, 1.12, s.feed}).value(), height_coupon(s).value(), kerf_coupon(s).value(),
            swirl_coupon(s).value()};
}

} // namespace

TEST_CASE("Feeds of a ladder, and the choice among clean legs") {
    // Own worked examples.
    const double expected[] = {655, 733, 821, 920, 1030, 1154, 1293};
    const std::vector<Speed> feeds = ladder_feeds({7, 1.12, Speed{920, mm_min}});
    REQUIRE(feeds.size() == 7);
    for (std::size_t i = 0; i < 7; ++i)
        CHECK_THAT(feeds[i].in(mm_min), WithinAbs(expected[i], 0.5));
    CHECK_THAT(ladder_choice(Speed{800, mm_min}, Speed{1150, mm_min}).in(mm_min), WithinAbs(959.2, 0.05));
}

TEST_CASE("Kerf from a square and from a hole cut on the line") {
    const Length w = kerf_from(Length{50, mm}, Length{48.35, mm}, false);
    CHECK_THAT(w.in(mm), WithinAbs(1.65, 1e-12));
    CHECK_THAT((0.5 * w).in(mm), WithinAbs(0.825, 1e-12));
    CHECK_THAT(kerf_from(Length{20, mm}, Length{21.6, mm}, true).in(mm), WithinAbs(1.6, 1e-12));
}

TEST_CASE("Every program runs clean in both units and every choice of words") {
    Controller seconds;
    Controller own{"M62 P1", "M63 P1", "M64 P2", "M65 P2", DwellUnit::millisecond, true, Length{20, mm}, {}};
    Controller flat;
    flat.z_words = false;
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
        for (const Coupon& c : all_coupons(settings())) {
            for (const Controller* w : {&seconds, &own, &flat}) {
                if (!w->z_words && c.kind == CouponKind::heights)
                    continue;
                CAPTURE(static_cast<int>(c.kind), static_cast<int>(units), w->torch_on.c_str());
                const Run r = run(c, *w, units);
                CHECK(r.pierces == static_cast<int>(c.legs.size()));
                CHECK_THAT(r.dwell_s, WithinRel(0.5 * r.pierces, 1e-9));
                CHECK(r.fastest_mm_min <= settings().table.max_feed.in(mm_min));
                CHECK_THAT(r.torch_on_mm, WithinAbs(c.cut_length.in(mm), 0.05));
                CHECK(r.left >= -0.01);
                CHECK(r.bottom >= -0.01);
                CHECK(r.right <= c.width.in(mm) + 0.01);
                CHECK(r.top <= c.height.in(mm) + 0.01);
                if (w->z_words)
                    CHECK(r.lowest_mm >= 0.5);
            }
        }
    }
}

TEST_CASE("A ladder's legs are cut at the feeds it promises, every second one first") {
    const Coupon c = ladder_coupon(settings(), {5, 1.12, Speed{920, mm_min}}).value();
    const Run r = run(c, {}, UnitSystem::metric);
    REQUIRE(r.feeds.size() == 5);
    const double expected[] = {733, 920, 1154, 821, 1030};
    for (std::size_t i = 0; i < 5; ++i)
        CHECK_THAT(r.feeds[i], WithinAbs(expected[i], 0.6));
    // 5 legs of 60 mm at those feeds take 20.0 s; the rest is 5 pierces of 0.5 s, 5 touch-offs of 3 s, and moves of 60 to
    // 78 mm at 10 000 mm/min, half of them at 500 mm/s2 up and down: 0.7 s each.
    CHECK_THAT(c.time.in(second), WithinAbs(19.96 + 2.5 + 15.0 + 3.5, 1.0));
}

TEST_CASE("A height ladder's legs are cut at its heights") {
    const Run r = run(height_coupon(settings()).value(), {}, UnitSystem::metric);
    const double expected[] = {0.9, 1.5, 2.1, 1.2, 1.8};
    REQUIRE(r.heights.size() == 5);
    for (std::size_t i = 0; i < 5; ++i)
        CHECK_THAT(r.heights[i], WithinAbs(expected[i], 1e-9));
}

TEST_CASE("Legs at the table's own limit are not rounded past it") {
    CouponSettings s = settings();
    s.table.max_feed = Speed{7620, mm_min}; // 300 in/min
    const Coupon c = ladder_coupon(s, {5, 1.12, Speed{7620 / (1.12 * 1.12) * 0.9999999, mm_min}}).value();
    CHECK(run(c, {}, UnitSystem::inch).fastest_mm_min <= 7620);
    CHECK(run(c, {}, UnitSystem::metric).fastest_mm_min <= 7620);
}

TEST_CASE("Feeds past 10 000 and lengths past 10 m are written without gaps") {
    CouponSettings s = settings();
    s.table.max_feed = Speed{40000, mm_min};
    const Coupon c = ladder_coupon(s, {5, 1.12, Speed{20000, mm_min}}).value();
    const std::string text = program(c, {}, UnitSystem::metric, {}).value();
    CHECK(text.find(" F20000.0\n") != std::string::npos);
    CHECK(std::all_of(text.begin(), text.end(), [](char l) { return l == '\n' || (l >= ' ' && l <= '~'); }));
    CHECK(run(c, {}, UnitSystem::metric).fastest_mm_min > 20000);
}

TEST_CASE("A hole is two halves of a circle, anticlockwise, led in from its middle") {
    const Coupon c = kerf_coupon(settings()).value();
    REQUIRE(c.path.runs.size() == c.legs.size());
    const part::Run& hole = c.path.runs.front();
    REQUIRE(hole.path.size() == 4);
    const part::Point centre = hole.path.front().at;
    const double radius = 0.5 * c.legs.front().size->in(mm);
    CHECK(hole.path[1].at == hole.path[3].at);
    for (const part::Point& p : part::trace(std::span(hole.path).subspan(1), false, 0.01))
        CHECK_THAT(std::hypot(p.x - centre.x, p.y - centre.y), WithinAbs(radius, 1e-9));
    const part::Point quarter = part::point_at({hole.path[1].at, hole.path[2].at, hole.path[1].bulge}, 0.5);
    CHECK_THAT(quarter.y, WithinAbs(centre.y + radius, 1e-9));
}

TEST_CASE("Programs say what they are and what to check") {
    const std::string text =
        program(all_coupons(settings())[0], {}, UnitSystem::metric, words::verbatim("mild steel (hot), 6 mm")).value();
    CHECK(text.find("Check before you run") != std::string::npos);
    CHECK(text.find("(mild steel  hot , 6 mm)") != std::string::npos);
    CHECK(text.find("\nG21\n") != std::string::npos);
    CHECK(text.substr(text.size() - 6) == "M5\nM2\n");
}

TEST_CASE("What does not fit is refused by name") {
    CouponSettings s = settings();
    CHECK(ladder_coupon(s, {4, 1.12, s.feed}).fault().field == "legs");
    CHECK(ladder_coupon(s, {5, 1.0, s.feed}).fault().field == "ratio");
    CHECK(ladder_coupon(s, {9, 1.5, Speed{3000, mm_min}}).fault().field == "feed_mm_min");
    CHECK(height_coupon(s, 9, Length{0.5, mm}).fault().field == "cut_height_mm");
    s.pierce_delay = Duration{};
    CHECK(kerf_coupon(s).fault().field == "pierce_delay_s");
    s = settings();
    s.pierce_height = Length{1, mm};
    CHECK(swirl_coupon(s).fault().field == "pierce_height_mm");
    const Coupon c = height_coupon(settings()).value();
    Controller w;
    w.torch_on = " ";
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.torch_on");
    w.torch_on = "M3\nG0 X0";
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.torch_on");
    w = {};
    w.height_on = "M64";
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.height_off");
    w = {};
    w.torch_off = w.torch_on;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.torch_off");
    w = {};
    w.height_off = w.torch_on;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.height_off");
    w.height_on = w.torch_on;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.height_on");
    w = {};
    w.z_words = false;
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.z_words");
    w = {};
    w.safe_height = Length{2, mm};
    CHECK(program(c, w, UnitSystem::metric, {}).fault().field == "shop.controller.safe_height_mm");
}

TEST_CASE("Two squares tell tilt from swirl") {
    // Faces made from known parts: part faces alike + tilt at the bottom, - tilt at the top; swirl helps clockwise.
    const double alike = 2.0;
    const double tilt = 0.7;
    const double swirl = 1.1;
    const TiltAndSwirl r =
        read_swirl({alike - tilt - swirl, alike + tilt - swirl, alike - tilt + swirl, alike + tilt + swirl});
    CHECK_THAT(r.alike_deg, WithinAbs(alike, 1e-12));
    CHECK_THAT(r.tilt_deg, WithinAbs(tilt, 1e-12));
    CHECK_THAT(r.swirl_deg, WithinAbs(swirl, 1e-12));
    CHECK(r.clockwise_better);
    CHECK_FALSE(read_swirl({3, 3, 1, 1}).clockwise_better);
}
