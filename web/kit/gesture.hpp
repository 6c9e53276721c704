// Fingers (or the mouse) on the canvas: tap, scroll and momentum, two fingers that zoom, and one that takes a grip (a node
// with the state "grip") along. 8 px of slop, scroll wins
// over press, a press shows after 60 ms, so that a list that is dragged never flashes its rows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "web/kit/swipe.hpp"
#include "web/mirror/geometry.hpp"
#include "web/mirror/tree.hpp"

namespace torchside::web {

/// Where a scrolled region stands. Regions live as long as the app, by name. One that zooms is a drawing as large as
/// its view, times `zoom`.
struct Region {
    std::string name;
    Rect view{};
    Point content{}; // size of what is inside
    Point offset{};  // how far it is scrolled
    bool zooms = false;
    Rect drawn{};             // where what is drawn lies in the view at zoom 1: the view's middle never leaves it
    float zoom = 1;           // 1 to most_zoom
    float lead = 0;           // height of what stands above the content and scrolls with it
    bool on = false;          // on screen in this build
    bool was_on = false;      // and in the one before
    std::string showing = {}; // what it was opened for, where one region serves many

    static constexpr float most_zoom = 64;

    [[nodiscard]] Point limit() const {
        return {content.x > view.w ? content.x - view.w : 0.0F, content.y > view.h ? content.y - view.h : 0.0F};
    }
    void clamp();
    /// What is under `about` stays there.
    void zoom_by(Point about, float factor);
};

class Gesture {
public:
    static constexpr float slop = 8.0F;       // px a finger may wander and still tap
    static constexpr double hold_ms = 600.0;  // a finger that stays so long on a control holds it
    static constexpr double show_ms = 60.0;   // a press shows after this
    static constexpr float rest = 0.02F;      // px/ms below which momentum has ended
    static constexpr float fastest = 6.0F;    // px/ms: no thumb throws harder
    static constexpr double throw_ms = 100.0; // a throw is as fast as the last of its moves
    static constexpr double held_ms = 80.0;   // a finger that rests so long before it leaves throws nothing
    static constexpr float decay_ms = 325.0F; // momentum falls to 1/e in this time

    // `now` of a finger is when it was there, not when the page came to hear of it: a slow page hears of several places
    // at once, and too late.
    void down(Point p, double now, const Tree& tree, const std::vector<Region>& regions);
    void move(Point p, double now, std::vector<Region>& regions);
    /// Returns the id of the control that was tapped, empty when it was no tap.
    [[nodiscard]] std::string up(Point p, double now, const Tree& tree, std::vector<Region>& regions, bool momentum);
    /// What the finger did that left last: Swipe::up().
    [[nodiscard]] int swiped() const { return swiped_; }
    void cancel();
    void wheel(Point p, Point by, std::vector<Region>& regions);
    /// Two fingers are here now: the drawing under them moves and grows with them.
    void pinch(Point a, Point b, std::vector<Region>& regions);

    /// Momentum: move on to `now`; true while there is more to come.
    bool glide(double now, std::vector<Region>& regions);

    /// How far the finger has taken this grip since it touched it; none when that was asked for already.
    [[nodiscard]] std::optional<Point> take_drag(std::string_view id);
    /// The grip that a finger is taking somewhere, empty when none.
    [[nodiscard]] const std::string& dragged() const;
    [[nodiscard]] bool drags() const { return phase_ == Phase::drag; }

    /// The control under a finger that has rested long enough to show it; empty when none.
    [[nodiscard]] const std::string& pressed(double now) const;
    /// Milliseconds until a press that is not shown yet shows; negative: none is waiting.
    [[nodiscard]] double until_shown(double now) const;
    /// The tap that up() gave last was held.
    [[nodiscard]] bool held() const { return held_; }
    /// How far a finger has pulled down what cannot go further down, since it came; 0 when it does anything else.
    [[nodiscard]] float pulled() const { return pulled_; }
    [[nodiscard]] bool scrolling() const { return phase_ >= Phase::scroll; }

private:
    enum class Phase { idle, press, scroll, glide, pinch, drag };
    struct Seen {
        Point at;
        double when;
    };
    /// Speed at the end of a drag, from where the finger was seen in its last moments.
    [[nodiscard]] Point thrown(double now) const;

    Phase phase_ = Phase::idle;
    std::vector<Seen> seen_; // of this drag
    Point start_{}, last_{};
    float spread_ = 0; // between two fingers
    bool held_ = false;
    bool pulls_ = false; // this finger
    float pulled_ = 0;
    Point velocity_{}; // px/ms
    double down_at_ = 0, glided_at_ = 0;
    std::string candidate_;
    bool grip_ = false;     // the candidate follows the finger
    std::string taken_;     // the grip that did last
    Point taken_by_{};      // and how far
    bool taken_on_ = false; // since it was asked for
    int region_ = -1;
    Swipe swipe_;
    int swiped_ = 0;
};

} // namespace torchside::web
