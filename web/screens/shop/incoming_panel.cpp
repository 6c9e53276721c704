// What a link, a backup file or damaged work brings: shown beside what is here now, and taken only when the user says so.
#include <array>
#include <cstdint>

#include "core/codec/crc32.hpp"
#include "core/link/ledger.hpp"
#include "core/stock/properties.hpp"
#include "generated/words/incoming.hpp"
#include "generated/words/title.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

using From = Incoming::From;

/// What comes, and what goes for it where that is something else.
void incoming_lines(Body& body, const Workbook& in) {
    const App& app = body.app;
    const Workbook& here = app.book();
    const Units units = app.units();
    const bool both = app.scratch.incoming.from == From::backup;
    const auto put = [&](const char* id, Word name, const std::string& comes, const std::string& goes) {
        if (both && comes != goes) {
            const auto one = [](const std::string& text) {
                return text.empty() ? Text(words::incoming::none) : words::verbatim(text);
            };
            body.line(id, name, app.say(words::incoming::Now{.comes = one(comes), .goes = one(goes)}));
        } else if (!comes.empty()) {
            body.line(id, name, comes);
        }
    };
    const auto plate = [&](const Workbook& b) { return show_plate(b.job.thickness, b.job.material, units).whole(); };
    const auto count = [](std::size_t n) { return std::to_string(n); };
    put("incoming/name", words::incoming::part, in.job.name, here.job.name);
    put("incoming/metal", words::title::metal, app.say(stock::name(in.job.material)),
        app.say(stock::name(here.job.material)));
    put("incoming/thickness", words::title::thickness, plate(in), plate(here));
    put("incoming/current", words::title::current, show(in.job.current, units).whole(),
        show(here.job.current, units).whole());
    put("incoming/quantity", words::incoming::quantity, std::to_string(in.job.quantity),
        std::to_string(here.job.quantity));
    put("incoming/shop", words::incoming::from, in.shop.name, here.shop.name);
    put("incoming/tests", words::incoming::tests, count(in.shop.tests.size()), count(here.shop.tests.size()));
    if (app.scratch.incoming.from != From::link) {
        put("incoming/sets", words::incoming::sets, count(in.shop.wear.sets.size()), count(here.shop.wear.sets.size()));
        put("incoming/machine", words::incoming::machine, show(in.shop.machine.max_current, units).whole(),
            show(here.shop.machine.max_current, units).whole());
    }
}

/// What a seal key may be called without giving it away: the CRC-32 of it (32 of its 256 bits).
Text key_name(const std::string& key) {
    std::string out;
    const std::uint32_t sum = codec::crc32(key);
    for (int shift = 28; shift >= 0; shift -= 4) {
        out += "0123456789abcdef"[sum >> shift & 15U];
    }
    return words::incoming::KeyName{.letters = out};
}

void keep(App& app, Workbook next, Word name) {
    if (!app.scratch.incoming.with_key) {
        document::keep_word(next.shop, app.book().shop);
    }
    if (app.scratch.incoming.from == From::damaged) {
        app.let_go(); // what can be read of it is kept from now on
    }
    if (app.take(std::move(next), name)) {
        app.scratch.incoming.book.reset();
        app.go(Page::cut);
    }
}

constexpr Word titles[] = {words::incoming::job, words::incoming::backup, words::incoming::salvage}; // by From

Text asks(const App& app) {
    switch (app.scratch.incoming.from) {
    case From::backup:
        return words::incoming::ask_backup;
    case From::damaged:
        return words::incoming::AskSalvage{.count = app.scratch.incoming.lost};
    case From::link:
        break;
    }
    return words::incoming::ask_link;
}

/// A key that is not this shop's own: named, and left out unless the user takes it.
void foreign_key(Body& body) {
    App& app = body.app;
    const std::string& key = app.scratch.incoming.book->shop.seal_key;
    const std::string& own = app.book().shop.seal_key;
    if (app.scratch.incoming.from == From::link || key.empty() || key == own) {
        return;
    }
    const Text about =
        own.empty() ? Text(words::incoming::key_unused) : words::incoming::KeyReplaces{.key = key_name(own)};
    if (body.toggle("incoming/key", app.say(words::incoming::TakeKey{.key = key_name(key)}),
                    app.scratch.incoming.with_key, app.say(about))) {
        app.scratch.incoming.with_key = !app.scratch.incoming.with_key;
    }
    body.gap(10);
}

/// What can be done with it, the likeliest first.
void acts(Body& body) {
    App& app = body.app;
    const auto act = [&](const char* id, Word label, Look look = Look::plain) {
        const bool used = body.button(id, label, look);
        body.gap(8);
        return used;
    };
    const bool link = app.scratch.incoming.from == From::link;
    if (link && act("incoming/job", words::incoming::keep_job, Look::main)) {
        Workbook next = app.book();
        next.job = app.scratch.incoming.book->job;
        keep(app, std::move(next), words::incoming::kept_job);
    } else if (link && act("incoming/all", words::incoming::keep_all)) {
        keep(app, *app.scratch.incoming.book, words::incoming::kept_all);
    } else if (app.scratch.incoming.from == From::backup &&
               act("incoming/backup", words::incoming::use_backup, Look::main)) {
        keep(app, *app.scratch.incoming.book, words::incoming::used_backup);
    } else if (app.scratch.incoming.from == From::damaged &&
               act("incoming/damaged", words::incoming::take_over, Look::main)) {
        keep(app, *app.scratch.incoming.book, words::incoming::took_over);
    } else if (act("incoming/leave", words::incoming::leave)) {
        app.scratch.incoming.book.reset();
        app.close();
    }
}

} // namespace

void incoming_panel(App& app, PanelAt at) {
    const Word title = titles[static_cast<std::size_t>(app.scratch.incoming.from)];
    panel(app, at, "incoming", title, [&](Body& body) {
        body.gap(10);
        if (!app.scratch.incoming.book) {
            const bool refused = !app.refusal().empty();
            body.words(
                "incoming/refused", Type::text,
                app.say(refused ? Text(words::incoming::Refused{.why = app.refusal()}) : words::incoming::nothing),
                refused ? body.ui().tokens().stop : body.ui().tokens().ink);
            body.gap(20);
            return;
        }
        incoming_lines(body, *app.scratch.incoming.book);
        body.gap(12);
        if (!app.scratch.incoming.book->shop.public_url.empty()) {
            body.text("incoming/url",
                      app.say(words::incoming::Address{.address = app.scratch.incoming.book->shop.public_url}));
            body.gap(8);
        }
        foreign_key(body);
        body.text("incoming/ask", app.say(asks(app)));
        body.gap(14);
        acts(body);
        body.gap(12);
    });
}

} // namespace torchside::web
