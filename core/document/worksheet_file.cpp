#include "core/document/worksheet_file.hpp"

#include <iterator>

#include "core/document/figures.hpp"
#include "core/document/job_file.hpp"
#include "core/document/report_file.hpp"
#include "core/document/words.hpp"
#include "core/safety/words.hpp"

namespace torchside::document {

namespace {

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
    write_estimate("feed_mm_min", s->feed, mm_min, out);
    write_estimate("arc_v", s->arc, volt, out);
    write_estimate("cut_height_mm", s->cut_height, mm, out);
    write_estimate("pierce_height_mm", s->pierce_height, mm, out);
    write_estimate("pierce_delay_s", s->pierce_delay, second, out);
    write_estimate("kerf_mm", s->kerf, mm, out);
    write_estimate("lead_in_mm", s->lead_in, mm, out);
    write_estimate("min_hole_mm", s->min_hole, mm, out);
    write_amount("controller_v", s->controller, volt, out);
    out.key("feed_capped").flag(s->feed_capped);
    out.close();
}

void capacity(const cut::Capacity& c, const Speech& speech, JsonWriter& out) {
    out.key("capacity").open('{');
    write_amount("clean_mm", c.clean, mm, out);
    write_amount("pierce_mm", c.pierce, mm, out);
    write_amount("sever_mm", c.sever, mm, out);
    out.key("verdict").text(word_of(reach_words, c.verdict));
    write_amount("suggested_current_a", c.suggested_current, ampere, out);
    write_amount("suggested_nozzle_a", c.suggested_nozzle, ampere, out);
    out.key("reason").text(say(c.reason, speech));
    out.close();
}

void by_hand(const std::optional<cut::ByHand>& b, const Speech& speech, JsonWriter& out) {
    out.key("by_hand").open('{');
    if (!b) {
        for (const std::string_view key : {"s_per_100_mm", "s_per_foot", "drag", "advice"}) {
            out.key(key).null();
        }
        return out.close();
    }
    write_amount("s_per_100_mm", b->per_100_mm, second, out);
    write_amount("s_per_foot", b->per_foot, second, out);
    out.key("drag").flag(b->drag);
    out.key("advice").text(say(b->advice, speech));
    out.close();
}

void trail(const std::optional<tune::Trail>& t, JsonWriter& out) {
    out.key("trail").open('{');
    constexpr std::string_view keys[] = {"physics_feed_mm_min", "practice_feed_mm_min", "own_feed_mm_min"};
    const Estimate<Speed>* steps[] = {t ? &t->physics : nullptr, t ? &t->practice : nullptr, t ? &t->own : nullptr};
    for (std::size_t i = 0; i < std::size(keys); ++i) {
        if (steps[i]) {
            write_estimate(keys[i], *steps[i], mm_min, out);
        } else {
            out.key(keys[i]).null();
        }
    }
    out.close();
}

void safety(const safety::Report& r, const Speech& speech, JsonWriter& out) {
    out.key("safety").open('{');
    out.key("country").text(word_of(country_words, r.country));
    out.key("shade_min").number(r.shade_min);
    out.key("shade_us").number(r.shade.us);
    out.key("shade_en").number(r.shade.en);
    out.key("shade_text").text(say(r.shade_text, speech));
    out.key("shade_note").text(say(safety::shade_note(r), speech));
    out.key("cautions").open('[');
    for (const safety::Caution& caution : r.cautions) {
        out.open_line('{');
        out.key("code").text(caution.code);
        out.key("severity").text(word_of(severity_words, caution.severity));
        out.key("text").text(say(caution.text, speech));
        out.key("source").text(say(caution.citation, speech));
        out.key("limits").open('[');
        for (const Word limit : safety::limits_of(caution, r.country)) {
            out.text(say(limit, speech));
        }
        out.close();
        out.close();
    }
    out.close();
    out.close();
}

void warnings(const std::vector<Message>& all, const Speech& speech, JsonWriter& out) {
    out.key("warnings").open('[');
    for (const Message& warning : all) {
        out.open_line('{');
        out.key("code").text(warning.code);
        out.key("severity").text(word_of(severity_words, warning.severity));
        out.key("field").text(warning.field);
        out.key("text").text(say(warning, speech));
        out.close();
    }
    out.close();
}

void job(const Job& j, JsonWriter& out) {
    out.key("job").open_line('{');
    out.key("material").text(word_of(metal_words, j.material));
    write_amount("thickness_mm", j.thickness, mm, out);
    write_amount("current_a", j.current, ampere, out);
    out.key("quantity").number(j.quantity);
    out.close();
}

} // namespace

std::string write_worksheet(const Worksheet& sheet, const Workbook& workbook) {
    const Speech speech{workbook.shop.display.units};
    JsonWriter out;
    out.open('{');
    job(workbook.job, out);
    settings(sheet.settings, out);
    capacity(sheet.capacity, speech, out);
    by_hand(sheet.by_hand, speech, out);
    trail(sheet.trail, out);
    write_tap(sheet.tap, speech, out);
    write_circuit(sheet.circuit, speech, out);
    write_air(sheet.air, speech, out);
    write_part(sheet, speech, out);
    write_gaps(sheet.gaps, out);
    write_time(sheet.time, out);
    write_wear(sheet.wear, out);
    write_price(sheet.price, workbook.shop.rates.currency, speech, out);
    safety(sheet.safety, speech, out);
    warnings(sheet.warnings, speech, out);
    out.close();
    return out.take();
}

} // namespace torchside::document
