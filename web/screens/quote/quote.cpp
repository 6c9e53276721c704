// Quote: what to ask, what it costs, what it takes out of the consumables, and the way to the customer.
#include <algorithm>

#include "core/quantity/print.hpp"
#include "web/kit/controls.hpp"
#include "web/kit/figures.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

Span span_of(const Estimate<double>& e) {
    return {e.value, e.low, e.high};
}

std::string band(const Estimate<double>& e, int places) {
    return show_money(e.low, places) + " to " + show_money(e.high, places);
}

float price_figure(App& app, Rect place, const price::Report& price) {
    const std::string& currency = app.book().shop.rates.currency;
    const int quantity = app.book().job.quantity;
    const std::string name = quantity == 1 ? "Price" : "Price of " + std::to_string(quantity);
    const std::string aside =
        price::print(price.each, price.decimals) + (price.each_rounded ? " each, rounded" : " each");
    const std::string about =
        "Our figures leave open " + band(price.price_total, price.decimals) + (price.tax ? " · before tax" : "");
    const Rect cell{place.x, place.y, place.w, big_figure_height(app.ui())};
    if (big_figure(app.ui(), "quote/total", cell,
                   {name, price::print(price.total, price.decimals), currency, aside, about, span_of(price.price_total),
                    true, app.open_panel() == "costs"},
                   {})) {
        app.open("costs");
    }
    return cell.h;
}

struct Cell {
    const char* key;
    const char* name;
    std::string number;
    const char* unit;
    Span span{};
    const char* panel = "costs";
};

float cells(App& app, Rect place, const price::Report& price) {
    const wear::Report& wear = app.worksheet().wear;
    const auto percent = [](double share) { return print_fixed(share * 100, 1); };
    const Cell all[] = {
        {"cost", "Cost each", show_money(price.cost_each.value, price.decimals), "", span_of(price.cost_each)},
        {"margin", "Margin", percent(price.margin), "%", {}, "rates"},
        {"markup", "Markup", percent(price.markup), "%", {}, "rates"},
        {"life", "Life used", print_fixed(wear.life_used.value * 100, 0), "%", span_of(wear.life_used), "wear"},
        {"uses", "Job uses", print_fixed(wear.job_uses.value, 2), "sets", span_of(wear.job_uses), "wear"},
        {"hold", "Spare sets", std::to_string(wear.sets_to_hold), "", {}, "wear"},
    };
    const FigureGrid grid = figure_grid(app.ui(), place, std::size(all));
    for (std::size_t i = 0; i < std::size(all); ++i) {
        const Cell& c = all[i];
        const Rect at = grid.cell(i);
        const std::string about = c.span.high > c.span.low && c.unit[0] == '\0' ? "80 % band" : "";
        if (small_figure(app.ui(), std::string("quote/") + c.key, at,
                         {c.name, c.number, c.unit, "", about, c.span, c.span.high > c.span.low, false})) {
            app.open(c.panel);
        }
    }
    draw_lines(app.ui(), grid);
    return grid.height() + 1;
}

float rows(App& app, Rect place) {
    Ui& ui = app.ui();
    float y = place.y;
    ui.open_group("quote/verdicts", Role::list, {place.x, y, place.w, 0}, "What to know, worst first");
    for (const Verdict& v : quote_verdicts(app)) {
        const Rect row{place.x, y, place.w, verdict_height(ui, v.sentence, v.way_out, place.w)};
        if (verdict_row(ui, "quote/verdict/" + v.code, row, v.sign, v.sentence, v.way_out,
                        app.open_panel() == v.panel)) {
            app.open(v.panel);
        }
        y += row.h;
    }
    ui.close_group();
    struct Link {
        const char* panel;
        const char* title;
        const char* quiet;
    };
    constexpr Link links[] = {{"send", "To the customer", "Link, QR code, file or page"},
                              {"rates", "What you charge", "Hours, material, margin, minimum"},
                              {"costs", "Cost line by line", "And making against buying"},
                              {"breaks", "Other quantities", "What more or fewer cost"},
                              {"terms", "What the customer reads", "Name, number, validity, tax, note"},
                              {"issued", "Quotes handed out", "Numbers, revisions, your seal's key"},
                              {"wear", "Nozzle and electrode", "Change, log, hold"}};
    for (const Link& link : links) {
        const float height = link_height(ui, link.title, link.quiet, place.w);
        if (link_row(ui, std::string("quote/open/") + link.panel, {place.x, y, place.w, height}, link.title, link.quiet,
                     Mark::quote, app.open_panel() == link.panel)) {
            app.open(link.panel);
        }
        y += height;
    }
    return y - place.y;
}

} // namespace

void quote_screen(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("quote", Role::main, place, "Quote");
    const Point at = ui.open_region("quote", place);
    Rect column{at.x, at.y, place.w, 1e6F};
    if (const auto& price = app.worksheet().price) {
        column.take_top(price_figure(app, column, *price));
        column.take_top(cells(app, column, *price));
    } else {
        const std::string none = missing(app, "price");
        const Rect row{column.x, column.y, column.w, verdict_height(ui, none, "See the part", column.w)};
        if (verdict_row(ui, "quote/none", row, Sign::stop, none, "See the part")) {
            app.go(Page::part);
        }
        column.take_top(row.h);
    }
    column.take_top(rows(app, column) + 12);
    ui.close_region({place.w, column.y - at.y});
    ui.close_group();
}

} // namespace torchside::web
