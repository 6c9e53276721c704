// What can be done with a link: see link_acts.hpp.
#include "web/screens/link_acts.hpp"

#include <algorithm>

#include "core/schema/public_address.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/example.hpp"
#include "web/screens/sheet_frame.hpp"

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

} // namespace

bool act(App& app, Rect place, float& y, const char* id, const char* label, bool main) {
    const bool used =
        button(app.ui(), id, {place.x, y, place.w, app.ui().reach()}, label, main ? Look::main : Look::plain);
    y += app.ui().reach() + 8;
    return used;
}

float address_rows(App& app, Rect place, std::string_view caution) {
    float y = place.y;
    if (document::only_here(document::link_base(app.book().shop.public_url, platform::address()))) {
        y += signed_words(app, "send/here", Sign::caution, {place.x, y}, place.w, caution, "");
    }
    y += entry(app, {place.x - sheet_margin, y, place.w + 2 * sheet_margin, 0}, "shop.public_url", "Public address");
    return y + 12 - place.y;
}

void copy_acts(App& app, Rect place, float& y, const std::string& address, std::string_view quote) {
    if (act(app, place, y, "send/copy", "Copy the link", true)) {
        app.links.hand(quote, "copied");
        platform::copy(address); // the page says whether that went well: App::notice()
    }
    if (platform::can_share() && act(app, place, y, "send/share", "Share")) {
        app.links.hand(quote, "shared");
        platform::share(app.book().shop.name, address);
    }
}

void qr_acts(App& app, Rect place, float& y, const std::string& address, std::string_view quote) {
    if (act(app, place, y, "send/qr", app.show_qr ? "Hide the QR code" : "Show a QR code")) {
        app.show_qr = !app.show_qr;
    }
    if (!app.show_qr) {
        return;
    }
    const std::string& modules = app.links.qr(address, quote);
    y += modules.empty() ? words(app.ui(), "send/waiting", Type::text, {place.x, y}, place.w,
                                 app.links.qr_too_long() ? "Too long for a QR code: copy the link." : "Being drawn.",
                                 app.ui().tokens().quiet)
                         : qr_code(app, {place.x, y}, place.w, modules);
}

float own_devices(App& app, Rect body) {
    if (app.book().shop.example) {
        return example_refusal(app, body, "devices/example");
    }
    const Rect place{body.x + sheet_margin, body.y, body.w - 2 * sheet_margin, body.h};
    float y = body.y + 12;
    y +=
        words(app.ui(), "devices/what", Type::text, {place.x, y}, place.w,
              "The whole job with your shop, costs, margin and log, for your own devices. Open the link there and keep "
              "what it brings. Don't send it to a customer.",
              app.ui().tokens().ink) +
        8;
    y += address_rows(app, {place.x, y, place.w, 0},
                      "Another device may not open this link: the page stands on this device or in your own network. "
                      "Enter its public address, or save a backup file under Kept work.");
    const std::string address = Links::address(app.book(), app.links.job(app.book()));
    copy_acts(app, place, y, address);
    qr_acts(app, place, y, address);
    return y + 16 - body.y;
}

} // namespace torchside::web
