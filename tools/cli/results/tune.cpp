#include "tools/cli/results/tune.hpp"

#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

Json row_json(const tune::RowNote& note, const Speech& speech) {
    return {{"taught", word_of(taught_words, note.why)},
            {"measure_again", note.measure_again},
            {"weight", number(note.weight)},
            {"sd_off", number(note.sd_off)},
            {"text", say(note.text, speech)}};
}

Json point_json(const tune::CurvePoint& point) {
    return {{"feed_mm_min", amount(point.feed, mm_min)},
            {"density", number(point.density)},
            {"clean", number(point.clean)}};
}

Json ladder_json(const tune::Outlook& o) {
    return {{"advised", o.ladder},
            {"legs", o.legs.legs},
            {"ratio", number(o.legs.ratio)},
            {"middle_feed_mm_min", amount(o.legs.middle, mm_min)}};
}

} // namespace

Json tune_json(const tune::Posterior& posterior, const tune::Trail& trail, const tune::Outlook& outlook, const Job& job,
               const Speech& speech) {
    return {{"job",
             {{"material", word_of(document::metal_words, job.material)},
              {"thickness_mm", amount(job.thickness, mm)},
              {"current_a", amount(job.current, ampere)}}},
            {"feed_mm_min", figure(outlook.feed, mm_min)},
            {"next",
             {{"feed_mm_min", amount(outlook.next, mm_min)},
              {"clean", number(outlook.next_clean)},
              {"cuts_to_come", number(outlook.cuts_to_come)}}},
            {"best", {{"feed_mm_min", amount(outlook.best, mm_min)}, {"clean", number(outlook.best_clean)}}},
            {"stop", outlook.stop},
            {"past_table", outlook.past_table},
            {"ladder", ladder_json(outlook)},
            {"advice", say(outlook.advice, speech)},
            {"trail",
             {{"physics_feed_mm_min", figure(trail.physics, mm_min)},
              {"practice_feed_mm_min", figure(trail.practice, mm_min)},
              {"own_feed_mm_min", figure(trail.own, mm_min)}}},
            {"rows", list_of(posterior.notes, [&](const tune::RowNote& note) { return row_json(note, speech); })},
            {"curve", list_of(outlook.curve, point_json)}};
}

} // namespace torchside::cli
