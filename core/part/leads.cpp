#include "core/part/leads.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace torchside::part {
namespace {

constexpr double tie = 1e-9; // mm: what is nearer than that to equal is equal, so that rounding decides nothing
constexpr int places_tried = 16;
constexpr double slack_mm = 1e-3;                        // what the joints of an offset may take from half a kerf
constexpr double shares[] = {1.0, 0.7, 0.5, 0.35, 0.25}; // of the lead's length, the longest that fits
constexpr double less = 0.95;                            // of a lead's length: is that farther from the edges?
constexpr double quarter_bulge = 0.41421356237309503;    // tan(pi / 8): a quarter of a circle

} // namespace

// Places evenly round the contour, the middle of a short piece; straight and long ones first.
std::vector<Leads::Start> Leads::places(const Contour& c) const {
    const std::size_t n = piece_count(c);
    double whole = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        whole += length_of(piece_of(c, i));
    }
    std::vector<Start> all;
    const double step = whole / places_tried;
    double gone = 0.0;
    double next = 0.5 * step;
    for (std::size_t i = 0; i < n; ++i) {
        const Piece p = piece_of(c, i);
        const double length = length_of(p);
        for (; next < gone + length && all.size() < places_tried; next += step) {
            Start place;
            place.piece = i;
            place.share = length < 2.0 * step ? 0.5 : std::clamp((next - gone) / length, 0.1, 0.9);
            place.worth = p.straight() ? length : 1e-3 * length;
            place.at = point_at(p, place.share);
            place.along = direction_at(p, place.share);
            all.push_back(place);
        }
        gone += length;
    }
    // The best first; an insertion sort is enough for sixteen.
    for (std::size_t i = 1; i < all.size(); ++i) {
        for (std::size_t k = i; k > 0 && all[k].worth > all[k - 1].worth * (1.0 + 1e-9); --k) {
            std::swap(all[k], all[k - 1]);
        }
    }
    return all;
}

// The lead as a piece in the way of travel. Curved: a quarter of a circle about a point in the scrap.
Piece Leads::piece(const Start& at, Point scrap, double length, bool curved, bool out) const {
    if (!curved) {
        return out ? Piece{at.at, at.at + length * scrap, 0.0} : Piece{at.at + length * scrap, at.at, 0.0};
    }
    const double radius = 2.0 * length / std::numbers::pi;
    const double bulge = cross(at.along, scrap) > 0.0 ? quarter_bulge : -quarter_bulge;
    const Point centre = at.at + radius * scrap;
    return out ? Piece{at.at, centre + radius * at.along, bulge} : Piece{centre - radius * at.along, at.at, bulge};
}

// How long a straight lead may be until its pierce comes nearer to the contour again: to the middle of the scrap, which
// of a round hole is its centre. At most `length`.
double Leads::deepest(const Start& at, Point scrap, double length) const {
    const double half = 0.5 * s_.kerf;
    const Point on_drawn = at.at - half * scrap;
    if (drawn_.nearest(on_drawn).mm > slack_mm) {
        return length; // an inside corner: scrap is not as wide as from a side
    }
    return std::max(0.5 * drawn_.width(on_drawn, scrap, 2.0 * (length + half)).mm - half, 0.1 * half);
}

bool Leads::clear(const Piece& lead, Point pierce, std::size_t source, bool pierced) {
    const double half = 0.5 * s_.kerf;
    const auto nearer = [](const Piece& piece, Point p, double mm) {
        const Point off = nearest_on(piece, p) - p;
        return mm > 0.0 && dot(off, off) < mm * mm;
    };
    const double length = length_of(lead);
    const int steps = std::clamp(static_cast<int>(std::ceil(4.0 * length / std::max(s_.kerf, 0.1))), 4, 200);
    way_.clear();
    for (int i = 0; i <= steps; ++i) {
        way_.push_back(point_at(lead, static_cast<double>(i) / steps));
    }
    const Box box = box_of_piece(lead);
    const Point reach{3.0 * half, 3.0 * half};
    drawn_.tree().find({box.low - reach, box.high + reach}, hits_);
    for (const std::uint32_t k : hits_) {
        const Piece& piece = drawn_.row().pieces[k];
        const double keep = drawn_.row().contour[k] == source ? half - slack_mm : 3.0 * half;
        if (pierced && nearer(piece, pierce, s_.kerf - slack_mm)) {
            return false;
        }
        for (const Point at : way_) {
            if (nearer(piece, at, keep)) {
                return false;
            }
        }
    }
    for (const Laid& other : laid_[scrap_]) {
        if (apart(other.reach, box)) {
            continue;
        }
        for (const Point at : way_) {
            if (nearer(other.piece, at, s_.kerf)) {
                return false;
            }
        }
    }
    return true;
}

void Leads::lay(const Piece& lead) {
    Box reach = box_of_piece(lead);
    reach.low = reach.low - Point{s_.kerf, s_.kerf};
    reach.high = reach.high + Point{s_.kerf, s_.kerf};
    laid_[scrap_].push_back({lead, reach});
}

// Lead-in, once round from the place and back to it, then an overburn or a lead-out.
LeadPath Leads::finish(const Contour& c, const Start& start, const std::vector<Vertex>& lead_in, std::size_t source,
                       std::optional<Point> scrap) {
    const std::size_t n = c.points.size();
    LeadPath led;
    led.path = lead_in;
    led.contour_begin = led.path.size();
    const double bulge = c.points[start.piece].bulge;
    led.path.push_back({start.at, bulge_of_share(bulge, 1.0 - start.share)});
    for (std::size_t k = 1; k < n; ++k) {
        led.path.push_back(c.points[(start.piece + k) % n]);
    }
    if (start.share > 0.0) {
        led.path.push_back({c.points[start.piece].at, bulge_of_share(bulge, start.share)});
    }
    led.contour_end = led.path.size();
    led.path.push_back({start.at, 0.0});
    if (c.role == Role::inner) {
        // On over what is cut already; from the place's piece into the next ones.
        double rest = s_.overburn;
        for (std::size_t i = led.contour_begin; rest > 0.0 && i < led.contour_end; ++i) {
            const Piece p{led.path[i].at, led.path[i + 1].at, led.path[i].bulge};
            const double length = length_of(p);
            const double share = length > rest ? rest / length : 1.0;
            led.path.back().bulge = bulge_of_share(p.bulge, share);
            led.path.push_back({point_at(p, share), 0.0});
            rest -= length;
        }
    } else if (scrap && s_.lead_out > 0.0) {
        for (const double share : {1.0, 0.5}) {
            const Piece out = piece(start, *scrap, share * s_.lead_out, true, true);
            if (!clear(out, out.to, source, false)) {
                continue;
            }
            led.path.back().bulge = out.bulge;
            led.path.push_back({out.to, 0.0});
            lay(out);
            break;
        }
    }
    return led;
}

LeadPath Leads::lead(const Contour& c, std::size_t source, bool scrap_right) {
    const std::vector<Start> all = places(c);
    const double shortest = 0.5 * s_.kerf;
    const Box inside = c.role == Role::inner ? box_of(c) : around({}, 1e300); // spares looking at leads much too long
    for (const bool clear_pierce : {true, false}) {
        for (const double share : shares) {
            for (const bool curved : {true, false}) {
                for (const Start& place : all) {
                    double length = std::max(share * s_.lead_in, shortest);
                    if (!(s_.lead_in > 0.0)) {
                        break;
                    }
                    const Point left = left_of(place.along);
                    const Point scrap = scrap_right ? -1.0 * left : left;
                    if (c.role == Role::inner && !curved) {
                        length = std::min(length, deepest(place, scrap, length));
                    }
                    const Piece in = piece(place, scrap, length, curved, false);
                    if (c.role == Role::inner && curved &&
                        drawn_.nearest(piece(place, scrap, less * length, true, false).from).mm >
                            drawn_.nearest(in.from).mm + tie) {
                        continue;
                    }
                    if (apart(inside, around(in.from, 0.0)) || !clear(in, in.from, source, clear_pierce)) {
                        continue;
                    }
                    LeadPath led = finish(c, place, {{in.from, in.bulge}}, source, scrap);
                    lay(in);
                    led.pierce_clear = clear_pierce;
                    return led;
                }
            }
        }
    }
    return finish(c, all.empty() ? Start{0, 0.5, 0.0, point_at(piece_of(c, 0), 0.5), {}} : all.front(), {}, source,
                  std::nullopt);
}

std::optional<LeadPath> Leads::from_edge(const Contour& c, std::size_t source, const Box& all) {
    std::optional<Start> best;
    Piece best_lead;
    for (const Point out : {Point{-1, 0}, Point{0, -1}, Point{1, 0}, Point{0, 1}}) {
        Start place;
        double farthest = -1e300;
        for (std::size_t i = 0; i < piece_count(c); ++i) {
            for (const double share : {0.0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875}) {
                const Piece p = piece_of(c, i);
                const Point at = point_at(p, share);
                // The middle of a side wins over its ends.
                const double far = dot(at, out) - 1e-6 * std::abs(share - 0.5);
                if (far > farthest + tie) {
                    farthest = far;
                    place = {i, share, 0.0, at, direction_at(p, share)};
                }
            }
        }
        const double edge = out.x + out.y < 0.0 ? dot(all.low, out) : dot(all.high, out);
        const Piece lead{place.at + (edge - dot(place.at, out) + s_.kerf + s_.lead_in) * out, place.at, 0.0};
        if ((!best || length_of(lead) < length_of(best_lead) - tie) && clear(lead, lead.from, source, false)) {
            best = place;
            best_lead = lead;
        }
    }
    if (!best) {
        return std::nullopt;
    }
    lay(best_lead);
    LeadPath led = finish(c, *best, {{best_lead.from, 0.0}}, source, std::nullopt);
    led.pierce_clear = true;
    return led;
}

} // namespace torchside::part
