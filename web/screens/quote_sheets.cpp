// The sheets of the Quote screen: cost lines, other quantities, consumables, rates, and what the customer reads.
#include "core/quantity/print.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/shop_sections.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr const char* line_names[] = {"Setting up",  "Material", "Machine",        "Labor",
                                      "Consumables", "Energy",   "To the minimum", "Margin"}; // by LineKind

struct Column {
    float x, w, y;
};

Column column_of(Rect body) {
    return {body.x + sheet_margin, body.w - 2 * sheet_margin, body.y + 6};
}

float none(App& app, const char* id, Rect body) {
    const Column c = column_of(body);
    return words(app.ui(), id, Type::text, {c.x, c.y + 6}, c.w, missing(app, "price") + '.', app.ui().tokens().ink) +
           24;
}

float fields(App& app, Rect body, std::span<const ShopField> all) {
    float y = body.y;
    for (const ShopField& f : all) {
        y += entry(app, {body.x, y, body.w, 0}, f.path, f.label);
    }
    return y - body.y;
}

/// One line of the cost: what for, how much in all, and under it what it is made of and how sure it is.
float cost_line(App& app, const price::Report& price, std::size_t i, Column c) {
    Ui& ui = app.ui();
    const price::Line& l = price.lines[i];
    const std::string id = "costs/" + std::to_string(i);
    float y = c.y + line(app, id, {c.x, c.y}, c.w, line_names[i], price::print(l.total, price.decimals));
    std::string about = app.say(l.how);
    if (l.each.high > l.each.low) {
        about += ". Each " + show_money(l.each.low, price.decimals) + " to " + show_money(l.each.high, price.decimals);
        if (i != static_cast<std::size_t>(price::LineKind::consumables)) { // its basis is sets, not cuts
            about += ": " + show_basis(l.each.basis, app.book().shop.example);
        }
    }
    y += 2 + words(ui, id + "/how", Type::label, {c.x, y + 2}, c.w, about, ui.tokens().quiet) + 4;
    return y - c.y;
}

} // namespace

void costs_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "costs", "Cost line by line", closable, [&](Rect body) {
        if (!app.sheet().price) {
            return none(app, "costs/none", body);
        }
        const price::Report& price = *app.sheet().price;
        Ui& ui = app.ui();
        Column c = column_of(body);
        const std::string& currency = app.book().shop.rates.currency;
        for (std::size_t i = 0; i < price::cost_lines; ++i) {
            c.y += cost_line(app, price, i, c);
        }
        c.y += line(app, "costs/cost", {c.x, c.y}, c.w, "Cost", price::print(price.cost, price.decimals));
        if (price.minimum_applies) {
            c.y += cost_line(app, price, price::cost_lines, c);
        }
        c.y += cost_line(app, price, price::line_count - 1, c);
        c.y += line(app, "costs/total", {c.x, c.y}, c.w, "Price",
                    with_currency(price::print(price.total, price.decimals), currency));
        if (price.tax) {
            c.y += line(app, "costs/tax", {c.x, c.y}, c.w, "Tax", price::print(*price.tax, price.decimals));
            c.y += line(app, "costs/pay", {c.x, c.y}, c.w, "To pay",
                        with_currency(price::print(price.to_pay, price.decimals), currency));
        }
        c.y += 14;
        const auto text = [&](const char* id, Type type, std::string_view what) {
            if (!what.empty()) {
                c.y += words(ui, id, type, {c.x, c.y}, c.w, what,
                             type == Type::text ? ui.tokens().ink : ui.tokens().quiet) +
                       10;
            }
        };
        text("costs/margin", Type::text, app.say(price.margin_text));
        text("costs/buy", Type::text,
             price.make_or_buy ? app.say(price.make_or_buy->title) + ". " + app.say(price.make_or_buy->detail)
                               : "Enter what a cutting service asks for one, and making is held against buying.");
        text("costs/band", Type::label, app.say(price.band));
        text("costs/rounding", Type::label, app.say(price.rounding));
        c.y += entry(app, {body.x, c.y, body.w, 0}, "job.price.outside_quote_each", "Bought, each");
        return c.y + 12 - body.y;
    });
}

void breaks_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "breaks", "Other quantities", closable, [&](Rect body) {
        if (!app.sheet().price) {
            return none(app, "breaks/none", body);
        }
        const price::Report& price = *app.sheet().price;
        Column c = column_of(body);
        for (const price::Break& b : price.breaks) {
            const std::string count = std::to_string(b.quantity);
            c.y += line(app, "breaks/" + count, {c.x, c.y}, c.w,
                        count + (b.quantity == 1 ? " piece" : " pieces") + ", each " +
                            price::print(b.each, price.decimals),
                        price::print(b.total, price.decimals));
        }
        c.y += entry(app, {body.x, c.y + 10, body.w, 0}, "job.quantity", "Quantity") + 10;
        return c.y + 12 - body.y;
    });
}

void rates_sheet(App& app, Rect place, bool closable) {
    constexpr ShopField all[] = {{"shop.rates.labour_per_h", "Labor, per hour"},
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
    sheet(app, place, "rates", "What you charge", closable, [&](Rect body) {
        float y = body.y;
        if (const auto& price = app.sheet().price) {
            y += 10 +
                 words(app.ui(), "rates/margin", Type::text, {body.x + sheet_margin, y + 10}, body.w - 2 * sheet_margin,
                       app.say(price->margin_text), app.ui().tokens().ink) +
                 8;
        }
        y += fields(app, {body.x, y, body.w, 0}, all);
        return y + 12 - body.y;
    });
}

void terms_sheet(App& app, Rect place, bool closable) {
    constexpr ShopField all[] = {
        {"job.name", "The part is called"},           {"job.quote.number", "Number of the quote"},
        {"job.quote.valid_days", "Holds for"},        {"job.quote.tax", "Tax"},
        {"job.quote.note", "A line to the customer"}, {"shop.name", "Your shop"},
        {"shop.contact", "Telephone or address"}};
    sheet(app, place, "terms", "What the customer reads", closable,
          [&](Rect body) { return fields(app, body, all) + 12; });
}

void wear_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "wear", "Nozzle and electrode", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const wear::Report& w = app.sheet().wear;
        Column c = column_of(body);
        const auto percent = [](double share) { return print_fixed(share * 100, 0); };
        const auto band = [&](const Estimate<double>& e) { return percent(e.low) + " to " + percent(e.high) + " %"; };
        c.y += line(app, "wear/used", {c.x, c.y}, c.w, "Life used, 8 times in 10", band(w.life_used));
        const bool cuts = app.sheet().time.has_value(); // else nothing is known of this job's wear
        if (cuts) {
            c.y += line(app, "wear/part", {c.x, c.y}, c.w, "One part uses, of a set",
                        print_percent(w.part_uses.value, 2).text());
            c.y += line(app, "wear/job", {c.x, c.y}, c.w, "This job uses, sets",
                        print_fixed(w.job_uses.low, 2) + " to " + print_fixed(w.job_uses.high, 2));
        }
        c.y += line(app, "wear/left", {c.x, c.y}, c.w, "Starts left",
                    print_fixed(w.starts_left.low, 0) + " to " + print_fixed(w.starts_left.high, 0));
        if (cuts) {
            const std::string change = !w.change_before        ? std::string("Not in this batch")
                                       : *w.change_before == 1 ? std::string("Now")
                                                               : "Before part " + std::to_string(*w.change_before);
            c.y += line(app, "wear/change", {c.x, c.y}, c.w, "Change", change);
            c.y += line(app, "wear/hold", {c.x, c.y}, c.w, "Spare sets", std::to_string(w.sets_to_hold));
        } else {
            c.y += words(ui, "wear/none", Type::text, {c.x, c.y + 8}, c.w, missing(app, "wear of this job") + '.',
                         ui.tokens().ink) +
                   8;
        }
        c.y += 12;
        if (w.guess) {
            c.y += words(ui, "wear/guess", Type::text, {c.x, c.y}, c.w,
                         "A guess until a worn set is in your log: then your log speaks.", ui.tokens().caution) +
                   10;
        }
        const auto act = [&](const char* id, const char* label, const char* name, auto make) {
            if (button(ui, id, {c.x, c.y, c.w, ui.reach()}, label)) {
                app.take(make(), name);
            }
            c.y += ui.reach() + 8;
        };
        act("wear/worn", "Changed, it was worn out", "Worn set logged. A new one is in the torch",
            [&] { return document::log_change(app.book(), wear::Ended::worn); });
        act("wear/pulled", "Changed, it was still good", "Set changed while good. A new one is in the torch",
            [&] { return document::log_change(app.book(), wear::Ended::pulled); });
        if (cuts) {
            act("wear/cut", "This job is cut: count its starts", "Counted this job's starts and arc time",
                [&] { return document::log_cut(app.book(), app.sheet(), app.book().job.quantity); });
        }
        if (!app.refusal().empty() && !ui.edit()) {
            c.y += words(ui, "wear/refused", Type::text, {c.x, c.y}, c.w, app.refusal(), ui.tokens().stop) + 10;
        }
        constexpr ShopField now[] = {{"shop.wear.now.starts", "Starts on this set"},
                                     {"shop.wear.now.arc_min", "Arc time on this set"},
                                     {"shop.wear.set_price", "Price of a set"}};
        c.y += fields(app, {body.x, c.y, body.w, 0}, now);
        c.y += set_rows(app, {body.x, c.y, body.w, 0});
        return c.y + 12 - body.y;
    });
}

} // namespace torchside::web
