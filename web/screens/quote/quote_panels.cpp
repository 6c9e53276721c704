// The panels of the Quote screen: cost lines, other quantities, rates, and what the customer reads.
#include "core/quantity/print.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr const char* line_names[] = {"Setting up",  "Material", "Machine",        "Labor",
                                      "Consumables", "Energy",   "To the minimum", "Margin"}; // by LineKind

void none(Body& body, const char* id) {
    body.gap(12);
    body.text(id, missing(body.app, words::missing::price) + '.');
    body.gap(12);
}

/// One line of the cost: what for, how much in all, and under it what it is made of and how sure it is.
void cost_line(Body& body, const price::Report& price, std::size_t i) {
    const price::Line& l = price.lines[i];
    const std::string id = "costs/" + std::to_string(i);
    body.line(id, line_names[i], price::print(l.total, price.decimals));
    std::string about = body.app.say(l.how);
    if (l.each.high > l.each.low) {
        about += ". Each " + show_money(l.each.low, price.decimals) + " to " + show_money(l.each.high, price.decimals);
        if (i != static_cast<std::size_t>(price::LineKind::consumables)) { // its basis is sets, not cuts
            about += ": " + show_basis(body.app, l.each.basis);
        }
    }
    body.gap(2);
    body.note(id + "/how", about);
    body.gap(4);
}

/// Every line, what they come to, and what the customer pays.
void cost_lines(Body& body, const price::Report& price) {
    const std::string& currency = body.app.book().shop.rates.currency;
    for (std::size_t i = 0; i < price::cost_lines; ++i) {
        cost_line(body, price, i);
    }
    body.line("costs/cost", "Cost", price::print(price.cost, price.decimals));
    if (price.minimum_applies) {
        cost_line(body, price, price::cost_lines);
    }
    cost_line(body, price, price::line_count - 1);
    body.line("costs/total", "Price", with_currency(price::print(price.total, price.decimals), currency));
    if (price.tax) {
        body.line("costs/tax", "Tax", price::print(*price.tax, price.decimals));
        body.line("costs/pay", "To pay", with_currency(price::print(price.to_pay, price.decimals), currency));
    }
}

} // namespace

void costs_panel(App& app, PanelAt at) {
    panel(app, at, "costs", "Cost line by line", [&](Body& body) {
        if (!app.worksheet().price) {
            return none(body, "costs/none");
        }
        const price::Report& price = *app.worksheet().price;
        body.gap(6);
        cost_lines(body, price);
        body.gap(14);
        const auto paragraph = [&](const char* id, Type type, std::string_view text) {
            if (!text.empty()) {
                body.words(id, type, text, type == Type::text ? body.ui().tokens().ink : body.ui().tokens().quiet);
                body.gap(10);
            }
        };
        paragraph("costs/margin", Type::text, app.say(price.margin_text));
        paragraph("costs/buy", Type::text,
                  price.make_or_buy ? app.say(price.make_or_buy->title) + ". " + app.say(price.make_or_buy->detail)
                                    : "Enter what a cutting service asks for one, and making is held against buying.");
        paragraph("costs/band", Type::label, app.say(price.band));
        paragraph("costs/rounding", Type::label, app.say(price.rounding));
        body.field("job.price.outside_quote_each", "Bought, each");
        body.gap(12);
    });
}

void breaks_panel(App& app, PanelAt at) {
    panel(app, at, "breaks", "Other quantities", [&](Body& body) {
        if (!app.worksheet().price) {
            return none(body, "breaks/none");
        }
        const price::Report& price = *app.worksheet().price;
        body.gap(6);
        for (const price::Break& b : price.breaks) {
            const std::string count = std::to_string(b.quantity);
            body.line("breaks/" + count,
                      count + (b.quantity == 1 ? " piece" : " pieces") + ", each " +
                          price::print(b.each, price.decimals),
                      price::print(b.total, price.decimals));
        }
        body.gap(10);
        body.field("job.quantity", "Quantity");
        body.gap(22);
    });
}

void rates_panel(App& app, PanelAt at) {
    constexpr PathLabel all[] = {{"shop.rates.labour_per_h", "Labor, per hour"},
                                 {"shop.rates.machine_per_h", "Machine, per hour"},
                                 {"job.price.material_per_kg", "Plate, by weight"},
                                 {"job.price.margin", "Margin"},
                                 {"shop.rates.minimum_charge", "Minimum charge"},
                                 {"job.price.setup_min", "Setting up"},
                                 {"job.price.handling_min", "Handling, each"},
                                 {"job.price.scrap_share", "Scrap, share of the plate bought"},
                                 {"job.price.waste_per_part", "Or waste, on top of each part"},
                                 {"shop.wear.set_price", "Nozzle and electrode"},
                                 {"shop.rates.energy_per_kwh", "Energy, per kWh"},
                                 {"shop.rates.compressor_kw_m3_min", "Compressor"},
                                 {"shop.rates.currency", "Currency"}};
    panel(app, at, "rates", "What you charge", [&](Body& body) {
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
    constexpr PathLabel all[] = {
        {"job.name", "The part is called"},           {"job.quote.number", "Number of the quote"},
        {"job.quote.valid_days", "Holds for"},        {"job.quote.tax", "Tax"},
        {"job.quote.note", "A line to the customer"}, {"shop.name", "Your shop"},
        {"shop.contact", "Telephone or address"}};
    panel(app, at, "terms", "What the customer reads", [&](Body& body) {
        body.fields(all);
        body.gap(12);
    });
}

} // namespace torchside::web
