// A phone in a hand, gloves on or off, upright or lying down; and a page zoomed in: what a thumb scrolls, what stays in view.
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include "tests/screens/person.hpp"
#include "web/kit/gesture.hpp"

using namespace torchside::web;

namespace {

/// A list of 5000 px in a window of 500, and what a thumb does to it.
struct List {
    Tree tree;
    std::vector<Region> regions{Region{"list", {0, 0, 360, 500}, {360, 5000}}};
    Gesture gesture;

    [[nodiscard]] float offset() const { return regions[0].offset.y; }
    /// Frames of this length until it rests; true when it ever glided.
    bool rest(double from, double frame_ms) {
        double now = from;
        bool moved = false;
        while (gesture.glide(now += frame_ms, regions)) {
            moved = true;
        }
        return moved;
    }
};

struct Swipe {
    std::vector<double> seen_at; // when the finger was seen, as it moves 1 px a millisecond
    double up_at;
};

float thrown_by(const Swipe& swipe, double frame_ms) {
    List list;
    list.gesture.down({100, 450}, 0, list.tree, list.regions);
    for (const double t : swipe.seen_at) {
        list.gesture.move({100, 450 - static_cast<float>(t)}, t, list.regions);
    }
    const double last = swipe.seen_at.empty() ? swipe.up_at : swipe.seen_at.back();
    (void)list.gesture.up({100, 450 - static_cast<float>(last)}, swipe.up_at, list.tree, list.regions, true);
    const float dragged = list.offset();
    CHECK(std::abs(dragged - (static_cast<float>(last) - Gesture::slop)) < 0.5F);
    list.rest(swipe.up_at, frame_ms);
    return list.offset() - dragged;
}

} // namespace

TEST_CASE("a list is thrown as fast as the thumb went, however seldom the page heard of it") {
    const float reach = Gesture::decay_ms * 1.0F; // at 1 px/ms
    const std::vector<double> often{16, 32, 48, 64, 80, 96, 112, 128};
    for (const Swipe& swipe :
         {Swipe{often, 136}, Swipe{often, 160}, Swipe{{64, 128}, 136}, Swipe{{128}, 136}, Swipe{{}, 130}}) {
        for (const double frame_ms : {8.0, 16.0, 150.0}) {
            INFO(swipe.seen_at.size() << " moves, frames of " << frame_ms << " ms");
            CHECK(std::abs(thrown_by(swipe, frame_ms) - reach) < 0.1F * reach);
        }
    }
}

TEST_CASE("a thumb that rests before it leaves throws nothing") {
    CHECK(thrown_by({{16, 32, 48, 64, 80, 96}, 300}, 16) == 0);
}
