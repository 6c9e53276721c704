// The quotes that were handed out, newest first, and the key that seals them.
#include "core/link/ledger.hpp"
#include "core/price/money.hpp"
#include "core/quote/date.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"

namespace torchside::web {
namespace {

constexpr std::size_t most_shown = 50;

/// "valid until 29 Dec 2026", or why it is not the one that counts.
std::string state_of(const document::Issued& issued, const price::IssuedQuote& row, int today) {
    int newest = row.revision;
    for (const price::IssuedQuote& other : issued) {
        if (!row.number.empty() && other.number == row.number) {
            newest = std::max(newest, other.revision);
        }
    }
    if (newest > row.revision) {
        return "replaced by revision " + document::revision_letters(newest);
    }
    const int last = row.issued_day + row.valid_days;
    return (today > last ? "ran out on " : "valid until ") + document::print_day(last);
}

void issued_rows(Body& body) {
    const document::Issued& issued = body.app.book().shop.issued;
    const int today = platform::today();
    if (issued.empty()) {
        body.text("issued/none",
                  "None yet. A quote is listed here once you copy, share or save it, or show its QR code.");
        body.gap(12);
    }
    for (std::size_t i = 0; i < std::min(issued.size(), most_shown); ++i) {
        const price::IssuedQuote& row = issued[issued.size() - 1 - i];
        const std::string id = "issued/" + std::to_string(i);
        const int places = price::decimals(row.currency);
        body.line(id, row.number.empty() ? "No number" : document::number_words(row.number, row.revision),
                  price::print(price::money(row.to_pay, places), places) + ' ' + row.currency);
        body.gap(2);
        body.note(id + "/about", (row.part_name.empty() ? "" : row.part_name + ", ") +
                                     document::print_day(row.issued_day) + ", " + state_of(issued, row, today) +
                                     (row.seal.empty() ? ", not sealed" : ""));
        body.gap(6);
    }
    if (issued.size() > most_shown) {
        body.gap(4);
        body.note("issued/more", std::to_string(issued.size() - most_shown) + " older ones are kept too.");
        body.gap(8);
    }
}

/// The key, and another one only after a question.
void key_rows(Body& body) {
    App& app = body.app;
    const Shop& shop = app.book().shop;
    const std::size_t old = shop.old_keys.size();
    std::string text = shop.seal_key.empty() ? "The first quote you send makes the key that seals your quotes."
                                             : "The key on this device seals your quotes. Your backup carries it.";
    if (old > 0) {
        text += old == 1 ? " One older key still knows what it sealed."
                         : ' ' + std::to_string(old) + " older keys still know what they sealed.";
    }
    body.gap(8);
    body.text("issued/key", text);
    body.gap(10);
    if (shop.seal_key.empty() || !platform::can_seal()) {
        return;
    }
    if (!app.scratch.asks_new_key) {
        app.scratch.asks_new_key = body.button("issued/new", "Make a new seal key");
        body.gap(8);
        return;
    }
    body.sign("issued/ask", Sign::caution,
              "Make a new key when somebody else may have a backup of yours. Save a new backup afterwards: an "
              "older one doesn't know what the new key seals.");
    const bool make = body.button("issued/make", "Make the new key", Look::main);
    body.gap(8);
    const bool keep = body.button("issued/keep", "Keep this key");
    body.gap(8);
    app.scratch.asks_new_key = !make && !keep;
    if (make) {
        Workbook next = app.book();
        document::change_key(next.shop, platform::new_key());
        app.take(std::move(next), "New seal key");
    }
}

} // namespace

void issued_panel(App& app, PanelAt at) {
    panel(app, at, "issued", "Quotes handed out", [&](Body& body) {
        if (app.book().shop.example) {
            return example_refusal(body, "issued/example");
        }
        body.gap(8);
        issued_rows(body);
        key_rows(body);
        body.gap(16);
    });
}

} // namespace torchside::web
