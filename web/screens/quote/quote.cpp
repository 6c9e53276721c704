// Quote: what to ask, what it costs, what it takes out of the consumables, and the way to the customer.
#include "core/quantity/print.hpp"
#include "generated/words/missing.hpp"
#include "generated/words/place.hpp"
#include "generated/words/quote_screen.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

Span span_of(const Estimate<double>& e) {
    return {e.value, e.low, e.high};
}

void price_figure(Body& column, const price::Report& price) {
    App& app = column.app;
    const int quantity = app.book().job.quantity;
    const Text name =
        quantity == 1 ? Text(words::quote_screen::price) : words::quote_screen::PriceOf{.count = quantity};
    const std::string each = price::print(price.each, price.decimals, app.units());
    const Text aside = price.each_rounded ? Text(words::quote_screen::EachRounded{.price = each})
                                          : words::quote_screen::Each{.price = each};
    const std::string low = show_money(price.price_total.low, price.decimals, app.units());
    const std::string high = show_money(price.price_total.high, price.decimals, app.units());
    const Text about = price.tax ? Text(words::quote_screen::LikelyBeforeTax{.high = high, .low = low})
                                 : words::quote_screen::Likely{.high = high, .low = low};
    const std::string said[] = {app.say(name), app.say(aside), app.say(about)};
    if (column.figure("quote/total",
                      {said[0], price::print(price.total, price.decimals, app.units()), app.book().shop.rates.currency,
                       said[1], said[2], span_of(price.price_total), app.open_panel() == "costs"})) {
        app.open("costs");
    }
}

void figures(Body& column, const price::Report& price) {
    const App& app = column.app;
    const wear::Report& wear = app.worksheet().wear;
    const auto percent = [&](double share) { return print_fixed(share * 100, 1, app.units()); };
    const Span cost = span_of(price.cost_each);
    const FigureCell cells[] = {
        {"cost",
         app.say(words::quote_screen::cost),
         show_money(price.cost_each.value, price.decimals, app.units()),
         {},
         {},
         cost.high > cost.low ? app.say(words::quote_screen::band) : "",
         cost,
         "costs"},
        {"margin", app.say(words::quote_screen::margin), percent(price.margin), "%", {}, {}, {}, "rates"},
        {"markup", app.say(words::quote_screen::markup), percent(price.markup), "%", {}, {}, {}, "rates"},
        {"life",
         app.say(words::quote_screen::life),
         print_fixed(wear.life_used.value * 100, 0),
         "%",
         {},
         {},
         span_of(wear.life_used),
         "wear"},
        {"uses",
         app.say(words::quote_screen::uses),
         print_fixed(wear.job_uses.value, 2, app.units()),
         app.say(words::quote_screen::sets),
         {},
         {},
         span_of(wear.job_uses),
         "wear"},
        {"hold", app.say(words::quote_screen::spares), std::to_string(wear.sets_to_hold), {}, {}, {}, {}, "wear"},
    };
    if (const auto used = column.figures("quote/", cells)) {
        column.app.open(cells[*used].opens);
    }
}

void rows(Body& column) {
    struct Link {
        const char* panel;
        Word title;
        Word quiet;
        Mark mark;
    };
    using namespace words::quote_screen;
    constexpr Link links[] = {{"send", words::quote_screen::send, send_about, Mark::send},
                              {"rates", rates, rates_about, Mark::rates},
                              {"costs", costs, costs_about, Mark::costs},
                              {"breaks", quantities, quantities_about, Mark::quantities},
                              {"terms", words::quote_screen::terms, terms_about, Mark::terms},
                              {"issued", words::quote_screen::issued, issued_about, Mark::issued},
                              {"wear", words::quote_screen::wear, wear_about, Mark::nozzle}};
    App& app = column.app;
    app.ui().open_group("quote/verdicts", Role::list, column.strip(0), checks);
    for (const Verdict& v : quote_verdicts(app)) {
        if (column.verdict("quote/verdict/" + v.code, v.sign, v.sentence, v.remedy, app.open_panel() == v.panel)) {
            app.open(v.panel);
        }
    }
    app.ui().close_group();
    for (const Link& link : links) {
        if (column.row(std::string("quote/open/") + link.panel, link.title, link.quiet, link.mark,
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
        } else if (column.verdict("quote/none", Sign::stop, missing(app, words::missing::price),
                                  words::quote_screen::see_part)) {
            app.go(Page::part);
        }
        rows(column);
        column.gap(12);
    };
    framed_screen(app, place, "quote", words::place::quote, Drawer::of(body));
}

} // namespace torchside::web
