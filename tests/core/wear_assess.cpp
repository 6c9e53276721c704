// What a batch does to the consumables.
#include <cmath>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/quantity/low_end.hpp"
#include "core/wear/assess.hpp"

using namespace torchside;
using namespace torchside::wear;
using Catch::Approx;

namespace {

Load part(double starts, double minutes, double run_offs = 0) {
    const Duration arc{minutes, minute};
    return {starts, {arc, arc, arc, {}}, run_offs};
}

ConsumableSet set(int starts, double minutes, Ended ended = Ended::worn) {
    return {starts, Duration{minutes, minute}, ended};
}

WearLog shop(std::vector<ConsumableSet> sets, int starts = 0, double minutes = 0) {
    WearLog out;
    out.sets = std::move(sets);
    out.now = {starts, Duration{minutes, minute}};
    return out;
}

} // namespace

TEST_CASE("Without a log the priors speak, and say that they are guesses", "[wear]") {
    const Report r = assess(shop({}), part(5, 0.5), 24);
    CHECK(r.guess);
    CHECK(r.life_used.value == 0.0);
    CHECK(r.starts_per_set.value == Approx(400));
    CHECK(r.starts_per_set.low < 300);
    CHECK(r.starts_per_set.high > 800);
    CHECK(r.arc_per_set.value.in(minute) == Approx(120));
    CHECK(r.part_uses.value == Approx(5 / 400.0 + 0.5 / 120));
    CHECK(r.job_uses.value == Approx(24 * r.part_uses.value));
    CHECK(r.cost_each.value == Approx(18 * r.part_uses.value));
    CHECK(r.part_uses.basis.practice);
    CHECK(r.part_uses.basis.tests == 0);
    CHECK(r.sets_to_hold == 0); // 40 % of a set
    CHECK(r.finishes > 0.9);
    CHECK_FALSE(r.change_before);
    CHECK_FALSE(r.wears_at);
}

TEST_CASE("120 starts and 40 minutes in the torch, no log", "[wear]") {
    const Report r = assess(shop({}, 120, 40), part(5, 0.5), 24);
    CHECK(r.life_used.value == Approx(120 / 400.0 + 40 / 120.0));
    CHECK(r.life_used.low < 0.45);
    CHECK(r.life_used.high > 0.8);
    CHECK_FALSE(r.outlived);
}

TEST_CASE("More use leaves less life, however long a set has lasted", "[wear]") {
    for (const WearLog& log : {shop({}), shop({set(300, 60), set(290, 62), set(310, 58)}), shop({set(300, 60)})}) {
        for (const Load& load : {part(5, 1), part(20, 0), part(1, 5), Load{}}) {
            const Report fresh = assess(shop(log.sets), load, 24);
            Report last = fresh;
            for (double used = 10; used <= 40000; used = used < 400 ? used + 10 : 1.5 * used) {
                const Report r = assess(shop(log.sets, static_cast<int>(used), used / 5), load, 24);
                CAPTURE(used, load.starts, log.sets.size());
                CHECK(r.life_used.value > last.life_used.value);
                CHECK(r.starts_left.value <= 1.005 * last.starts_left.value); // the age is found to a step
                CHECK(r.starts_left.low <= 1.05 * last.starts_left.low);
                CHECK(r.starts_left.high <= fresh.starts_left.high);
                CHECK(r.finishes <= fresh.finishes);
                last = r;
            }
            CHECK(last.starts_left.value < 0.5 * fresh.starts_left.value);
        }
    }
}

TEST_CASE("A feed that is not sure does not make an old set last", "[wear]") {
    Load unsure = part(5, 1);
    unsure.arc.low = Duration{0.3, minute};
    unsure.arc.high = Duration{1.7, minute};
    const Report r = assess(shop({}, 2000, 400), unsure, 24);
    const Report sure = assess(shop({}, 2000, 400), part(5, 1), 24);
    CHECK(r.starts_left.value < 1.2 * sure.starts_left.value);
    CHECK(r.starts_left.high <= assess(shop({}), unsure, 24).starts_left.high);
}

TEST_CASE("Past twice the usual life the counter is doubted", "[wear]") {
    const std::vector<ConsumableSet> sets{set(300, 60), set(290, 62), set(310, 58)};
    CHECK_FALSE(assess(shop(sets, 500, 100), part(5, 1), 24).outlived);
    CHECK(assess(shop(sets, 700, 140), part(5, 1), 24).outlived);
    CHECK(assess(shop({}, 2000, 400), Load{}, 24).outlived);
    // It is not taken for a sign of long-lived sets either: the price stays what it was.
    CHECK(assess(shop(sets, 5000, 1000), part(5, 1), 24).part_uses.value ==
          assess(shop(sets), part(5, 1), 24).part_uses.value);
}

TEST_CASE("A set pulled early is a bound, not a life", "[wear]") {
    const double before = assess(shop({}), part(5, 0.5), 24).starts_per_set.value;
    // Pulled at a tenth of the guessed life: it says next to nothing. Read as a life it would say 90 starts.
    CHECK(assess(shop({set(40, 0, Ended::pulled)}), part(5, 0.5), 24).starts_per_set.value ==
          Approx(before).epsilon(0.01));
    CHECK(assess(shop({set(40, 0)}), part(5, 0.5), 24).starts_per_set.value < 0.9 * before);
    // Pulled, still good, past the guessed life: sets last longer here than guessed.
    const Report late = assess(shop({set(600, 60, Ended::pulled)}), part(5, 0.5), 24);
    CHECK(late.starts_per_set.value > 1.2 * before);
    CHECK(late.guess);
    CHECK(late.starts_per_set.basis.tests == 0);
}

TEST_CASE("A log narrows the band and is counted", "[wear]") {
    const WearLog own = shop({set(300, 60), set(200, 110), set(420, 35), set(250, 80), set(100, 10, Ended::pulled)});
    const Report r = assess(own, part(5, 0.5), 24), guess = assess(shop({}), part(5, 0.5), 24);
    CHECK_FALSE(r.guess);
    CHECK(r.part_uses.basis.tests == 4);
    CHECK(r.part_uses.high / r.part_uses.low < guess.part_uses.high / guess.part_uses.low);
}

TEST_CASE("A shop whose sets differ much gets wider bands", "[wear]") {
    const WearLog steady = shop({set(300, 60), set(310, 60), set(295, 60), set(305, 60), set(300, 62), set(298, 61)});
    const WearLog wild = shop({set(100, 20), set(620, 120), set(180, 36), set(560, 110), set(120, 24), set(300, 60)});
    CHECK(learn(steady.sets).spread < priors().set_spread);
    CHECK(learn(wild.sets).spread > 1.5 * priors().set_spread);
    CHECK(assess(steady, part(5, 1), 200).changes.high - assess(steady, part(5, 1), 200).changes.low <
          assess(wild, part(5, 1), 200).changes.high - assess(wild, part(5, 1), 200).changes.low);
}

TEST_CASE("When to change, and how many sets to hold", "[wear]") {
    const WearLog own = shop({set(300, 60), set(290, 62), set(310, 58), set(305, 61), set(298, 60)}, 150, 30);
    const Report r = assess(own, part(10, 2), 40); // 1.33 sets; half of the one in the torch is gone
    REQUIRE(r.change_before);
    REQUIRE(r.wears_at);
    CHECK((*r.wears_at >= 14 && *r.wears_at <= 17));
    CHECK(*r.change_before < *r.wears_at);
    CHECK(*r.change_before > 8);
    CHECK(r.changes.low <= r.changes.value);
    CHECK(r.changes.value <= r.changes.high);
    CHECK(r.sets_to_hold == static_cast<int>(r.changes.high));
    CHECK(r.sets_to_hold >= 1);
    CHECK(r.finishes < 0.01);
    CHECK(r.starts_left.value == Approx(150).margin(15));
    CHECK(r.starts_left.low < r.starts_left.value);
    CHECK(r.starts_left.value < r.starts_left.high);
    // A worn-out set: change now.
    WearLog out = own;
    out.now = {330, Duration{66, minute}};
    CHECK(assess(out, part(10, 2), 40).change_before == 1);
    // More parts: never fewer sets. More hold than the mean asks for.
    int last = 0;
    for (int quantity = 1; quantity < 3000; quantity = quantity * 3 / 2 + 1) {
        const Report more = assess(own, part(10, 2), quantity);
        CHECK(more.sets_to_hold >= last);
        CHECK(more.sets_to_hold + 1 >= more.job_uses.value);
        CHECK(more.changes.value <= more.sets_to_hold);
        last = more.sets_to_hold;
    }
}

TEST_CASE("Arcs that run off the plate, restarts and a feed that is not sure count", "[wear]") {
    const Report plain = assess(shop({}), part(5, 0.5), 24), off = assess(shop({}), part(5, 0.5, 1), 24);
    CHECK(off.part_uses.value == Approx(plain.part_uses.value + 3 / 400.0));
    CHECK(assess(shop({}), part(9, 0.5), 24).part_uses.value == Approx(plain.part_uses.value + 4 / 400.0));
    Load unsure = part(5, 0.5);
    unsure.arc.low = Duration{0.3, minute};
    unsure.arc.high = Duration{0.7, minute};
    const Report r = assess(shop({}), unsure, 24);
    CHECK(r.part_uses.value == plain.part_uses.value);
    CHECK(r.part_uses.high > plain.part_uses.high);
}

TEST_CASE("Nothing to cut: the set in the torch is still known", "[wear]") {
    const Report r = assess(shop({set(300, 60)}, 100, 20), Load{}, 24);
    CHECK(r.life_used.value > 0.2);
    CHECK(r.starts_left.value > 50);
    CHECK(r.job_uses.value == 0.0);
    CHECK(r.sets_to_hold == 0);
    CHECK_FALSE(r.change_before);
}

TEST_CASE("Figures stay finite at the ends of every range", "[wear]") {
    for (const int starts : {0, 1, 100000}) {
        for (const double minutes : {0.0, 10000.0}) {
            for (const Ended ended : {Ended::worn, Ended::pulled}) {
                for (const int quantity : {1, 100000}) {
                    const WearLog extreme =
                        shop({set(starts, minutes, ended), set(starts, minutes, ended)}, starts, minutes);
                    for (const Load& load : {part(1, 0), part(1, 1e-3), part(20000, 1e4, 200), Load{}}) {
                        const Report r = assess(extreme, load, quantity);
                        CAPTURE(starts, minutes, quantity, load.starts);
                        for (const Estimate<double>& e : {r.starts_per_set, r.life_used, r.part_uses, r.job_uses,
                                                          r.starts_left, r.changes, r.cost_each}) {
                            CHECK((std::isfinite(e.high) && 0.0 <= e.low && e.low <= e.value && e.value <= e.high));
                        }
                        CHECK((r.finishes >= 0.0 && r.finishes <= 1.0));
                        CHECK(r.sets_to_hold >= 0);
                    }
                }
            }
        }
    }
}

TEST_CASE("Sets said to last fifty times the guess do not give life back", "[wear]") {
    const WearLog odd =
        shop({set(0, 0), set(58879, 2140, Ended::pulled), set(50199, 6361, Ended::pulled)}, 60270, 6427);
    const Report r = assess(odd, part(59, 0.57, 135), 1710);
    CHECK(r.life_used.value >= 0.0);
    CHECK(r.part_uses.value >= 0.0);
    CHECK(r.cost_each.low >= 0.0);
}

TEST_CASE("A band that comes within a hundredth of nothing begins at nothing", "[wear]") {
    CHECK(low_end(10, 4) == 6.0);
    CHECK(low_end(10, 9.95) == 0.0);
    CHECK(low_end(10, 12) == 0.0);
    CHECK(low_end(0, 0) == 0.0);
}
