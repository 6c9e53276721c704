#include "web/screens/cut/chart_marks.hpp"

#include <algorithm>

#include "generated/words/basis.hpp"
#include "generated/words/chart.hpp"
#include "generated/words/picture.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

// In the order of DominantBasis, and of Tested.
constexpr Word footing_names[] = {words::basis::physics, words::chart::practice}; // and the cuts of a shop
constexpr const char* footing_words[] = {"physics", "practice", "cuts"};
constexpr const char* tested_words[] = {"", "near", "here"};
constexpr Word reach_words[] = {{}, words::chart::edge_start, words::chart::rough, {}}; // by Reach

constexpr Whose yours{
    words::chart::your_cuts, {{}, words::chart::near_yours, words::chart::here_yours}, words::chart::by_you};
constexpr Whose of_example{
    words::chart::example_cuts, {{}, words::chart::near_example, words::chart::here_example}, words::chart::there};

} // namespace

const Whose& whose(const App& app) {
    return app.book().shop.example ? of_example : yours;
}

std::string about_cell(const App& app, const std::string& range, tune::DominantBasis footing, Tested tested,
                       cut::Reach reach) {
    const Whose& who = whose(app);
    std::string out = app.say(reach_words[static_cast<std::size_t>(reach)]);
    out += (out.empty() || range.empty() ? "" : ". ") + range;
    const Word basis = footing == tune::DominantBasis::cuts ? who.cuts : footing_names[static_cast<int>(footing)];
    out += (out.empty() ? "" : ". ") + app.say(words::chart::Basis{.what = basis});
    return tested == Tested::none ? out : out + ". " + app.say(who.tested[static_cast<int>(tested)]);
}

std::string paper_marks(tune::DominantBasis footing, Tested tested, cut::Reach reach) {
    std::string out = std::string("mark-") + footing_words[static_cast<int>(footing)];
    out += reach == cut::Reach::clean ? "" : " mark-unclean";
    return tested == Tested::none ? out : out + " mark-" + tested_words[static_cast<int>(tested)];
}

void footing_mark(const Pen& pen, Colour ink, tune::DominantBasis footing, Point c, float half) {
    const Rect box{c.x - half, c.y - half, 2 * half, 2 * half};
    const float filled = footing == tune::DominantBasis::cuts       ? box.w
                         : footing == tune::DominantBasis::practice ? half
                                                                    : 0;
    pen.fill({box.x, box.y, filled, box.h}, ink);
    pen.frame(box, ink, 1.25F);
}

void tested_mark(const Pen& pen, Colour ink, Tested tested, Point c) {
    if (tested == Tested::here) {
        pen.ring(c, 3.5F, ink, 1.5F);
    } else if (tested == Tested::near) {
        pen.disc(c, 2, ink);
    }
}

namespace {

/// The marks with their words, in as many lines as they need; returns the height used.
float chart_key(const App& app, Point at, float room, bool draw) {
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.tokens();
    const Whose& who = whose(app);
    const float line_height = Pen::line_height(Type::label) + 3;
    const Word names[] = {footing_names[0], footing_names[1], who.cuts, who.here, words::chart::near};
    float x = at.x;
    float y = at.y;
    for (int i = 0; i < 5; ++i) {
        const std::string_view name = app.word(names[i]);
        const float w = 16 + pen.width(Type::label, name) + 14;
        if (x > at.x && x + w - 14 > at.x + room) {
            x = at.x;
            y += line_height;
        }
        if (draw) {
            const Point c{x + 5, y + Pen::line_height(Type::label) / 2};
            if (i < 3) {
                footing_mark(pen, t.ink, static_cast<tune::DominantBasis>(i), c);
            } else {
                tested_mark(pen, t.ink, i == 3 ? Tested::here : Tested::near, c);
            }
            pen.text(Type::label, {x + 16, y}, t.ink, name);
        }
        x += w;
    }
    return y + line_height - at.y;
}

std::string legend_words(const App& app) {
    return app.say(words::chart::Note{.cuts = whose(app).cuts}) + ' ' + app.say(words::picture::map);
}

/// Where a value lies among those of a row, in cells: 1.5 is in the middle between the second and the third.
template <class Get>
float place_among(std::size_t count, double value, Get get) {
    for (std::size_t i = 0; i + 1 < count; ++i) {
        if (value < get(i + 1)) {
            const double span = get(i + 1) - get(i);
            const double share = span > 0 ? std::clamp((value - get(i)) / span, 0.0, 1.0) : 0.0;
            return static_cast<float>(static_cast<double>(i) + share);
        }
    }
    return static_cast<float>(count) - 1;
}

} // namespace

float legend_height(const App& app, float room) {
    return app.scratch.chart_key
               ? chart_key(app, {}, room, false) +
                     app.ui().pen().paragraph(Type::label, {}, {}, legend_words(app), room, false) + 14
               : 0;
}

float chart_legend(App& app, Rect place) {
    Ui& ui = app.ui();
    const float high = legend_height(app, place.w);
    const bool open = high > 0;
    const float keys = open ? chart_key(app, {place.x, place.y + 2}, place.w, true) : 0;
    const Rect key{place.x, place.y, place.w, open ? keys + 2 : 1};
    const Rect note{place.x, key.bottom(), place.w, open ? high - key.h : 1};
    const std::string words = legend_words(app);
    if (open) {
        ui.pen().paragraph(Type::label, {note.x, note.y + 4}, app.tokens().quiet, words, note.w);
    }
    ui.node("chart/key", Role::text, key, app.say(words::chart::Key{.cuts = whose(app).cuts, .here = whose(app).here}),
            {}, "printable");
    ui.node("chart/note", Role::text, note, words, {}, "printable");
    if (app.drafts.first() != nullptr) { // the sheet that is taped to the table says so too
        ui.node("chart/draft", Role::text, {place.x, note.bottom(), place.w, 1}, draft_words(app), {}, "printable");
    }
    return high;
}

void reach_edges(const Pen& pen, const Tokens& t, const Chart& chart, std::size_t row, std::size_t column, Rect cell) {
    const auto clean = [&](std::size_t r, std::size_t c) { return chart.at(r, c).reach == cut::Reach::clean; };
    if (row > 0 && clean(row - 1, column) != clean(row, column)) {
        pen.hline(cell.x, cell.right(), cell.y - 0.5F, t.ink, 3);
    }
    if (column > 0 && clean(row, column - 1) != clean(row, column)) {
        pen.vline(cell.x - 0.5F, cell.y, cell.bottom(), t.ink, 3);
    }
}

void open_job(App& app, const Chart& chart, Rect first) {
    const Job& job = app.book().job;
    const float row =
        place_among(chart.rows.size(), job.thickness.in(mm), [&](std::size_t i) { return chart.rows[i].in(mm); });
    const float column = place_among(chart.columns.size(), job.current.in(ampere),
                                     [&](std::size_t i) { return chart.columns[i].current.in(ampere); });
    const Point c{first.x + first.w * (column + 0.5F), first.y + first.h * (row + 0.5F)};
    const Pen& pen = app.ui().pen();
    constexpr float radius = 11;
    pen.ring(c, radius, app.tokens().ground, 6);
    pen.ring(c, radius, app.tokens().accent, 3.5F);
    app.ui().node(
        "chart/open", Role::img, {c.x - radius, c.y - radius, 2 * radius, 2 * radius},
        app.say(words::picture::OpenJob{.current = show(job.current, app.units()).whole(),
                                        .plate = show_plate(job.thickness, job.material, app.units()).whole()}));
}

} // namespace torchside::web
