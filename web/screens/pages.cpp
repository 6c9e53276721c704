#include "web/screens/pages.hpp"

#include <cstdlib>

#include "generated/words/compressor.hpp"
#include "generated/words/coupon.hpp"
#include "generated/words/figure_about.hpp"
#include "generated/words/hazards.hpp"
#include "generated/words/log.hpp"
#include "generated/words/news.hpp"
#include "generated/words/others.hpp"
#include "generated/words/part_screen.hpp"
#include "generated/words/part_time.hpp"
#include "generated/words/place.hpp"
#include "generated/words/quote_screen.hpp"
#include "generated/words/read_cut.hpp"
#include "generated/words/settings.hpp"
#include "generated/words/shortcut.hpp"
#include "generated/words/stock.hpp"
#include "generated/words/wiring.hpp"
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

constexpr PanelRow panel_rows[] = {
    {"stock", Page::cut, words::stock::title, stock_panel},
    {"figure/", Page::cut, {}, figure_panel},
    {"reach", Page::cut, words::figure_about::reach, reach_panel},
    {"circuit", Page::cut, words::wiring::title, circuit_panel},
    {"air", Page::cut, words::compressor::title, air_panel},
    {"safety", Page::cut, words::hazards::title, safety_panel},
    {"chart", Page::cut, words::settings::chart, chart_panel},
    {"find", Page::cut, {}, find_panel},
    {"keys", Page::shop, words::shortcut::title, keys_panel},
    {"news", Page::shop, words::news::title, news_panel},
    {"read", Page::tune, words::read_cut::title, read_panel},
    {"coupon", Page::tune, words::coupon::title, coupon_panel},
    {"log", Page::tune, words::log::title, log_panel},
    {"log/", Page::tune, {}, cut_row_panel},
    {"give", Page::tune, words::others::give, give_panel},
    {"taken", Page::tune, {}, taken_panel},
    {"shape", Page::part, words::part_screen::shape, shape_panel},
    {"plate", Page::part, words::part_screen::layout, plate_panel},
    {"time", Page::part, words::part_time::title, time_panel},
    {"costs", Page::quote, words::quote_screen::costs, costs_panel},
    {"breaks", Page::quote, words::quote_screen::quantities, breaks_panel},
    {"rates", Page::quote, words::quote_screen::rates, rates_panel},
    {"terms", Page::quote, words::quote_screen::terms, terms_panel},
    {"send", Page::quote, words::quote_screen::send, send_panel},
    {"issued", Page::quote, words::quote_screen::issued, issued_panel},
    {"wear", Page::quote, words::quote_screen::wear, wear_panel},
    {"wear/", Page::quote, {}, set_row_panel},
    {"start", Page::shop, {}, start_panel},
    {"start/", Page::shop, {}, start_panel},
    {"incoming", Page::shop, {}, incoming_panel},
    {"tabs", Page::shop, {}, clash_panel},
};

} // namespace

std::size_t PanelAt::index() const {
    return static_cast<std::size_t>(std::strtoul(of.data(), nullptr, 10)); // the end of an address, and of a string
}

std::span<const PageRow> pages() {
    return page_rows;
}

std::span<const PanelRow> panels() {
    return panel_rows;
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
