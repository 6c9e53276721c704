// Shop: what stands in it. A list of sections; each opens the sheet with its fields.
#include "web/screens/shop_sections.hpp"

#include "web/kit/controls.hpp"
#include "web/screens/example.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {

void shop_screen(App& app, Rect place) {
    Ui& ui = app.ui();
    ui.open_group("shop", Role::main, place, "Shop");
    const Point at = ui.open_region("shop", place);
    float y = at.y;
    if (untouched(app.book())) {
        const Rect row{place.x, y, place.w, ui.reach()};
        if (link_row(ui, "shop/start", row, "Start my shop", "The few figures that matter most", Mark::shop,
                     app.open_sheet() == "start")) {
            start_shop(app);
        }
        y += row.h;
    }
    for (const ShopSection& section : shop_sections()) {
        const std::string summary = section.summary(app);
        const Rect row{place.x, y, place.w, link_height(ui, section.title, summary, place.w)};
        const std::string id = std::string("shop/") + section.sheet;
        if (link_row(ui, id, row, section.title, summary, section.mark, app.open_sheet() == section.sheet)) {
            app.open(section.sheet);
        }
        y += row.h;
    }
    y += 16;
    y += words(ui, "shop/defer", Type::label, {place.x + 14, y}, place.w - 28,
               "The machine's own manual comes first, and local code for the circuit.", ui.tokens().quiet);
    ui.close_region({place.w, y + 16 - at.y});
    ui.close_group();
}

} // namespace torchside::web
