#include "tools/cli/results/worksheet.hpp"

#include "core/safety/words.hpp"
#include "tools/cli/results/circuit.hpp"
#include "tools/cli/results/job.hpp"
#include "tools/cli/results/settings.hpp"
#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

Json settings_json(const std::optional<cut::Settings>& s) {
    Json out = figures_json(s, UnitSystem::metric);
    out["controller_v"] = s ? amount(s->controller, volt) : Json();
    out["start_lag_s"] = s ? figure(s->start_lag, second) : Json();
    out["dwell_s"] = s ? amount(s->dwell, second) : Json();
    out["feed_capped"] = s ? Json(s->feed_capped) : Json();
    return out;
}

Json capacity_json(const cut::Capacity& c, const Speech& speech) {
    return {{"recommended_mm", amount(c.recommended, mm)},
            {"recommended_feed_mm_min", amount(c.recommended_feed, mm_min)},
            {"clean_mm", amount(c.clean, mm)},
            {"clean_feed_mm_min", amount(c.clean_feed, mm_min)},
            {"pierce_mm", amount(c.pierce, mm)},
            {"pierce_feed_mm_min", amount(c.pierce_feed, mm_min)},
            {"sever_mm", amount(c.sever, mm)},
            {"sever_feed_mm_min", amount(c.sever_feed, mm_min)},
            {"verdict", word_of(reach_words, c.verdict)},
            {"suggested_current_a", amount(c.suggested_current, ampere)},
            {"suggested_nozzle_a", amount(c.suggested_nozzle, ampere)},
            {"reason", say(c.reason, speech)}};
}

Json by_hand_json(const std::optional<cut::ByHand>& b, const Speech& speech) {
    if (!b) {
        return nulls({"s_per_100_mm", "s_per_foot", "drag", "advice"});
    }
    return {{"s_per_100_mm", amount(b->per_100_mm, second)},
            {"s_per_foot", amount(b->per_foot, second)},
            {"drag", b->drag},
            {"advice", say(b->advice, speech)}};
}

Json trail_json(const std::optional<tune::Trail>& t) {
    if (!t) {
        return nulls({"physics_feed_mm_min", "practice_feed_mm_min", "others_feed_mm_min", "own_feed_mm_min",
                      "new_set_feed_mm_min"});
    }
    return {{"physics_feed_mm_min", figure(t->physics, mm_min)},
            {"practice_feed_mm_min", figure(t->practice, mm_min)},
            {"others_feed_mm_min", figure(t->others, mm_min)},
            {"own_feed_mm_min", figure(t->own, mm_min)},
            {"new_set_feed_mm_min", figure(t->new_set, mm_min)}};
}

Json safety_json(const safety::Report& r, const Speech& speech) {
    const auto caution_json = [&](const safety::Caution& caution) -> Json {
        return {
            {"code", caution.code},
            {"severity", word_of(severity_words, caution.severity)},
            {"text", say(caution.text, speech)},
            {"source", say(caution.citation, speech)},
            {"limits", list_of(safety::limits_of(caution, r.country), [&](Word limit) { return say(limit, speech); })}};
    };
    return {{"country", word_of(document::country_words, r.country)},
            {"shade_min", number(r.shade_min)},
            {"shade_us", number(r.shade.us)},
            {"shade_en", number(r.shade.en)},
            {"shade_text", say(r.shade_text, speech)},
            {"shade_note", say(safety::shade_note(r), speech)},
            {"cautions", list_of(r.cautions, caution_json)}};
}

Json warning_json(const Message& warning, const Speech& speech) {
    return {{"code", warning.code},
            {"severity", word_of(severity_words, warning.severity)},
            {"field", warning.field},
            {"text", say(warning, speech)}};
}

Json job_json(const Job& j) {
    return {{"material", word_of(document::metal_words, j.material)},
            {"thickness_mm", amount(j.thickness, mm)},
            {"current_a", amount(j.current, ampere)},
            {"quantity", j.quantity}};
}

} // namespace

Json worksheet_json(const Worksheet& sheet, const Workbook& workbook, const Language& language) {
    const Speech speech(language, workbook.shop.display.units);
    return {{"job", job_json(workbook.job)},
            {"settings", settings_json(sheet.settings)},
            {"capacity", capacity_json(sheet.capacity, speech)},
            {"by_hand", by_hand_json(sheet.by_hand, speech)},
            {"trail", trail_json(sheet.trail)},
            {"tap", tap_json(sheet.tap, speech)},
            {"circuit", circuit_json(sheet, workbook, speech)},
            {"air", air_json(sheet.air, speech)},
            {"part", part_json(sheet, speech)},
            {"gaps", gaps_json(sheet.gaps)},
            {"time", time_json(sheet.time)},
            {"wear", wear_json(sheet.wear)},
            {"price", price_json(sheet.price, workbook.shop.rates.currency, speech)},
            {"safety", safety_json(sheet.safety, speech)},
            {"warnings", list_of(sheet.warnings, [&](const Message& m) { return warning_json(m, speech); })}};
}

} // namespace torchside::cli
