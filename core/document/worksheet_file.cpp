#include "core/document/worksheet_file.hpp"

#include "core/document/json.hpp"
#include "core/document/words.hpp"

namespace torchside::document {

namespace {

void texts(std::string_view key, const std::vector<std::string>& lines, JsonWriter& out) {
    out.key(key).open('[');
    for (const std::string& line : lines) {
        out.text(line);
    }
    out.close();
}

void basis(const Basis& b, JsonWriter& out) {
    out.key("basis").open('[');
    if (b.physics) {
        out.text("physics");
    }
    if (b.practice) {
        out.text("practice");
    }
    if (!b.published.empty()) {
        out.text("published:" + std::string(b.published));
    }
    if (b.tests > 0) {
        out.text("tests:" + std::to_string(b.tests));
    }
    if (b.entered) {
        out.text("entered");
    }
    out.close();
}

template <class K>
void estimate(std::string_view key, const Estimate<Quantity<K>>& e, Unit<K> unit, JsonWriter& out) {
    out.key(key).open_line('{');
    out.key("value").number(e.value.in(unit));
    out.key("low").number(e.low.in(unit));
    out.key("high").number(e.high.in(unit));
    basis(e.basis, out);
    out.close();
}

template <class K>
void amount(std::string_view key, Quantity<K> q, Unit<K> unit, JsonWriter& out) {
    out.key(key).number(q.in(unit));
}

template <class K>
void amount(std::string_view key, const std::optional<Quantity<K>>& q, Unit<K> unit, JsonWriter& out) {
    out.key(key);
    q ? out.number(q->in(unit)) : out.null();
}

void amount(std::string_view key, const std::optional<int>& n, JsonWriter& out) {
    out.key(key);
    n ? out.number(*n) : out.null();
}

void settings(const std::optional<cut::Settings>& s, JsonWriter& out) {
    out.key("settings").open('{');
    if (!s) {
        for (const std::string_view key :
             {"feed_mm_min", "arc_v", "cut_height_mm", "pierce_height_mm", "pierce_delay_s", "kerf_mm", "lead_in_mm",
              "min_hole_mm", "controller_v", "feed_capped"}) {
            out.key(key).null();
        }
        return out.close();
    }
    estimate("feed_mm_min", s->feed, mm_min, out);
    estimate("arc_v", s->arc, volt, out);
    estimate("cut_height_mm", s->cut_height, mm, out);
    estimate("pierce_height_mm", s->pierce_height, mm, out);
    estimate("pierce_delay_s", s->pierce_delay, second, out);
    estimate("kerf_mm", s->kerf, mm, out);
    estimate("lead_in_mm", s->lead_in, mm, out);
    estimate("min_hole_mm", s->min_hole, mm, out);
    amount("controller_v", s->controller, volt, out);
    out.key("feed_capped").flag(s->feed_capped);
    out.close();
}

void capacity(const cut::Capacity& c, JsonWriter& out) {
    out.key("capacity").open('{');
    amount("clean_mm", c.clean, mm, out);
    amount("pierce_mm", c.pierce, mm, out);
    amount("sever_mm", c.sever, mm, out);
    out.key("verdict").text(word_of(reach_words, c.verdict));
    amount("suggested_current_a", c.suggested_current, ampere, out);
    amount("suggested_nozzle_a", c.suggested_nozzle, ampere, out);
    out.key("reason").text(c.reason);
    out.close();
}

void by_hand(const std::optional<cut::ByHand>& b, JsonWriter& out) {
    out.key("by_hand").open('{');
    if (!b) {
        for (const std::string_view key : {"s_per_100_mm", "s_per_foot", "drag", "advice"}) {
            out.key(key).null();
        }
        return out.close();
    }
    amount("s_per_100_mm", b->per_100_mm, second, out);
    amount("s_per_foot", b->per_foot, second, out);
    out.key("drag").flag(b->drag);
    out.key("advice").text(b->advice);
    out.close();
}

void circuit(const supply::Report& r, JsonWriter& out) {
    out.key("circuit").open('{');
    amount("input_a", r.input, ampere, out);
    amount("input_at_rated_load_a", r.input_at_rated_load, ampere, out);
    amount("effective_a", r.effective, ampere, out);
    amount("machine_v", r.machine, volt, out);
    out.key("drop_share").number(r.drop_share);
    out.key("load_ratio").number(r.load_ratio);
    out.key("verdict").text(word_of(circuit_words, r.verdict));
    amount("trips_within_s", r.trips_within, second, out);
    amount("highest_current_a", r.highest_current, ampere, out);
    amount("cord_min_awg", r.cord_min_awg, out);
    amount("run_min_awg", r.run_min_awg, out);
    amount("generator_min_va", r.generator_min, volt_ampere, out);
    amount("arc_s_per_10_min", r.arc_per_10_min, second, out);
    out.key("summary").text(r.summary);
    out.key("way_out").text(r.way_out);
    texts("basis", r.basis, out);
    out.close();
}

void air(const air::Report& r, JsonWriter& out) {
    out.key("air").open('{');
    out.key("verdict").text(word_of(air_words, r.verdict));
    amount("runs_s", r.runs, second, out);
    amount("recovers_s", r.recovers, second, out);
    estimate("hose_drop_bar", r.hose_drop, bar, out);
    out.key("water_g_h").number(r.water_g_h);
    out.key("summary").text(r.summary);
    out.key("way_out").text(r.way_out);
    texts("basis", r.basis, out);
    out.close();
}

void safety(const safety::Report& r, JsonWriter& out) {
    out.key("safety").open('{');
    out.key("shade_min").number(r.shade_min);
    out.key("shade_note").text(r.shade_note);
    out.key("cautions").open('[');
    for (const safety::Caution& caution : r.cautions) {
        out.open_line('{');
        out.key("code").text(caution.code);
        out.key("text").text(caution.text);
        out.key("source").text(caution.source);
        out.close();
    }
    out.close();
    out.close();
}

void warnings(const std::vector<Warning>& all, JsonWriter& out) {
    out.key("warnings").open('[');
    for (const Warning& warning : all) {
        out.open_line('{');
        out.key("code").text(warning.code);
        out.key("severity").text(word_of(severity_words, warning.severity));
        out.key("field").text(warning.field);
        out.key("text").text(warning.text);
        out.close();
    }
    out.close();
}

void job(const Job& j, JsonWriter& out) {
    out.key("job").open_line('{');
    out.key("material").text(word_of(metal_words, j.material));
    amount("thickness_mm", j.thickness, mm, out);
    amount("current_a", j.current, ampere, out);
    out.key("quantity").number(j.quantity);
    out.close();
}

} // namespace

std::string write_worksheet(const Worksheet& sheet, const Workbook& workbook) {
    JsonWriter out;
    out.open('{');
    job(workbook.job, out);
    settings(sheet.settings, out);
    capacity(sheet.capacity, out);
    by_hand(sheet.by_hand, out);
    circuit(sheet.circuit, out);
    air(sheet.air, out);
    safety(sheet.safety, out);
    warnings(sheet.warnings, out);
    out.close();
    return out.take();
}

} // namespace torchside::document
