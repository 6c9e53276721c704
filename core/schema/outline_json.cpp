#include "core/schema/outline_json.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/part/measure.hpp"
#include "core/part/piece.hpp"
#include "core/schema/access.hpp"
#include "core/words/say.hpp"
#include "generated/words/field_job.hpp"
#include "generated/words/file.hpp"

namespace torchside::document {

namespace {

using Wrong = std::optional<Fault>;

constexpr double farthest_mm = 1e6;
constexpr std::string_view roles[] = {"outer", "inner", "open"};

Fault refuse(const std::string& path, Word accepted) {
    return {path, words::file::NotUnderstood{.accepted = accepted}};
}

bool number(const codec::JsonValue& json, double& out) {
    out = json.number;
    return json.type == codec::JsonValue::Type::number && std::abs(out) <= farthest_mm;
}

bool vertex(const codec::JsonValue& json, part::Vertex& out) {
    const std::size_t n = json.items.size();
    return json.type == codec::JsonValue::Type::list && (n == 2 || n == 3) && number(json.items[0], out.at.x) &&
           number(json.items[1], out.at.y) && (n == 2 || number(json.items[2], out.bulge));
}

Wrong read_contour(const codec::JsonValue& json, std::string& path, std::size_t& left, part::Contour& out) {
    if (json.type != codec::JsonValue::Type::object || json.keys.size() != 2 || json.keys[0] != "role" ||
        json.keys[1] != "points") {
        return refuse(path, words::file::contour);
    }
    const auto role = std::find(std::begin(roles), std::end(roles), json.items[0].text);
    if (json.items[0].type != codec::JsonValue::Type::text || role == std::end(roles)) {
        const PathScope scope(path, "role");
        return refuse(path, words::file::role);
    }
    out.role = static_cast<part::Role>(role - std::begin(roles));
    const PathScope scope(path, "points");
    const codec::JsonValue& points = json.items[1];
    if (points.type != codec::JsonValue::Type::list || points.items.size() < 2 || points.items.size() > left) {
        return refuse(path, words::file::points);
    }
    left -= points.items.size();
    for (std::size_t i = 0; i < points.items.size(); ++i) {
        const PathScope entry(path, i);
        if (!vertex(points.items[i], out.points.emplace_back())) {
            return refuse(path, words::file::point);
        }
    }
    if (out.role != part::Role::open && (part::area_mm2(out) > 0.0) != (out.role == part::Role::outer)) {
        out = part::reversed(out);
    }
    return {};
}

} // namespace

std::optional<Fault> read_outline(const codec::JsonValue& json, std::string& path, SharedOutline& out) {
    out.reset();
    if (json.type == codec::JsonValue::Type::null) {
        return {};
    }
    if (json.type != codec::JsonValue::Type::list || json.items.empty()) {
        return refuse(path, words::file::contours_or_null);
    }
    auto outline = std::make_shared<part::Outline>();
    std::size_t left = most_kept_points;
    for (std::size_t i = 0; i < json.items.size(); ++i) {
        const PathScope entry(path, i);
        if (auto wrong = read_contour(json.items[i], path, left, outline->contours.emplace_back())) {
            return wrong;
        }
    }
    out = std::move(outline);
    return {};
}

void write_outline(const SharedOutline& outline, codec::JsonWriter& out) {
    std::size_t points = 0;
    for (std::size_t i = 0; outline && i < outline->contours.size(); ++i) {
        points += outline->contours[i].points.size();
    }
    if (points == 0 || points > most_kept_points) {
        return out.null();
    }
    out.open('[');
    for (const part::Contour& c : outline->contours) {
        out.open_line('{');
        out.key("role").text(roles[static_cast<std::size_t>(c.role)]);
        out.key("points").open_line('[');
        for (const part::Vertex& v : c.points) {
            out.open_line('[');
            out.number(v.at.x);
            out.number(v.at.y);
            if (v.bulge != 0.0) {
                out.number(v.bulge);
            }
            out.close();
        }
        out.close();
        out.close();
    }
    out.close();
}

void outline_schema(codec::JsonWriter& out) {
    out.key("type").open_line('[');
    out.text("array");
    out.text("null");
    out.close();
    out.key("minItems").number(1);
    out.key("items").open('{');
    out.key("type").text("object");
    out.key("additionalProperties").flag(false);
    out.key("required").open_line('[');
    out.text("role");
    out.text("points");
    out.close();
    out.key("properties").open('{');
    out.key("role").open('{');
    out.key("enum").open_line('[');
    for (const std::string_view role : roles) {
        out.text(role);
    }
    out.close();
    out.close();
    out.key("points").open('{');
    out.key("description").text(say(words::field_job::outline_points, UnitSystem::metric));
    out.key("type").text("array");
    out.key("minItems").number(2);
    out.key("maxItems").number(most_kept_points);
    out.key("items").open('{');
    out.key("type").text("array");
    out.key("minItems").number(2);
    out.key("maxItems").number(3);
    out.key("items").open('{');
    out.key("type").text("number");
    out.key("minimum").number(-farthest_mm);
    out.key("maximum").number(farthest_mm);
    out.close();
    out.close();
    out.close();
    out.close();
    out.close();
    out.key("default").null();
}

} // namespace torchside::document
