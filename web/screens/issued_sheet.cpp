// The quotes that were handed out, newest first, and the key that seals them.
#include "core/link/ledger.hpp"
#include "core/price/money.hpp"
#include "core/quote/date.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/example.hpp"
#include "web/screens/link_acts.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"

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

void issued_rows(App& app, Rect place, float& y) {
    Ui& ui = app.ui();
    const document::Issued& issued = app.book().shop.issued;
    const int today = platform::today();
    if (issued.empty()) {
        y += words(ui, "issued/none", Type::text, {place.x, y}, place.w,
                   "None yet. A quote is listed here once you copy, share or save it, or show its QR code.",
                   ui.tokens().ink) +
             12;
    }
    for (std::size_t i = 0; i < std::min(issued.size(), most_shown); ++i) {
        const price::IssuedQuote& row = issued[issued.size() - 1 - i];
        const std::string id = "issued/" + std::to_string(i);
        const int places = price::decimals(row.currency);
        y += line(app, id, {place.x, y}, place.w,
                  row.number.empty() ? "No number" : document::number_words(row.number, row.revision),
                  price::print(price::money(row.to_pay, places), places) + ' ' + row.currency);
        std::string about = row.part_name.empty() ? std::string() : row.part_name + ", ";
        about += document::print_day(row.issued_day) + ", " + state_of(issued, row, today) +
                 (row.seal.empty() ? ", not sealed" : "");
        y += 2 + words(ui, id + "/about", Type::label, {place.x, y + 2}, place.w, about, ui.tokens().quiet) + 6;
    }
    if (issued.size() > most_shown) {
        y += words(ui, "issued/more", Type::label, {place.x, y + 4}, place.w,
                   std::to_string(issued.size() - most_shown) + " older ones are kept too.", ui.tokens().quiet) +
             12;
    }
}

/// The key, and another one only after a question.
void key_rows(App& app, Rect place, float& y) {
    const Shop& shop = app.book().shop;
    const std::size_t old = shop.old_keys.size();
    std::string text = shop.seal_key.empty() ? "The first quote you send makes the key that seals your quotes."
                                             : "The key on this device seals your quotes. Your backup carries it.";
    if (old > 0) {
        text += old == 1 ? " One older key still knows what it sealed."
                         : ' ' + std::to_string(old) + " older keys still know what they sealed.";
    }
    y += 8 + words(app.ui(), "issued/key", Type::text, {place.x, y + 8}, place.w, text, app.ui().tokens().ink) + 10;
    if (shop.seal_key.empty() || !platform::can_seal()) {
        return;
    }
    if (!app.asks_new_key) {
        app.asks_new_key = act(app, place, y, "issued/new", "Make a new seal key");
        return;
    }
    y += signed_words(app, "issued/ask", Sign::caution, {place.x, y}, place.w,
                      "Make a new key when somebody else may have a backup of yours. Save a new backup afterwards: an "
                      "older one doesn't know what the new key seals.",
                      "");
    if (act(app, place, y, "issued/make", "Make the new key", true)) {
        Workbook next = app.book();
        document::change_key(next.shop, platform::new_key());
        app.asks_new_key = false;
        app.take(std::move(next), "New seal key");
    } else if (act(app, place, y, "issued/keep", "Keep this key")) {
        app.asks_new_key = false;
    }
}

} // namespace

void issued_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "issued", "Quotes handed out", closable, [&](Rect body) {
        if (app.book().shop.example) {
            return example_refusal(app, body, "issued/example");
        }
        const Rect column{body.x + sheet_margin, body.y, body.w - 2 * sheet_margin, body.h};
        float y = body.y + 8;
        issued_rows(app, column, y);
        key_rows(app, column, y);
        return y + 16 - body.y;
    });
}

} // namespace torchside::web
