// What can be done with a link: see link_acts.hpp.
#include "web/screens/quote/link_acts.hpp"

#include <algorithm>

#include "core/schema/public_address.hpp"
#include "generated/words/link.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/shop/example.hpp"

namespace torchside::web {
namespace {

constexpr float quiet_zone = 4; // modules of light around a QR code (ISO/IEC 18004)

/// Dark on light in both themes: readers want it so.
void qr_code(Body& body, const std::string& modules) {
    const Pen& pen = body.ui().pen();
    std::size_t size = 1;
    while (size * size < modules.size()) {
        ++size;
    }
    const float side = std::min(body.room(), 420.0F);
    const Rect place = body.inside(side).inset((body.room() - side) / 2, 0);
    body.ui().node("send/code", Role::img, place, words::link::code);
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
}

} // namespace

bool opens_only_here(const App& app) {
    return document::only_here(document::link_base(app.book().shop.public_url, platform::address()));
}

void address_rows(Body& body, Label caution) {
    if (opens_only_here(body.app)) {
        body.sign("send/here", Sign::caution, caution);
    }
    body.field("shop.public_url", words::link::address);
    body.gap(12);
}

void copy_acts(Body& body, const std::string& address, std::string_view quote) {
    App& app = body.app;
    if (body.button("send/copy", words::link::copy, opens_only_here(app) ? Look::plain : Look::main)) {
        app.keep_now();
        app.links.hand(quote, "copied");
        platform::copy(address); // the page says whether that went well: App::notice()
    }
    body.gap(8);
    if (!platform::can_share()) {
        return;
    }
    if (body.button("send/share", words::link::share)) {
        app.keep_now();
        app.links.hand(quote, "shared");
        platform::share(app.book().shop.name, address);
    }
    body.gap(8);
}

void qr_acts(Body& body, const std::string& address, std::string_view quote) {
    App& app = body.app;
    if (body.button("send/qr", app.scratch.show_qr ? words::link::hide_code : words::link::show_code)) {
        app.scratch.show_qr = !app.scratch.show_qr;
        app.keep_now();
    }
    body.gap(8);
    if (!app.scratch.show_qr) {
        return;
    }
    const std::string& modules = app.links.qr(address, quote);
    if (modules.empty()) {
        body.words("send/waiting", Type::text,
                   app.links.qr_too_long() ? words::link::too_long : words::link::making_code,
                   body.ui().tokens().quiet);
    } else {
        qr_code(body, modules);
    }
}

void own_devices(Body& body) {
    App& app = body.app;
    if (app.book().shop.example) {
        return example_refusal(body, "devices/example");
    }
    body.gap(12);
    body.text("devices/what", words::link::devices);
    body.gap(8);
    address_rows(body, words::link::devices_only_here);
    const std::string address = Links::address(app.book(), app.links.job(app.book()));
    copy_acts(body, address);
    qr_acts(body, address);
    body.gap(16);
}

} // namespace torchside::web
