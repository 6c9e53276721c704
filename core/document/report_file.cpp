#include "core/document/report_file.hpp"

#include "core/document/figures.hpp"
#include "core/document/words.hpp"

namespace torchside::document {

namespace {

void checks(const std::vector<supply::Check>& all, const Speech& speech, JsonWriter& out) {
    out.key("checks").open('[');
    for (const supply::Check& check : all) {
        out.open_line('{');
        out.key("code").text(word_of(check_words, check.kind));
        out.key("ok").flag(check.ok);
        out.key("text").text(say(check.message, speech));
        out.key("source").text(say(check.source, speech));
        out.key("weight").text(word_of(severity_words, check.message.severity));
        out.close();
    }
    out.close();
}

void chain(const supply::Chain& way, const Speech& speech, JsonWriter& out) {
    out.key("chain").open('[');
    for (const supply::Node& node : way.nodes) {
        out.open_line('{');
        out.key("stop").text(word_of(stop_words, node.stop));
        out.key("present").flag(node.present);
        out.key("figure").text(say(node.figure, speech));
        out.key("detail").text(say(node.detail, speech));
        out.key("used").number(node.used);
        write_amount("v", node.voltage, volt, out);
        out.close();
    }
    out.close();
}

/// What stands on the verdict's row: title and detail, then what to do.
void verdict(const Message& message, const Speech& speech, JsonWriter& out) {
    out.key("summary").text(say_summary(message, speech));
    out.key("way_out").text(say(message.remedy, speech));
}

std::vector<std::string> said(const std::vector<Text>& texts, const Speech& speech) {
    std::vector<std::string> out;
    for (const Text& text : texts)
        out.push_back(say(text, speech));
    return out;
}

} // namespace

void write_circuit(const supply::Report& r, const Speech& speech, JsonWriter& out) {
    out.key("circuit").open('{');
    write_amount("input_a", r.input, ampere, out);
    write_amount("input_at_rated_load_a", r.input_at_rated_load, ampere, out);
    write_amount("effective_a", r.effective, ampere, out);
    write_amount("other_a", r.other, ampere, out);
    write_amount("machine_v", r.machine, volt, out);
    out.key("drop_share").number(r.drop_share);
    out.key("run_drop_share").number(r.run_drop_share);
    out.key("load_ratio").number(r.load_ratio);
    out.key("verdict").text(word_of(circuit_words, r.verdict));
    write_amount("trips_within_s", r.trips_within, second, out);
    write_amount("trips_within_interpolated_s", r.trips_within_interpolated, second, out);
    write_amount("trips_not_before_s", r.trips_not_before, second, out);
    write_amount("highest_current_a", r.highest_current, ampere, out);
    out.key("capped_by").text(word_of(cap_words, r.capped_by));
    out.key("highest_is_machine_limit").flag(r.highest_is_machine_limit);
    write_amount("largest_deliverable_a", r.largest_deliverable, ampere, out);
    write_plain("cord_min_awg", r.cord_min_awg, out);
    write_plain("cord_min_mm2", r.cord_min_mm2, out);
    write_plain("run_min_awg", r.run_min_awg, out);
    write_plain("run_min_awg_60c", r.run_min_awg_60c, out);
    write_plain("run_min_mm2", r.run_min_mm2, out);
    write_amount("generator_min_va", r.generator_min, volt_ampere, out);
    out.key("duty").number(r.duty);
    write_amount("arc_s_per_10_min", r.arc_per_10_min, second, out);
    out.key("duty_note").text(say(r.duty_note, speech));
    out.key("power_basis").text(word_of(power_basis_words, r.power_basis));
    checks(r.checks, speech, out);
    chain(r.chain, speech, out);
    out.key("guard").text(say(r.guard, speech));
    verdict(r.message, speech, out);
    write_texts("basis", said(r.basis, speech), out);
    out.close();
}

void write_tap(const supply::TapReport& r, const Speech& speech, JsonWriter& out) {
    out.key("tap").open('{');
    write_amount("controller_high_v", r.controller, volt, out);
    write_amount("before_arc_v", r.before_arc, volt, out);
    out.key("severity").text(r.message ? word_of(severity_words, r.message->severity) : "fine");
    out.key("shock").flag(r.shock);
    out.key("text").text(r.message ? say(*r.message, speech) : "");
    write_texts("basis", said(r.basis, speech), out);
    out.close();
}

void write_air(const air::Report& r, const Speech& speech, JsonWriter& out) {
    out.key("air").open('{');
    out.key("verdict").text(word_of(air_words, r.verdict));
    write_amount("runs_s", r.runs, second, out);
    write_amount("recovers_s", r.recovers, second, out);
    out.key("hose_decides").flag(r.hose_decides);
    write_estimate("hose_drop_bar", r.hose_drop, bar, out);
    write_estimate("receiver_min_bar", r.receiver_min, bar, out);
    write_amount("inlet_at_cut_in_bar", r.inlet_at_cut_in, bar, out);
    write_amount("inlet_at_cut_out_bar", r.inlet_at_cut_out, bar, out);
    out.key("demand_share").number(r.demand_share);
    out.key("arc_share").number(r.arc_share);
    write_amount("post_flow_air_l", r.post_flow_air, litre, out);
    write_amount("post_flow_refill_s", r.post_flow_refill, second, out);
    out.key("water_g_h").number(r.water_g_h);
    out.key("dew_point_c").number(r.dew_point_c);
    out.key("water_class").number(r.water_class);
    out.key("dryness").text(say(r.dryness, speech));
    verdict(r.message, speech, out);
    write_texts("basis", said(r.basis, speech), out);
    out.close();
}

} // namespace torchside::document
