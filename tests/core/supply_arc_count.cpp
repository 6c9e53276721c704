// Arc time against the duty cycle: worked examples, and random work against a count second by second.
#include <cstddef>
#include <cstdint>
#include <vector>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/supply/arc_count.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using Catch::Approx;
using supply::ArcCount;

namespace {

constexpr Duration sixty_percent{360, second};

Duration at(double s) {
    return Duration{s, second};
}

/// What a clerk with a stopwatch would say: the arc's state of each second, and a window of 600 of them.
struct Clerk {
    std::vector<bool> burning{};

    [[nodiscard]] int left(int allowed) const {
        const int now = static_cast<int>(burning.size());
        const auto burned = [&](int s) {
            return s >= now ? 1 : s >= 0 && burning[static_cast<std::size_t>(s)] ? 1 : 0;
        };
        int used = 0;
        for (int s = now - 600; s < now; ++s) {
            used += burned(s);
        }
        int lasts = 0;
        for (; lasts < allowed; ++lasts) { // of the window, the oldest second goes and this one comes
            used += 1 - burned(now - 600 + lasts);
            if (used > allowed) {
                break;
            }
        }
        return lasts;
    }
    [[nodiscard]] int rest(int allowed) const {
        Clerk later = *this;
        for (int s = 0;; ++s) {
            if (later.left(allowed) == allowed) {
                return s;
            }
            later.burning.push_back(false);
        }
    }
};

} // namespace

TEST_CASE("a cold machine has its whole duty, and needs no rest", "[supply]") {
    const ArcCount count;
    CHECK(count.left(at(5), sixty_percent).in(second) == Approx(360));
    CHECK(count.rest(at(5), sixty_percent).in(second) == 0);
}

TEST_CASE("the example of the header", "[supply]") {
    ArcCount count;
    count.start(at(10));
    CHECK(count.on());
    CHECK(count.left(at(110), sixty_percent).in(second) == Approx(260));
    CHECK(count.left(at(370), sixty_percent).in(second) == Approx(0));
    count.stop(at(370));
    CHECK(count.rest(at(370), sixty_percent).in(second) == Approx(240).margin(0.01));
    CHECK(count.left(at(370), sixty_percent).in(second) == Approx(0));
    CHECK(count.left(at(609.5), sixty_percent).in(second) == Approx(0));
    CHECK(count.left(at(610.01), sixty_percent).in(second) == Approx(360));
    CHECK(count.rest(at(611), sixty_percent).in(second) == 0);
}

TEST_CASE("a machine of 100 % never rests", "[supply]") {
    ArcCount count;
    count.start(at(0));
    CHECK(count.left(at(5000), at(600)).in(second) == 600);
    CHECK(count.rest(at(5000), at(600)).in(second) == 0);
}

TEST_CASE("a touch too many starts or stops nothing twice", "[supply]") {
    ArcCount count;
    count.stop(at(1));
    count.start(at(2));
    count.start(at(50));
    count.stop(at(52));
    count.stop(at(90));
    CHECK(count.left(at(100), sixty_percent).in(second) == Approx(310));
}

TEST_CASE("whatever was cut and paused, a stopwatch says the same", "[supply]") {
    for (int seed = 1; seed <= 12; ++seed) {
        test::Rng rng(static_cast<std::uint64_t>(seed));
        const int allowed = 60 + static_cast<int>(rng.below(481));
        ArcCount count;
        Clerk clerk;
        for (int turn = 0; turn < 30; ++turn) {
            const int now = static_cast<int>(clerk.burning.size());
            INFO("seed " << seed << ", second " << now << ", allowed " << allowed);
            CHECK(count.left(at(now), at(allowed)).in(second) == Approx(clerk.left(allowed)).margin(0.01));
            if (!count.on()) {
                CHECK(count.rest(at(now), at(allowed)).in(second) == Approx(clerk.rest(allowed)).margin(0.01));
                count.start(at(now));
            } else {
                count.stop(at(now));
            }
            clerk.burning.resize(clerk.burning.size() + 1 + rng.below(150), count.on());
        }
    }
}
