#include "web/kit/ui.hpp"

#include <utility>

namespace torchside::web {

void Ui::begin(Pen& pen, const Tokens& tokens, Rect screen, double now, bool glove) {
    pen_ = &pen;
    tokens_ = &tokens;
    screen_ = screen;
    now_ = now;
    glove_ = glove;
    changed_ = false;
    tree_.clear();
    groups_.clear();
    open_regions_.clear();
    clips_.clear();
    lead_ = {};
    edit_row_ = {};
    for (Region& region : regions) {
        region.view = {}; // not on screen until it is opened again
        region.was_on = std::exchange(region.on, false);
    }
}

void Ui::end() {
    activated_.clear();
    if (!hover_.empty()) {
        draw_hover();
    }
    if (const Node* node = tree_.find(focus_)) {
        if (reveal_focus_) {
            reveal(*node);
        }
        draw_focus();
    }
    reveal_focus_ = false;
    if (const Node* node = show_.empty() ? nullptr : tree_.find(show_)) {
        reveal(*node);
        show_.clear();
    }
    go_on();
    reveal_edit();
}

void Ui::focus(std::string_view id) {
    focus_ = id;
    reveal_focus_ = !id.empty();
}

void Ui::enter(std::string_view id, std::string_view text, bool final) {
    if (!editing(id)) {
        if (final) {
            return; // a field that is no longer edited has nothing to say
        }
        edit_ = Edit{std::string(id), {}, false};
    }
    finish_ = final;
    if (final && edit_->fresh && edit_->text == text) {
        return; // untouched: the rounded figure that it shows is not what is stored
    }
    edit_->text = text;
    edit_->fresh = false;
    typed_ = true;
}

void Ui::leave(std::string_view id, std::string_view text) {
    enter(id, text, true);
    left_ = editing(id);
}

bool Ui::node(std::string_view id, Role role, Rect place, Label name, std::string_view value, std::string_view state,
              Label about) {
    Node n{std::string(id),
           groups_.empty() ? std::string() : groups_.back(),
           role,
           std::string(word(name)),
           std::string(value),
           std::string(state),
           place,
           std::string(word(about)),
           place,
           -1};
    if (!open_regions_.empty()) {
        n.region = open_regions_.back();
        n.seen = clips_.empty() ? place : overlap(place, clips_.back());
    }
    const bool disabled = n.state.find("disabled") != std::string::npos;
    tree_.add(std::move(n));
    if (!disabled && activated_ == id && !id.empty()) {
        changed_ = true;
        return true;
    }
    return false;
}

std::optional<Point> Ui::take_drag(std::string_view id) {
    const auto by = gesture.take_drag(id);
    changed_ = changed_ || by;
    return by;
}

void Ui::open_group(std::string_view id, Role role, Rect place, Label name, std::string_view state) {
    node(id, role, place, name, {}, state);
    groups_.emplace_back(id);
}

void Ui::close_group() {
    groups_.pop_back();
}

Region& Ui::region_of(std::string_view name) {
    std::size_t at = 0;
    while (at < regions.size() && regions[at].name != name) {
        ++at;
    }
    if (at == regions.size()) {
        regions.push_back({std::string(name)});
    }
    open_regions_.push_back(static_cast<int>(at));
    return regions[at];
}

Point Ui::open(Region& region, Rect view) {
    region.view = view;
    region.on = true;
    region.lead = lead_.height;
    open_clip(view);
    Point at{view.x - region.offset.x, view.y - region.offset.y};
    if (lead_.draw != nullptr) {
        const Lead lead = std::exchange(lead_, {});
        lead.draw(lead.of, {view.x, at.y, view.w, lead.height});
        at.y += lead.height;
    }
    return at;
}

Point Ui::open_region(std::string_view name, Rect view) {
    return open(region_of(name), view);
}

Point Ui::open_region_anew(std::string_view name, Rect view, std::string_view showing) {
    Region& region = region_of(name);
    if (!region.was_on || region.showing != showing) {
        region.offset = {};
        region.showing = showing;
    }
    return open(region, view);
}

void Ui::open_clip(Rect place) {
    clips_.push_back(clips_.empty() ? place : overlap(place, clips_.back()));
    pen_->push_clip(place);
}

void Ui::close_clip() {
    clips_.pop_back();
    pen_->pop_clip();
}

Ui::View Ui::open_view(std::string_view name, Rect view, Rect drawn) {
    Region& region = region_of(name);
    region.zooms = true;
    region.drawn = drawn;
    const Lead lead = std::exchange(lead_, {}); // a drawing has none
    const Point corner = open(region, view);
    lead_ = lead;
    return {corner, region.zoom};
}

void Ui::close_view() {
    const Region& region = regions[static_cast<std::size_t>(open_regions_.back())];
    close_region({region.view.w * region.zoom, region.view.h * region.zoom});
}

void Ui::zoom_view(std::string_view name, float factor) {
    for (Region& region : regions) {
        if (region.name == name) {
            region.zoom_by(region.view.centre(), factor);
            changed_ = true;
        }
    }
}

void Ui::centre_view(std::string_view name, Point at, float zoom) {
    for (Region& region : regions) {
        if (region.name == name) {
            region.zoom_by(at, zoom / region.zoom);
            region.offset.x += at.x - region.view.centre().x;
            region.offset.y += at.y - region.view.centre().y;
            region.clamp();
            changed_ = true;
        }
    }
}

void Ui::scroll_to_start(std::string_view name) {
    for (Region& region : regions) {
        if (region.name == name) {
            region.offset = {};
            changed_ = true;
        }
    }
}

void Ui::close_region(Point content) {
    Region& region = regions[static_cast<std::size_t>(open_regions_.back())];
    content.y += region.lead;
    region.content = content;
    const Point before = region.offset;
    region.clamp();
    if (before.x != region.offset.x || before.y != region.offset.y) {
        changed_ = true; // the content shrank under a scrolled view
    }
    close_clip();
    // A short mark at the edge says that there is more; it is not a control.
    const Point limit = region.limit();
    if (limit.y > 0) {
        const float length = std::max(24.0F, region.view.h * region.view.h / content.y);
        const float at = region.view.y + (region.view.h - length) * region.offset.y / limit.y;
        pen_->fill({region.view.right() - 3, at, 3, length}, tokens_->hairline);
    }
    if (limit.x > 0) {
        const float length = std::max(24.0F, region.view.w * region.view.w / content.x);
        const float at = region.view.x + (region.view.w - length) * region.offset.x / limit.x;
        pen_->fill({at, region.view.bottom() - 3, length, 3}, tokens_->hairline);
    }
    open_regions_.pop_back();
}

void Ui::start_edit(std::string_view id, std::string_view text) {
    if (!editing(id)) {
        edit_ = Edit{std::string(id), std::string(text), true};
        typed_ = finish_ = left_ = false;
        revealed_ = {};
        changed_ = true;
    }
}

void Ui::keep_editing(std::string_view id, std::string_view text) {
    edit_ = Edit{std::string(id), std::string(text), false};
    changed_ = true;
}

void Ui::type(std::string_view key) {
    if (!edit_) {
        return;
    }
    std::string& text = edit_->text;
    if (key == "\b") {
        if (edit_->fresh) {
            text.clear();
        }
        while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80) {
            text.pop_back();
        }
        if (!text.empty()) {
            text.pop_back();
        }
    } else {
        if (edit_->fresh) {
            text.clear();
        }
        text += key;
    }
    edit_->fresh = false;
    typed_ = true;
    changed_ = true;
}

void Ui::next_edit() {
    if (edit_) {
        next_after_ = edit_->id;
        finish_ = true;
        changed_ = true;
    }
}

void Ui::go_on() {
    if (next_after_.empty() || finish_) {
        return; // the field has not been left yet
    }
    bool below = false;
    for (const Node& node : tree_.nodes()) {
        if (below && !edit_ && node.role == Role::textbox && node.state.find("mode-keypad") != std::string::npos) {
            activated_ = node.id;
            changed_ = true;
            break;
        }
        below = below || node.id == next_after_;
    }
    next_after_.clear();
}

void Ui::retype(std::string_view text) {
    if (edit_) {
        edit_->text = text;
        edit_->fresh = false;
        typed_ = changed_ = true;
    }
}

std::optional<Ui::Entry> Ui::take_entry(std::string_view id) {
    if (!editing(id) || (!typed_ && !finish_)) {
        return std::nullopt;
    }
    changed_ = true;
    Entry entry{edit_->text, finish_, left_};
    const bool touched = typed_ || !edit_->fresh; // else what is stored stays
    typed_ = left_ = false;
    if (finish_) {
        finish_ = false;
        edit_.reset();
    }
    return touched ? std::optional(entry) : std::nullopt;
}

void Ui::draw_focus() const {
    const Node* node = tree_.find(focus_);
    const Rect ring = overlap(node->seen.inset(-1), screen_);
    if (!ring.empty()) {
        pen_->frame(ring, tokens_->accent, 3);
    }
}

void Ui::draw_hover() const {
    const Node* node = tree_.find(hover_);
    const Rect ring = node != nullptr ? overlap(node->seen.inset(1), screen_) : Rect{};
    if (!ring.empty()) {
        pen_->frame(ring, tokens_->accent, 1.5F);
        draw_key(*node);
    }
}

/// The key that does the same, as it stands on a keyboard: in a corner of what the mouse is over.
void Ui::draw_key(const Node& node) const {
    constexpr std::string_view mark = "key-";
    const std::size_t at = node.state.find(mark);
    if (at == std::string::npos) {
        return;
    }
    const std::string_view key = std::string_view(node.state).substr(at + mark.size(), 1);
    const Rect cap{node.seen.right() - 24, node.seen.y + 6, 18, 18};
    pen_->fill(cap, tokens_->ground);
    pen_->frame(cap, tokens_->quiet, 1);
    pen_->text(Type::label, {cap.centre().x, cap.centre().y - Pen::line_height(Type::label) / 2}, tokens_->ink, key,
               Align::centre);
}

/// The field under edit comes into view when it opens, and again when its row (an error's second line) or its view (the
/// keypad) takes another height. In between the hand may scroll.
void Ui::reveal_edit() {
    const Node* field = edit_ ? tree_.find(edit_->id) : nullptr;
    if (field == nullptr || field->region < 0) {
        return;
    }
    Node row = *field;
    if (edit_row_.h > 0) {
        row.place = edit_row_;
    }
    const Point now{row.place.h, regions[static_cast<std::size_t>(row.region)].view.h};
    if (!near(now, revealed_, 0.5F)) {
        revealed_ = now;
        reveal(row);
        changed_ = true;
    }
}

void Ui::reveal(const Node& node) {
    if (node.region < 0) {
        return;
    }
    Region& region = regions[static_cast<std::size_t>(node.region)];
    const Point before = region.offset;
    if (node.place.y < region.view.y) {
        region.offset.y -= region.view.y - node.place.y;
    } else if (node.place.bottom() > region.view.bottom()) { // of what is taller than the view, its top
        region.offset.y += std::min(node.place.bottom() - region.view.bottom(), node.place.y - region.view.y);
    }
    if (node.place.x < region.view.x) {
        region.offset.x -= region.view.x - node.place.x;
    } else if (node.place.right() > region.view.right()) {
        region.offset.x += node.place.right() - region.view.right();
    }
    region.clamp();
    changed_ = changed_ || before.x != region.offset.x || before.y != region.offset.y;
}

} // namespace torchside::web
