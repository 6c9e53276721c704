#include "core/drawing/spline.hpp"

#include "generated/words/drawing_fault.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace torchside::drawing {

namespace {

// The last span that begins at or before t, within the knots that carry the curve.
std::size_t span_of(const std::vector<double>& knots, std::size_t first, std::size_t last, double t) {
    const auto from = knots.begin() + static_cast<std::ptrdiff_t>(first);
    const auto to = knots.begin() + static_cast<std::ptrdiff_t>(last);
    auto found = std::upper_bound(from, to, t);
    auto span = static_cast<std::size_t>(found - knots.begin()) - (found == from ? 0 : 1);
    while (span > first && !(knots[span] < knots[span + 1])) {
        --span;
    }
    return span;
}

} // namespace

Word spline_fault(const Spline& s) {
    const auto degree = static_cast<std::size_t>(s.degree);
    if (s.degree < 1 || s.degree > highest_degree) {
        return words::drawing_fault::spline_degree;
    }
    if (s.points.size() < degree + 1) {
        return words::drawing_fault::spline_points;
    }
    if (s.knots.size() != s.points.size() + degree + 1) {
        return words::drawing_fault::spline_knots;
    }
    if (!s.weights.empty() && s.weights.size() != s.points.size()) {
        return words::drawing_fault::spline_weights;
    }
    for (std::size_t i = 0; i + 1 < s.knots.size(); ++i) {
        if (!(s.knots[i] <= s.knots[i + 1])) {
            return words::drawing_fault::spline_back;
        }
    }
    if (!(s.knots[degree] < s.knots[s.points.size()])) {
        return words::drawing_fault::spline_alike;
    }
    for (const double weight : s.weights) {
        if (!(weight > 0.0)) {
            return words::drawing_fault::spline_weight;
        }
    }
    return {};
}

Point spline_at(const Spline& s, double t) {
    const auto degree = static_cast<std::size_t>(s.degree);
    const std::size_t span = span_of(s.knots, degree, s.points.size(), t);
    std::array<double, highest_degree + 1> x{}, y{}, w{};
    for (std::size_t j = 0; j <= degree; ++j) {
        const std::size_t i = span - degree + j;
        w[j] = s.weights.empty() ? 1.0 : s.weights[i];
        x[j] = s.points[i].x * w[j];
        y[j] = s.points[i].y * w[j];
    }
    for (std::size_t level = 1; level <= degree; ++level) {
        for (std::size_t j = degree; j >= level; --j) {
            const double low = s.knots[span - degree + j], high = s.knots[span + 1 + j - level];
            const double share = high > low ? (t - low) / (high - low) : 0.0;
            x[j] = (1 - share) * x[j - 1] + share * x[j];
            y[j] = (1 - share) * y[j - 1] + share * y[j];
            w[j] = (1 - share) * w[j - 1] + share * w[j];
        }
    }
    return {x[degree] / w[degree], y[degree] / w[degree]};
}

namespace {

// Second derivatives of the cubic spline: rows of the tridiagonal system, solved from the top down and back.
void solve_bends(FitCurve& c, const Point* begin, const Point* end) {
    const std::size_t n = c.points.size();
    std::vector<double> above(n, 0.0);
    c.bends.assign(n, {});
    const auto slope = [&](std::size_t i) {
        const double h = c.parameters[i + 1] - c.parameters[i];
        return Point{(c.points[i + 1].x - c.points[i].x) / h, (c.points[i + 1].y - c.points[i].y) / h};
    };
    for (std::size_t i = 0; i < n; ++i) {
        const double before = i > 0 ? c.parameters[i] - c.parameters[i - 1] : 0.0;
        const double after = i + 1 < n ? c.parameters[i + 1] - c.parameters[i] : 0.0;
        double low = before, middle = 2 * (before + after), high = after;
        Point right{};
        if ((i == 0 && !begin) || (i + 1 == n && !end)) { // natural: no bend at the end
            low = high = 0.0;
            middle = 1.0;
        } else {
            const Point in = i == 0 ? *begin : slope(i - 1), out = i + 1 == n ? *end : slope(i);
            right = {6 * (out.x - in.x), 6 * (out.y - in.y)};
        }
        const double pivot = middle - (i > 0 ? low * above[i - 1] : 0.0);
        above[i] = high / pivot;
        const Point last = i > 0 ? c.bends[i - 1] : Point{};
        c.bends[i] = {(right.x - low * last.x) / pivot, (right.y - low * last.y) / pivot};
    }
    for (std::size_t i = n - 1; i-- > 0;) {
        c.bends[i].x -= above[i] * c.bends[i + 1].x;
        c.bends[i].y -= above[i] * c.bends[i + 1].y;
    }
}

} // namespace

FitCurve fit_curve(const std::vector<Point>& through, bool closed, const Point* begin, const Point* end) {
    constexpr std::size_t around = 24; // a point's influence falls to 0.27 of itself with each next one: 1e-13
    std::vector<Point> clean;
    for (const Point& p : through) {
        if (clean.empty() || !(p == clean.back())) {
            clean.push_back(p);
        }
    }
    if (closed && clean.size() > 1 && clean.front() == clean.back()) {
        clean.pop_back();
    }
    FitCurve all;
    const std::size_t n = clean.size(), lap = closed && n > 2 ? around : 0;
    const std::size_t count = lap > 0 ? n + 1 + 2 * lap : n;
    double parameter = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const Point p = clean[(i + n * around - lap) % n];
        parameter += i > 0 ? std::hypot(p.x - all.points.back().x, p.y - all.points.back().y) : 0.0;
        all.points.push_back(p);
        all.parameters.push_back(parameter);
    }
    if (n < 2) {
        return all;
    }
    solve_bends(all, lap > 0 ? nullptr : begin, lap > 0 ? nullptr : end);
    const auto cut = [lap](auto& list) {
        list.erase(list.end() - static_cast<std::ptrdiff_t>(lap), list.end());
        list.erase(list.begin(), list.begin() + static_cast<std::ptrdiff_t>(lap));
    };
    cut(all.points);
    cut(all.parameters);
    cut(all.bends);
    return all;
}

Point fit_at(const FitCurve& c, double t) {
    const std::size_t i = span_of(c.parameters, 0, c.parameters.size() - 1, t);
    const std::size_t at = std::min(i, c.parameters.size() - 2);
    const double h = c.parameters[at + 1] - c.parameters[at], b = (t - c.parameters[at]) / h, a = 1 - b;
    const double ca = (a * a * a - a) * h * h / 6, cb = (b * b * b - b) * h * h / 6;
    const Point &p = c.points[at], &q = c.points[at + 1], &m = c.bends[at], &k = c.bends[at + 1];
    return {a * p.x + b * q.x + ca * m.x + cb * k.x, a * p.y + b * q.y + ca * m.y + cb * k.y};
}

} // namespace torchside::drawing
