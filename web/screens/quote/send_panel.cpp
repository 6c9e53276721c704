// The panel that sends a quote to the customer, as a link, a QR code, a page or a file.
#include "core/link/ledger.hpp"
#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/stock/properties.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/quote/link_acts.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

void seal_state(Body& body) {
    App& app = body.app;
    const bool able = platform::can_seal();
    app.links.seal(app.book());
    body.sign("send/seal", able ? Sign::holds : Sign::caution,
              !able ? "Not sealed: the browser lends its crypto to https pages only. Anyone could alter it unseen."
              : app.links.sealed()
                  ? "Sealed: opened on this device, the page says whether it was issued here, unaltered."
                  : "Being sealed.");
}

/// Before it goes out: whether its number was used before, and the way to another one.
void number_state(Body& body) {
    App& app = body.app;
    const document::NextQuote& next = *app.links.next(app.book(), app.worksheet());
    const document::Quote& quote = next.quote;
    if (next.number == document::NextQuote::Number::unused) {
        return;
    }
    const price::IssuedQuote& last = *next.last;
    const std::string went =
        document::number_words(last.number, last.revision) + " went out on " + document::print_day(last.issued_day);
    if (next.number == document::NextQuote::Number::again) {
        body.sign("send/number", Sign::holds, went + ". Nothing in it has changed since.");
        return;
    }
    const std::string now = "this goes out as revision " + document::revision_letters(quote.revision) + '.';
    const bool other = last.part_name != quote.part_name;
    const std::string text =
        other ? "Number used twice: " + went + " for " + (last.part_name.empty() ? "another part" : last.part_name) +
                    ". Take the next free number, or " + now
        : quote.issued_day > last.issued_day + last.valid_days ? went + " and has run out: " + now
                                                               : went + " and has changed since: " + now;
    body.sign("send/number", Sign::caution, text);
    const std::string free = document::next_free_number(quote.number, app.book().shop.issued);
    if (free.empty()) {
        return;
    }
    if (body.button("send/free", "Use number " + free)) {
        app.set("job.quote.number", std::string_view(free), "Number of the quote");
    }
    body.gap(8);
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

void send_panel(App& app, PanelAt at) {
    panel(app, at, "send", "To the customer", [&](Body& body) {
        if (app.book().shop.example) {
            return example_refusal(body, "send/example");
        }
        body.gap(12);
        draft_caution(body);
        if (!app.worksheet().price) {
            body.text("send/none", missing(app, "price") + '.');
            body.gap(20);
            return;
        }
        if (app.book().shop.seal_key.empty() && platform::can_seal()) {
            app.set_beside("shop.seal_key", std::string_view(platform::new_key()));
        }
        number_state(body);
        const std::string link = app.links.quote(app.book(), app.worksheet());
        body.text("send/what", "Only what the customer may see: no cost, margin, rate or log is in it.");
        body.gap(8);
        seal_state(body);
        address_rows(body, "Your customer can't open this link: the page stands on this device or in your own network. "
                           "Enter its public address, or save the quote as one file and send that.");
        const std::string address = Links::address(app.book(), link);
        copy_acts(body, address, link);
        if (body.button("send/file", "Save the quote as one file")) {
            app.keep_now();
            app.links.hand(link, "saved");
            platform::save_quote(quote_file_name(app.book().job.quote.number), link);
        }
        body.gap(8);
        if (body.button("send/page", "Open the customer's page, to print")) {
            app.keep_now();
            platform::open_page(Links::address({}, link)); // where this page stands: that one opens here too
        }
        body.gap(8);
        qr_acts(body, address, link);
        body.gap(16);
    });
}

} // namespace torchside::web
