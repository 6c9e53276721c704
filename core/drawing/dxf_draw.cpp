#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

#include "core/drawing/dxf_read.hpp"
#include "core/drawing/spline.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

namespace {

constexpr double degree = std::numbers::pi / 180.0;
constexpr double whole = 2.0 * std::numbers::pi;
constexpr double level_to = 1e-6; // of the drawing's units, or of a direction: does not matter
constexpr int deepest_insert = 32;
constexpr std::size_t most_work = 200'000'000; // bytes
constexpr std::size_t insert_work = 1000;      // an insert of nothing costs something too

// Kinds that enclose something to cut: a text or a hatch left out is no loss, these may be.
bool encloses(std::string_view type) {
    constexpr std::string_view kinds[] = {"REGION", "3DFACE", "SOLID",   "TRACE",  "MLINE",
                                          "BODY",   "MESH",   "3DSOLID", "SURFACE"};
    return std::find(std::begin(kinds), std::end(kinds), type) != std::end(kinds);
}

// Angle from a to b, anticlockwise, above 0 and up to a whole turn.
double sweep_between(double a, double b) {
    const double sweep = std::fmod(b - a, whole);
    return sweep <= 0.0 ? sweep + whole : sweep;
}

} // namespace

bool DxfReader::bad(const DxfEntity& e, Word why) {
    return refuse(words::drawing_fault::EntityBad{.entity = quotable(e.type), .why = why}, e.place.line + 1);
}

bool DxfReader::needs(const DxfEntity& e, std::initializer_list<int> codes) {
    for (const int code : codes) {
        if (!e.has(code)) {
            return refuse(words::drawing_fault::EntityLacks{.code = code, .entity = quotable(e.type)},
                          e.place.line + 1);
        }
    }
    return true;
}

bool DxfReader::draw(const DxfEntity& e, const Affine& parent, int depth) {
    if (e.kind == DxfKind::seqend || e.type == "ATTRIB" || e.type == "VIEWPORT") {
        return true; // of an INSERT with texts; the view on paper
    }
    if (e.kind == DxfKind::other || e.kind == DxfKind::vertex) {
        ++sketch_.counts.not_read;
        note(encloses(e.type) ? Found::face : Found::not_read, parent(e.where()));
        return true;
    }
    Affine place = parent;
    const bool own_plane = e.kind != DxfKind::line && e.kind != DxfKind::spline && e.kind != DxfKind::ellipse;
    if (std::hypot(e.normal.x, e.normal.y) > level_to * std::abs(e.normal_z)) {
        if (own_plane || e.kind == DxfKind::ellipse) {
            ++sketch_.counts.not_read;
            note(Found::tilted, parent(e.where()));
            return true;
        }
    } else if (own_plane && e.normal_z < 0.0) { // seen from behind
        place = parent * Affine{-1, 0, 0, 1, 0, 0};
    }
    switch (e.kind) {
    case DxfKind::line:
        return line(e, place);
    case DxfKind::circle:
    case DxfKind::arc:
        return round(e, place);
    case DxfKind::ellipse:
        return ellipse(e, place);
    case DxfKind::spline:
        return spline(e, place);
    case DxfKind::insert:
        return insert(e, place, depth);
    default:
        return polyline(e, place);
    }
}

bool DxfReader::line(const DxfEntity& e, const Affine& place) {
    if (!needs(e, {10, 20, 11, 21})) {
        return false;
    }
    const Point from = place(e.point(10));
    if (std::abs(e.at(30) - e.at(31)) > level_to) {
        note(Found::flattened, from);
    }
    pen_.move_to(from);
    pen_.line_to(place(e.point(11)));
    pen_.finish();
    return true;
}

bool DxfReader::round(const DxfEntity& e, const Affine& place) {
    if (!needs(e, {10, 20, 40})) {
        return false;
    }
    const double r = e.at(40);
    const Point centre = place(e.point(10));
    if (!(r > 0.0)) { // a slip of the drawing program: the rest of the drawing is good
        ++sketch_.counts.short_pieces;
        note(Found::short_piece, centre);
        return true;
    }
    const Point u = place.direction({r, 0}), v = place.direction({0, r});
    if (e.kind == DxfKind::circle) {
        pen_.circle(centre, u, v);
        return true;
    }
    if (!needs(e, {50, 51})) {
        return false;
    }
    const double from = e.at(50) * degree;
    pen_.conic(centre, u, v, from, sweep_between(from, e.at(51) * degree));
    return true;
}

bool DxfReader::ellipse(const DxfEntity& e, const Affine& place) {
    if (!needs(e, {10, 20, 11, 21, 40})) {
        return false;
    }
    const Point major = e.point(11);
    const double ratio = e.at(40) * (e.normal_z < 0.0 ? -1 : 1);
    if (!(std::hypot(major.x, major.y) > 0.0) || !(std::abs(ratio) > 0.0 && std::abs(ratio) <= 1.0 + level_to)) {
        return bad(e, words::drawing_fault::ellipse_axes);
    }
    if (std::abs(e.at(31)) > level_to) {
        note(Found::flattened, place(e.where()));
    }
    const Point u = place.direction(major), v = place.direction({-ratio * major.y, ratio * major.x});
    const double from = e.at(41, 0.0), sweep = sweep_between(from, e.at(42, whole));
    if (sweep > whole - level_to) {
        pen_.circle(place(e.point(10)), u, v);
    } else {
        pen_.conic(place(e.point(10)), u, v, from, sweep);
    }
    return true;
}

bool DxfReader::polyline(const DxfEntity& e, const Affine& place) {
    constexpr std::int32_t closed = 1, in_space = 8, mesh = 16 | 64;
    const std::int32_t flags = e.flag(70);
    if (e.kind == DxfKind::polyline && (flags & mesh) != 0) {
        ++sketch_.counts.not_read;
        note(Found::face, place(e.where()));
        return true;
    }
    if (e.kind == DxfKind::polyline && (flags & in_space) != 0 && !e.level) {
        note(Found::flattened, place(e.where()));
    }
    const std::size_t n = e.vertices.size();
    if (e.kind == DxfKind::lwpolyline && n != static_cast<std::size_t>(e.flag(90))) {
        return bad(e, words::drawing_fault::point_count);
    }
    if (n < 2) {
        return bad(e, words::drawing_fault::few_points);
    }
    const bool round = place.keeps_circles();
    const double turn = place.a * place.d - place.b * place.c < 0.0 ? -1.0 : 1.0;
    pen_.move_to(place(e.vertices[0].at));
    const std::size_t pieces = (flags & closed) != 0 ? n : n - 1;
    for (std::size_t i = 0; i < pieces; ++i) {
        const Vertex& from = e.vertices[i];
        const Point to = e.vertices[(i + 1) % n].at, end = place(to);
        if (from.bulge == 0.0 || round) {
            if (i + 1 < n || from.bulge != 0.0) {
                pen_.arc_to(end, turn * from.bulge);
            }
            continue;
        }
        // The arc's circle: its centre is on the chord's bisector.
        const Point half{(to.x - from.at.x) / 2, (to.y - from.at.y) / 2};
        const double up = (1 - from.bulge * from.bulge) / (2 * from.bulge);
        const Point centre{from.at.x + half.x - up * half.y, from.at.y + half.y + up * half.x};
        const Point u{from.at.x - centre.x, from.at.y - centre.y};
        pen_.conic_to(place(centre), place.direction(u), place.direction({-u.y, u.x}), 0.0, 4 * std::atan(from.bulge),
                      &end);
    }
    if ((flags & closed) != 0) {
        pen_.close();
    } else {
        pen_.finish();
    }
    return true;
}

namespace {

struct PlacedSpline {
    const Affine& place;
    const Spline* knotted;
    const FitCurve* fitted;
};

Point placed_at(const void* context, double t) {
    const PlacedSpline& s = *static_cast<const PlacedSpline*>(context);
    return s.place(s.knotted ? spline_at(*s.knotted, t) : fit_at(*s.fitted, t));
}

} // namespace

bool DxfReader::spline(const DxfEntity& e, const Affine& place) {
    Spline knotted;
    FitCurve fitted;
    PlacedSpline placed{place, nullptr, &fitted};
    std::size_t first = 0, last = 0;
    if (e.vertices.empty()) {
        constexpr std::int32_t closed = 1;
        const Point begin = e.point(12), end = e.point(13);
        fitted =
            fit_curve(e.through, (e.flag(70) & closed) != 0, e.has(12) ? &begin : nullptr, e.has(13) ? &end : nullptr);
        if (fitted.points.size() < 2) {
            return bad(e, words::drawing_fault::no_points);
        }
        last = fitted.points.size() - 1;
        note(Found::fit_points, place(fitted.points.front()));
    } else {
        knotted.degree = e.flag(71);
        knotted.knots = e.knots;
        knotted.weights = e.weights;
        for (const Vertex& v : e.vertices) {
            knotted.points.push_back(v.at);
        }
        if (const Word why = spline_fault(knotted); why != Word{}) {
            return bad(e, why);
        }
        placed.knotted = &knotted;
        first = static_cast<std::size_t>(knotted.degree);
        last = knotted.points.size();
    }
    const std::vector<double>& t = placed.knotted ? knotted.knots : fitted.parameters;
    const Curve curve{placed_at, &placed};
    pen_.move_to(curve.at(curve.context, t[first]));
    for (std::size_t i = first; i < last; ++i) {
        if (t[i] < t[i + 1]) {
            pen_.curve_to(curve, t[i], t[i + 1]);
        }
    }
    pen_.finish();
    return true;
}

bool DxfReader::insert(const DxfEntity& e, const Affine& parent, int depth) {
    if (!needs(e, {10, 20})) {
        return false;
    }
    const std::uint32_t* number = block_names_.find(e.name);
    if (!number) {
        return refuse(words::drawing_fault::NoBlock{.block = quotable(e.name)}, e.place.line + 1);
    }
    if (blocks_[*number].open || depth >= deepest_insert) {
        return refuse(words::drawing_fault::BlockLoop{.block = quotable(e.name)}, e.place.line + 1);
    }
    const double sx = e.at(41, 1.0), sy = e.at(42, 1.0), turn = e.at(50) * degree;
    if (sx == 0.0 || sy == 0.0) {
        return bad(e, words::drawing_fault::no_scale);
    }
    const std::int64_t columns = std::max(e.flag(70), 1), rows = std::max(e.flag(71), 1);
    const Point step{e.at(44), e.at(45)}, base = blocks_[*number].base, at = e.point(10);
    const DxfPairs::Place begin = blocks_[*number].begin, end = blocks_[*number].end;
    const std::size_t begun = e.place.line + 1;
    const Affine turned{std::cos(turn), std::sin(turn), -std::sin(turn), std::cos(turn), 0, 0};
    blocks_[*number].open = true;
    const std::size_t block = *number;
    for (std::int64_t i = 0; i < columns * rows; ++i) {
        work_ += insert_work + end.offset - begin.offset;
        if (work_ > most_work) {
            return refuse(words::drawing_fault::inserts_too_much, begun);
        }
        const auto column = static_cast<double>(i % columns),
                   row = std::floor(static_cast<double>(i) / static_cast<double>(columns));
        const Point off = turned({column * step.x, row * step.y});
        const Affine place = parent * Affine{1, 0, 0, 1, at.x + off.x, at.y + off.y} * turned *
                             Affine{sx, 0, 0, sy, 0, 0} * Affine{1, 0, 0, 1, -base.x, -base.y};
        pairs_.go_to(begin);
        if (!entities(end.offset, place, depth + 1)) {
            return false;
        }
    }
    blocks_[block].open = false;
    return true;
}

} // namespace torchside::drawing
