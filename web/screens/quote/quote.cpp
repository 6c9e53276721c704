// Quote: what to ask, what it costs, what it takes out of the consumables, and the way to the customer.
#include "core/quantity/print.hpp"
#include "web/screens/panel.hpp"
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

void price_figure(Body& column, const price::Report& price) {
    App& app = column.app;
    const int quantity = app.book().job.quantity;
    const std::string name = quantity == 1 ? "Price" : "Price of " + std::to_string(quantity);
    const std::string aside =
        price::print(price.each, price.decimals) + (price.each_rounded ? " each, rounded" : " each");
    const std::string about =
        "Our figures leave open " + band(price.price_total, price.decimals) + (price.tax ? " · before tax" : "");
    if (column.figure("quote/total", {name, price::print(price.total, price.decimals), app.book().shop.rates.currency,
                                      aside, about, span_of(price.price_total), app.open_panel() == "costs"})) {
        app.open("costs");
    }
}

void figures(Body& column, const price::Report& price) {
    const wear::Report& wear = column.app.worksheet().wear;
    const auto percent = [](double share) { return print_fixed(share * 100, 1); };
    const Span cost = span_of(price.cost_each);
    const FigureCell cells[] = {
        {"cost",
         "Cost each",
         show_money(price.cost_each.value, price.decimals),
         {},
         {},
         cost.high > cost.low ? "80 % band" : "",
         cost,
         "costs"},
        {"margin", "Margin", percent(price.margin), "%", {}, {}, {}, "rates"},
        {"markup", "Markup", percent(price.markup), "%", {}, {}, {}, "rates"},
        {"life", "Life used", print_fixed(wear.life_used.value * 100, 0), "%", {}, {}, span_of(wear.life_used), "wear"},
        {"uses", "Job uses", print_fixed(wear.job_uses.value, 2), "sets", {}, {}, span_of(wear.job_uses), "wear"},
        {"hold", "Spare sets", std::to_string(wear.sets_to_hold), {}, {}, {}, {}, "wear"},
    };
    if (const auto used = column.figures("quote/", cells)) {
        column.app.open(cells[*used].opens);
    }
}

void rows(Body& column) {
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
    App& app = column.app;
    app.ui().open_group("quote/verdicts", Role::list, column.strip(0), "What to know, worst first");
    for (const Verdict& v : quote_verdicts(app)) {
        if (column.verdict("quote/verdict/" + v.code, v.sign, v.sentence, v.remedy, app.open_panel() == v.panel)) {
            app.open(v.panel);
        }
    }
    app.ui().close_group();
    for (const Link& link : links) {
        if (column.row(std::string("quote/open/") + link.panel, link.title, link.quiet, Mark::quote,
                       app.open_panel() == link.panel)) {
            app.open(link.panel);
        }
    }
}

} // namespace

void quote_screen(App& app, Rect place) {
    const auto body = [&](Body& column) {
        if (const auto& price = app.worksheet().price) {
            price_figure(column, *price);
            figures(column, *price);
        } else if (column.verdict("quote/none", Sign::stop, missing(app, "price"), "See the part")) {
            app.go(Page::part);
        }
        rows(column);
        column.gap(12);
    };
    framed_screen(app, place, "quote", "Quote", Drawer::of(body));
}

} // namespace torchside::web
