#include "web/screens/pages.hpp"

#include <cstdlib>

#include "web/screens/part/part_picture.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

// By their addresses, so that the linker does not lay the screens into their caller: only Cut is needed at once
// (web/later.txt).
constexpr PageRow page_rows[] = {
    {Page::cut, "#/cut", "place/cut", "Cut", Mark::cut, cut_screen, "stock", chart_column, nullptr},
    {Page::tune, "#/tune", "place/tune", "Tune", Mark::tune, tune_screen, "log", chart_column, cut_screen},
    {Page::part, "#/part", "place/part", "Part", Mark::part, part_screen, "shape", part_picture, nullptr},
    {Page::quote, "#/quote", "place/quote", "Quote", Mark::quote, quote_screen, "costs", part_picture, customer_column},
    {Page::shop, "#/shop", "place/shop", "Shop", Mark::shop, shop_screen, "machine", chart_column, cut_screen},
};

struct PanelRow {
    std::string_view name;
    void (*draw)(App&, Rect, bool closable);
};
constexpr PanelRow panel_rows[] = {
    {"stock", stock_panel},       {"chart", chart_panel}, {"circuit", circuit_panel}, {"log", log_panel},
    {"air", air_panel},           {"reach", reach_panel}, {"shape", shape_panel},     {"time", time_panel},
    {"safety", safety_panel},     {"costs", costs_panel}, {"breaks", breaks_panel},   {"wear", wear_panel},
    {"rates", rates_panel},       {"terms", terms_panel}, {"issued", issued_panel},   {"send", send_panel},
    {"incoming", incoming_panel}, {"plate", plate_panel}, {"read", read_panel},       {"coupon", coupon_panel},
    {"start", start_panel},       {"tabs", clash_panel},
};

std::size_t number_behind(std::string_view name, std::size_t prefix) {
    return static_cast<std::size_t>(std::strtoul(name.data() + prefix, nullptr, 10));
}

} // namespace

std::span<const PageRow> pages() {
    return page_rows;
}

const PageRow& row_of(Page page) {
    return page_rows[static_cast<std::size_t>(page)];
}

void draw_panel(App& app, Rect place, std::string_view name, bool closable) {
    for (const PanelRow& row : panel_rows) {
        if (name == row.name) {
            row.draw(app, place, closable);
            return;
        }
    }
    if (name.starts_with("log/")) {
        cut_row_panel(app, place, number_behind(name, 4), closable);
    } else if (name.starts_with("wear/")) {
        set_row_panel(app, place, number_behind(name, 5), closable);
    } else if (name.starts_with("figure/")) {
        figure_panel(app, place, name.substr(7), closable);
    } else {
        section_panel(app, place, name, closable);
    }
}

} // namespace torchside::web
