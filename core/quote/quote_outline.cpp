#include "core/quote/quote_outline.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <numbers>

#include "core/part/measure.hpp"
#include "core/part/piece.hpp"

namespace torchside::document {

namespace {

using part::Contour;
using part::Point;

// Shares of the tolerance: arcs made straight, points dropped; the grid's half diagonal takes the rest.
constexpr double arc_share = 0.3;
constexpr double drop_share = 0.4;
constexpr double grid_share = 0.4;

constexpr std::ptrdiff_t most_contours = 160; // of three points each they always fit

// At points, when thinning one contour: halving it to most_points takes nine at each.
constexpr std::size_t most_looks = 2'000'000;
constexpr std::size_t most_looks_each = 20;

constexpr double longest_mm = 20000.0;

double gap(Point p, Point from, Point to) {
    const Point along = to - from;
    const double size = part::dot(along, along);
    const double share = size > 0.0 ? std::clamp(part::dot(p - from, along) / size, 0.0, 1.0) : 0.0;
    return part::norm(p - (from + share * along));
}

/// The circle that a closed contour is, when all its pieces are arcs of one.
bool as_circle(const Contour& c, double tolerance, QuoteContour& out) {
    if (c.role == part::Role::open || c.points.size() < 2) {
        return false;
    }
    Point centre;
    double radius = 0.0;
    double sweep = 0.0;
    for (std::size_t i = 0; i < part::piece_count(c); ++i) {
        const part::Piece piece = part::piece_of(c, i);
        if (piece.straight() || piece.from == piece.to) {
            return false;
        }
        const part::Arc arc = part::arc_of(piece);
        if (i > 0 && (part::norm(arc.centre - centre) > tolerance || std::fabs(arc.radius - radius) > tolerance)) {
            return false;
        }
        centre = arc.centre;
        radius = arc.radius;
        sweep += arc.sweep;
    }
    out = {false, 2.0 * radius, {centre}};
    return std::fabs(std::fabs(sweep) - 2.0 * std::numbers::pi) < 1e-3;
}

std::vector<Point> straightened(const Contour& c, double tolerance) {
    std::vector<Point> out;
    for (std::size_t i = 0; i < part::piece_count(c); ++i) {
        const part::Piece piece = part::piece_of(c, i);
        int steps = 1;
        if (!piece.straight() && !(piece.from == piece.to)) {
            const part::Arc arc = part::arc_of(piece);
            const double step = 2.0 * std::acos(std::max(0.0, 1.0 - tolerance / arc.radius));
            steps = static_cast<int>(std::min(1000.0, std::ceil(std::fabs(arc.sweep) / step)));
        }
        for (int k = 0; k < steps; ++k) {
            out.push_back(k == 0 ? piece.from : part::point_at(piece, static_cast<double>(k) / steps));
        }
    }
    if (c.role == part::Role::open && !c.points.empty()) {
        out.push_back(c.points.back().at);
    }
    return out;
}

/// Iterative Douglas–Peucker: marks what stays of points[first..last], both of which stay. A shape that takes long, as a
/// comb does, keeps every point; a wider tolerance will have to do.
void mark(const std::vector<Point>& points, std::size_t first, std::size_t last, double tolerance,
          std::vector<char>& stays) {
    std::vector<std::pair<std::size_t, std::size_t>> spans{{first, last}};
    std::size_t looks = 0;
    while (!spans.empty()) {
        const auto [from, to] = spans.back();
        spans.pop_back();
        looks += to - from;
        if (looks > most_looks_each * stays.size() && looks > most_looks) {
            std::fill(stays.begin(), stays.end(), '\1');
            return;
        }
        double furthest = tolerance;
        std::size_t at = 0;
        for (std::size_t i = from + 1; i < to; ++i) {
            if (const double far = gap(points[i], points[from], points[to]); far > furthest) {
                furthest = far;
                at = i;
            }
        }
        if (at != 0) {
            stays[at] = 1;
            spans.emplace_back(from, at);
            spans.emplace_back(at, to);
        }
    }
}

std::vector<Point> thinned(std::vector<Point> points, bool open, double tolerance) {
    if (points.size() < 3) {
        return points;
    }
    // A closed contour is thinned as two runs: to the point furthest from its first, and back.
    std::size_t middle = points.size() - 1;
    if (!open) {
        points.push_back(points.front());
        middle = 0;
        for (std::size_t i = 1; i < points.size(); ++i) {
            middle = part::norm(points[i] - points[0]) > part::norm(points[middle] - points[0]) ? i : middle;
        }
    }
    std::vector<char> stays(points.size(), 0);
    stays[0] = stays[middle] = stays.back() = 1;
    mark(points, 0, middle, tolerance, stays);
    mark(points, middle, points.size() - 1, tolerance, stays);
    std::vector<Point> out;
    for (std::size_t i = 0; i < points.size() - (open ? 0 : 1); ++i) {
        if (stays[i] != 0) {
            out.push_back(points[i]);
        }
    }
    return out;
}

QuoteOutline at_tolerance(const part::Outline& outline, Point low, double tolerance, int step_um) {
    const double step = step_um / 1000.0;
    const auto snapped = [&](double v) { return std::round(v / step) * step; };
    QuoteOutline out;
    out.step_um = step_um;
    for (const Contour& c : outline.contours) {
        const bool open = c.role == part::Role::open;
        QuoteContour kept;
        if (!as_circle(c, tolerance * arc_share, kept)) {
            kept = {open, 0.0, thinned(straightened(c, tolerance * arc_share), open, tolerance * drop_share)};
        }
        for (Point& p : kept.points) {
            p = {snapped(p.x - low.x), snapped(p.y - low.y)};
        }
        // A circle's size is told as it is; only its place is on the grid.
        kept.circle_mm = snapped(kept.circle_mm / 2.0) > 0.0 ? std::round(kept.circle_mm * 1000.0) / 1000.0 : 0.0;
        const std::size_t least = kept.circle_mm > 0.0 ? 1 : open ? 2 : 3;
        if (kept.points.size() >= least) {
            out.contours.push_back(std::move(kept));
        }
    }
    return out;
}

std::size_t points_of(const QuoteOutline& outline) {
    std::size_t count = 0;
    for (const QuoteContour& c : outline.contours) {
        count += c.circle_mm > 0.0 ? 2 : c.points.size();
    }
    return count;
}

double extent(const Contour& c) {
    const part::Box box = part::box_of(c);
    return box.width() + box.height();
}

/// The largest contours, in their order.
part::Outline largest(const part::Outline& outline) {
    std::vector<double> extents;
    for (const Contour& c : outline.contours) {
        extents.push_back(extent(c));
    }
    std::nth_element(extents.begin(), extents.end() - most_contours, extents.end());
    const double least = *(extents.end() - most_contours);
    part::Outline out;
    for (const Contour& c : outline.contours) {
        if (extent(c) >= least && std::ssize(out.contours) < most_contours) {
            out.contours.push_back(c);
        }
    }
    return out;
}

// ---- bytes: numbers of seven bits a byte, least first; the eighth bit says that more follow ----

void put_number(std::string& out, std::uint64_t value) {
    for (; value > 127; value >>= 7) {
        out += static_cast<char>(static_cast<unsigned char>(128 | (value & 127)));
    }
    out += static_cast<char>(value);
}

bool take_number(std::string_view& in, std::uint64_t& value) {
    value = 0;
    for (unsigned shift = 0; shift < 35; shift += 7) {
        if (in.empty()) {
            return false;
        }
        const auto byte = static_cast<unsigned char>(in[0]);
        in.remove_prefix(1);
        value |= static_cast<std::uint64_t>(byte & 127U) << shift;
        if (byte < 128) {
            return true;
        }
    }
    return false;
}

void put_signed(std::string& out, std::int64_t value) {
    put_number(out, static_cast<std::uint64_t>(value < 0 ? -2 * value - 1 : 2 * value));
}

bool take_signed(std::string_view& in, std::int64_t& value) {
    std::uint64_t both = 0;
    if (!take_number(in, both)) {
        return false;
    }
    value = static_cast<std::int64_t>(both >> 1);
    value = (both & 1) != 0 ? -value - 1 : value;
    return true;
}

enum class Form : std::uint8_t { closed, open, circle };

} // namespace

Simplified simplified(const part::Outline& outline) {
    Simplified out;
    part::Box box;
    for (const Contour& c : outline.contours) {
        box.add(part::box_of(c));
    }
    if (box.empty() || !(box.width() > 0.0 || box.height() > 0.0)) {
        return out;
    }
    out.length = Length{box.width(), mm};
    out.width = Length{box.height(), mm};
    const double longest = std::max(box.width(), box.height());
    const bool many = std::ssize(outline.contours) > most_contours;
    const part::Outline kept = many ? largest(outline) : outline;
    int step_um = static_cast<int>(std::ceil(std::max(0.05, longest / 2000.0) * grid_share * 1000.0));
    do {
        out.outline = at_tolerance(kept, box.low, step_um / 1000.0 / grid_share, step_um);
        out.tolerance = Length{step_um / 1000.0 / grid_share, mm};
        step_um *= 2;
    } while (points_of(out.outline) > most_points);
    out.outline.partly = out.outline.contours.size() < outline.contours.size();
    return out;
}

std::string pack_outline(const QuoteOutline& outline) {
    const double step = outline.step_um / 1000.0;
    const auto steps = [&](double v) { return static_cast<std::int64_t>(std::llround(v / step)); };
    std::string out;
    put_number(out, static_cast<std::uint64_t>(outline.step_um) * 2 + (outline.partly ? 1 : 0));
    put_number(out, outline.contours.size());
    std::int64_t x = 0;
    std::int64_t y = 0;
    for (const QuoteContour& c : outline.contours) {
        const Form form = c.circle_mm > 0.0 ? Form::circle : c.open ? Form::open : Form::closed;
        const auto size =
            form == Form::circle ? static_cast<std::uint64_t>(std::llround(c.circle_mm * 1000.0)) : c.points.size();
        put_number(out, size * 3 + static_cast<std::uint64_t>(form));
        for (const Point p : c.points) {
            put_signed(out, steps(p.x) - x);
            put_signed(out, steps(p.y) - y);
            x = steps(p.x);
            y = steps(p.y);
        }
    }
    return out;
}

bool unpack_outline(std::string_view in, QuoteOutline& out) {
    std::uint64_t head = 0;
    std::uint64_t count = 0;
    if (!take_number(in, head) || head < 2 || head / 2 > 1000000 || !take_number(in, count) ||
        count > most_points / 2) {
        return false;
    }
    out.step_um = static_cast<int>(head / 2);
    out.partly = (head & 1) != 0;
    const double step = out.step_um / 1000.0;
    const auto most = static_cast<std::int64_t>(longest_mm / step);
    std::size_t points = 0;
    std::int64_t x = 0;
    std::int64_t y = 0;
    for (; count > 0; --count) {
        std::uint64_t size = 0;
        if (!take_number(in, size)) {
            return false;
        }
        const auto form = static_cast<Form>(size % 3);
        size /= 3;
        const bool round = form == Form::circle;
        points += round ? 2 : static_cast<std::size_t>(size);
        if (points > most_points ||
            size < (round                ? 1U
                    : form == Form::open ? 2U
                                         : 3U) ||
            (round && static_cast<double>(size) > longest_mm * 1000.0)) {
            return false;
        }
        QuoteContour contour{form == Form::open, round ? static_cast<double>(size) / 1000.0 : 0.0, {}};
        const std::int64_t rim = static_cast<std::int64_t>(contour.circle_mm / (2.0 * step));
        for (std::uint64_t n = round ? 1 : size; n > 0; --n) {
            std::int64_t dx = 0;
            std::int64_t dy = 0;
            if (!take_signed(in, dx) || !take_signed(in, dy)) {
                return false;
            }
            x += dx;
            y += dy;
            if (x < rim - 1 || y < rim - 1 || x > most - rim || y > most - rim) {
                return false;
            }
            contour.points.push_back({static_cast<double>(x) * step, static_cast<double>(y) * step});
        }
        out.contours.push_back(std::move(contour));
    }
    return in.empty();
}

} // namespace torchside::document
