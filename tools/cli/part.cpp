// torchside part: what is in a drawing. A drawing that can be read but not cut as it is prints its problems.
#include <cmath>

#include "core/document/json.hpp"
#include "core/document/schema.hpp"
#include "core/drawing/drawing.hpp"
#include "core/part/measure.hpp"
#include "core/quantity/read.hpp"
#include "core/words/say.hpp"
#include "tools/cli/command.hpp"

namespace torchside::cli {

namespace {

constexpr drawing::DrawingUnit units[] = {
    drawing::DrawingUnit::mm,     drawing::DrawingUnit::cm,   drawing::DrawingUnit::dm,   drawing::DrawingUnit::metre,
    drawing::DrawingUnit::inch,   drawing::DrawingUnit::foot, drawing::DrawingUnit::yard, drawing::DrawingUnit::mil,
    drawing::DrawingUnit::micron, drawing::DrawingUnit::px};

constexpr const char* a_drawing = "a DXF or SVG file";

const char* role_name(part::Role role) {
    return role == part::Role::outer ? "outer" : role == part::Role::inner ? "inner" : "open";
}

const char* severity_name(Severity severity) {
    return severity == Severity::stop ? "stop" : severity == Severity::caution ? "caution" : "note";
}

void write_points(const part::Contour& c, document::JsonWriter& out) {
    out.key("points").open_line('[');
    for (const part::Vertex& v : c.points) {
        out.open_line('[');
        out.number(v.at.x);
        out.number(v.at.y);
        out.number(v.bulge);
        out.close();
    }
    out.close();
}

void write_contours(const part::Outline& outline, bool points, document::JsonWriter& out) {
    out.key("contours").open('[');
    for (const part::Contour& c : outline.contours) {
        out.open_line('{');
        out.key("role").text(role_name(c.role));
        out.key("length_mm").number(part::length_mm(c));
        out.key("area_mm2").number(std::abs(part::area_mm2(c)));
        if (points) {
            write_points(c, out);
        }
        out.close();
    }
    out.close();
}

void write_problems(const drawing::Drawing& drawing, document::JsonWriter& out) {
    out.key("problems").open('[');
    for (const part::Problem& p : drawing.problems) {
        out.open_line('{');
        out.key("code").text(p.code);
        out.key("severity").text(severity_name(p.severity));
        out.key("text").text(say(part::message_of(p), UnitSystem::metric));
        out.key("x_mm").number(p.at.x);
        out.key("y_mm").number(p.at.y);
        out.key("size_mm").number(p.size_mm);
        out.close();
    }
    out.close();
}

std::string to_json(const drawing::Drawing& drawing, std::optional<Mass> mass, bool points) {
    const drawing::DrawingCounts& counts = drawing.counts;
    document::JsonWriter out;
    out.open('{');
    out.key("unit").text(drawing::unit_name(drawing.unit));
    out.key("unit_known").flag(drawing.unit_known);
    out.key("area_mm2").number(part::area_mm2(drawing.outline));
    out.key("mass_kg");
    mass ? out.number(mass->in(kg)) : out.null();
    out.key("cut_mm").number(part::length_mm(drawing.outline));
    out.key("pierces").number(static_cast<double>(drawing.outline.contours.size()));
    write_contours(drawing.outline, points, out);
    write_problems(drawing, out);
    out.key("counts").open_line('{');
    out.key("pieces").number(static_cast<double>(counts.pieces));
    out.key("gaps_joined").number(static_cast<double>(counts.gaps_joined));
    out.key("largest_gap_mm").number(counts.largest_gap_mm);
    out.key("duplicates").number(static_cast<double>(counts.duplicates));
    out.key("short_pieces").number(static_cast<double>(counts.short_pieces));
    out.key("not_read").number(static_cast<double>(counts.not_read));
    out.key("hidden").number(static_cast<double>(counts.hidden));
    out.close();
    out.close();
    return out.take();
}

Outcome<drawing::ReadSettings> settings_of(const Words& words) {
    drawing::ReadSettings settings;
    const auto join = words.number_if_given("--join_mm");
    const auto flatten = words.number_if_given("--flatten_mm");
    if (!join || !flatten) {
        return join ? flatten.fault() : join.fault();
    }
    settings.join_mm = join.value().value_or(settings.join_mm);
    settings.flatten_mm = flatten.value().value_or(settings.flatten_mm);
    if (words.option("--unit")) {
        const auto unit = words.choice("--unit", {"mm", "cm", "dm", "m", "inch", "ft", "yd", "mil", "um", "px"});
        if (!unit) {
            return unit.fault();
        }
        settings.unit = units[unit.value()];
    }
    return settings;
}

Outcome<std::optional<Mass>> mass_of(const Words& words, const part::Outline& outline) {
    if (!words.option("--material") && !words.option("--thickness_mm")) {
        return std::optional<Mass>{};
    }
    const auto metal = words.material();
    const auto thickness = words.number("--thickness_mm");
    if (!metal || !thickness) {
        return metal ? thickness.fault() : metal.fault();
    }
    const auto range = document::field("job.thickness_mm");
    if (const auto fault = check_range("--thickness_mm", thickness.value(), range->low, range->high, "mm")) {
        return *fault;
    }
    return std::optional(
        part::mass_of(Area{part::area_mm2(outline), mm2}, Length{thickness.value(), mm}, metal.value()));
}

} // namespace

Outcome<std::string> run_part(const Arguments& arguments) {
    const auto words = Words::sort(
        arguments, 1, {"--unit", "--join_mm", "--flatten_mm", "--outline", "--material", "--thickness_mm"}, a_drawing);
    if (!words) {
        return words.fault();
    }
    const auto settings = settings_of(words.value());
    const auto points = words.value().choice("--outline", {"no", "yes"}, 0);
    if (!settings || !points) {
        return settings ? points.fault() : settings.fault();
    }
    const auto text = load_text(words.value().file(0), drawing::most_drawing_bytes, a_drawing);
    if (!text) {
        return text.fault();
    }
    const auto drawing = drawing::read_drawing(text.value(), settings.value());
    if (!drawing) {
        Fault fault = drawing.fault();
        if (fault.field == "join_mm" || fault.field == "flatten_mm") { // as the command line has them
            fault.field.insert(0, "--");
        }
        return fault;
    }
    const auto mass = mass_of(words.value(), drawing.value().outline);
    if (!mass) {
        return mass.fault();
    }
    return to_json(drawing.value(), mass.value(), points.value() == 1);
}

} // namespace torchside::cli
