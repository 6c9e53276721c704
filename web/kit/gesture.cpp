#include "web/kit/gesture.hpp"

#include <cmath>

namespace torchside::web {
namespace {

/// The topmost region under a point that can be scrolled, or the topmost that can be zoomed.
int region_at(Point p, const std::vector<Region>& regions, bool zooming = false) {
    for (int i = static_cast<int>(regions.size()) - 1; i >= 0; --i) {
        const Region& r = regions[static_cast<std::size_t>(i)];
        const Point limit = r.limit();
        if (r.view.holds(p) && (zooming ? r.zooms : limit.x > 0 || limit.y > 0)) {
            return i;
        }
    }
    return -1;
}

} // namespace

void Region::clamp() {
    const Point most = limit();
    Point least{};
    Point last = most;
    if (zooms && drawn.w > 0 && drawn.h > 0) {
        least = {drawn.x * zoom - view.w / 2, drawn.y * zoom - view.h / 2};
        last = {drawn.right() * zoom - view.w / 2, drawn.bottom() * zoom - view.h / 2};
    }
    const auto within = [](float v, float low, float high, float end) {
        const float from = std::clamp(low, 0.0F, end);
        return std::clamp(v, from, std::clamp(high, from, end));
    };
    offset.x = within(offset.x, least.x, last.x, most.x);
    offset.y = within(offset.y, least.y, last.y, most.y);
}

void Region::zoom_by(Point about, float factor) {
    const float to = std::clamp(zoom * factor, 1.0F, most_zoom);
    const float grown = to / zoom;
    const Point inside{about.x - view.x, about.y - view.y};
    offset = {(offset.x + inside.x) * grown - inside.x, (offset.y + inside.y) * grown - inside.y};
    zoom = to;
    content = {view.w * zoom, view.h * zoom};
    clamp();
}

void Gesture::down(Point p, double now, const Tree& tree, const std::vector<Region>& regions) {
    const bool caught = phase_ == Phase::glide; // a finger on a gliding list stops it; that is no tap
    phase_ = Phase::press;
    pulls_ = held_ = false;
    pulled_ = 0;
    start_ = last_ = p;
    seen_.assign(1, {p, now});
    down_at_ = now;
    const Node* hit = caught ? nullptr : tree.control_at(p);
    candidate_ = hit != nullptr ? hit->id : std::string();
    grip_ = hit != nullptr && hit->state.find("grip") != std::string::npos;
    region_ = region_at(p, regions);
    swipe_.down(p, now);
}

void Gesture::move(Point p, double now, std::vector<Region>& regions) {
    swipe_.move(p);
    const float away = std::hypot(p.x - start_.x, p.y - start_.y);
    if (phase_ == Phase::press && away > slop) {
        if (grip_) {
            taken_ = candidate_;
            taken_by_ = {};
        }
        candidate_.clear();
        phase_ = grip_ ? Phase::drag : region_ >= 0 ? Phase::scroll : Phase::idle;
        const bool at_top = region_ < 0 || regions[static_cast<std::size_t>(region_)].offset.y <= 0;
        pulls_ = phase_ != Phase::drag && at_top && region_at(start_, regions, true) < 0 &&
                 p.y - start_.y > 2 * std::abs(p.x - start_.x);
        // Only the slop is lost: the first move that a slow page hears of may be most of the drag.
        last_ = {start_.x + (p.x - start_.x) * slop / away, start_.y + (p.y - start_.y) * slop / away};
    }
    if (phase_ == Phase::drag && (p.x != last_.x || p.y != last_.y)) {
        taken_by_ = {taken_by_.x + p.x - last_.x, taken_by_.y + p.y - last_.y};
        taken_on_ = true;
        last_ = p;
    }
    pulled_ = pulls_ ? std::max(0.0F, p.y - start_.y - slop) : 0;
    if (phase_ != Phase::scroll || region_ >= static_cast<int>(regions.size())) {
        return;
    }
    if (p.x != seen_.back().at.x || p.y != seen_.back().at.y) {
        seen_.push_back({p, now});
    }
    Region& region = regions[static_cast<std::size_t>(region_)];
    region.offset.x -= p.x - last_.x;
    region.offset.y -= p.y - last_.y;
    region.clamp();
    last_ = p;
}

Point Gesture::thrown(double now) const {
    const Seen& last = seen_.back();
    auto first = seen_.rbegin();
    while (first + 1 != seen_.rend() && (first == seen_.rbegin() || last.when - (first + 1)->when <= throw_ms)) {
        ++first;
    }
    const double dt = last.when - first->when;
    if (now - last.when > held_ms || dt <= 0) {
        return {};
    }
    const Point v{(last.at.x - first->at.x) / static_cast<float>(dt),
                  (last.at.y - first->at.y) / static_cast<float>(dt)};
    const float held_back = fastest / std::max(fastest, std::hypot(v.x, v.y));
    return {v.x * held_back, v.y * held_back};
}

std::string Gesture::up(Point p, double now, const Tree& tree, std::vector<Region>& regions, bool momentum) {
    move(p, now, regions); // where a finger leaves may be the last that is heard of it
    swiped_ = swipe_.up(p, now);
    std::string tapped;
    if (phase_ == Phase::press && !candidate_.empty()) {
        const Node* hit = tree.control_at(p);
        if (hit != nullptr && hit->id == candidate_) {
            tapped = candidate_;
            held_ = now - down_at_ >= hold_ms;
        }
    }
    velocity_ = phase_ == Phase::scroll && momentum ? thrown(now) : Point{};
    phase_ = std::hypot(velocity_.x, velocity_.y) > rest ? Phase::glide : Phase::idle;
    pulled_ = 0;
    glided_at_ = now;
    candidate_.clear();
    return tapped;
}

void Gesture::cancel() {
    phase_ = Phase::idle;
    candidate_.clear();
}

void Gesture::wheel(Point p, Point by, std::vector<Region>& regions) {
    const int at = region_at(p, regions);
    const int drawing = region_at(p, regions, true);
    if (drawing >= 0 && (at < 0 || at == drawing)) { // a page that scrolls keeps its wheel
        regions[static_cast<std::size_t>(drawing)].zoom_by(p, std::exp(-by.y / 240.0F));
    } else if (at >= 0) {
        Region& region = regions[static_cast<std::size_t>(at)];
        region.offset.x += by.x;
        region.offset.y += by.y;
        region.clamp();
    }
}

void Gesture::pinch(Point a, Point b, std::vector<Region>& regions) {
    swipe_.cancel();
    const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    const float spread = std::max(slop, std::hypot(b.x - a.x, b.y - a.y));
    pulls_ = false;
    pulled_ = 0;
    if (phase_ != Phase::pinch) {
        candidate_.clear();
        region_ = region_at(middle, regions, true);
        phase_ = Phase::pinch;
    } else if (region_ >= 0 && region_ < static_cast<int>(regions.size())) {
        Region& region = regions[static_cast<std::size_t>(region_)];
        region.zoom_by(last_, spread / spread_);
        region.offset.x -= middle.x - last_.x;
        region.offset.y -= middle.y - last_.y;
        region.clamp();
    }
    last_ = middle;
    spread_ = spread;
}

bool Gesture::glide(double now, std::vector<Region>& regions) {
    if (phase_ != Phase::glide || region_ < 0 || region_ >= static_cast<int>(regions.size())) {
        return false;
    }
    Region& region = regions[static_cast<std::size_t>(region_)];
    const auto dt = static_cast<float>(std::max(0.0, now - glided_at_));
    const float keep = std::exp(-dt / decay_ms);
    const float reach = decay_ms * (1.0F - keep);
    const Point before = region.offset;
    region.offset.x -= velocity_.x * reach;
    region.offset.y -= velocity_.y * reach;
    region.clamp();
    velocity_ = {velocity_.x * keep, velocity_.y * keep};
    glided_at_ = now;
    const bool stuck = dt > 0 && region.offset.x == before.x && region.offset.y == before.y;
    if (stuck || std::hypot(velocity_.x, velocity_.y) < rest) {
        phase_ = Phase::idle;
        return false;
    }
    return true;
}

std::optional<Point> Gesture::take_drag(std::string_view id) {
    if (!taken_on_ || taken_ != id) {
        return std::nullopt;
    }
    taken_on_ = false;
    return taken_by_;
}

const std::string& Gesture::dragged() const {
    static const std::string none;
    return phase_ == Phase::drag ? taken_ : none;
}

const std::string& Gesture::pressed(double now) const {
    static const std::string none;
    return phase_ == Phase::press && now - down_at_ >= show_ms ? candidate_ : none;
}

double Gesture::until_shown(double now) const {
    return phase_ == Phase::press && !candidate_.empty() && now - down_at_ < show_ms ? show_ms - (now - down_at_)
                                                                                     : -1.0;
}

} // namespace torchside::web
