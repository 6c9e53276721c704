#include "core/tune/coupon.hpp"

#include <algorithm>
#include <cmath>

#include "core/motion/travel.hpp"
#include "core/part/piece.hpp"
#include "core/quantity/figure_rows.hpp"
#include "core/words/range.hpp"
#include "generated/words/coupon_note.hpp"
#include "generated/words/refusal.hpp"

namespace torchside::tune {
namespace {

using part::Point;

struct Rules {
    double least_leg = 0.0;
    double leg_per_thickness = 0.0;
    double least_space = 0.0;
    double space_per_thickness = 0.0;
    double square = 0.0;
    double hole = 0.0;
    double hole_per_least = 0.0;
    double rim_per_thickness = 0.0;
    double swirl_square = 0.0;
    double hole_feed_share = 0.0;
    double least_lead = 0.0;
    double least_height = 0.0;
    double most_height = 0.0;
};

constexpr FigureRow<Rules> rule_rows[] = {
#include "generated/tune_coupon.inc"
};
constexpr Rules rules = figures_of(rule_rows);

constexpr double hair = 1e-9; // a ladder that was fitted under the table's feed may end on its last bit

bool height_fits(Length h) {
    return h.in(mm) >= rules.least_height && h.in(mm) <= rules.most_height;
}

Text wrong_height() {
    return words::refusal::CouponHeights{.high = words::high_end(rules.most_height, FieldUnit::mm),
                                         .low = words::low_end(rules.least_height, FieldUnit::mm)};
}

std::optional<Fault> refusal(const CouponSettings& s, Speed fastest) {
    const double t = s.plate.thickness.in(mm);
    const double delay = s.pierce_delay.in(second);
    const double kerf = s.kerf.in(mm);
    const Duration longest{20, second};
    const struct {
        bool good;
        const char* field;
        Text text;
    } needs[] = {
        {t >= 0.3 && t <= 150.0, "job.thickness_mm", words::range(0.3, 150, FieldUnit::mm)},
        {delay > 0.0 && s.pierce_delay <= longest, "pierce_delay_s", words::refusal::CouponDelay{.most = longest}},
        {height_fits(s.cut_height), "cut_height_mm", wrong_height()},
        {height_fits(s.pierce_height) && s.pierce_height >= s.cut_height, "pierce_height_mm",
         words::refusal::CouponPierce{.most = words::size({rules.most_height, mm})}},
        {s.feed.in(mm_min) > 0.0 && fastest.in(mm_min) > 0.0, "feed_mm_min", words::refusal::coupon_feed},
        {fastest <= (1.0 + hair) * s.table.max_feed, "feed_mm_min", words::refusal::coupon_fast},
        {kerf > 0.0 && kerf <= 15.0, "kerf_mm", words::range(0, 15, FieldUnit::mm)},
    };
    for (const auto& need : needs) {
        if (!need.good) {
            return Fault{need.field, need.text};
        }
    }
    return std::nullopt;
}

Coupon begin(const CouponSettings& s, CouponKind kind) {
    Coupon c;
    c.kind = kind;
    c.pierce_height = s.pierce_height;
    c.pierce_delay = s.pierce_delay;
    c.dwell = s.dwell.value_or(s.pierce_delay);
    c.fastest = s.table.max_feed;
    return c;
}

double space_of(const CouponSettings& s) {
    return std::fmax(rules.least_space, rules.space_per_thickness * s.plate.thickness.in(mm));
}

// Each leg at its own feed. The way to the first leg is taken to be as long as the way from the last one to another coupon.
void take_time(Coupon& c, const CouponSettings& s) {
    motion::Drive drive;
    drive.acceleration = s.table.acceleration;
    drive.corner_tolerance = s.table.corner_tolerance;
    drive.rapid = s.table.rapid;
    drive.pierce_delay = Estimate<Duration>{s.pierce_delay, s.pierce_delay, s.pierce_delay};
    drive.touch_off = s.touch_off;
    drive.thickness = s.plate.thickness;
    drive.feed = {s.feed, s.feed, s.feed};
    c.time = motion::travel(c.path, drive).moving;
    for (std::size_t i = 0; i < c.legs.size(); ++i) {
        const Speed feed = c.legs[i].feed;
        drive.feed = {feed, feed, feed};
        const motion::Report leg = motion::travel({{c.path.runs[i]}}, drive);
        c.time = c.time + leg.arc.value;
        c.cut_length = c.cut_length + leg.cut;
    }
}

// Width and height are of what is cut; the plate has metal around it, half as wide as between two legs.
Coupon finished(Coupon c, const CouponSettings& s, double width_mm, double height_mm) {
    const double edge = std::fmax(0.5 * space_of(s), s.kerf.in(mm));
    c.width = Length{width_mm + 2.0 * edge, mm};
    c.height = Length{height_mm + 2.0 * edge, mm};
    for (part::Run& run : c.path.runs) {
        for (part::Vertex& vertex : run.path) {
            vertex.at = vertex.at + Point{edge, edge};
        }
    }
    take_time(c, s);
    return c;
}

// The run of a leg. Its feed is its own, so no hole's diameter is told.
void add(Coupon& c, Leg leg, part::Role role, std::vector<part::Vertex> path) {
    part::Run run;
    run.role = role;
    run.contour_end = path.size() - 1;
    run.path = std::move(path);
    c.path.runs.push_back(std::move(run));
    c.legs.push_back(leg);
}

// Straight legs side by side, slow at the bottom; every second one first.
Coupon side_by_side(const CouponSettings& s, CouponKind kind, std::vector<Leg> legs) {
    const double t = s.plate.thickness.in(mm);
    const double length = std::fmax(rules.least_leg, rules.leg_per_thickness * t);
    const double space = space_of(s);
    Coupon c = begin(s, kind);
    for (std::size_t first = 0; first < 2; ++first) {
        for (std::size_t i = first; i < legs.size(); i += 2) {
            const double y = static_cast<double>(i) * space;
            add(c, legs[i], part::Role::open, {{{0.0, y}}, {{length, y}}});
        }
    }
    return finished(std::move(c), s, length, static_cast<double>(legs.size() - 1) * space);
}

// A square cut from its left edge's middle, led in from outside.
void add_square(Coupon& c, const CouponSettings& s, Word label, Point corner, double side, bool clockwise) {
    const double lead = std::fmax(s.lead_in.in(mm), rules.least_lead);
    const Point far = corner + Point{side, side};
    const Point middle = corner + Point{0.0, 0.5 * side};
    Leg leg;
    leg.label = label;
    leg.feed = s.feed;
    leg.cut_height = s.cut_height;
    leg.size = Length{side, mm};
    leg.height_control = true;
    const part::Vertex above{{corner.x, far.y}}, below{corner};
    const part::Vertex right_above{far}, right_below{{far.x, corner.y}};
    std::vector<part::Vertex> path{{{corner.x - lead, middle.y}}, {middle}};
    if (clockwise) {
        path.insert(path.end(), {above, right_above, right_below, below, {middle}});
    } else {
        path.insert(path.end(), {below, right_below, right_above, above, {middle}});
    }
    add(c, leg, part::Role::outer, std::move(path));
    c.path.runs.back().contour_begin = 1;
}

} // namespace

std::vector<Speed> ladder_feeds(const LadderPlan& ladder) {
    std::vector<Speed> feeds;
    feeds.reserve(static_cast<std::size_t>(std::max(ladder.legs, 0)));
    for (int i = 0; i < ladder.legs; ++i) {
        feeds.push_back(std::pow(ladder.ratio, i - 0.5 * (ladder.legs - 1)) * ladder.middle);
    }
    return feeds;
}

Speed ladder_choice(Speed slowest, Speed fastest) {
    return std::sqrt(fastest / slowest) * slowest;
}

TiltAndSwirl read_swirl(const SwirlAngles& a) {
    // Clockwise, the top edge is cut to the right and the part is on the right of travel; the bottom edge to the left.
    TiltAndSwirl r;
    r.alike_deg = 0.25 * (a.top_clockwise + a.bottom_clockwise + a.top_counter + a.bottom_counter);
    r.tilt_deg = 0.25 * (a.bottom_clockwise - a.top_clockwise + a.bottom_counter - a.top_counter);
    r.swirl_deg = 0.25 * (a.top_counter + a.bottom_counter - a.top_clockwise - a.bottom_clockwise);
    r.clockwise_better = std::abs(r.alike_deg - r.swirl_deg) <= std::abs(r.alike_deg + r.swirl_deg);
    return r;
}

Outcome<Coupon> ladder_coupon(const CouponSettings& s, const LadderPlan& ladder) {
    if (ladder.legs < 5 || ladder.legs > 9) {
        return Fault{"legs", words::refusal::LadderLegs{.least = 5, .most = 9}};
    }
    if (!(ladder.ratio >= 1.02 && ladder.ratio <= 1.5)) {
        return Fault{"ratio", words::range(1.02, 1.5, FieldUnit::none)};
    }
    const std::vector<Speed> feeds = ladder_feeds(ladder);
    if (auto fault = refusal(s, feeds.back())) {
        return *fault;
    }
    std::vector<Leg> legs;
    for (const Speed feed : feeds) {
        Leg leg;
        leg.label = words::coupon_note::leg;
        leg.number = static_cast<int>(legs.size()) + 1;
        leg.feed = feed;
        leg.cut_height = s.cut_height;
        legs.push_back(leg);
    }
    return side_by_side(s, CouponKind::ladder, std::move(legs));
}

Outcome<Coupon> height_coupon(const CouponSettings& s, int legs, Length step) {
    if (legs < 3 || legs > 9) {
        return Fault{"legs", words::refusal::LadderLegs{.least = 3, .most = 9}};
    }
    if (!(step.in(mm) >= 0.05 && step.in(mm) <= 2.0)) {
        return Fault{"step_mm", words::range(0.05, 2, FieldUnit::mm)};
    }
    if (auto fault = refusal(s, s.feed)) {
        return *fault;
    }
    std::vector<Leg> all;
    for (int i = 0; i < legs; ++i) {
        Leg leg;
        leg.cut_height = s.cut_height + (i - 0.5 * (legs - 1)) * step;
        if (!height_fits(leg.cut_height)) {
            return Fault{"cut_height_mm", wrong_height()};
        }
        leg.label = words::coupon_note::leg;
        leg.number = i + 1;
        leg.feed = s.feed;
        all.push_back(leg);
    }
    return side_by_side(s, CouponKind::heights, std::move(all));
}

Outcome<Coupon> kerf_coupon(const CouponSettings& s) {
    if (auto fault = refusal(s, s.feed)) {
        return *fault;
    }
    const double diameter = std::ceil(std::fmax(rules.hole, rules.hole_per_least * s.least_hole.in(mm)));
    const double lead = std::fmax(s.lead_in.in(mm), rules.least_lead);
    const double side =
        std::fmax(rules.square, std::ceil(diameter + rules.rim_per_thickness * s.plate.thickness.in(mm)));
    const Point centre{lead + 0.5 * side, 0.5 * side};
    const double edge = centre.x + 0.5 * diameter;
    Coupon c = begin(s, CouponKind::kerf);
    Leg hole;
    hole.label = words::coupon_note::hole;
    hole.size = Length{diameter, mm};
    hole.feed = rules.hole_feed_share * s.feed;
    hole.cut_height = s.cut_height;
    constexpr double half_turn = 1.0; // the bulge of half a circle, anticlockwise
    const Point right{edge, centre.y};
    add(c, hole, part::Role::inner,
        {{centre}, {right, half_turn}, {{centre.x - 0.5 * diameter, centre.y}, half_turn}, {right}});
    c.path.runs.back().contour_begin = 1;
    add_square(c, s, words::coupon_note::square, {lead, 0.0}, side, true);
    return finished(std::move(c), s, lead + side, side);
}

Outcome<Coupon> swirl_coupon(const CouponSettings& s) {
    if (auto fault = refusal(s, s.feed)) {
        return *fault;
    }
    const double lead = std::fmax(s.lead_in.in(mm), rules.least_lead);
    const double space = space_of(s);
    const double second_x = 2.0 * lead + rules.swirl_square + space;
    Coupon c = begin(s, CouponKind::swirl);
    add_square(c, s, words::coupon_note::square_clockwise, {lead, 0.0}, rules.swirl_square, true);
    add_square(c, s, words::coupon_note::square_counter, {second_x, 0.0}, rules.swirl_square, false);
    return finished(std::move(c), s, second_x + rules.swirl_square, rules.swirl_square);
}

} // namespace torchside::tune
