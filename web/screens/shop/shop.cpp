// Shop: what stands in it. A list of sections; each opens the panel with its fields.
#include "generated/words/example.hpp"
#include "generated/words/news.hpp"
#include "generated/words/place.hpp"
#include "generated/words/shop_screen.hpp"
#include "generated/words/shortcut.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/find/find_index.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"
#include "web/screens/shop/shop_sections.hpp"

namespace torchside::web {

namespace {

/// What belongs to no section: to find something, the keys, what is new, to install the page.
void more(Body& column) {
    App& app = column.app;
    find_row(column, "shop/find");
    if (platform::fine_pointer() && column.row("shop/keys", words::shortcut::title, words::shortcut::about,
                                               Mark::keyboard, app.open_panel() == "keys")) {
        app.open("keys");
    }
    if (column.row("shop/news", words::news::title, words::news::about, Mark::kept, app.open_panel() == "news")) {
        app.open("news");
    }
    install_row(column, "shop/install");
}

} // namespace

void shop_screen(App& app, Rect place) {
    const auto body = [&](Body& column) {
        if (untouched(app.book()) && column.row("shop/start", words::example::start, words::shop_screen::start_about,
                                                Mark::shop, app.open_panel() == "start")) {
            start_shop(app);
        }
        for (const ShopSection& section : shop_sections()) {
            if (column.row(std::string("shop/") + section.panel, section.title, section.summary(app), section.mark,
                           app.open_panel() == section.panel)) {
                app.open(section.panel);
            }
        }
        more(column);
        column.gap(16);
        column.note("shop/defer", words::shop_screen::manual_first);
        column.gap(16);
    };
    framed_screen(app, place, "shop", words::place::shop, Drawer::of(body));
}

void section_panel(App& app, PanelAt at) {
    for (const ShopSection& section : shop_sections()) {
        if (at.of != section.panel) {
            continue;
        }
        panel(app, at, section.panel, section.title, [&](Body& body) {
            if (section.above != nullptr) {
                section.above(body);
            }
            body.fields(section.fields);
            if (section.below != nullptr) {
                section.below(body);
            }
        });
        return;
    }
    reach_panel(app, at);
}

} // namespace torchside::web
