#include "core/part/compensate.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/part/leads.hpp"
#include "core/part/measure.hpp"
#include "core/part/near.hpp"
#include "core/part/offset.hpp"
#include "core/part/order.hpp"
#include "core/words/range.hpp"
#include "generated/words/problem.hpp"

namespace torchside::part {
namespace {

// Metal left standing by less than this share of the kerf is an inside corner's; any corner of 60 degrees or more
// leaves less than half a kerf.
constexpr double left_share = 0.25;
constexpr double sharp_turn = -2.0943951023931953; // a corner of 60 degrees
constexpr std::size_t most_of_a_kind = 50;         // problems of one contour

std::optional<Fault> refusal(const CompensateSettings& s) {
    const auto off = [](Length l, double most) { return !(l.in(mm) >= 0.0 && l.in(mm) <= most); };
    if (off(s.kerf, 15.0)) {
        return Fault{"kerf_mm", words::range(0, 15, FieldUnit::mm)};
    }
    if (off(s.lead_in, 200.0)) {
        return Fault{"lead_in_mm", words::range(0, 200, FieldUnit::mm)};
    }
    if (off(s.lead_out, 200.0)) {
        return Fault{"lead_out_mm", words::range(0, 200, FieldUnit::mm)};
    }
    if (off(s.overburn, 200.0)) {
        return Fault{"overburn_mm", words::range(0, 200, FieldUnit::mm)};
    }
    return std::nullopt;
}

class Work {
public:
    Work(const Outline& drawn, const CompensateSettings& s)
        : s_(s), kerf_(s.kerf.in(mm)), drawn_(oriented(drawn)), near_(drawn_), parents_(near_.parents()),
          leads_(near_, {kerf_, s.lead_in.in(mm), s.lead_out.in(mm), s.overburn.in(mm)}, drawn_.contours.size()),
          box_(box_of(drawn_)) {}

    Compensated run() {
        const std::size_t n = drawn_.contours.size();
        runs_.resize(n);
        for (std::size_t i = 0; i < n; ++i) {
            contour(i);
        }
        find_meeting();
        std::vector<Stop> stops(n);
        for (std::size_t i = 0; i < n; ++i) {
            if (!runs_[i].empty()) {
                stops[i] = {runs_[i].front().path.front().at, runs_[i].back().path.back().at};
            }
        }
        for (const std::size_t i : cutting_order(parents_, stops, s_.from)) {
            for (Run& run : runs_[i]) {
                done_.path.runs.push_back(std::move(run));
            }
        }
        return std::move(done_);
    }

private:
    static Outline oriented(Outline o) {
        for (Contour& c : o.contours) {
            if (c.role != Role::open && (area_mm2(c) > 0.0) != (c.role == Role::outer)) {
                c = reversed(c);
            }
        }
        return o;
    }

    void tell(const char* code, Severity severity, Word title, Word detail, Point at, double size_mm) {
        done_.problems.push_back({code, severity, title, detail, at, size_mm});
    }

    void contour(std::size_t i) {
        const Contour& c = drawn_.contours[i];
        if (c.points.size() < 2) {
            return;
        }
        if (c.role == Role::open) {
            keep(c, i);
            runs_[i].push_back({c.role, c.points, 0, c.points.size() - 1, i, 0.0, false});
            return;
        }
        if (!(std::abs(area_mm2(c)) > 1e-9)) {
            tell("no_area", Severity::caution, words::problem::left_out, Word{}, c.points[0].at, 0.0);
            return;
        }
        const Offset beside = offset(c, 0.5 * kerf_);
        if (kerf_ > 0.0) {
            judge(i, beside);
        }
        for (const Contour& loop : beside.loops) {
            keep(loop, i);
            cut(loop, i);
        }
    }

    void keep(const Contour& loop, std::size_t i) {
        done_.outline.contours.push_back(loop);
        done_.source.push_back(i);
    }

    // Says what of a contour does not come out as drawn.
    void judge(std::size_t i, const Offset& beside) {
        const Contour& c = drawn_.contours[i];
        if (beside.loops.empty()) {
            const Width_at w = width_at(c, 0);
            tell("vanishes", Severity::stop,
                 c.role == Role::inner ? words::problem::hole_vanishes : words::problem::no_path, Word{}, w.middle,
                 w.mm);
            return;
        }
        if (!beside.whole) {
            tell("not_whole", Severity::caution, words::problem::path_gaps, words::problem::path_gaps_do,
                 c.points[0].at, 0.0);
        }
        if (beside.loops.size() > 1) {
            const Contour& second = beside.loops[1];
            tell("splits", Severity::caution, c.role == Role::inner ? words::problem::neck : words::problem::mouth,
                 c.role == Role::inner ? words::problem::neck_why : words::problem::mouth_why, second.points[0].at,
                 0.0);
        }
        find_closed(c, beside);
    }

    struct Width_at {
        double mm;
        Point middle;
    };
    // How wide the scrap is at the middle of a piece.
    Width_at width_at(const Contour& c, std::size_t k) {
        const Piece p = piece_of(c, k);
        const Near::Width w =
            near_.width(point_at(p, 0.5), -1.0 * left_of(direction_at(p, 0.5)), std::max(kerf_, 1e-6));
        return {w.mm, w.middle};
    }

    // Pieces that left nothing of themselves in the path, and sharp inside corners: how much metal stays there?
    void find_closed(const Contour& c, const Offset& beside) {
        const std::size_t n = c.points.size();
        std::optional<Near> path;
        Outline loops;
        bool small_radius = false;
        std::vector<Point> told;
        double worst = 0.0; // of the places side by side that belong together
        std::size_t worst_piece = 0;
        for (std::size_t k = 0; k <= n; ++k) {
            double left = 0.0;
            const Piece p = piece_of(c, k % n);
            if (k < n && (beside.kept[k] == 0 || sharp(piece_of(c, (k + n - 1) % n), p))) {
                if (!path) {
                    loops.contours = beside.loops;
                    path.emplace(loops);
                }
                const Point at = beside.kept[k] == 0 ? point_at(p, 0.5) : p.from;
                left = path->nearest(at).mm - 0.5 * kerf_;
                if (left <= left_share * kerf_ && beside.kept[k] == 0 && p.bulge < -0.01 && !small_radius) {
                    small_radius = true;
                    tell("small_radius", Severity::note, words::problem::small_radius, words::problem::small_radius_why,
                         at, arc_of(p).radius);
                }
            }
            if (left > left_share * kerf_) {
                if (left > worst) {
                    worst = left;
                    worst_piece = k;
                }
            } else if (worst > 0.0) {
                const Width_at w = width_at(c, worst_piece);
                bool again = told.size() >= most_of_a_kind; // from the other side
                for (const Point at : told) {
                    again = again || norm(at - w.middle) < kerf_;
                }
                if (!again) {
                    told.push_back(w.middle);
                    tell("closes", Severity::caution, words::problem::closes, words::problem::closes_why, w.middle,
                         w.mm);
                }
                worst = 0.0;
            }
        }
    }

    // Scrap lies between parts side by side, and between a part and the hole it lies in: is it wider than the kerf?
    void find_meeting() {
        const std::size_t n = drawn_.contours.size();
        std::vector<Box> boxes;
        for (const Contour& c : drawn_.contours) {
            boxes.push_back(box_of(c));
            boxes.back().high = boxes.back().high + Point{kerf_, kerf_};
        }
        const BoxTree tree(boxes);
        std::vector<std::uint32_t> hits;
        std::vector<std::size_t> told(n, Near::none);
        for (std::size_t i = 0; i < n; ++i) {
            const Contour& c = drawn_.contours[i];
            if (c.role != Role::outer) {
                continue;
            }
            tree.find(boxes[i], hits);
            bool beside = false;
            for (const std::uint32_t k : hits) {
                beside = beside || (k != i && (k == parents_[i] || parents_[k] == parents_[i]));
            }
            for (std::size_t k = 0; beside && k < c.points.size(); ++k) {
                const Piece p = piece_of(c, k);
                for (const double share : {0.0, 0.5}) {
                    const Near::Found other = near_.nearest(point_at(p, share), kerf_, i);
                    if (other.contour == Near::none || parents_[other.contour] == i || other.mm >= kerf_ - 1e-6) {
                        continue;
                    }
                    beside = false;
                    told[i] = other.contour;
                    if (told[other.contour] == i) {
                        break;
                    }
                    tell("kerfs_meet", Severity::caution, words::problem::kerfs_meet, words::problem::kerfs_meet_why,
                         other.at, other.mm);
                    break;
                }
            }
        }
    }

    static bool sharp(const Piece& a, const Piece& b) {
        const Point in = direction_at(a, 1.0);
        const Point out = direction_at(b, 0.0);
        const double c = cross(in, out);
        return c < 0.0 && std::atan2(c, dot(in, out)) < sharp_turn;
    }

    void cut(const Contour& loop, std::size_t i) {
        const Contour& c = drawn_.contours[i];
        // As kept, scrap is on the right of travel; a clockwise swirl squares the right face, so the part must be
        // there.
        const Contour travelled = s_.clockwise_swirl ? reversed(loop) : loop;
        Run run;
        run.role = c.role;
        run.source = i;
        run.hole_mm = c.role == Role::inner ? equal_diameter_mm(c) : 0.0;
        leads_.enter(c.role == Role::inner ? i : parents_[i] == Near::none ? drawn_.contours.size() : parents_[i]);
        std::optional<LeadPath> led;
        if (s_.edge_start && c.role == Role::outer) {
            led = leads_.from_edge(travelled, i, box_);
        }
        run.edge_start = led.has_value();
        if (s_.edge_start && !led) {
            tell("needs_pierce", Severity::caution, words::problem::needs_pierce, words::problem::needs_pierce_why,
                 loop.points[0].at, 0.0);
        }
        if (!led) {
            led = leads_.lead(travelled, i, !s_.clockwise_swirl);
        }
        if (!led->pierce_clear && s_.lead_in.in(mm) > 0.0) {
            tell("no_lead_in", Severity::caution, words::problem::no_lead_in, words::problem::no_lead_in_why,
                 led->path[0].at, 0.0);
        }
        run.path = std::move(led->path);
        run.contour_begin = led->contour_begin;
        run.contour_end = led->contour_end;
        runs_[i].push_back(std::move(run));
    }

    const CompensateSettings& s_;
    double kerf_;
    Outline drawn_;
    Near near_;
    std::vector<std::size_t> parents_;
    Leads leads_;
    Box box_;
    std::vector<std::vector<Run>> runs_{};
    Compensated done_{};
};

} // namespace

Outcome<Compensated> compensate(const Outline& drawn, const CompensateSettings& settings) {
    if (auto fault = refusal(settings)) {
        return *fault;
    }
    return Work(drawn, settings).run();
}

} // namespace torchside::part
