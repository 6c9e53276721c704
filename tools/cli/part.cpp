// torchside part: what is in a drawing. A drawing that can be read but not cut as it is prints its problems.
#include <cmath>

#include "core/drawing/drawing.hpp"
#include "core/part/measure.hpp"
#include "core/quantity/read.hpp"
#include "core/schema/access.hpp"
#include "core/words/say.hpp"
#include "tools/cli/command.hpp"
#include "tools/cli/results/json.hpp"
#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

constexpr drawing::DrawingUnit units[] = {
    drawing::DrawingUnit::mm,     drawing::DrawingUnit::cm,   drawing::DrawingUnit::dm,   drawing::DrawingUnit::metre,
    drawing::DrawingUnit::inch,   drawing::DrawingUnit::foot, drawing::DrawingUnit::yard, drawing::DrawingUnit::mil,
    drawing::DrawingUnit::micron, drawing::DrawingUnit::px};

Json point_json(const part::Vertex& v) {
    return Json::array({number(v.at.x), number(v.at.y), number(v.bulge)});
}

Json contour_json(const part::Contour& c, bool points) {
    Json out = {{"role", word_of(role_words, c.role)},
                {"length_mm", number(part::length_mm(c))},
                {"area_mm2", number(std::abs(part::area_mm2(c)))}};
    if (points) {
        out["points"] = list_of(c.points, point_json);
    }
    return out;
}

Json problem_json(const part::Problem& p, const Speech& speech) {
    return {{"code", p.code},
            {"severity", word_of(severity_words, p.severity)},
            {"text", say(part::message_of(p), speech)},
            {"x_mm", number(p.at.x)},
            {"y_mm", number(p.at.y)},
            {"size_mm", number(p.size_mm)}};
}

Json counts_json(const drawing::DrawingCounts& counts) {
    return {{"pieces", counts.pieces},
            {"gaps_joined", counts.gaps_joined},
            {"largest_gap_mm", number(counts.largest_gap_mm)},
            {"duplicates", counts.duplicates},
            {"short_pieces", counts.short_pieces},
            {"not_read", counts.not_read},
            {"hidden", counts.hidden}};
}

Json to_json(const drawing::Drawing& drawing, std::optional<Mass> mass, bool points, const Speech& speech) {
    const auto& contours = drawing.outline.contours;
    return {{"unit", drawing::unit_name(drawing.unit)},
            {"unit_known", drawing.unit_known},
            {"area_mm2", number(part::area_mm2(drawing.outline))},
            {"mass_kg", amount(mass, kg)},
            {"cut_mm", number(part::length_mm(drawing.outline))},
            {"pierces", contours.size()},
            {"contours", list_of(contours, [&](const part::Contour& c) { return contour_json(c, points); })},
            {"problems", list_of(drawing.problems, [&](const part::Problem& p) { return problem_json(p, speech); })},
            {"counts", counts_json(drawing.counts)}};
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
    if (auto wrong = document::judge(*document::field("job.thickness_mm"), thickness.value())) {
        return Fault{"--thickness_mm", std::move(*wrong)};
    }
    return std::optional(
        part::mass_of(Area{part::area_mm2(outline), mm2}, Length{thickness.value(), mm}, metal.value()));
}

} // namespace

Outcome<std::string> run_part(const Arguments& arguments, const Language& language) {
    const auto words =
        Words::sort(arguments, 1, {"--unit", "--join_mm", "--flatten_mm", "--outline", "--material", "--thickness_mm"},
                    words::cli::drawing_file);
    if (!words) {
        return words.fault();
    }
    const auto settings = settings_of(words.value());
    const auto points = words.value().choice("--outline", {"no", "yes"}, 0);
    if (!settings || !points) {
        return settings ? points.fault() : settings.fault();
    }
    const auto text = load_text(words.value().file(0), drawing::most_drawing_bytes, words::cli::drawing_file);
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
    return printed(to_json(drawing.value(), mass.value(), points.value() == 1, Speech(language, UnitSystem::metric)));
}

} // namespace torchside::cli
