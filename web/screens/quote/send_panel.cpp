// The panel that sends a quote to the customer, as a link, a QR code, a page or a file.
#include "core/link/ledger.hpp"
#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/stock/properties.hpp"
#include "generated/words/manners.hpp"
#include "generated/words/missing.hpp"
#include "generated/words/quote_screen.hpp"
#include "generated/words/send.hpp"
#include "generated/words/terms.hpp"
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
              !able                ? words::send::not_sealed
              : app.links.sealed() ? words::send::sealed
                                   : words::send::sealing);
}

/// Why a number that was used before goes out as another revision.
Text goes_out_anew(const document::Quote& quote, const price::IssuedQuote& last, const Text& day, const Text& number) {
    const std::string letters = document::revision_letters(quote.revision);
    if (last.part_name != quote.part_name) {
        const Text part = last.part_name.empty() ? Text(words::send::another_part) : words::verbatim(last.part_name);
        return words::send::UsedTwice{.day = day, .letters = letters, .number = number, .part = part};
    }
    if (quote.issued_day > last.issued_day + last.valid_days) {
        return words::send::RanOut{.day = day, .letters = letters, .number = number};
    }
    return words::send::Changed{.day = day, .letters = letters, .number = number};
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
    const Text number = document::number_words(last.number, last.revision);
    const Text day = document::day_words(last.issued_day);
    if (next.number == document::NextQuote::Number::again) {
        body.sign("send/number", Sign::holds, app.say(words::send::Again{.day = day, .number = number}));
        return;
    }
    body.sign("send/number", Sign::caution, app.say(goes_out_anew(quote, last, day, number)));
    const std::string free = document::next_free_number(quote.number, app.book().shop.issued);
    if (free.empty()) {
        return;
    }
    if (body.button("send/free", app.say(words::send::UseNumber{.number = free}))) {
        app.set("job.quote.number", std::string_view(free), words::terms::number);
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
    panel(app, at, "send", words::quote_screen::send, [&](Body& body) {
        if (app.book().shop.example) {
            return example_refusal(body, "send/example");
        }
        body.gap(12);
        draft_caution(body);
        if (!app.worksheet().price) {
            body.text("send/none", missing(app, words::missing::price) + '.');
            body.gap(20);
            return;
        }
        if (app.book().shop.seal_key.empty() && platform::can_seal()) {
            app.set_beside("shop.seal_key", std::string_view(platform::new_key()));
        }
        number_state(body);
        const std::string link = app.links.quote(app.book(), app.worksheet());
        body.text("send/what", words::send::what);
        body.gap(8);
        seal_state(body);
        address_rows(body, words::send::only_here);
        const std::string address = Links::address(app.book(), link);
        copy_acts(body, address, link);
        if (body.button("send/file", words::send::file, opens_only_here(app) ? Look::main : Look::plain)) {
            app.keep_now();
            app.links.hand(link, "saved");
            platform::save_quote(quote_file_name(app.book().job.quote.number), link);
        }
        body.gap(8);
        if (platform::can_share()) {
            if (body.button("send/share_file", words::manners::share_file)) {
                app.keep_now();
                app.links.hand(link, "shared");
                platform::share_quote(quote_file_name(app.book().job.quote.number), link);
            }
            body.gap(8);
        }
        if (body.button("send/page", words::send::page)) {
            app.keep_now();
            platform::open_page(Links::address({}, link)); // where this page stands: that one opens here too
        }
        body.gap(8);
        qr_acts(body, address, link);
        body.gap(16);
    });
}

} // namespace torchside::web
