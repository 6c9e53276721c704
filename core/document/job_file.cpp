#include "core/document/job_file.hpp"

#include <cmath>

#include "core/document/figures.hpp"
#include "core/document/words.hpp"

namespace torchside::document {

namespace {

void nulls(std::initializer_list<std::string_view> keys, JsonWriter& out) {
    for (const std::string_view key : keys) {
        out.key(key).null();
    }
    out.close();
}

// Places to a millionth of a millimetre, shares to a millionth: what rounding leaves of a nought is written as 0.
double place(double value) {
    return std::floor(value * 1e6 + 0.5) / 1e6;
}

// Where to look: along two sides that run together the nearest place is anybody's guess.
double spot(double mm_from_origin) {
    return std::floor(mm_from_origin * 10.0 + 0.5) / 10.0;
}

void contours(std::string_view key, const std::vector<PartContour>& all, JsonWriter& out) {
    out.key(key).open('[');
    for (const PartContour& c : all) {
        out.open_line('{');
        out.key("role").text(word_of(role_words, c.role));
        out.key("source").number(static_cast<double>(c.source));
        out.key("length_mm").number(c.length_mm);
        out.key("area_mm2").number(c.area_mm2);
        out.close();
    }
    out.close();
}

void problem(std::string_view code, Severity severity, std::string_view text, JsonWriter& out) {
    out.open_line('{');
    out.key("code").text(code);
    out.key("severity").text(word_of(severity_words, severity));
    out.key("text").text(text);
}

void lines(const price::Report& r, JsonWriter& out) {
    out.key("lines").open('[');
    for (std::size_t i = 0; i < r.lines.size(); ++i) {
        out.open_line('{');
        out.key("code").text(line_words[i]);
        out.key("total").number(price::amount(r.lines[i].total, r.decimals));
        out.key("how").text(r.lines[i].how);
        out.close();
    }
    out.close();
}

void make_or_buy(const std::optional<price::MakeOrBuy>& m, const Speech& speech, JsonWriter& out) {
    out.key("make_or_buy");
    if (!m) {
        return out.null();
    }
    out.open('{');
    out.key("verdict").text(word_of(choice_words, m->choice));
    write_figure("saved_each", m->saved_each, out);
    write_plain("break_even", m->break_even, out);
    out.key("text").text(say(m->title, speech) + ". " + say(m->detail, speech));
    out.close();
}

/// A sum of two lines of one part; their bands do not meet: set-up has none.
Estimate<double> with(const Estimate<double>& a, const Estimate<double>& sure) {
    return {a.value + sure.value, a.low + sure.value, a.high + sure.value, a.basis | sure.basis};
}

void write_sheet(const part::SheetFit& fit, JsonWriter& out) {
    out.key("sheet").open('{');
    out.key("count").number(fit.count);
    out.key("use").number(fit.use);
    out.key("turned").flag(fit.turned);
    out.key("alternate").flag(fit.alternate);
    out.key("sheet_kg").number(fit.sheet.in(kg));
    out.key("drop_kg").number(fit.drop.in(kg));
    out.close();
}

} // namespace

void write_part(const Worksheet& sheet, const Speech& speech, JsonWriter& out) {
    const PartStage& part = *sheet.part;
    out.key("part").open('{');
    out.key("area_mm2").number(part.area_mm2);
    write_amount("mass_kg", sheet.mass, kg, out);
    out.key("cut_mm").number(part.cut_mm);
    out.key("pierces").number(part.pierces);
    out.key("width_mm").number(part.high.x - part.low.x);
    out.key("height_mm").number(part.high.y - part.low.y);
    contours("contours", part.contours, out);
    contours("compensated", part.compensated, out);
    out.key("problems").open('[');
    if (part.fault) {
        problem("no_part", Severity::stop, part.fault->text, out);
        out.key("field").text(part.fault->field);
        out.close();
    }
    for (const part::Problem& p : part.problems) {
        problem(p.code, p.severity, say(message_of(p), speech), out);
        out.key("x_mm").number(spot(p.at.x));
        out.key("y_mm").number(spot(p.at.y));
        out.key("size_mm").number(place(p.size_mm));
        out.close();
    }
    out.close();
    write_sheet(part.sheet, out);
    out.close();
}

void write_gaps(const Gaps& gaps, JsonWriter& out) {
    out.key("gaps").open_line('{');
    out.key("per_m").number(gaps.per_m);
    out.key("open_share").number(gaps.open_share);
    write_basis(gaps.basis, out);
    out.close();
}

void write_time(const std::optional<motion::Report>& time, JsonWriter& out) {
    out.key("time").open('{');
    if (!time) {
        return nulls({"cutting_s", "piercing_s", "moving_s", "resting_s", "total_s", "arc_s", "batch_s", "path_mm",
                      "starts", "restarts", "to_drill", "slow_share", "slow"},
                     out);
    }
    write_estimate("cutting_s", time->cutting, second, out);
    write_estimate("piercing_s", time->piercing, second, out);
    write_amount("moving_s", time->moving, second, out);
    write_amount("resting_s", time->resting, second, out);
    write_estimate("total_s", time->total, second, out);
    write_estimate("arc_s", time->arc, second, out);
    write_amount("batch_s", time->batch, second, out);
    write_amount("path_mm", time->cut, mm, out);
    out.key("starts").number(time->starts);
    out.key("restarts").number(time->restarts);
    out.key("to_drill").number(time->to_drill);
    out.key("slow_share").number(place(time->slow_share));
    out.key("slow").open('[');
    for (const motion::SlowSpan& span : time->slow) {
        out.open_line('{');
        out.key("run").number(static_cast<double>(span.run));
        out.key("from_mm").number(place(span.from_mm));
        out.key("to_mm").number(place(span.to_mm));
        out.key("lowest").number(place(span.lowest));
        out.close();
    }
    out.close();
    out.close();
}

void write_wear(const wear::Report& r, JsonWriter& out) {
    out.key("wear").open('{');
    write_figure("life_used", r.life_used, out);
    out.key("outlived").flag(r.outlived);
    write_figure("part_uses", r.part_uses, out);
    write_figure("job_uses", r.job_uses, out);
    write_figure("changes", r.changes, out);
    out.key("sets_to_hold").number(r.sets_to_hold);
    write_figure("starts_left", r.starts_left, out);
    write_plain("change_before_part", r.change_before, out);
    write_plain("wears_at_part", r.wears_at, out);
    out.key("finishes").number(place(r.finishes));
    write_figure("starts_per_set", r.starts_per_set, out);
    write_estimate("arc_min_per_set", r.arc_per_set, minute, out);
    write_figure("cost_each", r.cost_each, out);
    out.key("guess").flag(r.guess);
    out.close();
}

void write_price(const std::optional<price::Report>& r, std::string_view currency, const Speech& speech,
                 JsonWriter& out) {
    out.key("price").open('{');
    out.key("currency").text(currency);
    if (!r) {
        return nulls({"material", "machine", "labour", "consumables", "energy", "cost_each", "price_each",
                      "price_total", "lines", "cost_total", "tax", "to_pay", "margin", "markup", "margin_text",
                      "breaks", "make_or_buy", "rounding", "band"},
                     out);
    }
    const auto cash = [&](price::Money m) { return price::amount(m, r->decimals); };
    const auto each = [&](price::LineKind kind) { return price::line(*r, kind).each; };
    write_figure("material", each(price::LineKind::material), out);
    write_figure("machine", each(price::LineKind::machine), out);
    write_figure("labour", with(each(price::LineKind::labour), each(price::LineKind::setup)), out);
    write_figure("consumables", each(price::LineKind::consumables), out);
    write_figure("energy", each(price::LineKind::energy), out);
    write_figure("cost_each", r->cost_each, out);
    write_figure("price_each", r->price_each, out);
    write_figure("price_total", r->price_total, out);
    lines(*r, out);
    out.key("cost_total").number(cash(r->cost));
    out.key("tax");
    r->tax ? out.number(cash(*r->tax)) : out.null();
    out.key("to_pay").number(cash(r->to_pay));
    out.key("margin").number(r->margin);
    out.key("markup").number(r->markup);
    out.key("margin_text").text(r->margin_text);
    out.key("breaks").open('[');
    for (const price::Break& b : r->breaks) {
        out.open_line('{');
        out.key("quantity").number(b.quantity);
        out.key("each").number(cash(b.each));
        out.key("total").number(cash(b.total));
        out.close();
    }
    out.close();
    make_or_buy(r->make_or_buy, speech, out);
    out.key("rounding").text(r->rounding);
    out.key("band").text(r->band);
    out.close();
}

} // namespace torchside::document
