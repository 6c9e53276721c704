// The pages and the panels of the app: all that is to be said of one stands in one row.
#pragma once

#include <span>
#include <string_view>

#include "web/kit/label.hpp"
#include "web/kit/marks.hpp"
#include "web/mirror/geometry.hpp"

namespace torchside::web {

class App;

enum class Page { cut, tune, part, quote, shop };

/// A page, which a tab leads to. In a wide window other columns stand beside its screen.
struct PageRow {
    Page page;
    std::string_view address; // in the page's fragment
    const char* tab;          // the id of its tab
    Label name;
    Mark mark;
    void (*screen)(App&, Rect);
    const char* panel;           // the one beside it while no other is open
    void (*picture)(App&, Rect); // what fills the width that is left
    void (*answer)(App&, Rect);  // what three columns end with; null where the panel does, and the picture has a column
};

/// In the order of their tabs, which is that of Page.
[[nodiscard]] std::span<const PageRow> pages();
[[nodiscard]] const PageRow& row_of(Page page);

/// Where a panel is drawn, and whether it can be closed: one that covers a screen can, a column that always stands there cannot.
struct PanelAt {
    Rect place;
    bool closable;
    std::string_view of{}; // which, of several: "feed" of "figure/feed", "3" of "log/3"

    [[nodiscard]] std::size_t index() const;
};

/// A panel: where it belongs, and what draws it.
struct PanelRow {
    std::string_view name; // with "/" at its end: of several
    Page page;
    Word title; // what Find calls it; none where nothing leads there by a name
    void (*draw)(App&, PanelAt);
};
/// Without the sections of the shop, which are a table of their own.
[[nodiscard]] std::span<const PanelRow> panels();

/// The panel of that name ("stock", "figure/feed", "machine").
void draw_panel(App& app, Rect place, std::string_view name, bool closable);

} // namespace torchside::web
