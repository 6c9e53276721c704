#include "core/motion/travel.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/figure_rows.hpp"
#include "core/quantity/low_end.hpp"

namespace torchside::motion {
namespace {

using part::Point;
using part::Run;
using part::Vertex;

struct Rules {
    double hole_share = 0.0, hole_small = 0.0, hole_large = 0.0, slow_below = 0.0;
};

constexpr FigureRow<Rules> rows[] = {
#include "generated/motion_rules.inc"
};
constexpr Rules rules = figures_of(rows);

// In this file lengths are mm, times s, speeds mm/s.

constexpr double hand = 1e12; // mm/s2: a hand's ramps take no time that matters

struct Piece {
    double length = 0.0;
    double cap2 = 0.0;                                       // square of the highest speed on it
    double enter2 = 0.0;                                     // square of the speed at its start
    double in_x = 0.0, in_y = 0.0, out_x = 0.0, out_y = 0.0; // directions at its ends
};

double trapezoid(double length, double v0, double v1, double cap, double a) {
    const double peak = std::min(cap, std::sqrt(0.5 * (2.0 * a * length + v0 * v0 + v1 * v1)));
    const double ramps = (2.0 * peak * peak - v0 * v0 - v1 * v1) / (2.0 * a);
    return (2.0 * peak - v0 - v1) / a + std::max(0.0, length - ramps) / peak;
}

// Square of the highest speed through a corner; sine and cosine, squared, of half the change of direction.
double joint2(double half_sin2, double half_cos2, double tolerance, double a, double shorter) {
    if (half_sin2 < 1e-14) {
        return 1e300;
    }
    const double c = std::sqrt(half_cos2);
    const double cut = tolerance * c * (1.0 + c) / half_sin2; // d c / (1 - c) without its lost digits
    return a * std::min(cut, 0.5 * shorter * c / std::sqrt(half_sin2));
}

// From directions, so that neither a slight turn nor a turn back loses digits.
double joint2(const Piece& before, const Piece& after, double tolerance, double a) {
    const double less_x = before.out_x - after.in_x, less_y = before.out_y - after.in_y;
    const double more_x = before.out_x + after.in_x, more_y = before.out_y + after.in_y;
    return joint2(0.25 * (less_x * less_x + less_y * less_y), 0.25 * (more_x * more_x + more_y * more_y), tolerance, a,
                  std::min(before.length, after.length));
}

Piece piece_of(const Vertex& from, Point to, double feed, double a) {
    const double dx = to.x - from.at.x, dy = to.y - from.at.y, chord = std::hypot(dx, dy), b = from.bulge;
    Piece p;
    p.cap2 = feed * feed;
    if (chord <= 0.0) {
        return p;
    }
    const double x = dx / chord, y = dy / chord;
    if (b == 0.0) {
        p.length = chord;
        p.in_x = p.out_x = x;
        p.in_y = p.out_y = y;
        return p;
    }
    // The tangents lean by half the sweep to either side of the chord: cos and sin of 2 atan b.
    const double q = 1.0 + b * b, cosine = (1.0 - b * b) / q, sine = 2.0 * b / q;
    p.length = chord * q * std::atan(b) / b;
    p.cap2 = std::min(p.cap2, a * chord * q / (4.0 * std::abs(b)));
    p.in_x = x * cosine + y * sine;
    p.in_y = y * cosine - x * sine;
    p.out_x = x * cosine - y * sine;
    p.out_y = y * cosine + x * sine;
    return p;
}

struct Sums {
    double cutting = 0.0, at_feed = 0.0, length = 0.0, slow = 0.0;
};

class Follower {
public:
    Follower(const Drive& drive, Report& out)
        : drive_(drive), a_(drive.by_hand ? hand : drive.acceleration.in(mm_s2)),
          tolerance_(drive.corner_tolerance.in(mm)), out_(out) {}

    void follow(const Run& run, std::size_t index, Sums& sums) {
        const double share = drive_.by_hand || run.role != part::Role::inner || run.hole_mm <= 0.0
                                 ? 1.0
                                 : hole_share(run.hole_mm, drive_.thickness);
        const double feed = share * drive_.feed.value.in(mm_s);
        take_pieces(run, feed);
        limit_joints();
        double at = 0.0;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            const Piece& p = pieces_[i];
            const double leave2 = i + 1 < pieces_.size() ? pieces_[i + 1].enter2 : 0.0;
            const double v0 = std::sqrt(p.enter2), v1 = std::sqrt(leave2), cap = std::sqrt(p.cap2);
            sums.cutting += trapezoid(p.length, v0, v1, cap, a_);
            if (p.cap2 >= feed * feed * (1.0 - 1e-12)) { // only here does a higher feed save time
                sums.at_feed += std::max(0.0, p.length - (2.0 * p.cap2 - p.enter2 - leave2) / (2.0 * a_)) / cap;
            }
            if (!drive_.by_hand) {
                mark_slow(p, leave2, feed, index, at);
            }
            at += p.length;
        }
        sums.length += at;
    }

private:
    void take_pieces(const Run& run, double feed) {
        pieces_.clear();
        for (std::size_t i = 0; i + 1 < run.path.size(); ++i) {
            const Piece p = piece_of(run.path[i], run.path[i + 1].at, feed, a_);
            if (p.length > 0.0) {
                pieces_.push_back(p);
            }
        }
    }

    void limit_joints() {
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            Piece& p = pieces_[i];
            if (i == 0) {
                p.enter2 = 0.0;
                continue;
            }
            const Piece& before = pieces_[i - 1];
            const double corner = joint2(before, p, tolerance_, a_);
            p.enter2 = std::min({corner, p.cap2, before.cap2, before.enter2 + 2.0 * a_ * before.length});
        }
        double next2 = 0.0;
        for (std::size_t i = pieces_.size(); i-- > 0;) {
            pieces_[i].enter2 = std::min(pieces_[i].enter2, next2 + 2.0 * a_ * pieces_[i].length);
            next2 = pieces_[i].enter2;
        }
    }

    // Where the speed is below the limit: from the start until it has risen to it, and from where it falls below on.
    void mark_slow(const Piece& p, double leave2, double feed, std::size_t run, double at) {
        const double limit = rules.slow_below * feed, limit2 = limit * limit;
        const double peak2 = std::min(p.cap2, 0.5 * (2.0 * a_ * p.length + p.enter2 + leave2));
        const double lowest = std::sqrt(std::min({p.enter2, leave2, peak2})) / feed;
        if (peak2 < limit2 * (1.0 - 1e-12)) {
            return add_slow(run, at, at + p.length, lowest);
        }
        if (p.enter2 < limit2) {
            add_slow(run, at, at + std::min(p.length, (limit2 - p.enter2) / (2.0 * a_)), std::sqrt(p.enter2) / feed);
        }
        if (leave2 < limit2) {
            add_slow(run, at + std::max(0.0, p.length - (limit2 - leave2) / (2.0 * a_)), at + p.length,
                     std::sqrt(leave2) / feed);
        }
    }

    void add_slow(std::size_t run, double from, double to, double lowest) {
        if (to <= from) {
            return;
        }
        if (!out_.slow.empty() && out_.slow.back().run == run && from <= out_.slow.back().to_mm + 1e-9) {
            SlowSpan& last = out_.slow.back();
            last.to_mm = std::max(last.to_mm, to);
            last.lowest = std::min(last.lowest, lowest);
            return;
        }
        out_.slow.push_back({run, from, to, lowest});
    }

    const Drive& drive_;
    double a_, tolerance_;
    Report& out_;
    std::vector<Piece> pieces_{};
};

double distance(Point a, Point b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

// From where the arc goes off to the next pierce, part after part.
double moves(const part::CutPath& path, const Drive& drive) {
    const double touch_off = drive.touch_off.in(second);
    const double a = drive.acceleration.in(mm_s2), rapid = drive.rapid.in(mm_s);
    double sum = 0.0, left = 1e300, right = -1e300;
    const Run* before = nullptr;
    const Run* first = nullptr;
    const auto go = [&](double length) {
        sum += touch_off;
        if (!drive.by_hand && length > 0.0) {
            sum += trapezoid(length, 0.0, 0.0, rapid, a);
        }
    };
    for (const Run& run : path.runs) {
        if (run.path.empty()) {
            continue;
        }
        for (const Vertex& v : run.path) {
            left = std::min(left, v.at.x);
            right = std::max(right, v.at.x);
        }
        if (before) {
            go(distance(before->path.back().at, run.path.front().at));
        } else {
            first = &run;
        }
        before = &run;
    }
    if (before) {
        const Point next = first->path.front().at;
        go(distance(before->path.back().at, {next.x + right - left, next.y}));
    }
    return sum;
}

/// A time with its band, `less` and `more` of it left open.
Estimate<Duration> banded(double value, double less, double more, const Basis& basis) {
    return {Duration{value, second}, Duration{low_end(value, less), second}, Duration{value + more, second}, basis};
}

// Two times that have nothing to do with each other.
Estimate<Duration> sum_of(const Estimate<Duration>& a, const Estimate<Duration>& b) {
    const auto below = [](const Estimate<Duration>& e) { return (e.value - e.low).in(second); };
    const auto above = [](const Estimate<Duration>& e) { return (e.high - e.value).in(second); };
    return banded((a.value + b.value).in(second), std::hypot(below(a), below(b)), std::hypot(above(a), above(b)),
                  a.basis | b.basis);
}

} // namespace

Report travel(const part::CutPath& path, const Drive& drive) {
    Report out;
    Sums sums;
    Follower follower{drive, out};
    int standing = 0;
    for (std::size_t i = 0; i < path.runs.size(); ++i) {
        const Run& run = path.runs[i];
        if (run.path.empty()) {
            continue;
        }
        follower.follow(run, i, sums);
        ++out.starts;
        standing += run.edge_start ? 0 : 1;
    }
    for (const SlowSpan& span : out.slow) {
        sums.slow += span.to_mm - span.from_mm;
    }
    out.cut = Length{sums.length, mm};
    out.slow_share = sums.length > 0.0 ? std::min(1.0, sums.slow / sums.length) : 0.0;
    constexpr double most_gaps = 1e9; // an int holds them
    const double gaps = std::min(most_gaps, std::floor(drive.gaps_per_m * out.cut.in(metre) + 0.5));
    out.restarts = static_cast<int>(gaps);
    out.starts += out.restarts;

    const Estimate<Speed>& feed = drive.feed;
    const double slower = feed.low > Speed{} ? feed.value / feed.low - 1.0 : 0.0, faster = 1.0 - feed.value / feed.high;
    out.cutting = banded(sums.cutting, sums.at_feed * faster, sums.at_feed * slower, feed.basis);
    if (!drive.pierce_delay) {
        out.to_drill = standing;
    }
    const Estimate<Duration> delay = drive.pierce_delay.value_or(Estimate<Duration>{});
    const double pierces = standing + gaps;
    out.piercing = {pierces * delay.value, pierces * delay.low, pierces * delay.high, delay.basis};
    out.arc = sum_of(out.cutting, out.piercing);
    out.moving = Duration{moves(path, drive), second};
    out.batch = static_cast<double>(drive.quantity) * (out.arc.value + out.moving);
    const Duration rest = rests(out.arc.value, out.moving, drive.quantity, drive.arc_per_10_min);
    out.batch = out.batch + rest;
    out.resting = rest / static_cast<double>(drive.quantity);
    const Duration idle = out.moving + out.resting;
    out.total = {out.arc.value + idle, out.arc.low + idle, out.arc.high + idle, out.arc.basis};
    return out;
}

Speed corner_speed(double phi, Length tolerance, Acceleration a, Length shorter) {
    const double s = std::sin(0.5 * phi), c = std::cos(0.5 * phi);
    return Speed{std::sqrt(joint2(s * s, c * c, tolerance.in(mm), a.in(mm_s2), shorter.in(mm))), mm_s};
}

double hole_share(double diameter_mm, Length thickness) {
    const double across = diameter_mm / thickness.in(mm);
    const double grown = (across - rules.hole_small) / (rules.hole_large - rules.hole_small);
    return rules.hole_share + (1.0 - rules.hole_share) * std::clamp(grown, 0.0, 1.0);
}

Duration rests(Duration arc, Duration other, int quantity, Duration arc_per_10_min) {
    constexpr double window = 600.0;
    const double allowed = arc_per_10_min.in(second), parts = quantity;
    if (allowed >= window || allowed <= 0.0) {
        return {};
    }
    const double windows = std::max(0.0, std::ceil(parts * arc.in(second) / allowed) - 1.0);
    return Duration{std::max(0.0, windows * (window - allowed) - parts * other.in(second)), second};
}

} // namespace torchside::motion
