// The panels of the Quote screen: cost lines, other quantities, rates, and what the customer reads.
#include <vector>

#include "core/quantity/print.hpp"
#include "generated/words/cost.hpp"
#include "generated/words/missing.hpp"
#include "generated/words/quote_screen.hpp"
#include "generated/words/rate.hpp"
#include "generated/words/terms.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/spoken.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr Word line_names[] = {words::cost::setup,   words::cost::material,    words::cost::machine,
                               words::cost::labor,   words::cost::consumables, words::cost::energy,
                               words::cost::minimum, words::cost::margin}; // by LineKind

void none(Body& body, const char* id) {
    body.gap(12);
    body.text(id, missing(body.app, words::missing::price) + '.');
    body.gap(12);
}

/// One line of the cost: what for, how much in all, and under it what it is made of and how sure it is.
void cost_line(Body& body, const price::Report& price, std::size_t i) {
    const price::Line& l = price.lines[i];
    const std::string id = "costs/" + std::to_string(i);
    body.line(id, line_names[i], price::print(l.total, price.decimals, body.app.units()));
    Text about = l.how;
    if (l.each.high > l.each.low) {
        const std::string low = show_money(l.each.low, price.decimals, body.app.units());
        const std::string high = show_money(l.each.high, price.decimals, body.app.units());
        if (i == static_cast<std::size_t>(price::LineKind::consumables)) { // its basis is sets, not cuts
            about = words::cost::About{.high = high, .how = l.how, .low = low};
        } else {
            about = words::cost::AboutBasis{
                .basis = show_basis(body.app, l.each.basis), .high = high, .how = l.how, .low = low};
        }
    }
    body.gap(2);
    body.note(id + "/how", body.app.say(about));
    body.gap(4);
}

/// Every line, what they come to, and what the customer pays.
void cost_lines(Body& body, const price::Report& price) {
    const std::string& currency = body.app.book().shop.rates.currency;
    for (std::size_t i = 0; i < price::cost_lines; ++i) {
        cost_line(body, price, i);
    }
    body.line("costs/cost", words::cost::cost, price::print(price.cost, price.decimals, body.app.units()));
    if (price.minimum_applies) {
        cost_line(body, price, price::cost_lines);
    }
    cost_line(body, price, price::line_count - 1);
    body.line("costs/total", words::cost::price,
              with_currency(price::print(price.total, price.decimals, body.app.units()), currency));
    if (price.tax) {
        body.line("costs/tax", words::cost::tax, price::print(*price.tax, price.decimals, body.app.units()));
        body.line("costs/pay", words::cost::to_pay,
                  with_currency(price::print(price.to_pay, price.decimals, body.app.units()), currency));
    }
}

} // namespace

void costs_panel(App& app, PanelAt at) {
    panel(app, at, "costs", words::quote_screen::costs, [&](Body& body) {
        if (!app.worksheet().price) {
            return none(body, "costs/none");
        }
        const price::Report& price = *app.worksheet().price;
        body.gap(6);
        cost_lines(body, price);
        body.gap(14);
        const auto paragraph = [&](const char* id, Type type, const Text& said) {
            if (const std::string text = app.say(said); !text.empty()) {
                body.words(id, type, text, type == Type::text ? body.ui().tokens().ink : body.ui().tokens().quiet);
                body.gap(10);
            }
        };
        paragraph("costs/margin", Type::text, price.margin_text);
        paragraph("costs/buy", Type::text,
                  price.make_or_buy
                      ? words::verbatim(app.say(price.make_or_buy->title) + ". " + app.say(price.make_or_buy->detail))
                      : words::cost::outside_hint);
        paragraph("costs/band", Type::label, price.band);
        paragraph("costs/rounding", Type::label, price.rounding);
        body.field("job.price.outside_quote_each", words::cost::outside);
        body.gap(12);
    });
}

void breaks_panel(App& app, PanelAt at) {
    panel(app, at, "breaks", words::quote_screen::quantities, [&](Body& body) {
        if (!app.worksheet().price) {
            return none(body, "breaks/none");
        }
        const price::Report& price = *app.worksheet().price;
        body.gap(6);
        for (const price::Break& b : price.breaks) {
            const Text name = words::cost::Pieces{.count = b.quantity,
                                                  .price = price::print(b.each, price.decimals, body.app.units())};
            body.line("breaks/" + std::to_string(b.quantity), app.say(name),
                      price::print(b.total, price.decimals, body.app.units()));
        }
        body.gap(10);
        body.field("job.quantity", words::cost::quantity);
        body.gap(22);
    });
}

void rates_panel(App& app, PanelAt at) {
    constexpr PathLabel all[] = {{"shop.rates.labour_per_h", words::rate::labor},
                                 {"shop.rates.machine_per_h", words::rate::machine},
                                 {"job.price.material_per_kg", words::rate::material},
                                 {"job.price.margin", words::rate::margin},
                                 {"shop.rates.minimum_charge", words::rate::minimum},
                                 {"job.price.setup_min", words::rate::setup},
                                 {"job.price.handling_min", words::rate::handling},
                                 {"job.price.scrap_share", words::rate::scrap},
                                 {"job.price.waste_per_part", words::rate::waste},
                                 {"shop.wear.set_price", words::rate::set},
                                 {"shop.rates.energy_per_kwh", words::rate::energy},
                                 {"shop.rates.compressor_kw_m3_min", words::rate::compressor},
                                 {"shop.rates.currency", words::rate::currency}};
    panel(app, at, "rates", words::quote_screen::rates, [&](Body& body) {
        if (const auto& price = app.worksheet().price) {
            body.gap(10);
            body.text("rates/margin", app.say(price->margin_text));
            body.gap(8);
        }
        body.fields(all);
        body.gap(12);
    });
}

void terms_panel(App& app, PanelAt at) {
    constexpr PathLabel all[] = {{"job.name", words::terms::part},
                                 {"job.quote.number", words::terms::number},
                                 {"job.quote.valid_days", words::terms::valid},
                                 {"job.quote.tax", words::terms::tax},
                                 {"job.quote.note", words::terms::note},
                                 {"shop.name", words::terms::shop},
                                 {"shop.contact", words::terms::contact}};
    panel(app, at, "terms", words::quote_screen::terms, [&](Body& body) {
        body.fields(all);
        std::vector<const char*> codes{""};
        std::vector<Label> names{words::terms::shops_language};
        language_choices(codes, names);
        body.word_choice("job.quote.language", words::terms::language, codes, names, 2);
        body.gap(12);
    });
}

} // namespace torchside::web
