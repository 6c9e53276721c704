#include "web/screens/pages.hpp"

#include <cstdlib>

#include "generated/words/place.hpp"
#include "web/screens/part/part_picture.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

// By their addresses, so that the linker does not lay the screens into their caller: only Cut is needed at once
// (web/later.txt).
constexpr PageRow page_rows[] = {
    {Page::cut, "#/cut", "place/cut", words::place::cut, Mark::cut, cut_screen, "stock", chart_column, nullptr},
    {Page::tune, "#/tune", "place/tune", words::place::tune, Mark::tune, tune_screen, "log", chart_column, cut_screen},
    {Page::part, "#/part", "place/part", words::place::part, Mark::part, part_screen, "shape", part_picture, nullptr},
    {Page::quote, "#/quote", "place/quote", words::place::quote, Mark::quote, quote_screen, "costs", part_picture,
     customer_column},
    {Page::shop, "#/shop", "place/shop", words::place::shop, Mark::shop, shop_screen, "machine", chart_column,
     cut_screen},
};

struct PanelRow {
    std::string_view name; // with "/" at its end: of several
    void (*draw)(App&, PanelAt);
};
constexpr PanelRow panel_rows[] = {
    // Cut
    {"stock", stock_panel},
    {"figure/", figure_panel},
    {"reach", reach_panel},
    {"circuit", circuit_panel},
    {"air", air_panel},
    {"safety", safety_panel},
    {"chart", chart_panel},
    // Tune
    {"read", read_panel},
    {"coupon", coupon_panel},
    {"log", log_panel},
    {"log/", cut_row_panel},
    // Part
    {"shape", shape_panel},
    {"plate", plate_panel},
    {"time", time_panel},
    // Quote
    {"costs", costs_panel},
    {"breaks", breaks_panel},
    {"rates", rates_panel},
    {"terms", terms_panel},
    {"send", send_panel},
    {"issued", issued_panel},
    {"wear", wear_panel},
    {"wear/", set_row_panel},
    // Shop, whose sections are a table of their own
    {"start", start_panel},
    {"incoming", incoming_panel},
    {"tabs", clash_panel},
};

} // namespace

std::size_t PanelAt::index() const {
    return static_cast<std::size_t>(std::strtoul(of.data(), nullptr, 10)); // the end of an address, and of a string
}

std::span<const PageRow> pages() {
    return page_rows;
}

const PageRow& row_of(Page page) {
    return page_rows[static_cast<std::size_t>(page)];
}

void draw_panel(App& app, Rect place, std::string_view name, bool closable) {
    for (const PanelRow& row : panel_rows) {
        const bool several = row.name.ends_with('/');
        if (several ? name.starts_with(row.name) : name == row.name) {
            row.draw(app, {place, closable, several ? name.substr(row.name.size()) : name});
            return;
        }
    }
    section_panel(app, {place, closable, name});
}

} // namespace torchside::web
