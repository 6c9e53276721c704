#include <cmath>

#include "core/drawing/dxf_read.hpp"
#include "core/drawing/number.hpp"
#include "core/drawing/refused.hpp"

namespace torchside::drawing {

namespace {

constexpr std::size_t between_news = 512; // entities

DxfKind kind_of(std::string_view type) {
    constexpr struct {
        std::string_view type;
        DxfKind kind;
    } kinds[] = {{"LINE", DxfKind::line},     {"ARC", DxfKind::arc},
                 {"CIRCLE", DxfKind::circle}, {"LWPOLYLINE", DxfKind::lwpolyline},
                 {"VERTEX", DxfKind::vertex}, {"POLYLINE", DxfKind::polyline},
                 {"SPLINE", DxfKind::spline}, {"ELLIPSE", DxfKind::ellipse},
                 {"INSERT", DxfKind::insert}, {"SEQEND", DxfKind::seqend}};
    for (const auto& known : kinds) {
        if (known.type == type) {
            return known.kind;
        }
    }
    return DxfKind::other;
}

} // namespace

void DxfEntity::begin(std::string_view kind_name, const DxfPairs::Place& where) {
    kind = kind_of(kind_name);
    type = kind_name;
    name = layer = {};
    place = where;
    given = 0;
    whole.fill(0);
    normal = {};
    normal_z = 1.0;
    vertices.clear();
    through.clear();
    knots.clear();
    weights.clear();
    level = true;
    lacks_y = half_point = false;
}

// Entities from here to `end` (of a block) or to ENDSEC. The pair at hand is always the next one to look at.
bool DxfReader::entities(std::size_t end, const Affine& place, int depth) {
    if (!need(words::drawing_fault::in_entities)) {
        return false;
    }
    while (pairs_.pair_place().offset < end) {
        if (pairs_.code() != 0) {
            return refuse(words::drawing_fault::outside_entity, pairs_.line());
        }
        if (pairs_.value() == "ENDSEC") {
            return true;
        }
        if (pairs_.value() == "SECTION" || pairs_.value() == "EOF") {
            return refuse(words::drawing_fault::entities_open, pairs_.line());
        }
        if (depth == 0) {
            top_ = pairs_.place().offset;
        }
        if (++entities_ % between_news == 0 &&
            !settings_.progress.go_on(share_of_reading * static_cast<double>(top_) / static_cast<double>(size_))) {
            fault_ = refused(words::drawing_fault::stopped);
            return false;
        }
        if (!entity(place, depth)) {
            return false;
        }
    }
    return true;
}

bool DxfReader::entity(const Affine& place, int depth) {
    DxfEntity& e = entity_;
    e.begin(pairs_.value(), pairs_.pair_place());
    if (!groups(e) || (e.kind == DxfKind::polyline && !old_polyline(e))) {
        return false;
    }
    const DxfPairs::Place begun = e.place, next = pairs_.pair_place();
    if (hidden(e)) {
        ++sketch_.counts.hidden;
        note(Found::hidden, place(e.where()));
    } else if (!draw(e, place, depth)) {
        return false;
    }
    if (pen_.fault() != Word{}) {
        return refuse(words::drawing_fault::CannotDraw{.why = pen_.fault()}, begun.line + 1);
    }
    if (next.offset == pairs_.pair_place().offset) {
        return true;
    }
    pairs_.go_to(next); // a block was drawn in between
    return need(words::drawing_fault::in_entities);
}

bool DxfReader::groups(DxfEntity& e) {
    while (need(words::drawing_fault::in_entity)) {
        if (pairs_.code() == 0) {
            return !(e.lacks_y || e.half_point) || bad(e, words::drawing_fault::half_point);
        }
        if (!group(e)) {
            return refuse_pair();
        }
    }
    return false;
}

bool DxfReader::group(DxfEntity& e) {
    const int code = pairs_.code();
    if (code == 8) {
        e.layer = pairs_.value();
    } else if (code == 2) {
        e.name = pairs_.value();
    } else if (code >= 60 && code <= 99) {
        std::int32_t n = 0;
        if (e.kind != DxfKind::other || code == 60 || code == 67) {
            if (!pairs_.integer(n)) {
                return false;
            }
        }
        e.whole[static_cast<std::size_t>(code - 60)] = n;
    } else if (e.kind != DxfKind::other && ((code >= 10 && code <= 59) || (code >= 210 && code <= 230))) {
        double value = 0.0;
        if (!pairs_.real(value)) {
            return false;
        }
        if (code >= 210) {
            (code == 210 ? e.normal.x : code == 220 ? e.normal.y : e.normal_z) = value;
        } else if (!listed(e, value)) {
            e.keep(code, value);
        }
    } else if ((code == 10 || code == 20) && !e.has(code)) { // of what is not drawn only where it is
        double value = 0.0;
        if (whole_decimal(pairs_.value(), value)) {
            e.keep(code, value);
        }
    }
    return true;
}

bool DxfReader::listed(DxfEntity& e, double value) {
    const bool spline = e.kind == DxfKind::spline;
    if (!spline && e.kind != DxfKind::lwpolyline) {
        return false;
    }
    switch (pairs_.code()) {
    case 10:
        e.vertices.push_back({{value, 0.0}, 0.0});
        e.half_point = e.half_point || e.lacks_y;
        e.lacks_y = true;
        return true;
    case 20:
        if (!e.vertices.empty()) {
            e.vertices.back().at.y = value;
        }
        e.lacks_y = false;
        return true;
    case 42:
        if (!spline && !e.vertices.empty()) {
            e.vertices.back().bulge = value;
        }
        return !spline;
    case 11:
        if (spline) {
            e.through.push_back({value, 0.0});
        }
        return spline;
    case 21:
        if (spline && !e.through.empty()) {
            e.through.back().y = value;
        }
        return spline;
    case 40:
    case 41:
        if (spline) {
            (pairs_.code() == 40 ? e.knots : e.weights).push_back(value);
        }
        return spline;
    default:
        return false;
    }
}

// POLYLINE, then a VERTEX each, then SEQEND.
bool DxfReader::old_polyline(DxfEntity& e) {
    constexpr std::int32_t frame_point = 16;
    constexpr double level_to = 1e-6; // of the drawing's units
    double height = 0.0;
    while (true) {
        if (pairs_.is(0, "SEQEND")) {
            vertex_.begin(pairs_.value(), pairs_.pair_place());
            return groups(vertex_);
        }
        if (!pairs_.is(0, "VERTEX")) {
            return refuse(words::drawing_fault::polyline_open, pairs_.line());
        }
        vertex_.begin(pairs_.value(), pairs_.pair_place());
        if (!groups(vertex_)) {
            return false;
        }
        if ((vertex_.flag(70) & frame_point) == 0) {
            if (!needs(vertex_, {10, 20})) {
                return false;
            }
            height = e.vertices.empty() ? vertex_.at(30) : height;
            e.level = e.level && std::abs(vertex_.at(30) - height) <= level_to;
            e.vertices.push_back({vertex_.point(10), vertex_.at(42)});
        }
    }
}

bool DxfReader::hidden(const DxfEntity& e) const {
    return e.flag(60) != 0 || e.flag(67) != 0 || hidden_layers_.find(e.layer) != nullptr;
}

} // namespace torchside::drawing
