// Where the user is: the page, the panel that is open over or beside it, and for how many columns the window has room.
#pragma once

#include <string>
#include <string_view>

#include "web/screens/pages.hpp"

namespace torchside::web {

class Navigation {
public:
    [[nodiscard]] Page page() const { return page_; }
    /// "" for none: "stock", "figure/feed", "machine", ...
    [[nodiscard]] const std::string& panel() const { return panel_; }
    [[nodiscard]] int columns() const { return columns_; }
    [[nodiscard]] bool wide() const { return columns_ > 1; }

    /// To a page, with no panel open.
    void go(Page page);
    void open(std::string_view panel) { panel_ = panel; }
    /// To the panel's step before, out of the panel, else to the first page: true when it was that.
    bool back();
    /// The window is so wide now, in CSS pixels.
    void fit(float width);

    /// Of the first and the last column, in CSS pixels; the middle one has what they leave.
    struct Widths {
        float first = 360;
        float last = 440;
    };
    /// What the user wants, as far as the window has room for it.
    [[nodiscard]] Widths widths() const;
    [[nodiscard]] Widths wanted() const { return wanted_; }
    void widen(Widths wanted) { wanted_ = wanted; }
    /// As they are remembered: "380 460".
    [[nodiscard]] std::string packed_widths() const;
    void unpack_widths(std::string_view packed);

    /// The fragment of the page's address that says all this, and back: what names no page is the first one.
    [[nodiscard]] std::string address() const;
    void follow(std::string_view fragment);

private:
    Page page_ = Page::cut;
    std::string panel_;
    int columns_ = 1;
    float width_ = 0;
    Widths wanted_;
};

} // namespace torchside::web
