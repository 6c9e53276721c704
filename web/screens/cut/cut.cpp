// Cut: what to dial in, and what stands in the way. Figures first, then verdict rows, worst first.
#include <algorithm>
#include <vector>

#include "generated/words/figure.hpp"
#include "generated/words/place.hpp"
#include "generated/words/settings.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/cut/figure_tools.hpp"
#include "web/screens/cut/torch_picture.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

/// Feeds the user has cut at on this very stock: the open circles on the band.
std::vector<double> feeds_cut_here(const Workbook& book) {
    std::vector<double> feeds;
    for (const tune::TestCut* cut : cuts_of_job(book)) {
        if (cut->feed && !cut->worn) {
            feeds.push_back(cut->feed->in(mm_min));
        }
    }
    return feeds;
}

bool is_open(const App& app, std::string_view figure) {
    return app.open_panel() == std::string("figure/") + std::string(figure);
}

void feed_figure(Body& column, const cut::Settings& settings) {
    App& app = column.app;
    const auto& feed = settings.feed;
    const Shown shown = show_feed(app, feed.value);
    Basis basis = feed.basis;
    if (app.book().shop.example && basis.tests > 0) {
        basis = Basis{.tests = basis.tests}; // the line holds no more; the figure's panel has all of it
    }
    const std::string about = show_range(app, feed) + " · " + show_basis(app, basis);
    if (column.figure("cut/feed",
                      {words::figure::feed, shown.number, shown.unit, shown.other, about, span_of(feed, mm_min),
                       is_open(app, "feed")},
                      feeds_cut_here(app.book()))) {
        app.open("figure/feed");
    }
}

/// Those of the second rank: all but the feed.
void other_figures(Body& column, const cut::Settings& s) {
    App& app = column.app;
    const Shop& shop = app.book().shop;
    std::vector<FigureCell> cells;
    for (const Figure& figure : figures().subspan(1)) {
        const Shown shown = show(app, figure, s);
        const auto e = figure.of(s, UnitSystem::metric).value_or(Estimate<double>{});
        const bool read = figure.measure == Measure::volts && shop.height_control.divider_ratio > 1;
        cells.push_back(
            {figure.key,
             app.say(figure.name),
             shown.number,
             shown.unit,
             read ? show(s.controller, app.units()).whole() : "",
             (read ? app.say(words::settings::Read{.volts = show(s.controller, app.units()).whole()}) + ' ' : "") +
                 show_basis(app, e.basis),
             {e.value, e.low, e.high},
             "",
             is_open(app, figure.key)});
    }
    if (const auto used = column.figures("cut/", cells, 3)) {
        const std::string_view key = cells[*used].key;
        app.open("figure/" + std::string(key));
        if (key == "arc") { // one reads the controller and types it
            app.ui().start_edit(arc_reading_field, "");
        }
    }
}

/// The plate is past reach: no figures, the reason in full, and the way out.
void refused(Body& column) {
    Ui& ui = column.ui();
    const Tokens& t = ui.tokens();
    const Point corner = column.at();
    draw_sign(ui.pen(), t, Sign::stop, {corner.x + 10, corner.y + 34});
    column.gap(22 + words(ui, "cut/refused", Type::title, {corner.x + 32, corner.y + 22}, column.width() - 60,
                          ui.word(words::settings::none), t.stop));
    column.gap(16);
    column.text("cut/refused/why", column.app.say(column.app.worksheet().capacity.reason));
    column.gap(16);
    column.rule();
}

void rows(Body& column) {
    App& app = column.app;
    Ui& ui = app.ui();
    if (column.row("cut/bench", words::settings::bench, words::settings::bench_about, Mark::table)) {
        app.open("bench");
    }
    ui.open_group("cut/verdicts", Role::list, column.strip(0), words::settings::checks);
    for (const Verdict& v : verdicts(app)) {
        if (column.verdict("cut/verdict/" + v.code, v.sign, v.sentence, v.remedy, app.open_panel() == v.panel)) {
            app.open(v.panel);
        }
    }
    ui.close_group();
    if (platform::whole()) {
        after_answer(column);
    } else {
        platform::request_frame(); // comes when it is
    }
}

} // namespace

void cut_screen(App& app, Rect place) {
    const auto body = [&](Body& column) {
        if (const auto& settings = app.worksheet().settings) {
            feed_figure(column, *settings);
            torch_picture(column.ui(), column.inside(torch_picture_height()), app.book(), *settings, app.speech());
            column.gap(14);
            other_figures(column, *settings);
        } else {
            refused(column);
        }
        rows(column);
        column.gap(12);
    };
    framed_screen(app, place, "cut", words::place::cut, Drawer::of(body));
}

} // namespace torchside::web
