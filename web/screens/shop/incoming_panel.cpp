// What a link, a backup file or damaged work brings: shown beside what is here now, and taken only when the user says so.
#include <array>
#include <cstdint>

#include "core/codec/crc32.hpp"
#include "core/link/ledger.hpp"
#include "core/stock/properties.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

using From = App::From;

/// What comes, and what goes for it where that is something else.
void incoming_lines(Body& body, const Workbook& in) {
    const App& app = body.app;
    const Workbook& here = app.book();
    const UnitSystem units = here.shop.display.units;
    const bool both = app.incoming_from == From::backup;
    const auto put = [&](const char* id, const char* name, const std::string& comes, const std::string& goes) {
        if (both && comes != goes) {
            body.line(id, name, (comes.empty() ? "none" : comes) + ", now " + (goes.empty() ? "none" : goes));
        } else if (!comes.empty()) {
            body.line(id, name, comes);
        }
    };
    const auto plate = [&](const Workbook& b) { return show_plate(b.job.thickness, b.job.material, units).whole(); };
    const auto count = [](std::size_t n) { return std::to_string(n); };
    put("incoming/name", "Part", in.job.name, here.job.name);
    put("incoming/metal", "Metal", app.say(stock::name(in.job.material)), app.say(stock::name(here.job.material)));
    put("incoming/thickness", "Thickness", plate(in), plate(here));
    put("incoming/current", "Current", show(in.job.current).whole(), show(here.job.current).whole());
    put("incoming/quantity", "Quantity", std::to_string(in.job.quantity), std::to_string(here.job.quantity));
    put("incoming/shop", "From", in.shop.name, here.shop.name);
    put("incoming/tests", "Test cuts", count(in.shop.tests.size()), count(here.shop.tests.size()));
    if (app.incoming_from != From::link) {
        put("incoming/sets", "Worn sets", count(in.shop.wear.sets.size()), count(here.shop.wear.sets.size()));
        put("incoming/machine", "Machine, up to", show(in.shop.machine.max_current).whole(),
            show(here.shop.machine.max_current).whole());
    }
}

/// What a seal key may be called without giving it away: the CRC-32 of it (32 of its 256 bits).
std::string key_name(const std::string& key) {
    std::string out = "key ";
    const std::uint32_t sum = codec::crc32(key);
    for (int shift = 28; shift >= 0; shift -= 4) {
        out += "0123456789abcdef"[sum >> shift & 15U];
    }
    return out;
}

void keep(App& app, Workbook next, std::string_view name) {
    if (!app.incoming_key) {
        document::keep_word(next.shop, app.book().shop);
    }
    if (app.incoming_from == From::damaged) {
        app.let_go(); // what can be read of it is kept from now on
    }
    if (app.take(std::move(next), name)) {
        app.incoming.reset();
        app.go(Page::cut);
    }
}

constexpr const char* titles[] = {"A job from a link", "A backup file", "What can be read"};

std::string asks(const App& app) {
    switch (app.incoming_from) {
    case From::backup:
        return "Nothing of yours has changed. Shop and job of the file replace yours, all of them; one touch on Undo "
               "brings "
               "yours back.";
    case From::damaged:
        return std::to_string(app.incoming_lost) + (app.incoming_lost == 1 ? " entry" : " entries") +
               " could not be read and will be as in an empty shop: look through your figures before you cut. What "
               "lies "
               "there is replaced once you take this; save it as a file first.";
    case From::link:
        break;
    }
    return "Nothing of yours has changed. What you keep replaces what is here; it can be undone.";
}

/// A key that is not this shop's own: named, and left out unless the user takes it.
void foreign_key(Body& body) {
    App& app = body.app;
    const std::string& key = app.incoming->shop.seal_key;
    const std::string& own = app.book().shop.seal_key;
    if (app.incoming_from == From::link || key.empty() || key == own) {
        return;
    }
    if (body.toggle("incoming/key", "Take its seal " + key_name(key), app.incoming_key,
                    own.empty() ? "Quotes sealed with it will say: issued here. Take it if the file is your own."
                                : "It replaces yours, " + key_name(own) +
                                      ": quotes that you sealed with that will say: not ours.")) {
        app.incoming_key = !app.incoming_key;
    }
    body.gap(10);
}

/// What can be done with it, the likeliest first.
void acts(Body& body) {
    App& app = body.app;
    const auto act = [&](const char* id, const char* label, Look look = Look::plain) {
        const bool used = body.button(id, label, look);
        body.gap(8);
        return used;
    };
    const bool link = app.incoming_from == From::link;
    if (link && act("incoming/job", "Keep as my job", Look::main)) {
        Workbook next = app.book();
        next.job = app.incoming->job;
        keep(app, std::move(next), "Job from a link");
    } else if (link && act("incoming/all", "Keep job and shop")) {
        keep(app, *app.incoming, "Job and shop from a link");
    } else if (app.incoming_from == From::backup && act("incoming/backup", "Use this backup", Look::main)) {
        keep(app, *app.incoming, "Opened a backup");
    } else if (app.incoming_from == From::damaged && act("incoming/damaged", "Take this over", Look::main)) {
        keep(app, *app.incoming, "Taken over from damaged work");
    } else if (act("incoming/leave", "Leave mine as it is")) {
        app.incoming.reset();
        app.close();
    }
}

} // namespace

void incoming_panel(App& app, PanelAt at) {
    const char* title = titles[static_cast<std::size_t>(app.incoming_from)];
    panel(app, at, "incoming", title, [&](Body& body) {
        body.gap(10);
        if (!app.incoming) {
            const bool refused = !app.refusal().empty();
            body.words("incoming/refused", Type::text,
                       refused ? "Nothing was taken. " + app.refusal() + '.' : "Nothing is waiting here.",
                       refused ? body.ui().tokens().stop : body.ui().tokens().ink);
            body.gap(20);
            return;
        }
        incoming_lines(body, *app.incoming);
        body.gap(12);
        if (!app.incoming->shop.public_url.empty()) {
            body.text("incoming/url", "Links of that shop open at " + app.incoming->shop.public_url);
            body.gap(8);
        }
        foreign_key(body);
        body.text("incoming/ask", asks(app));
        body.gap(14);
        acts(body);
        body.gap(12);
    });
}

} // namespace torchside::web
