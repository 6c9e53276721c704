// The sets of consumables that are used up: what the learning of wear goes by, to look at, correct or delete.
#include "core/quantity/print.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

std::string set_words(const wear::ConsumableSet& set) {
    return std::to_string(set.starts) + " starts, " + show(set.arc).whole() + " of arc";
}

} // namespace

float set_rows(App& app, Rect place) {
    Ui& ui = app.ui();
    const auto& sets = app.book().shop.wear.sets;
    float y = place.y + section(ui, "wear/sets", {place.x + panel_margin, place.y}, place.w - 2 * panel_margin,
                                sets.empty() ? "No set is used up yet" : "Sets used up");
    for (std::size_t i = sets.size(); i-- > 0;) {
        const std::string id = "wear/" + std::to_string(i);
        const char* how = sets[i].ended == wear::Ended::worn ? "Worn out" : "Changed while still good";
        const std::string what = set_words(sets[i]);
        const float height = link_height(ui, what, how, place.w);
        if (link_row(ui, id, {place.x, y, place.w, height}, what, how, Mark::nozzle)) {
            app.open(id);
        }
        y += height;
    }
    return y - place.y;
}

void set_row_panel(App& app, Rect place, std::size_t index, bool closable) {
    if (index >= app.book().shop.wear.sets.size()) {
        wear_panel(app, place, closable);
        return;
    }
    panel(app, place, "wear/set", "A used-up set", closable, [&](Rect body) {
        constexpr const char* ends[] = {"worn", "pulled"};
        constexpr const char* end_names[] = {"Worn out", "Still good"};
        Ui& ui = app.ui();
        const std::string at = "shop.wear.sets[" + std::to_string(index) + "]";
        const float w = body.w - 2 * panel_margin;
        float y = body.y;
        y += entry(app, {body.x, y, body.w, 0}, at + ".starts", "Arc starts");
        y += entry(app, {body.x, y, body.w, 0}, at + ".arc_min", "Arc time");
        y += word_choice(app, {body.x, y, body.w, 0}, (at + ".ended").c_str(), "When it was changed", ends, end_names);
        if (button(ui, "wear/set/delete", {body.x + panel_margin, y, w, ui.touch_height()}, "Delete this set") &&
            app.remove(at, "Used-up set deleted")) {
            app.open("wear");
        }
        return y + ui.touch_height() + 20 - body.y;
    });
}

} // namespace torchside::web
