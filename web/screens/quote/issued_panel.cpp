// The quotes that were handed out, newest first, and the key that seals them.
#include "core/link/ledger.hpp"
#include "core/price/money.hpp"
#include "core/quote/date.hpp"
#include "generated/words/issued.hpp"
#include "generated/words/quote_screen.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"
#include "web/screens/tables.hpp"

namespace torchside::web {
namespace {

constexpr std::size_t most_shown = 50;

/// "valid until 29 Dec 2026", or why it is not the one that counts.
Text state_of(const document::Issued& issued, const price::IssuedQuote& row, int today) {
    int newest = row.revision;
    for (const price::IssuedQuote& other : issued) {
        if (!row.number.empty() && other.number == row.number) {
            newest = std::max(newest, other.revision);
        }
    }
    if (newest > row.revision) {
        return words::issued::Replaced{.letters = document::revision_letters(newest)};
    }
    const int last = row.issued_day + row.valid_days;
    return today > last ? Text(words::issued::RanOut{.day = document::day_words(last)})
                        : words::issued::Valid{.day = document::day_words(last)};
}

/// "Gate hinge, 29 Nov 2026, valid until 29 Dec 2026, not sealed".
Text about(const document::Issued& issued, const price::IssuedQuote& row, int today) {
    Text state = state_of(issued, row, today);
    if (row.seal.empty()) {
        state = words::issued::Unsealed{.state = state};
    }
    const Text day = document::day_words(row.issued_day);
    return row.part_name.empty() ? Text(words::issued::About{.day = day, .state = state})
                                 : words::issued::AboutPart{.day = day, .part = row.part_name, .state = state};
}

void issued_rows(Body& body) {
    const App& app = body.app;
    const document::Issued& issued = app.book().shop.issued;
    const int today = platform::today();
    if (issued.empty()) {
        body.text("issued/none", words::issued::none);
        body.gap(12);
    }
    for (std::size_t i = 0; i < std::min(issued.size(), most_shown); ++i) {
        const price::IssuedQuote& row = issued[issued.size() - 1 - i];
        const std::string id = "issued/" + std::to_string(i);
        const int places = price::decimals(row.currency);
        body.line(id,
                  app.say(row.number.empty() ? Text(words::issued::no_number)
                                             : document::number_words(row.number, row.revision)),
                  price::print(price::money(row.to_pay, places), places, body.app.units()) + ' ' + row.currency);
        body.gap(2);
        body.note(id + "/about", app.say(about(issued, row, today)));
        body.gap(6);
    }
    if (issued.size() > most_shown) {
        body.gap(4);
        body.note("issued/more", app.say(words::issued::Older{.count = static_cast<int>(issued.size() - most_shown)}));
        body.gap(8);
    }
}

/// The key, and another one only after a question.
void key_rows(Body& body) {
    App& app = body.app;
    const Shop& shop = app.book().shop;
    const auto old = static_cast<int>(shop.old_keys.size());
    Text text = shop.seal_key.empty() ? words::issued::no_key : words::issued::key;
    if (old > 0) {
        text += old == 1 ? Text(words::issued::old_key) : words::issued::OldKeys{.count = old};
    }
    body.gap(8);
    body.text("issued/key", app.say(text));
    body.gap(10);
    if (shop.seal_key.empty() || !platform::can_seal()) {
        return;
    }
    if (!app.scratch.asks_new_key) {
        app.scratch.asks_new_key = body.button("issued/new", words::issued::new_key);
        body.gap(8);
        return;
    }
    body.sign("issued/ask", Sign::caution, words::issued::ask);
    const bool make = body.button("issued/make", words::issued::make_key, Look::main);
    body.gap(8);
    const bool keep = body.button("issued/keep", words::issued::keep_key);
    body.gap(8);
    app.scratch.asks_new_key = !make && !keep;
    if (make) {
        Workbook next = app.book();
        document::change_key(next.shop, platform::new_key());
        app.take(std::move(next), words::issued::made_key);
    }
}

} // namespace

void issued_panel(App& app, PanelAt at) {
    panel(app, at, "issued", words::quote_screen::issued, [&](Body& body) {
        if (app.book().shop.example) {
            return example_refusal(body, "issued/example");
        }
        body.gap(8);
        issued_rows(body);
        table_row(body, Table::jobs);
        key_rows(body);
        body.gap(16);
    });
}

} // namespace torchside::web
