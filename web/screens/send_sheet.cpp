// The sheet that sends a quote to the customer, as a link, a QR code, a page or a file.
#include "core/link/ledger.hpp"
#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/stock/properties.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/example.hpp"
#include "web/screens/link_acts.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

void seal_state(App& app, Point at, float w, float& y) {
    const bool able = platform::can_seal();
    app.links.seal(app.book());
    const std::string_view text =
        !able ? "Not sealed: the browser lends its crypto to https pages only. Anyone could alter it unseen."
        : app.links.sealed() ? "Sealed: opened on this device, the page says whether it was issued here, unaltered."
                             : "Being sealed.";
    y += signed_words(app, "send/seal", able ? Sign::holds : Sign::caution, {at.x, y}, w, text, "");
}

/// Before it goes out: whether its number was used before, and the way to another one.
void number_state(App& app, Rect place, float& y) {
    const document::NextQuote& next = *app.links.next(app.book(), app.sheet());
    const document::Quote& quote = next.quote;
    if (next.number == document::NextQuote::Number::unused) {
        return;
    }
    const price::IssuedQuote& last = *next.last;
    const std::string went =
        document::number_words(last.number, last.revision) + " went out on " + document::print_day(last.issued_day);
    if (next.number == document::NextQuote::Number::again) {
        y += signed_words(app, "send/number", Sign::holds, {place.x, y}, place.w,
                          went + ". Nothing in it has changed since.", "");
        return;
    }
    const std::string now = "this goes out as revision " + document::revision_letters(quote.revision) + '.';
    const bool other = last.part_name != quote.part_name;
    const std::string text =
        other ? "Number used twice: " + went + " for " + (last.part_name.empty() ? "another part" : last.part_name) +
                    ". Take the next free number, or " + now
        : quote.issued_day > last.issued_day + last.valid_days ? went + " and has run out: " + now
                                                               : went + " and has changed since: " + now;
    y += signed_words(app, "send/number", Sign::caution, {place.x, y}, place.w, text, "");
    const std::string free = document::next_free_number(quote.number, app.book().shop.issued);
    if (!free.empty() && act(app, place, y, "send/free", ("Use number " + free).c_str())) {
        app.set("job.quote.number", std::string_view(free), "Number of the quote");
    }
}

/// "quote-Q-118.html": what a file may be called everywhere.
std::string quote_file_name(const std::string& number) {
    std::string out = "quote";
    for (const char c : number.empty() ? number : '-' + number) {
        const bool plain = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '.';
        out += plain ? c : '-';
    }
    return out + ".html";
}

} // namespace

void send_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "send", "To the customer", closable, [&](Rect body) {
        if (app.book().shop.example) {
            return example_refusal(app, body, "send/example");
        }
        Ui& ui = app.ui();
        const Rect column{body.x + sheet_margin, body.y, body.w - 2 * sheet_margin, body.h};
        const float x = column.x;
        const float w = column.w;
        float y = body.y + 12;
        if (app.drafts.first() != nullptr) {
            y += draft_caution(app, {x, y}, w);
            if (button(ui, "send/correct", {x, y, w, ui.reach()}, "Correct it")) {
                open_draft(app);
            }
            y += ui.reach() + 12;
        }
        if (!app.sheet().price) {
            return y + words(ui, "send/none", Type::text, {x, y}, w, missing(app, "price") + '.', ui.tokens().ink) +
                   20 - body.y;
        }
        if (app.book().shop.seal_key.empty() && platform::can_seal()) {
            app.set_beside("shop.seal_key", std::string_view(platform::new_key()));
        }
        number_state(app, column, y);
        const std::string link = app.links.quote(app.book(), app.sheet());
        y += words(ui, "send/what", Type::text, {x, y}, w,
                   "Only what the customer may see: no cost, margin, rate or log is in it.", ui.tokens().ink) +
             8;
        seal_state(app, {x, y}, w, y);
        y += address_rows(app, {x, y, w, 0},
                          "Your customer can't open this link: the page stands on this device or in your own network. "
                          "Enter its public address, or save the quote as one file and send that.");
        const std::string address = Links::address(app.book(), link);
        copy_acts(app, column, y, address, link);
        if (act(app, column, y, "send/file", "Save the quote as one file")) {
            app.links.hand(link, "saved");
            platform::save_quote(quote_file_name(app.book().job.quote.number), link);
        }
        if (act(app, column, y, "send/page", "Open the customer's page, to print")) {
            platform::open_page(Links::address({}, link)); // where this page stands: that one opens here too
        }
        qr_acts(app, column, y, address, link);
        return y + 16 - body.y;
    });
}

} // namespace torchside::web
