// The sheet that sends: a link for the customer or for one's own devices, as text, QR code or page; and what a link
// from elsewhere brings.
#include <algorithm>

#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float quiet_zone = 4; // modules of light around a QR code (ISO/IEC 18004)

/// Dark on light in both themes: readers want it so.
float qr_code(App& app, Point at, float w, const std::string& modules) {
    const Pen& pen = app.ui().pen();
    std::size_t size = 1;
    while (size * size < modules.size()) {
        ++size;
    }
    const float side = std::min(w, 420.0F);
    const Rect place{at.x + (w - side) / 2, at.y, side, side};
    app.ui().node("send/code", Role::img, place, "QR code of the link");
    pen.fill(place, Colour{0xFFFFFF});
    const float step = side / (static_cast<float>(size) + 2 * quiet_zone);
    for (std::size_t y = 0; y < size; ++y) {
        for (std::size_t x = 0; x < size;) {
            std::size_t end = x;
            while (end < size && modules[y * size + end] == '1') {
                ++end;
            }
            if (end > x) {
                pen.fill({place.x + (static_cast<float>(x) + quiet_zone) * step,
                          place.y + (static_cast<float>(y) + quiet_zone) * step, static_cast<float>(end - x) * step,
                          step},
                         Colour{0x000000});
            }
            x = end + 1;
        }
    }
    return side;
}

void seal_state(App& app, Point at, float w, float& y) {
    const bool able = platform::can_seal();
    app.links.seal(app.book());
    const std::string_view text =
        !able ? "Not sealed: the browser lends its crypto to https pages only. Anyone could alter it unseen."
        : app.links.sealed() ? "Sealed: opened on this device, the page says whether it was issued here, unaltered."
                             : "Being sealed.";
    y += signed_words(app, "send/seal", able ? Sign::holds : Sign::caution, {at.x, y}, w, text, "");
}

} // namespace

void send_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "send", "To the customer", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y + 12;
        const Choice kinds[] = {{"send/quote", "The quote", !app.own_link},
                                {"send/job", "The whole job", app.own_link}};
        const float h = choices_height(ui, 2, 2);
        if (const auto touched = choices(ui, "send/kind", {x, y, w, h}, "What to send", kinds, 2)) {
            app.own_link = *touched == 1;
        }
        y += h + 12;
        if (!app.own_link && !app.sheet().price) {
            return y +
                   words(ui, "send/none", Type::text, {x, y}, w, "No quote: there is no path to cut.",
                         ui.tokens().ink) +
                   20 - body.y;
        }
        if (!app.own_link && app.book().shop.seal_key.empty() && platform::can_seal()) {
            app.set("shop.seal_key", std::string_view(platform::new_key()));
        }
        const std::string link = app.own_link ? app.links.job(app.book()) : app.links.quote(app.book(), app.sheet());
        y += words(ui, "send/what", Type::text, {x, y}, w,
                   app.own_link ? "For your own devices: shop, log and prices are all in it."
                                : "Only what the customer may see: no cost, margin, rate or log is in it.",
                   ui.tokens().ink) +
             8;
        if (!app.own_link) {
            seal_state(app, {x, y}, w, y);
        }
        const std::string address = Links::address(link);
        y += line(app, "send/length", {x, y}, w, "Letters in the link", std::to_string(link.size())) + 12;
        const auto act = [&](const char* id, const char* label, Look look = Look::plain) {
            const bool used = button(ui, id, {x, y, w, ui.reach()}, label, look);
            y += ui.reach() + 8;
            return used;
        };
        if (act("send/copy", "Copy the link", Look::main)) {
            platform::copy(address);
        }
        if (platform::can_share() && act("send/share", "Share")) {
            platform::share(app.book().shop.name, address);
        }
        if (!app.own_link && act("send/page", "Open the customer's page, to print")) {
            platform::open_page(address);
        }
        if (act("send/qr", app.show_qr ? "Hide the QR code" : "Show a QR code")) {
            app.show_qr = !app.show_qr;
        }
        if (app.show_qr) {
            const std::string& modules = app.links.qr(link);
            y += modules.empty()
                     ? words(ui, "send/waiting", Type::text, {x, y}, w,
                             app.links.qr_too_long() ? "Too long for a QR code: copy the link." : "Being drawn.",
                             ui.tokens().quiet)
                     : qr_code(app, {x, y}, w, modules);
        }
        return y + 16 - body.y;
    });
}

namespace {

float incoming_lines(App& app, const Workbook& in, float x, float y, float w) {
    const float from = y;
    const UnitSystem units = app.book().shop.display.units;
    const auto put = [&](const char* id, const char* name, const std::string& value) {
        if (!value.empty()) {
            y += line(app, id, {x, y}, w, name, value);
        }
    };
    put("incoming/name", "Part", in.job.name);
    put("incoming/metal", "Metal", std::string(stock::name(in.job.material)));
    put("incoming/thickness", "Thickness", show_plate(in.job.thickness, in.job.material, units).whole());
    put("incoming/current", "Current", show(in.job.current).whole());
    put("incoming/quantity", "Quantity", std::to_string(in.job.quantity));
    put("incoming/shop", "From", in.shop.name);
    put("incoming/tests", "Test cuts", std::to_string(in.shop.tests.size()));
    return y - from;
}

void keep(App& app, Workbook next) {
    next.shop.seal_key = app.book().shop.seal_key;
    Workbook before = app.book();
    if (app.take(std::move(next))) {
        app.replaced = std::move(before);
        app.incoming.reset();
        app.close();
    }
}

} // namespace

void incoming_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "incoming", "A job from a link", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y + 10;
        if (!app.incoming) {
            y += words(ui, "incoming/refused", Type::text, {x, y}, w,
                       app.refusal().empty() ? "No job is waiting here." : "Nothing was taken. " + app.refusal() + '.',
                       app.refusal().empty() ? ui.tokens().ink : ui.tokens().stop);
            return y + 20 - body.y;
        }
        y += incoming_lines(app, *app.incoming, x, y, w) + 12;
        y += words(ui, "incoming/ask", Type::text, {x, y}, w,
                   "Nothing of yours has changed. What you keep replaces what is here; it can be undone.",
                   ui.tokens().ink) +
             14;
        const auto act = [&](const char* id, const char* label, Look look = Look::plain) {
            const bool used = button(ui, id, {x, y, w, ui.reach()}, label, look);
            y += ui.reach() + 8;
            return used;
        };
        if (act("incoming/job", "Keep as my job", Look::main)) {
            Workbook next = app.book();
            next.job = app.incoming->job;
            keep(app, std::move(next));
        } else if (act("incoming/all", "Keep job and shop")) {
            keep(app, *app.incoming);
        } else if (act("incoming/leave", "Leave mine as it is")) {
            app.incoming.reset();
            app.close();
        }
        return y + 12 - body.y;
    });
}

void undo_row(App& app, Rect place) {
    if (link_row(app.ui(), "notice/undo", place, "Kept from the link", "Touch to have yours back", Mark::back)) {
        Workbook before = *app.replaced;
        app.replaced.reset();
        app.take(std::move(before));
    }
}

} // namespace torchside::web
