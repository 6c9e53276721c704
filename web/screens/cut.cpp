// Cut: what to dial in, and what stands in the way. Figures first, then verdict rows, worst first.
#include <algorithm>
#include <vector>

#include "web/kit/controls.hpp"
#include "web/kit/figures.hpp"
#include "web/screens/figure_tools.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/torch_picture.hpp"
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
    return app.open_sheet() == std::string("figure/") + std::string(figure);
}

float feed_figure(App& app, Rect place, const cut::Settings& settings) {
    const UnitSystem units = app.book().shop.display.units;
    const auto& feed = settings.feed;
    const Shown shown = show_feed(feed.value, app.book().shop);
    Basis basis = feed.basis;
    if (app.book().shop.example && basis.tests > 0) {
        basis = Basis{.tests = basis.tests}; // the line holds no more; the figure's sheet has all of it
    }
    const std::string about = show_range(feed, units) + " · " + show_basis(basis, app.book().shop.example);
    const auto cuts = feeds_cut_here(app.book());
    const Rect cell{place.x, place.y, place.w, big_figure_height(app.ui())};
    if (big_figure(
            app.ui(), "cut/feed", cell,
            {"Feed", shown.number, shown.unit, shown.other, about, span_of(feed, mm_min), true, is_open(app, "feed")},
            cuts)) {
        app.open("figure/feed");
    }
    return cell.h;
}

/// One cell of the second rank, for any kind of quantity.
template <class Q>
void cell(App& app, Rect place, const char* key, const char* name, const Estimate<Q>& e, Unit<typename Q::kind> unit,
          const Shown& shown, std::string_view aside) {
    const std::string id = std::string("cut/") + key;
    const std::string about = show_basis(e.basis, app.book().shop.example);
    if (small_figure(
            app.ui(), id, place,
            {name, shown.number, shown.unit, aside, about, span_of(e, unit), e.high > e.low, is_open(app, key)})) {
        app.open(std::string("figure/") + key);
        if (key == std::string_view("arc")) { // one reads the controller and types it
            app.ui().start_edit(arc_reading_field, "");
        }
    }
}

float figure_rows(App& app, Rect place, const cut::Settings& s) {
    const UnitSystem units = app.book().shop.display.units;
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.ui().tokens();
    const float w = place.w / 3;
    const float h = small_figure_height(app.ui());
    const auto at = [&](int column, int row) {
        return Rect{place.x + w * static_cast<float>(column), place.y + (h + 1) * static_cast<float>(row), w, h};
    };
    pen.hline(place.x, place.right(), place.y, t.rule, 1.5F);
    const bool divided = app.book().shop.height_control.divider_ratio > 1;
    const std::string controller = divided ? show(s.controller).whole() + " read" : "";
    cell(app, at(0, 0), "arc", "Arc volts", s.arc, volt, show(s.arc.value), controller);
    cell(app, at(1, 0), "pierce_height", "Pierce height", s.pierce_height, mm, show(s.pierce_height.value, units), "");
    cell(app, at(2, 0), "pierce_delay", "Pierce delay", s.pierce_delay.value_or(Estimate<Duration>{}), second,
         s.pierce_delay ? show(s.pierce_delay->value) : Shown{"edge", "start", ""}, "");
    pen.hline(place.x, place.right(), place.y + h + 0.5F, t.hairline, 1);
    cell(app, at(0, 1), "kerf", "Kerf", s.kerf, mm, show(s.kerf.value, units), "");
    cell(app, at(1, 1), "lead_in", "Lead-in", s.lead_in, mm, show(s.lead_in.value, units), "");
    cell(app, at(2, 1), "min_hole", "Smallest hole", s.min_hole, mm, show_least_hole(s, units), "");
    for (const float x : {place.x + w, place.x + 2 * w}) {
        pen.vline(x, place.y, place.y + 2 * h + 1, t.hairline, 1);
    }
    pen.hline(place.x, place.right(), place.y + 2 * h + 1, t.rule, 1.5F);
    return 2 * h + 2;
}

/// The plate is past reach: no figures, the reason in full, and the way out.
float refused(App& app, Rect place) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    draw_sign(ui.pen(), t, Sign::stop, {place.x + 24, place.y + 34});
    float y = place.y + 22;
    y += words(ui, "cut/refused", Type::title, {place.x + 46, y}, place.w - 60, "No settings for this plate", t.stop) +
         8;
    y += words(ui, "cut/refused/why", Type::text, {place.x + 14, y + 8}, place.w - 28,
               app.say(app.sheet().capacity.reason), t.ink) +
         24;
    return y - place.y;
}

float rows(App& app, Rect place) {
    Ui& ui = app.ui();
    float y = place.y;
    ui.open_group("cut/verdicts", Role::list, {place.x, y, place.w, 0}, "Verdicts, worst first");
    for (const Verdict& v : verdicts(app)) {
        const Rect row{place.x, y, place.w, verdict_height(ui, v.sentence, v.way_out, place.w)};
        if (verdict_row(ui, "cut/verdict/" + v.code, row, v.sign, v.sentence, v.way_out, app.open_sheet() == v.sheet)) {
            app.open(v.sheet);
        }
        y += row.h;
    }
    ui.close_group();
    if (!app.wide()) {
        const Rect row{place.x, y, place.w, ui.reach()};
        if (link_row(ui, "cut/chart", row, "Chart for this shop", "Every plate and current; print it", Mark::chart)) {
            app.open("chart");
        }
        y += row.h;
    }
    y += copy_settings(app, {place.x, y, place.w, ui.reach()});
    return y - place.y;
}

} // namespace

void cut_screen(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("cut", Role::main, place, "Cut");
    const Point at = ui.open_region("cut", place);
    Rect column{at.x, at.y, place.w, 1e6F};
    if (const auto& settings = app.sheet().settings) {
        column.take_top(feed_figure(app, column, *settings));
        const Rect picture = column.take_top(torch_picture_height());
        torch_picture(ui, picture.inset(14, 0), app.book(), *settings);
        column.take_top(14);
        column.take_top(figure_rows(app, column, *settings));
    } else {
        column.take_top(refused(app, column));
        ui.pen().hline(place.x, place.right(), column.y, ui.tokens().rule, 1.5F);
    }
    column.take_top(rows(app, column) + 12);
    ui.close_region({place.w, column.y - at.y});
    ui.close_group();
}

} // namespace torchside::web
