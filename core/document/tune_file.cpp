#include "core/document/tune_file.hpp"

#include "core/document/figures.hpp"
#include "core/document/words.hpp"

namespace torchside::document {

namespace {

void rows(const std::vector<tune::RowNote>& notes, JsonWriter& out) {
    out.key("rows").open('[');
    for (const tune::RowNote& note : notes) {
        out.open_line('{');
        out.key("taught").text(word_of(taught_words, note.why));
        out.key("measure_again").flag(note.measure_again);
        out.key("weight").number(note.weight);
        out.key("sd_off").number(note.sd_off);
        out.key("text").text(note.text);
        out.close();
    }
    out.close();
}

void curve(const std::vector<tune::CurvePoint>& points, JsonWriter& out) {
    out.key("curve").open('[');
    for (const tune::CurvePoint& point : points) {
        out.open_line('{');
        write_amount("feed_mm_min", point.feed, mm_min, out);
        out.key("density").number(point.density);
        out.key("clean").number(point.clean);
        out.close();
    }
    out.close();
}

void ladder(const tune::Outlook& o, JsonWriter& out) {
    out.key("ladder").open_line('{');
    out.key("advised").flag(o.ladder);
    out.key("legs").number(o.legs.legs);
    out.key("ratio").number(o.legs.ratio);
    write_amount("middle_feed_mm_min", o.legs.middle, mm_min, out);
    out.close();
}

} // namespace

std::string write_tune(const tune::Posterior& posterior, const tune::Trail& trail, const tune::Outlook& outlook,
                       const Job& job) {
    JsonWriter out;
    out.open('{');
    out.key("job").open_line('{');
    out.key("material").text(word_of(metal_words, job.material));
    write_amount("thickness_mm", job.thickness, mm, out);
    write_amount("current_a", job.current, ampere, out);
    out.close();
    write_estimate("feed_mm_min", outlook.feed, mm_min, out);
    out.key("next").open_line('{');
    write_amount("feed_mm_min", outlook.next, mm_min, out);
    out.key("clean").number(outlook.next_clean);
    out.key("cuts_to_come").number(outlook.cuts_to_come);
    out.close();
    out.key("best").open_line('{');
    write_amount("feed_mm_min", outlook.best, mm_min, out);
    out.key("clean").number(outlook.best_clean);
    out.close();
    out.key("stop").flag(outlook.stop);
    out.key("past_table").flag(outlook.past_table);
    ladder(outlook, out);
    out.key("advice").text(outlook.advice);
    out.key("trail").open('{');
    write_estimate("physics_feed_mm_min", trail.physics, mm_min, out);
    write_estimate("practice_feed_mm_min", trail.practice, mm_min, out);
    write_estimate("own_feed_mm_min", trail.own, mm_min, out);
    out.close();
    rows(posterior.notes, out);
    curve(outlook.curve, out);
    out.close();
    return out.take();
}

} // namespace torchside::document
