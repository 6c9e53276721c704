#include "tools/cli/results/job.hpp"

#include <cmath>

#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

/// Places to a millionth of a millimetre, shares to a millionth. Rounding residue is written as 0.
double to_millionth(double value) {
    return std::floor(value * 1e6 + 0.5) / 1e6;
}

/// Where to look, to a tenth: along two sides that run together the nearest place is anybody's guess.
Json spot(double mm_from_origin) {
    return number(std::floor(mm_from_origin * 10.0 + 0.5) / 10.0);
}

Json contour_json(const PartContour& c) {
    return {{"role", word_of(role_words, c.role)},
            {"source", c.source},
            {"length_mm", number(c.length_mm)},
            {"area_mm2", number(c.area_mm2)}};
}

Json problem_json(std::string_view code, Severity severity, std::string_view text) {
    return {{"code", code}, {"severity", word_of(severity_words, severity)}, {"text", text}};
}

Json problems_json(const PartStage& part, const Speech& speech) {
    Json out = Json::array();
    if (part.fault) {
        Json entry = problem_json("no_part", Severity::stop, say(part.fault->told(), speech));
        entry["field"] = part.fault->field;
        out.push_back(std::move(entry));
    }
    for (const part::Problem& p : part.problems) {
        Json entry = problem_json(p.code, p.severity, say(message_of(p), speech));
        entry["x_mm"] = spot(p.at.x);
        entry["y_mm"] = spot(p.at.y);
        entry["size_mm"] = number(to_millionth(p.size_mm));
        out.push_back(std::move(entry));
    }
    return out;
}

Json sheet_json(const part::SheetFit& fit) {
    return {{"count", fit.count},
            {"use", number(fit.use)},
            {"turned", fit.turned},
            {"alternate", fit.alternate},
            {"sheet_kg", amount(fit.sheet, kg)},
            {"drop_kg", amount(fit.drop, kg)}};
}

Json slow_json(const motion::SlowSpan& span) {
    return {{"run", span.run},
            {"from_mm", number(to_millionth(span.from_mm))},
            {"to_mm", number(to_millionth(span.to_mm))},
            {"lowest", number(to_millionth(span.lowest))}};
}

Json lines_json(const price::Report& r, const Speech& speech) {
    Json out = Json::array();
    for (std::size_t i = 0; i < r.lines.size(); ++i) {
        out.push_back({{"code", line_words[i]},
                       {"total", number(price::amount(r.lines[i].total, r.decimals))},
                       {"how", say(r.lines[i].how, speech)}});
    }
    return out;
}

Json make_or_buy_json(const std::optional<price::MakeOrBuy>& m, const Speech& speech) {
    if (!m) {
        return {};
    }
    return {{"verdict", word_of(choice_words, m->choice)},
            {"saved_each", figure(m->saved_each)},
            {"break_even", or_null(m->break_even)},
            {"text", say(m->title, speech) + ". " + say(m->detail, speech)}};
}

/// A sum of two lines of one part; the second has no band: set-up.
Estimate<double> with(const Estimate<double>& a, const Estimate<double>& sure) {
    return {a.value + sure.value, a.low + sure.value, a.high + sure.value, a.basis | sure.basis};
}

} // namespace

Json part_json(const Worksheet& sheet, const Speech& speech) {
    const PartStage& part = *sheet.part;
    return {{"area_mm2", number(part.area_mm2)},
            {"mass_kg", amount(sheet.mass, kg)},
            {"cut_mm", number(part.cut_mm)},
            {"pierces", part.pierces},
            {"width_mm", number(part.high.x - part.low.x)},
            {"height_mm", number(part.high.y - part.low.y)},
            {"contours", list_of(part.contours, contour_json)},
            {"compensated", list_of(part.compensated, contour_json)},
            {"problems", problems_json(part, speech)},
            {"sheet", sheet_json(part.sheet)}};
}

Json gaps_json(const Gaps& gaps) {
    return {{"per_m", number(gaps.per_m)}, {"open_share", number(gaps.open_share)}, {"basis", basis(gaps.basis)}};
}

Json time_json(const std::optional<motion::Report>& time) {
    if (!time) {
        return nulls({"cutting_s", "piercing_s", "moving_s", "resting_s", "total_s", "arc_s", "batch_s", "path_mm",
                      "starts", "restarts", "to_drill", "slow_share", "slow"});
    }
    return {{"cutting_s", figure(time->cutting, second)},
            {"piercing_s", figure(time->piercing, second)},
            {"moving_s", amount(time->moving, second)},
            {"resting_s", amount(time->resting, second)},
            {"total_s", figure(time->total, second)},
            {"arc_s", figure(time->arc, second)},
            {"batch_s", amount(time->batch, second)},
            {"path_mm", amount(time->cut, mm)},
            {"starts", time->starts},
            {"restarts", time->restarts},
            {"to_drill", time->to_drill},
            {"slow_share", number(to_millionth(time->slow_share))},
            {"slow", list_of(time->slow, slow_json)}};
}

Json wear_json(const wear::Report& r) {
    return {{"life_used", figure(r.life_used)},
            {"outlived", r.outlived},
            {"part_uses", figure(r.part_uses)},
            {"job_uses", figure(r.job_uses)},
            {"changes", figure(r.changes)},
            {"sets_to_hold", r.sets_to_hold},
            {"starts_left", figure(r.starts_left)},
            {"change_before_part", or_null(r.change_before)},
            {"wears_at_part", or_null(r.wears_at)},
            {"finishes", number(to_millionth(r.finishes))},
            {"starts_per_set", figure(r.starts_per_set)},
            {"arc_min_per_set", figure(r.arc_per_set, minute)},
            {"cost_each", figure(r.cost_each)},
            {"guess", r.guess}};
}

Json price_json(const std::optional<price::Report>& r, std::string_view currency, const Speech& speech) {
    Json out = {{"currency", currency}};
    if (!r) {
        out.update(nulls({"material", "machine", "labour", "consumables", "energy", "cost_each", "price_each",
                          "price_total", "lines", "cost_total", "tax", "to_pay", "margin", "markup", "margin_text",
                          "breaks", "make_or_buy", "rounding", "band"}));
        return out;
    }
    const auto cash = [&](price::Money m) { return number(price::amount(m, r->decimals)); };
    const auto each = [&](price::LineKind kind) { return price::line(*r, kind).each; };
    const auto break_json = [&](const price::Break& b) -> Json {
        return {{"quantity", b.quantity}, {"each", cash(b.each)}, {"total", cash(b.total)}};
    };
    out.update(Json{{"material", figure(each(price::LineKind::material))},
                    {"machine", figure(each(price::LineKind::machine))},
                    {"labour", figure(with(each(price::LineKind::labour), each(price::LineKind::setup)))},
                    {"consumables", figure(each(price::LineKind::consumables))},
                    {"energy", figure(each(price::LineKind::energy))},
                    {"cost_each", figure(r->cost_each)},
                    {"price_each", figure(r->price_each)},
                    {"price_total", figure(r->price_total)},
                    {"lines", lines_json(*r, speech)},
                    {"cost_total", cash(r->cost)},
                    {"tax", r->tax ? cash(*r->tax) : Json()},
                    {"to_pay", cash(r->to_pay)},
                    {"margin", number(r->margin)},
                    {"markup", number(r->markup)},
                    {"margin_text", say(r->margin_text, speech)},
                    {"breaks", list_of(r->breaks, break_json)},
                    {"make_or_buy", make_or_buy_json(r->make_or_buy, speech)},
                    {"rounding", say(r->rounding, speech)},
                    {"band", say(r->band, speech)}});
    return out;
}

} // namespace torchside::cli
