// Cut: what to dial in, and what stands in the way. Figures first, then verdict rows, worst first.
#include <algorithm>
#include <vector>

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
    const Shown shown = show_feed(feed.value, app.book().shop);
    Basis basis = feed.basis;
    if (app.book().shop.example && basis.tests > 0) {
        basis = Basis{.tests = basis.tests}; // the line holds no more; the figure's panel has all of it
    }
    const std::string about =
        show_range(feed, app.book().shop.display.units) + " · " + show_basis(basis, app.book().shop.example);
    if (column.figure(
            "cut/feed",
            {"Feed", shown.number, shown.unit, shown.other, about, span_of(feed, mm_min), is_open(app, "feed")},
            feeds_cut_here(app.book()))) {
        app.open("figure/feed");
    }
}

/// One of the second rank, of any kind of quantity.
template <class Q>
FigureCell cell(const App& app, const char* key, const char* name, const Estimate<Q>& e, Unit<typename Q::kind> unit,
                const Shown& shown, std::string aside = {}) {
    return {key,
            name,
            shown.number,
            shown.unit,
            std::move(aside),
            show_basis(e.basis, app.book().shop.example),
            span_of(e, unit),
            "",
            is_open(app, key)};
}

void figures(Body& column, const cut::Settings& s) {
    App& app = column.app;
    const UnitSystem units = app.book().shop.display.units;
    const bool divided = app.book().shop.height_control.divider_ratio > 1;
    const auto delay = s.pierce_delay.value_or(Estimate<Duration>{});
    const FigureCell cells[] = {
        cell(app, "arc", "Arc volts", s.arc, volt, show(s.arc.value),
             divided ? show(s.controller).whole() + " read" : ""),
        cell(app, "pierce_height", "Pierce height", s.pierce_height, mm, show(s.pierce_height.value, units)),
        cell(app, "pierce_delay", "Pierce delay", delay, second,
             s.pierce_delay ? show(delay.value) : Shown{"edge", "start", ""}),
        cell(app, "kerf", "Kerf", s.kerf, mm, show(s.kerf.value, units)),
        cell(app, "lead_in", "Lead-in", s.lead_in, mm, show(s.lead_in.value, units)),
        cell(app, "min_hole", "Smallest hole", s.min_hole, mm, show_least_hole(s, units)),
    };
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
                          "No settings for this plate", t.stop));
    column.gap(16);
    column.text("cut/refused/why", column.app.say(column.app.worksheet().capacity.reason));
    column.gap(16);
    column.rule();
}

void rows(Body& column) {
    App& app = column.app;
    Ui& ui = app.ui();
    ui.open_group("cut/verdicts", Role::list, column.strip(0), "Verdicts, worst first");
    for (const Verdict& v : verdicts(app)) {
        if (column.verdict("cut/verdict/" + v.code, v.sign, v.sentence, v.way_out, app.open_panel() == v.panel)) {
            app.open(v.panel);
        }
    }
    ui.close_group();
    if (!app.wide() &&
        column.row("cut/chart", "Chart for this shop", "Every plate and current; print it", Mark::chart)) {
        app.open("chart");
    }
    copy_settings(column);
}

} // namespace

void cut_screen(App& app, Rect place) {
    const auto body = [&](Body& column) {
        if (const auto& settings = app.worksheet().settings) {
            feed_figure(column, *settings);
            torch_picture(column.ui(), column.inside(torch_picture_height()), app.book(), *settings);
            column.gap(14);
            figures(column, *settings);
        } else {
            refused(column);
        }
        rows(column);
        column.gap(12);
    };
    framed_screen(app, place, "cut", "Cut", Drawer::of(body));
}

} // namespace torchside::web
