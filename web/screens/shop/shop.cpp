// Shop: what stands in it. A list of sections; each opens the panel with its fields.
#include "web/screens/shop/shop_sections.hpp"

#include "web/kit/controls.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"

namespace torchside::web {

void shop_screen(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("shop", Role::main, place, "Shop");
    const Point at = ui.open_region("shop", place);
    float y = at.y;
    if (untouched(app.book())) {
        const Rect row{place.x, y, place.w, ui.touch_height()};
        if (link_row(ui, "shop/start", row, "Start my shop", "The few figures that matter most", Mark::shop,
                     app.open_panel() == "start")) {
            start_shop(app);
        }
        y += row.h;
    }
    for (const ShopSection& section : shop_sections()) {
        const std::string summary = section.summary(app);
        const Rect row{place.x, y, place.w, link_height(ui, section.title, summary, place.w)};
        const std::string id = std::string("shop/") + section.panel;
        if (link_row(ui, id, row, section.title, summary, section.mark, app.open_panel() == section.panel)) {
            app.open(section.panel);
        }
        y += row.h;
    }
    y += 16;
    y += words(ui, "shop/defer", Type::label, {place.x + 14, y}, place.w - 28,
               "The machine's own manual comes first, and local code for the circuit.", ui.tokens().quiet);
    ui.close_region({place.w, y + 16 - at.y});
    ui.close_group();
}

void section_panel(App& app, Rect place, std::string_view name, bool closable) {
    for (const ShopSection& s : shop_sections()) {
        if (name != s.panel) {
            continue;
        }
        panel(app, place, s.panel, s.title, closable, [&](Rect body) {
            float y = body.y;
            const auto rest = [&] { return Rect{body.x, y, body.w, 1e6F}; };
            if (s.above != nullptr) {
                y += s.above(app, rest());
            }
            for (const ShopField& f : s.fields) {
                y += entry(app, {body.x, y, body.w, 0}, f.path, f.label);
            }
            if (s.below != nullptr) {
                y += s.below(app, rest());
            }
            return y - body.y;
        });
        return;
    }
    reach_panel(app, place, closable);
}

} // namespace torchside::web
