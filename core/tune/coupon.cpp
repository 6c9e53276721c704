#include "core/tune/coupon.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/figure_rows.hpp"

namespace torchside::tune {
namespace {

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

constexpr const char* heights_accepted = "a coupon is cut at a height of 0.5 to 12 mm: fewer legs or smaller steps";
constexpr int arc_steps = 16;
constexpr double hair = 1e-9; // a ladder that was fitted under the table's feed may end on its last bit

bool height_fits(Length h) {
    return h.in(mm) >= rules.least_height && h.in(mm) <= rules.most_height;
}

std::optional<Fault> refusal(const CouponSettings& s, Speed fastest) {
    const double t = s.plate.thickness.in(mm);
    const double delay = s.pierce_delay.in(second);
    const double kerf = s.kerf.in(mm);
    const struct {
        bool good;
        const char* field;
        const char* text;
    } needs[] = {
        {t >= 0.3 && t <= 150.0, "job.thickness_mm", "a coupon is for plate of 0.3 to 150 mm"},
        {delay > 0.0 && delay <= 20.0, "pierce_delay_s",
         "no delay for a pierce standing still, accepted is above 0 and at most 20 s"},
        {height_fits(s.cut_height), "cut_height_mm", heights_accepted},
        {height_fits(s.pierce_height) && s.pierce_height >= s.cut_height, "pierce_height_mm",
         "a pierce height is between the cut height and 12 mm"},
        {s.feed.in(mm_min) > 0.0 && fastest.in(mm_min) > 0.0, "feed_mm_min", "a coupon needs a feed above 0"},
        {fastest <= (1.0 + hair) * s.table.max_feed, "feed_mm_min", "the fastest leg is faster than the table"},
        {kerf > 0.0 && kerf <= 15.0, "kerf_mm", "a kerf is above 0 and at most 15 mm"},
    };
    for (const auto& need : needs)
        if (!need.good)
            return Fault{need.field, need.text};
    return std::nullopt;
}

double distance(Point a, Point b) {
    return std::hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm);
}

// Radians of an arc about its centre, in its own direction; a whole turn where it ends at its start.
double turn_of(Point from, const Piece& piece) {
    const double turn = std::atan2(piece.to.y_mm - piece.centre.y_mm, piece.to.x_mm - piece.centre.x_mm) -
                        std::atan2(from.y_mm - piece.centre.y_mm, from.x_mm - piece.centre.x_mm);
    const double ahead = piece.kind == Piece::Kind::arc_clockwise ? -turn : turn;
    constexpr double whole = 6.283185307179586;
    return ahead < 1e-9 ? ahead + whole : ahead;
}

double length_of(Point from, const Piece& piece) {
    return piece.kind == Piece::Kind::line ? distance(from, piece.to)
                                           : distance(piece.centre, from) * turn_of(from, piece);
}

Coupon begin(const CouponSettings& s, CouponKind kind) {
    Coupon c;
    c.kind = kind;
    c.pierce_height = s.pierce_height;
    c.pierce_delay = s.pierce_delay;
    c.fastest = s.table.max_feed;
    return c;
}

double space_of(const CouponSettings& s) {
    return std::fmax(rules.least_space, rules.space_per_thickness * s.plate.thickness.in(mm));
}

void shift(Point& p, double by_mm) {
    p = {p.x_mm + by_mm, p.y_mm + by_mm};
}

// Width and height are of what is cut; the plate has metal around it, half as wide as between two legs.
Coupon finished(Coupon c, const CouponSettings& s, double width_mm, double height_mm) {
    const double edge = std::fmax(0.5 * space_of(s), s.kerf.in(mm));
    c.width = Length{width_mm + 2.0 * edge, mm};
    c.height = Length{height_mm + 2.0 * edge, mm};
    for (Leg& leg : c.legs) {
        shift(leg.start, edge);
        for (Piece& piece : leg.pieces) {
            shift(piece.to, edge);
            if (piece.kind != Piece::Kind::line)
                shift(piece.centre, edge);
        }
    }
    Point at{};
    double cut_mm = 0.0;
    for (const Leg& leg : c.legs) {
        c.time = c.time + travel_time(Length{distance(at, leg.start), mm}, s.table.rapid) + c.pierce_delay;
        at = leg.start;
        for (const Piece& piece : leg.pieces) {
            const double l = length_of(at, piece);
            cut_mm += l;
            c.time = c.time + travel_time(Length{l, mm}, leg.feed);
            at = piece.to;
        }
    }
    c.cut_length = Length{cut_mm, mm};
    return c;
}

Piece line(double x, double y) {
    return {Piece::Kind::line, {x, y}, {}};
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
            legs[i].start = {0.0, y};
            legs[i].pieces = {line(length, y)};
            c.legs.push_back(std::move(legs[i]));
        }
    }
    return finished(std::move(c), s, length, static_cast<double>(legs.size() - 1) * space);
}

// A square cut from its left edge's middle, led in from outside.
Leg square_leg(const CouponSettings& s, Point corner, double side, bool clockwise) {
    const double lead = std::fmax(s.lead_in.in(mm), rules.least_lead);
    const double x0 = corner.x_mm;
    const double y0 = corner.y_mm;
    const double x1 = x0 + side;
    const double y1 = y0 + side;
    const double middle = y0 + 0.5 * side;
    Leg leg;
    leg.start = {x0 - lead, middle};
    leg.feed = s.feed;
    leg.cut_height = s.cut_height;
    leg.size = Length{side, mm};
    leg.height_control = true;
    if (clockwise)
        leg.pieces = {line(x0, middle), line(x0, y1), line(x1, y1), line(x1, y0), line(x0, y0), line(x0, middle)};
    else
        leg.pieces = {line(x0, middle), line(x0, y0), line(x1, y0), line(x1, y1), line(x0, y1), line(x0, middle)};
    return leg;
}

} // namespace

std::vector<Point> outline(const Leg& leg) {
    std::vector<Point> points{leg.start};
    for (const Piece& piece : leg.pieces) {
        const Point from = points.back();
        const bool clockwise = piece.kind == Piece::Kind::arc_clockwise;
        for (int i = 1; i < arc_steps && piece.kind != Piece::Kind::line; ++i) {
            const double a = (clockwise ? -1.0 : 1.0) * turn_of(from, piece) * i / arc_steps;
            const double x = from.x_mm - piece.centre.x_mm;
            const double y = from.y_mm - piece.centre.y_mm;
            points.push_back({piece.centre.x_mm + x * std::cos(a) - y * std::sin(a),
                              piece.centre.y_mm + x * std::sin(a) + y * std::cos(a)});
        }
        points.push_back(piece.to);
    }
    return points;
}

std::vector<Speed> ladder_feeds(const LadderAdvice& ladder) {
    std::vector<Speed> feeds;
    feeds.reserve(static_cast<std::size_t>(std::max(ladder.legs, 0)));
    for (int i = 0; i < ladder.legs; ++i)
        feeds.push_back(std::pow(ladder.ratio, i - 0.5 * (ladder.legs - 1)) * ladder.middle);
    return feeds;
}

Speed ladder_choice(Speed slowest, Speed fastest) {
    return std::sqrt(fastest / slowest) * slowest;
}

SwirlReading read_swirl(const SwirlAngles& a) {
    // Clockwise, the top edge is cut to the right and the part is on the right of travel; the bottom edge to the left.
    SwirlReading r;
    r.alike_deg = 0.25 * (a.top_clockwise + a.bottom_clockwise + a.top_counter + a.bottom_counter);
    r.tilt_deg = 0.25 * (a.bottom_clockwise - a.top_clockwise + a.bottom_counter - a.top_counter);
    r.swirl_deg = 0.25 * (a.top_counter + a.bottom_counter - a.top_clockwise - a.bottom_clockwise);
    r.clockwise_better = std::abs(r.alike_deg - r.swirl_deg) <= std::abs(r.alike_deg + r.swirl_deg);
    return r;
}

Outcome<Coupon> ladder_coupon(const CouponSettings& s, const LadderAdvice& ladder) {
    if (ladder.legs < 5 || ladder.legs > 9)
        return Fault{"legs", "a ladder has 5 to 9 legs"};
    if (!(ladder.ratio >= 1.02 && ladder.ratio <= 1.5))
        return Fault{"ratio", "the ratio from leg to leg is between 1.02 and 1.5"};
    const std::vector<Speed> feeds = ladder_feeds(ladder);
    if (auto fault = refusal(s, feeds.back()))
        return *fault;
    std::vector<Leg> legs;
    for (const Speed feed : feeds) {
        Leg leg;
        leg.label = "leg";
        leg.number = static_cast<int>(legs.size()) + 1;
        leg.feed = feed;
        leg.cut_height = s.cut_height;
        legs.push_back(std::move(leg));
    }
    return side_by_side(s, CouponKind::ladder, std::move(legs));
}

Outcome<Coupon> height_coupon(const CouponSettings& s, int legs, Length step) {
    if (legs < 3 || legs > 9)
        return Fault{"legs", "a height ladder has 3 to 9 legs"};
    if (!(step.in(mm) >= 0.05 && step.in(mm) <= 2.0))
        return Fault{"step_mm", "the step of a height ladder is between 0.05 and 2 mm"};
    if (auto fault = refusal(s, s.feed))
        return *fault;
    std::vector<Leg> all;
    for (int i = 0; i < legs; ++i) {
        Leg leg;
        leg.cut_height = s.cut_height + (i - 0.5 * (legs - 1)) * step;
        if (!height_fits(leg.cut_height))
            return Fault{"cut_height_mm", heights_accepted};
        leg.label = "leg";
        leg.number = i + 1;
        leg.feed = s.feed;
        all.push_back(std::move(leg));
    }
    return side_by_side(s, CouponKind::heights, std::move(all));
}

Outcome<Coupon> kerf_coupon(const CouponSettings& s) {
    if (auto fault = refusal(s, s.feed))
        return *fault;
    const double diameter = std::ceil(std::fmax(rules.hole, rules.hole_per_least * s.least_hole.in(mm)));
    const double lead = std::fmax(s.lead_in.in(mm), rules.least_lead);
    const double side =
        std::fmax(rules.square, std::ceil(diameter + rules.rim_per_thickness * s.plate.thickness.in(mm)));
    const Point centre{lead + 0.5 * side, 0.5 * side};
    const double edge = centre.x_mm + 0.5 * diameter;
    Coupon c = begin(s, CouponKind::kerf);
    Leg hole;
    hole.label = "hole";
    hole.size = Length{diameter, mm};
    hole.start = centre;
    hole.pieces = {line(edge, centre.y_mm),
                   {Piece::Kind::arc_counter_clockwise, {centre.x_mm - 0.5 * diameter, centre.y_mm}, centre},
                   {Piece::Kind::arc_counter_clockwise, {edge, centre.y_mm}, centre}};
    hole.feed = rules.hole_feed_share * s.feed;
    hole.cut_height = s.cut_height;
    c.legs.push_back(std::move(hole));
    c.legs.push_back(square_leg(s, {lead, 0.0}, side, true));
    c.legs.back().label = "square";
    return finished(std::move(c), s, lead + side, side);
}

Outcome<Coupon> swirl_coupon(const CouponSettings& s) {
    if (auto fault = refusal(s, s.feed))
        return *fault;
    const double lead = std::fmax(s.lead_in.in(mm), rules.least_lead);
    const double space = space_of(s);
    const double second_x = 2.0 * lead + rules.swirl_square + space;
    Coupon c = begin(s, CouponKind::swirl);
    c.legs.push_back(square_leg(s, {lead, 0.0}, rules.swirl_square, true));
    c.legs.back().label = "square, clockwise";
    c.legs.push_back(square_leg(s, {second_x, 0.0}, rules.swirl_square, false));
    c.legs.back().label = "square, counter-clockwise";
    return finished(std::move(c), s, second_x + rules.swirl_square, rules.swirl_square);
}

} // namespace torchside::tune
