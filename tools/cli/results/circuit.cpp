#include "tools/cli/results/circuit.hpp"

#include "core/worksheet/supply_help.hpp"
#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

Json check_json(const supply::Check& check, const Speech& speech) {
    return {{"code", word_of(check_words, check.kind)},
            {"ok", check.ok},
            {"text", say(check.message, speech)},
            {"source", say(check.source, speech)},
            {"weight", word_of(severity_words, check.message.severity)}};
}

Json node_json(const supply::Node& node, const Speech& speech) {
    return {{"stop", word_of(stop_words, node.stop)}, {"present", node.present},   {"figure", say(node.figure, speech)},
            {"detail", say(node.detail, speech)},     {"used", number(node.used)}, {"v", amount(node.voltage, volt)}};
}

Json said(const std::vector<Text>& texts, const Speech& speech) {
    return list_of(texts, [&](const Text& text) { return say(text, speech); });
}

// What a small supply still does (core/worksheet/supply_help.hpp).
void add_help(Json& out, const Worksheet& sheet, const Workbook& workbook, const Speech& speech) {
    const SupplyHelp help = supply_help(workbook, sheet);
    const auto& there = sheet.there;
    out["rating"] = word_of(rating_words, help.rating);
    out["machine_max_a"] = amount(sheet.asked.machine.max_current, ampere);
    out["there"] = there ? Json{{"current_a", amount(there->current, ampere)},
                                {"clean_mm", amount(there->limits.clean, mm)},
                                {"pierce_mm", amount(there->limits.pierce, mm)},
                                {"sever_mm", amount(there->limits.sever, mm)}}
                         : Json();
    const auto& b = help.bursts;
    out["bursts"] = b ? Json{{"current_a", amount(b->output, ampere)},
                             {"arc_s", amount(b->arc, second)},
                             {"rest_s", amount(b->rest, second)},
                             {"beyond_tables", b->beyond_tables},
                             {"clean_mm", amount(help.in_bursts->clean, mm)}}
                      : Json();
    const auto& s = help.would_do;
    out["would_do"] = s ? Json{{"line_v", s->line_v},
                               {"breaker_a", s->breaker_a},
                               {"breaker_rule", word_of(document::breaker_words, s->rule)},
                               {"run_awg", or_null(s->run_awg)},
                               {"run_mm2", or_null(s->run_mm2)}}
                        : Json();
    out["help"] = said(help.says, speech);
}

} // namespace

Json circuit_json(const Worksheet& sheet, const Workbook& workbook, const Speech& speech) {
    const supply::Report& r = sheet.circuit;
    Json out = {
        {"input_a", amount(r.input, ampere)},
        {"input_at_rated_load_a", amount(r.input_at_rated_load, ampere)},
        {"effective_a", amount(r.effective, ampere)},
        {"other_a", amount(r.other, ampere)},
        {"machine_v", amount(r.machine, volt)},
        {"drop_share", number(r.drop_share)},
        {"run_drop_share", number(r.run_drop_share)},
        {"load_ratio", number(r.load_ratio)},
        {"verdict", word_of(circuit_words, r.verdict)},
        {"trips_within_s", amount(r.trips_within, second)},
        {"trips_within_interpolated_s", amount(r.trips_within_interpolated, second)},
        {"trips_not_before_s", amount(r.trips_not_before, second)},
        {"highest_current_a", amount(r.highest_current, ampere)},
        {"capped_by", word_of(cap_words, r.capped_by)},
        {"highest_is_machine_limit", r.highest_is_machine_limit},
        {"largest_deliverable_a", amount(r.largest_deliverable, ampere)},
        {"cord_min_awg", or_null(r.cord_min_awg)},
        {"cord_min_mm2", or_null(r.cord_min_mm2)},
        {"run_min_awg", or_null(r.run_min_awg)},
        {"run_min_awg_60c", or_null(r.run_min_awg_60c)},
        {"run_min_mm2", or_null(r.run_min_mm2)},
        {"generator_min_va", amount(r.generator_min, volt_ampere)},
        {"duty", number(r.duty)},
        {"arc_s_per_10_min", amount(r.arc_per_10_min, second)},
        {"duty_note", say(r.duty_note, speech)},
        {"power_basis", word_of(power_basis_words, r.power_basis)},
        {"checks", list_of(r.checks, [&](const supply::Check& c) { return check_json(c, speech); })},
        {"chain", list_of(r.chain.nodes, [&](const supply::Node& n) { return node_json(n, speech); })},
        {"guard", say(r.guard, speech)},
        {"summary", say_summary(r.message, speech)},
        {"remedy", say(r.message.remedy, speech)},
        {"basis", said(r.basis, speech)},
    };
    add_help(out, sheet, workbook, speech);
    return out;
}

Json tap_json(const supply::ControllerInput& r, const Speech& speech) {
    return {{"controller_high_v", amount(r.controller, volt)},
            {"before_arc_v", amount(r.before_arc, volt)},
            {"severity", r.message ? word_of(severity_words, r.message->severity) : "fine"},
            {"shock", r.shock},
            {"text", r.message ? say(*r.message, speech) : ""},
            {"basis", said(r.basis, speech)}};
}

Json air_json(const air::Report& r, const Speech& speech) {
    return {
        {"verdict", word_of(air_words, r.verdict)},
        {"runs_s", amount(r.runs, second)},
        {"recovers_s", amount(r.recovers, second)},
        {"hose_decides", r.hose_decides},
        {"hose_drop_bar", figure(r.hose_drop, bar)},
        {"receiver_min_bar", figure(r.receiver_min, bar)},
        {"inlet_at_cut_in_bar", amount(r.inlet_at_cut_in, bar)},
        {"inlet_at_cut_out_bar", amount(r.inlet_at_cut_out, bar)},
        {"demand_share", number(r.demand_share)},
        {"arc_share", number(r.arc_share)},
        {"post_flow_air_l", amount(r.post_flow_air, litre)},
        {"post_flow_refill_s", amount(r.post_flow_refill, second)},
        {"water_g_h", number(r.water_g_h)},
        {"dew_point_c", number(r.dew_point_c)},
        {"water_class", number(r.water_class)},
        {"dryness", say(r.dryness, speech)},
        {"summary", say_summary(r.message, speech)},
        {"remedy", say(r.message.remedy, speech)},
        {"basis", said(r.basis, speech)},
    };
}

} // namespace torchside::cli
