// Cuts of other shops: evidence one level up, never own cuts.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

#include "core/tune/others.hpp"
#include "core/worksheet/shop_model.hpp"

using namespace torchside;
using namespace torchside::tune;
using Catch::Matchers::WithinAbs;

namespace {

cut::CutSetup plate(double thickness_mm) {
    cut::CutSetup p;
    p.thickness = Length{thickness_mm, mm};
    p.current = Current{45, ampere};
    p.bore = Length{1.1, mm};
    return p;
}

SharedCut made(double thickness_mm, double feed_mm_min, int shop) {
    SharedCut s;
    s.cut.thickness = Length{thickness_mm, mm};
    s.cut.feed = Speed{feed_mm_min, mm_min};
    s.cut.verdict = Verdict::clean;
    s.cut.kerf_top = Length{2.0, mm};
    s.cut.kerf_bottom = Length{1.8, mm};
    s.cut.arc = Voltage{140, volt};
    s.bore = Length{1.1, mm};
    s.shop = shop;
    return s;
}

/// Shops that cut faster than practice says, by as much each.
std::vector<SharedCut> fast_shops(int shops, double times) {
    std::vector<SharedCut> out;
    const Posterior chart = learn({}, Machine{});
    for (int s = 1; s <= shops; ++s) {
        for (const double t : {3.0, 6.0, 10.0}) {
            out.push_back(made(t, times * feed(chart, plate(t)).value.in(mm_min), s));
        }
    }
    return out;
}

Posterior with(std::span<const SharedCut> others) {
    return learn({}, Machine{}, std::nullopt, start_with(others, priors()), priors());
}

double width(const Estimate<Speed>& e) {
    return std::log(e.high / e.low);
}

} // namespace

TEST_CASE("one step up: its own part stays with the shop") {
    const double sd[] = {0.35};
    const Gaussian before = Gaussian::independent(sd);
    Gaussian after = before;
    after.mean[0] = 0.2;
    after.cov[0][0] = 0.05 * 0.05;
    const Gaussian next = one_level_up(before, after, {0.22 * 0.22});
    const double g = 1 - 0.22 * 0.22 / (0.35 * 0.35);
    CHECK_THAT(next.mean[0], WithinAbs(g * 0.2, 1e-15));
    CHECK_THAT(next.mean[0], WithinAbs(0.1210, 5e-5));
    CHECK_THAT(next.cov[0][0], WithinAbs(0.35 * 0.35 - g * g * (0.35 * 0.35 - 0.05 * 0.05), 1e-15));
    CHECK(one_level_up(before, after, {}).mean[0] == after.mean[0]);
    CHECK_THAT(one_level_up(before, after, {0.35 * 0.35}).mean[0], WithinAbs(0, 1e-15));
}

TEST_CASE("one step up in two coefficients is conditioning of the joint normal") {
    const double sd[] = {0.3, 0.2};
    Gaussian before = Gaussian::independent(sd);
    before.cov[0][1] = before.cov[1][0] = 0.02;
    Gaussian after = before;
    after.observe({1.0, 0.5}, 0.4, 0.01);
    // The same evidence seen through the shop's own part: x'(T + d), d with variance D, is a noisier reading of x'T.
    const Vector own{0.04, 0.01};
    Gaussian large = before;
    large.cov[0][0] -= own[0];
    large.cov[1][1] -= own[1];
    large.observe({1.0, 0.5}, 0.4, 0.01 + own[0] + 0.25 * own[1]);
    large.cov[0][0] += own[0];
    large.cov[1][1] += own[1];
    const Gaussian next = one_level_up(before, after, own);
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK_THAT(next.mean[i], WithinAbs(large.mean[i], 1e-12));
        for (std::size_t j = 0; j < 2; ++j) {
            CHECK_THAT(next.cov[i][j], WithinAbs(large.cov[i][j], 1e-12));
        }
    }
}

TEST_CASE("other shops move the feed towards theirs, and never as far as own cuts would") {
    const double chart = feed(learn({}, Machine{}), plate(6)).value.in(mm_min);
    const Posterior one = with(fast_shops(1, 1.4));
    const Posterior many = with(fast_shops(20, 1.4));
    const double by_one = feed(one, plate(6)).value.in(mm_min) / chart;
    const double by_many = feed(many, plate(6)).value.in(mm_min) / chart;
    CHECK(by_one > 1.01);
    CHECK(by_many > by_one);
    CHECK(by_many < 1.4);
    CHECK(feed(many, plate(6)).basis.others == 60);
    CHECK(feed(many, plate(6)).basis.tests == 0);
    const Priors& p = priors(); // however many shops, this one differs from them as shops do
    const double at_least =
        2 * 1.2815515655446004 * std::sqrt(p.feed_shop_bias * p.feed_shop_bias + p.feed_stock * p.feed_stock);
    CHECK(width(feed(many, plate(6))) > at_least);
    CHECK(width(feed(many, plate(6))) < width(feed(learn({}, Machine{}), plate(6))));
    CHECK(kerf(many, plate(6)).basis.others == 60);
    CHECK(arc(many, plate(6)).value > arc(learn({}, Machine{}), plate(6)).value);
}

TEST_CASE("a hundred rows of one shop are one shop") {
    std::vector<SharedCut> rows;
    for (int i = 0; i < 34; ++i) {
        for (SharedCut row : fast_shops(1, 1.4)) {
            rows.push_back(row);
        }
    }
    const double chart = feed(learn({}, Machine{}), plate(6)).value.in(mm_min);
    const Posterior of_one = with(rows);
    const Posterior of_many = with(fast_shops(20, 1.4));
    CHECK(feed(of_one, plate(6)).value.in(mm_min) / chart < feed(of_many, plate(6)).value.in(mm_min) / chart);
    CHECK(width(feed(of_one, plate(6))) > width(feed(of_many, plate(6))));
}

TEST_CASE("own cuts outweigh those of others") {
    const auto others = fast_shops(20, 1.4);
    const double chart = feed(learn({}, Machine{}), plate(6)).value.in(mm_min);
    std::vector<TestCut> own;
    for (const double share : {0.97, 1.0, 1.03}) {
        TestCut c = made(6, share * chart, 1).cut;
        c.kerf_top.reset();
        c.kerf_bottom.reset();
        c.arc.reset();
        own.push_back(c);
    }
    const Posterior p = learn(own, Machine{}, std::nullopt, start_with(others, priors()), priors());
    CHECK(std::abs(feed(p, plate(6)).value.in(mm_min) / chart - 1) < 0.04);
    const Trail t = trail(p, plate(6));
    CHECK(t.practice.basis.others == 0);
    CHECK(t.others.basis.others == 60);
    CHECK(t.others.value > t.practice.value);
}

TEST_CASE("a shop without the cuts of others is as it was, and taking them out gives it back") {
    Shop shop;
    const ShopModel before(shop);
    shop.others = fast_shops(3, 1.3);
    CHECK_FALSE(before.holds_for(shop));
    const ShopModel taken = before.fitted_to(shop);
    CHECK(taken.posterior().others.feed == 9);
    shop.tests.push_back(made(6, 1500, 1).cut);
    const ShopModel more = taken.fitted_to(shop); // the others are not fitted again: the same
    CHECK(feed(more.posterior(), plate(6)).value == feed(ShopModel(shop).posterior(), plate(6)).value);
    shop.tests.clear();
    shop.others.clear();
    const ShopModel after = more.fitted_to(shop);
    CHECK(feed(after.posterior(), plate(6)).value == feed(before.posterior(), plate(6)).value);
    CHECK(feed(after.posterior(), plate(6)).low == feed(before.posterior(), plate(6)).low);
    CHECK(trail(after.posterior(), plate(6)).others.value == trail(after.posterior(), plate(6)).practice.value);
}
