#include "tools/cli/results/evidence.hpp"

#include <cstdio>

#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

constexpr std::string_view measured_words[] = {"feed_mm_min", "kerf_mm", "arc_v"};

Json stated(double value) {
    return value > 0 ? number(value) : Json();
}

Json row_json(const Published& row) {
    return {{"id", std::string(row.id)},
            {"material", row.metal ? Json(word_of(document::metal_words, *row.metal)) : Json()},
            {"thickness_mm", stated(row.thickness_mm)},
            {"current_a", stated(row.current_a)},
            {"bore_mm", stated(row.bore_mm)},
            {"source", std::string(published_sources()[static_cast<std::size_t>(row.source)])},
            {"status", row.seen ? "seen" : "memory"}};
}

Json compared_json(const Compared& c) {
    Json out = row_json(*c.row);
    out["measured"] = measured_words[static_cast<std::size_t>(c.what)];
    out["published"] = number(c.published);
    out["ours"] = figure(c.ours);
    out["ln_error"] = number(c.ln_error);
    out["off"] = number(c.off);
    out["inside_band"] = c.inside;
    out["used_in_fit"] = c.fitted;
    return out;
}

Json summary_json(const EvidenceSummary& s) {
    const bool any = s.rows > 0;
    return {{"measured", measured_words[static_cast<std::size_t>(s.what)]},
            {"rows", s.rows},
            {"used_in_fit", s.fitted},
            {"bias_ln", any ? number(s.bias) : Json()},
            {"rms_ln", any ? number(s.rms) : Json()},
            {"coverage80", any ? number(s.coverage) : Json()}};
}

std::string line_of(const char* format, auto... values) {
    char line[240];
    std::snprintf(line, sizeof line, format, values...);
    return line;
}

std::string text_of(double value) {
    return value > 0 ? line_of("%.4g", value) : "-";
}

} // namespace

Json evidence_json(const Evidence& evidence) {
    Json out;
    out["summary"] = list_of(evidence.summaries, summary_json);
    out["rows"] = list_of(evidence.compared, compared_json);
    out["not_compared"] = list_of(evidence.not_compared, [](const Published* row) { return row_json(*row); });
    return out;
}

std::string evidence_text(const Evidence& evidence) {
    std::string out = "measured      rows  in a fit  on average  as a rule  inside the 80 % band\n";
    for (const EvidenceSummary& s : evidence.summaries) {
        const char* name = measured_words[static_cast<std::size_t>(s.what)].data();
        out += s.rows > 0 ? line_of("%-12s %5d  %8d  %+8.0f %%  x %6.2f  %6.0f %%\n", name, s.rows, s.fitted,
                                    100 * s.off, s.factor, 100 * s.coverage)
                          : line_of("%-12s %5d  %8d  -\n", name, s.rows, s.fitted);
    }
    out += "\nid       material    mm       A        measured      published  ours       from       to         error   "
           "  source\n";
    for (const Compared& c : evidence.compared) {
        const Published& row = *c.row;
        out += line_of("%-8s %-11s %-8s %-8s %-12s  %-9.4g  %-9.4g  %-9.4g  %-9.4g  %+6.0f %%%s  %d%s\n",
                       std::string(row.id).c_str(), word_of(document::metal_words, *row.metal).data(),
                       text_of(row.thickness_mm).c_str(), text_of(row.current_a).c_str(),
                       measured_words[static_cast<std::size_t>(c.what)].data(), c.published, c.ours.value, c.ours.low,
                       c.ours.high, 100 * c.off, c.inside ? " " : "!", row.source + 1, c.fitted ? " (in a fit)" : "");
    }
    for (const Published* row : evidence.not_compared) {
        out += line_of("%-8s not compared: something that must be known is not stated  %d\n",
                       std::string(row->id).c_str(), row->source + 1);
    }
    out += "\nerror: ours / published - 1; as a rule: a factor, by the root mean square of the logarithm; ! outside "
           "the band; ours: a shop without a log\n";
    for (std::size_t i = 0; i < published_sources().size(); ++i) {
        out += line_of("%zu  ", i + 1) + std::string(published_sources()[i]) + '\n';
    }
    return out;
}

} // namespace torchside::cli
