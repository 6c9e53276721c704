#include "core/drawing/svg_path.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/drawing/number.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

namespace {

bool blank(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f';
}

void skip_blanks(std::string_view text, std::size_t& at) {
    while (at < text.size() && blank(text[at])) {
        ++at;
    }
}

// Blanks with one comma among them at most.
void skip_separator(std::string_view text, std::size_t& at) {
    skip_blanks(text, at);
    if (at < text.size() && text[at] == ',') {
        ++at;
        skip_blanks(text, at);
    }
}

struct Bezier {
    std::array<Point, 4> p{};
};

Point bezier_at(const void* context, double t) {
    const auto& p = static_cast<const Bezier*>(context)->p;
    const double s = 1 - t, a = s * s * s, b = 3 * s * s * t, c = 3 * s * t * t, d = t * t * t;
    return {a * p[0].x + b * p[1].x + c * p[2].x + d * p[3].x, a * p[0].y + b * p[1].y + c * p[2].y + d * p[3].y};
}

double angle_of(Point p) {
    return std::atan2(p.y, p.x);
}

class PathReader {
public:
    PathReader(std::string_view data, const Affine& place, Pen& pen) : data_(data), place_(place), pen_(pen) {}
    Word read();

private:
    Word command(char letter);
    Word one(char letter, bool relative);
    bool number(double& out);
    bool flag(bool& out);
    bool point(Point& out, bool relative);
    void cubic(Point c1, Point c2, Point to);
    bool arc_command(bool relative, Point& to);
    void arc(Point radii, double turn, bool large, bool sweep, Point to);
    std::string_view data_;
    const Affine& place_;
    Pen& pen_;
    std::size_t i_ = 0;
    Point at_{}, start_{};
    Point handle_{}; // last control point, for S and T
    char last_ = 0;  // last command, small letter
};

constexpr Word broken_path = words::drawing_fault::path_short;

Word PathReader::read() {
    skip_blanks(data_, i_);
    while (i_ < data_.size() && pen_.fault() == Word{}) {
        const char letter = data_[i_++];
        if (const Word why = command(letter); why != Word{}) {
            return why;
        }
        skip_blanks(data_, i_);
    }
    pen_.finish();
    return {};
}

Word PathReader::command(char letter) {
    constexpr std::string_view letters = "mzlhvcsqta";
    const bool relative = letter >= 'a' && letter <= 'z';
    const char small = relative ? letter : static_cast<char>(letter - 'A' + 'a');
    if (letters.find(small) == std::string_view::npos) {
        return words::drawing_fault::path_command;
    }
    if (last_ == 0 && small != 'm') {
        return words::drawing_fault::path_begin;
    }
    if (small == 'z') {
        pen_.close();
        at_ = start_;
        last_ = 'z';
        return {};
    }
    char now = small;
    do {
        if (now != 'm' && !pen_.drawing()) { // after Z, from where that one began
            pen_.move_to(place_(at_));
            start_ = at_;
        }
        if (const Word why = one(now, relative); why != Word{}) {
            return why;
        }
        last_ = now;
        now = now == 'm' ? 'l' : now;
        skip_separator(data_, i_);
    } while (i_ < data_.size() && pen_.fault() == Word{} &&
             std::string_view("+-.0123456789").find(data_[i_]) != data_.npos);
    return {};
}

bool PathReader::number(double& out) {
    skip_separator(data_, i_);
    return take_decimal(data_, i_, out);
}

bool PathReader::flag(bool& out) {
    skip_separator(data_, i_);
    if (i_ >= data_.size() || (data_[i_] != '0' && data_[i_] != '1')) {
        return false;
    }
    out = data_[i_++] == '1';
    return true;
}

bool PathReader::point(Point& out, bool relative) {
    if (!number(out.x) || !number(out.y)) {
        return false;
    }
    if (relative) {
        out = {out.x + at_.x, out.y + at_.y};
    }
    return true;
}

Word PathReader::one(char letter, bool relative) {
    Point to = at_, c1 = at_, c2{};
    const bool smooth =
        (letter == 's' && (last_ == 'c' || last_ == 's')) || (letter == 't' && (last_ == 'q' || last_ == 't'));
    if (smooth) {
        c1 = {2 * at_.x - handle_.x, 2 * at_.y - handle_.y};
    }
    switch (letter) {
    case 'm':
    case 'l':
        if (!point(to, relative)) {
            return broken_path;
        }
        if (letter == 'm') {
            start_ = to;
            pen_.move_to(place_(to));
        } else {
            pen_.line_to(place_(to));
        }
        break;
    case 'h':
    case 'v': {
        double& along = letter == 'h' ? to.x : to.y;
        const double from = along;
        if (!number(along)) {
            return broken_path;
        }
        along += relative ? from : 0.0;
        pen_.line_to(place_(to));
        break;
    }
    case 'c':
    case 's':
        if ((letter == 'c' && !point(c1, relative)) || !point(c2, relative) || !point(to, relative)) {
            return broken_path;
        }
        cubic(c1, c2, to);
        handle_ = c2;
        break;
    case 'q':
    case 't':
        if ((letter == 'q' && !point(c1, relative)) || !point(to, relative)) {
            return broken_path;
        }
        cubic({at_.x + (c1.x - at_.x) * 2 / 3, at_.y + (c1.y - at_.y) * 2 / 3},
              {to.x + (c1.x - to.x) * 2 / 3, to.y + (c1.y - to.y) * 2 / 3}, to);
        handle_ = c1;
        break;
    default:
        if (!arc_command(relative, to)) {
            return broken_path;
        }
        break;
    }
    at_ = to;
    return {};
}

bool PathReader::arc_command(bool relative, Point& to) {
    Point radii{};
    double turn = 0.0;
    bool large = false, sweep = false;
    if (!number(radii.x) || !number(radii.y) || !number(turn) || !flag(large) || !flag(sweep) || !point(to, relative)) {
        return false;
    }
    arc(radii, turn * std::numbers::pi / 180, large, sweep, to);
    return true;
}

void PathReader::cubic(Point c1, Point c2, Point to) {
    const Bezier curve{{pen_.fault() != Word{} ? Point{} : pen_.at(), place_(c1), place_(c2), place_(to)}};
    pen_.curve_to({bezier_at, &curve}, 0.0, 1.0);
}

// SVG 1.1 appendix F.6: from end points to centre, with radii that are too small made just large enough.
void PathReader::arc(Point radii, double turn, bool large, bool sweep, Point to) {
    double rx = std::abs(radii.x), ry = std::abs(radii.y);
    if (to == at_) {
        return;
    }
    if (!(rx > 0.0 && ry > 0.0)) {
        pen_.line_to(place_(to));
        return;
    }
    const double c = std::cos(turn), s = std::sin(turn);
    const Point half{(at_.x - to.x) / 2, (at_.y - to.y) / 2}, middle{(at_.x + to.x) / 2, (at_.y + to.y) / 2};
    const Point p{(c * half.x + s * half.y) / rx, (c * half.y - s * half.x) / ry}; // on the unit circle's scale
    const double reach2 = p.x * p.x + p.y * p.y;
    const double grown = std::max(std::sqrt(reach2), 1.0);
    rx *= grown;
    ry *= grown;
    const double off2 = reach2 < 1.0 ? 1.0 / reach2 - 1.0 : 0.0;
    const double off = (large == sweep ? -1 : 1) * std::sqrt(off2);
    const Point q{p.x / grown, p.y / grown}, k{off * q.y, -off * q.x}; // centre, between the ends
    const Point centre{middle.x + c * rx * k.x - s * ry * k.y, middle.y + s * rx * k.x + c * ry * k.y};
    const double from = angle_of({q.x - k.x, q.y - k.y});
    double by = std::fmod(angle_of({-q.x - k.x, -q.y - k.y}) - from, 2 * std::numbers::pi);
    if (sweep && by < 0) {
        by += 2 * std::numbers::pi;
    } else if (!sweep && by > 0) {
        by -= 2 * std::numbers::pi;
    }
    const Point end = place_(to);
    pen_.conic_to(place_(centre), place_.direction({c * rx, s * rx}), place_.direction({-s * ry, c * ry}), from, by,
                  &end);
}

} // namespace

Word draw_path(std::string_view data, const Affine& place, Pen& pen) {
    return PathReader(data, place, pen).read();
}

Word read_points(std::string_view text, std::vector<Point>& out) {
    std::size_t i = 0;
    skip_blanks(text, i);
    while (i < text.size() && out.size() <= most_drawing_pieces) {
        Point p;
        const bool x = take_decimal(text, i, p.x);
        skip_separator(text, i);
        if (!x || !take_decimal(text, i, p.y)) {
            return words::drawing_fault::odd_points;
        }
        skip_separator(text, i);
        out.push_back(p);
    }
    return {};
}

Word read_view_box(std::string_view text, double (&out)[4]) {
    std::size_t i = 0;
    bool good = true;
    for (double& number : out) {
        skip_separator(text, i);
        good = good && take_decimal(text, i, number);
    }
    skip_blanks(text, i);
    good = good && i == text.size() && out[2] > 0.0 && out[3] > 0.0;
    return good ? Word{} : words::drawing_fault::view_box;
}

namespace {

constexpr Word broken_transform = words::drawing_fault::transform;

// One of the list, from its name and its numbers; false: not known, or a wrong count.
bool one_transform(std::string_view name, const std::array<double, 6>& v, std::size_t n, Affine& out) {
    constexpr double degree = std::numbers::pi / 180;
    if (name == "matrix" && n == 6) {
        out = {v[0], v[1], v[2], v[3], v[4], v[5]};
    } else if (name == "translate" && (n == 1 || n == 2)) {
        out = {1, 0, 0, 1, v[0], v[1]};
    } else if (name == "scale" && (n == 1 || n == 2)) {
        out = {v[0], 0, 0, n == 2 ? v[1] : v[0], 0, 0};
    } else if (name == "rotate" && (n == 1 || n == 3)) {
        const double c = std::cos(v[0] * degree), s = std::sin(v[0] * degree);
        out = Affine{1, 0, 0, 1, v[1], v[2]} * Affine{c, s, -s, c, 0, 0} * Affine{1, 0, 0, 1, -v[1], -v[2]};
    } else if (name == "skewX" && n == 1) {
        out = {1, 0, std::tan(v[0] * degree), 1, 0, 0};
    } else if (name == "skewY" && n == 1) {
        out = {1, std::tan(v[0] * degree), 0, 1, 0, 0};
    } else {
        return false;
    }
    return true;
}

} // namespace

Word read_transform(std::string_view text, Affine& out) {
    std::size_t i = 0;
    skip_blanks(text, i);
    while (i < text.size()) {
        const std::size_t open = text.find('(', i);
        if (open == std::string_view::npos) {
            return broken_transform;
        }
        const std::string_view name = without_blanks(text.substr(i, open - i));
        std::array<double, 6> v{};
        std::size_t n = 0;
        i = open + 1;
        skip_blanks(text, i);
        while (i < text.size() && text[i] != ')') {
            if (n == v.size() || !take_decimal(text, i, v[n])) {
                return broken_transform;
            }
            ++n;
            skip_separator(text, i);
        }
        Affine next;
        if (i == text.size() || !one_transform(name, v, n, next)) {
            return broken_transform;
        }
        out = out * next;
        ++i;
        skip_separator(text, i);
    }
    return {};
}

Word read_length(std::string_view text, double whole, SvgLength& out) {
    constexpr double inch_px = 96.0;
    const struct {
        std::string_view name;
        LengthUnit unit;
        double px;
    } units[] = {{"", LengthUnit::none, 1.0},
                 {"px", LengthUnit::px, 1.0},
                 {"mm", LengthUnit::mm, inch_px / 25.4},
                 {"cm", LengthUnit::cm, inch_px / 2.54},
                 {"in", LengthUnit::inch, inch_px},
                 {"pt", LengthUnit::point, inch_px / 72},
                 {"pc", LengthUnit::point, inch_px / 6},
                 {"Q", LengthUnit::mm, inch_px / 101.6},
                 {"%", LengthUnit::percent, whole / 100}};
    const std::string_view bare = without_blanks(text);
    std::size_t i = 0;
    double value = 0.0;
    if (take_decimal(bare, i, value)) {
        for (const auto& unit : units) {
            if (alike(unit.name, bare.substr(i))) {
                out = {value * unit.px, unit.unit};
                return {};
            }
        }
    }
    return words::drawing_fault::length;
}

} // namespace torchside::drawing
