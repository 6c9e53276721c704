// One frame of the app: where controls register, are drawn, and learn that they were pressed.
//
// A finger, a key on a mirrored element and a screen reader all end in activate(id); the control with that id sees it
// in the next build of the screen. After an activation the screen is built twice, the first time without being shown,
// so that what is drawn is never one change behind.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "web/kit/gesture.hpp"
#include "web/kit/label.hpp"
#include "web/kit/pen.hpp"
#include "web/mirror/tree.hpp"

namespace torchside::web {

/// A text field being edited.
struct Edit {
    std::string id;
    std::string text;
    bool fresh = true; // nothing typed yet: the first key replaces the old text
};

class Ui {
public:
    // --- for the frame loop
    void begin(Pen& pen, const Tokens& tokens, Rect screen, double now, bool glove);
    void end();
    void speak(const Language& language) { language_ = &language; }
    /// True when the last build consumed an activation or an entry: build again before showing.
    [[nodiscard]] bool changed() const { return changed_; }
    [[nodiscard]] const Tree& tree() const { return tree_; }
    [[nodiscard]] bool moving() const { return gesture.scrolling(); }
    void activate(std::string_view id) { activated_ = id; }
    void focus(std::string_view id);
    /// The control under the mouse, "" for none. The page tells only when it is another one.
    void hover(std::string_view id) { hover_ = id; }
    void enter(std::string_view id, std::string_view text, bool final);
    /// The user went on to something else, and this is what he left in the field.
    void leave(std::string_view id, std::string_view text);

    Gesture gesture;
    std::vector<Region> regions;

    // --- for controls
    [[nodiscard]] Pen& pen() const { return *pen_; }
    [[nodiscard]] const Tokens& tokens() const { return *tokens_; }
    /// In the user's language. It lives as long as the label's own text, or the table.
    [[nodiscard]] std::string_view word(Label label) const { return label.in(*language_); }
    [[nodiscard]] Rect screen() const { return screen_; }
    [[nodiscard]] bool glove() const { return glove_; }
    /// Height of a control a thumb must hit: 56 px, 96 px with gloves.
    [[nodiscard]] float touch_height() const { return glove_ ? 96.0F : 56.0F; }

    /// A window so low (a phone lying down, a page zoomed in) that nothing may stand still but what is worked on.
    [[nodiscard]] bool low() const { return screen_.h < 520; }

    /// Register a node; its parent is the group that is open. Returns true when it was activated.
    bool node(std::string_view id, Role role, Rect place, Label name, std::string_view value = {},
              std::string_view state = {}, Label about = {});
    [[nodiscard]] bool pressed(std::string_view id) const { return !id.empty() && gesture.pressed(now_) == id; }

    /// How far a finger has taken this grip since it touched it, once for each of its moves.
    [[nodiscard]] std::optional<Point> take_drag(std::string_view id);
    [[nodiscard]] bool dragged(std::string_view id) const { return !id.empty() && gesture.dragged() == id; }

    void open_group(std::string_view id, Role role, Rect place, Label name, std::string_view state = {});
    void close_group();

    /// Content that may be larger than its view. Draw at the returned origin; close with the size of what was drawn.
    Point open_region(std::string_view name, Rect view);
    /// The same for what is opened and closed: it begins at its top each time it comes up, or comes to show another
    /// thing.
    Point open_region_anew(std::string_view name, Rect view, std::string_view showing = {});
    void close_region(Point content);
    /// What stands above the content of the next region and scrolls away with it.
    struct Lead {
        void* of = nullptr;
        float height = 0;
        void (*draw)(void* of, Rect place) = nullptr;
    };
    void lead_with(Lead lead) { lead_ = lead; }
    /// Nodes and strokes from here to close_clip() are seen, and hit, in this place only.
    void open_clip(Rect place);
    void close_clip();
    /// Scroll back to where it begins.
    void scroll_to_start(std::string_view name);
    /// Scroll so that this node is in view.
    void show(std::string_view id) { show_ = id; }
    /// A drawing that two fingers, the wheel or zoom_view() enlarge: its scale and where its corner lies now.
    struct View {
        Point corner{};
        float zoom = 1;
    };
    /// `drawn`: what of the view the drawing covers when it is whole, from the view's corner.
    View open_view(std::string_view name, Rect view, Rect drawn);
    void close_view();
    /// Enlarge about the middle of the view; 0 shows the whole again.
    void zoom_view(std::string_view name, float factor);
    /// Enlarge so that what is at this point now comes to the middle.
    void centre_view(std::string_view name, Point at, float zoom);

    // --- text entry
    [[nodiscard]] bool editing(std::string_view id) const { return edit_ && edit_->id == id; }
    [[nodiscard]] const std::optional<Edit>& edit() const { return edit_; }
    void start_edit(std::string_view id, std::string_view text);
    /// Stay in a field whose text could not be used: its words stay, with what is wrong or asked below them.
    void keep_editing(std::string_view id, std::string_view text);
    /// A key of the app's own keypad; "\b" deletes.
    void type(std::string_view key);
    /// Other words in the field under edit.
    void retype(std::string_view text);
    void finish_edit() { finish_ = true; }
    /// The same, and on to the next number below it; where there is none, or this one is refused, it is the same alone.
    void next_edit();
    void stop_edit() { edit_.reset(); }
    /// All that belongs to the field under edit, to be kept in view while it is typed in.
    void edit_row(Rect row) { edit_row_ = row; }
    /// What was typed into this field since the last build, if anything; `final` when the user is done with it.
    struct Entry {
        std::string text;
        bool final;
        bool left = false; // he went elsewhere
    };
    [[nodiscard]] std::optional<Entry> take_entry(std::string_view id);

private:
    Region& region_of(std::string_view name);
    Point open(Region& region, Rect view);
    void draw_focus() const;
    void go_on();
    void draw_hover() const;
    void draw_key(const Node& node) const;
    void reveal(const Node& node);
    void reveal_edit();

    Pen* pen_ = nullptr;
    const Tokens* tokens_ = &paper;
    const Language* language_ = &english();
    Rect screen_{};
    double now_ = 0;
    bool glove_ = false;
    bool changed_ = false;
    Tree tree_;
    std::vector<std::string> groups_;
    std::vector<int> open_regions_;
    std::vector<Rect> clips_;
    Lead lead_;
    std::string activated_;
    std::string focus_;
    std::string hover_;
    bool reveal_focus_ = false;
    Rect edit_row_{};
    Point revealed_{}; // heights of the row under edit and of its view when it was last brought there
    std::optional<Edit> edit_;
    bool typed_ = false;
    bool finish_ = false;
    bool left_ = false;
    std::string next_after_; // the field that the user leaves for the one below it
    std::string show_;       // brought into view when the screen is built
};

} // namespace torchside::web
