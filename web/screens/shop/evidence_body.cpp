// How good the numbers are: every published cut, what is said of it now, and the error.
#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "core/worksheet/evidence.hpp"
#include "generated/words/evidence.hpp"
#include "generated/words/figure.hpp"
#include "web/screens/body.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr Word names[] = {words::figure::feed, words::figure::kerf, words::figure::arc}; // by Measured

std::string figure_words(const App& app, Measured what, double value) {
    const Units units = app.units();
    switch (what) {
    case Measured::feed:
        return print(Speed{value, mm_min}, units).text();
    case Measured::kerf:
        return print(Length{value, mm}, units).text();
    case Measured::arc:
        break;
    }
    return print(Voltage{value, volt}, units).text();
}

/// "Mild steel, 20 mm, 130 A": what of it is stated.
std::string plate_words(const App& app, const Published& row) {
    const Units units = app.units();
    std::string out = row.metal ? app.say(stock::name(*row.metal)) : app.say(words::evidence::no_metal);
    if (row.thickness_mm > 0) {
        out += ", " + print(Length{row.thickness_mm, mm}, units).text();
    }
    if (row.current_a > 0) {
        out += ", " + print(Current{row.current_a, ampere}, units).text();
    }
    return out;
}

void summary_rows(Body& body, const Evidence& e) {
    const App& app = body.app;
    for (const EvidenceSummary& s : e.summaries) {
        const auto index = static_cast<std::size_t>(s.what);
        const std::string id = "evidence/" + std::to_string(index);
        body.words(id, Type::strong_label, app.word(names[index]), body.ui().tokens().ink);
        Text text =
            s.rows > 0
                ? Text(words::evidence::Summary{.bias = words::percent(s.off < 0 ? -s.off : s.off),
                                                .count = s.rows,
                                                .inside = words::percent(s.coverage),
                                                .rms = words::significant(s.factor, 2),
                                                .side = s.bias < 0 ? words::evidence::low : words::evidence::high})
                : Text(words::evidence::no_rows);
        if (s.fitted > 0) {
            text += words::evidence::Fitted{.count = s.fitted};
        }
        body.text(id + "/says", app.say(text));
        body.gap(8);
    }
}

void compared_rows(Body& body, const Evidence& e) {
    const App& app = body.app;
    const Tokens& t = body.ui().tokens();
    for (std::size_t i = 0; i < e.compared.size(); ++i) {
        const Compared& c = e.compared[i];
        const std::string id = "evidence/row/" + std::to_string(i);
        if (i == 0 || e.compared[i - 1].what != c.what) {
            const auto index = static_cast<std::size_t>(c.what);
            body.heading("evidence/of/" + std::to_string(index), names[index]);
        }
        body.words(id, Type::label,
                   app.say(words::evidence::Row{.id = c.row->id,
                                                .plate = words::verbatim(plate_words(app, *c.row)),
                                                .source = c.row->source + 1}),
                   t.quiet);
        Text text = words::evidence::Said{.error = words::percent(c.off < 0 ? -c.off : c.off),
                                          .ours = words::verbatim(figure_words(app, c.what, c.ours.value)),
                                          .published = words::verbatim(figure_words(app, c.what, c.published)),
                                          .side = c.ln_error < 0 ? words::evidence::low : words::evidence::high};
        if (c.fitted) {
            text += words::evidence::in_fit;
        } else if (!c.inside) {
            text += words::evidence::outside;
        }
        body.words(id + "/says", Type::text, app.say(text), c.fitted ? t.quiet : c.inside ? t.ink : t.caution);
        body.gap(6);
    }
}

} // namespace

void evidence_body(Body& body) {
    const App& app = body.app;
    const Evidence e = evidence();
    body.gap(10);
    body.text("evidence/what", words::evidence::what);
    body.gap(12);
    summary_rows(body, e);
    compared_rows(body, e);
    body.heading("evidence/left", words::evidence::not_compared);
    for (const Published* row : e.not_compared) {
        body.words("evidence/left/" + std::string(row->id), Type::label,
                   app.say(words::evidence::Row{
                       .id = row->id, .plate = words::verbatim(plate_words(app, *row)), .source = row->source + 1}),
                   body.ui().tokens().quiet);
        body.gap(4);
    }
    body.heading("evidence/sources", words::evidence::sources);
    for (std::size_t i = 0; i < published_sources().size(); ++i) {
        body.note("evidence/source/" + std::to_string(i),
                  app.say(words::evidence::Source{.number = static_cast<int>(i) + 1, .title = published_sources()[i]}));
        body.gap(6);
    }
    body.gap(16);
}

} // namespace torchside::web
