// The fit against brute force: every coefficient and every stock's own part summed on a grid.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include "core/tune/quantile.hpp"
#include "core/tune/response_fit.hpp"
#include "tests/core/tune_brute.hpp"
#include "tests/core/tune_line.hpp"
#include "tests/property/rng.hpp"

using namespace torchside::tune;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using torchside::test::bias_sd;
using torchside::test::Brute;
using torchside::test::line_model;
using torchside::test::Rng;
using torchside::test::slope_sd;
using torchside::test::stock_sd;
using torchside::test::verdict;
using torchside::test::window;
namespace test = torchside::test;

namespace {

Observation reading(double u, double y, double sd) {
    Observation o;
    o.x = {1.0, u};
    o.y = y;
    o.noise = sd * sd;
    return o;
}

// Of f at u, by sums over bias, slope and the own part of every stock.
Brute brute(const std::vector<Observation>& rows, double at) {
    const Judge judge(window);
    std::vector<double> places{at};
    for (const Observation& o : rows) {
        if (std::find(places.begin(), places.end(), o.x[1]) == places.end()) {
            places.push_back(o.x[1]);
        }
    }
    std::vector<std::vector<double>> evidence; // of eta, own part summed out
    for (const double u : places) {
        evidence.push_back(test::spread(test::own_likelihood(rows, {1.0, u}, judge), stock_sd));
    }
    constexpr int n = test::BruteGrid::n;
    std::vector<double> eta_here(n, 0.0);
    for (double b = -6 * bias_sd; b <= 6 * bias_sd; b += 0.008) {
        for (double s = -6 * slope_sd; s <= 6 * slope_sd; s += 0.01) {
            double w = test::normal(b / bias_sd) * test::normal(s / slope_sd);
            for (std::size_t k = 1; k < places.size(); ++k) {
                const int i = test::BruteGrid::node(b + s * places[k]);
                w *= i < 0 || i >= n ? 0.0 : evidence[k][static_cast<std::size_t>(i)];
            }
            const int i = test::BruteGrid::node(b + s * at);
            if (i >= 0 && i < n) {
                eta_here[static_cast<std::size_t>(i)] += w;
            }
        }
    }
    return test::summed(eta_here, test::own_likelihood(rows, {1.0, at}, judge), stock_sd);
}

void compare(const std::vector<Observation>& rows, double at) {
    const Brute exact = brute(rows, at);
    const Distribution b = fit(rows, line_model()).distribution({1.0, at}, 0);
    CAPTURE(at, rows.size(), exact.mean, b.mean, exact.sd, b.sd);
    CHECK_THAT(std::exp(b.mean), WithinRel(std::exp(exact.mean), 0.002));
    CHECK_THAT(b.sd, WithinRel(exact.sd, 0.015));
    CHECK_THAT(std::exp(b.quantile(0.5)), WithinRel(std::exp(exact.middle), 0.01));
    CHECK_THAT(std::exp(b.quantile(0.1)), WithinRel(std::exp(exact.low), 0.01));
    CHECK_THAT(std::exp(b.quantile(0.9)), WithinRel(std::exp(exact.high), 0.01));
}

// A shop, 1 to 5 stocks, 1 to 4 cuts of each about what is right, judged by the window with its soft edges; no misread.
std::vector<Observation> random_log(Rng& rng) {
    const auto draw = [&] { return normal_quantile(rng.uniform(1e-6, 1.0 - 1e-6)); };
    const double bias = bias_sd * draw();
    const double slope = slope_sd * draw();
    std::vector<Observation> rows;
    double u = -1.4;
    for (auto stock = 1 + rng.below(5); stock > 0; --stock) {
        u += rng.uniform(0.2, 0.6);
        const double right = bias + slope * u + stock_sd * draw();
        for (auto cut = 1 + rng.below(4); cut > 0; --cut) {
            const double y = right + 0.15 * draw();
            const double z = y - right + window.soft * draw();
            rows.push_back(verdict(u, y,
                                   z > std::log(1.0 + window.width)   ? Judgement::high
                                   : z < std::log(1.0 - window.width) ? Judgement::low
                                                                      : Judgement::good));
        }
    }
    return rows;
}

} // namespace

TEST_CASE("What one verdict says of another stock keeps its shape") {
    for (const double at : {-1.0, -0.3, 0.4, 1.0}) {
        for (const Judgement r : {Judgement::low, Judgement::good, Judgement::high}) {
            for (const double y : {-0.3, 0.0, 0.25}) {
                compare({verdict(-0.3, y, r)}, at);
            }
        }
    }
}

TEST_CASE("The example of verdict_grid.hpp") {
    const Distribution b = fit({verdict(0.0, 0.0, Judgement::high)}, line_model()).distribution({1.0, 0.0}, 7);
    CHECK_THAT(b.quantile(0.1), WithinAbs(-0.532, 0.001));
    CHECK_THAT(b.quantile(0.5), WithinAbs(-0.251, 0.001));
    CHECK_THAT(b.quantile(0.9), WithinAbs(-0.057, 0.001));
}

TEST_CASE("What the verdicts of several stocks say of one keeps its shape") {
    for (const double at : {-1.0, 0.1, 0.5}) {
        compare({verdict(-1.0, 0.1, Judgement::good), verdict(0.5, -0.2, Judgement::high),
                 verdict(-0.7, 0.3, Judgement::high)},
                at);
        compare({verdict(-1.0, 0.1, Judgement::low), verdict(0.5, 0.2, Judgement::high)}, at);
        compare(
            {verdict(0.0, 0.2, Judgement::low), verdict(0.7, 0.2, Judgement::low), verdict(-0.7, 0.1, Judgement::low)},
            at);
    }
}

TEST_CASE("One verdict, one stock: exact") {
    for (const Judgement r : {Judgement::low, Judgement::good, Judgement::high}) {
        const std::vector<Observation> rows{verdict(0.3, 0.2, r)};
        const Brute exact = brute(rows, 0.3);
        const Distribution b = fit(rows, line_model()).distribution({1.0, 0.3}, 0);
        CHECK_THAT(b.mean, WithinAbs(exact.mean, 0.002));
        CHECK_THAT(b.sd, WithinRel(exact.sd, 0.01));
    }
}

TEST_CASE("Feeds within 1 % of brute force over several stocks") {
    const std::vector<Observation> rows{verdict(-1.4, 0.0, Judgement::low),   verdict(-1.4, 0.2, Judgement::good),
                                        verdict(-0.7, 0.15, Judgement::good), verdict(0.0, 0.1, Judgement::high),
                                        verdict(0.0, -0.02, Judgement::good), verdict(0.7, 0.05, Judgement::good)};
    for (const double at : {-1.4, -0.7, 0.0, 0.3, 0.7, 1.0}) {
        compare(rows, at);
    }
}

TEST_CASE("Readings and verdicts together") {
    const std::vector<Observation> rows{reading(-0.7, 0.10, 0.05), verdict(-0.7, 0.12, Judgement::good),
                                        reading(0.0, 0.20, 0.05), verdict(0.7, 0.2, Judgement::low)};
    for (const double at : {-0.7, 0.0, 0.7, 1.0}) {
        compare(rows, at);
    }
}

TEST_CASE("Rows that contradict each other") {
    // Too slow far above where another stock was clean, and the other way about within one stock.
    const std::vector<Observation> one{verdict(0.0, 0.0, Judgement::good), verdict(0.0, 0.3, Judgement::low),
                                       verdict(0.0, -0.1, Judgement::high)};
    compare(one, 0.0);
    compare(one, 0.7);
    const std::vector<Observation> two{verdict(-0.4, 0.3, Judgement::good), verdict(-0.4, 0.3, Judgement::good),
                                       verdict(0.0, 0.25, Judgement::high), verdict(0.0, 0.05, Judgement::low),
                                       verdict(0.4, 0.0, Judgement::good)};
    for (const double at : {-0.4, 0.0, 0.4}) {
        compare(two, at);
    }
}

TEST_CASE("Two feeds about as likely, far apart: a second start finds both") {
    // Two neighbours of a stock that was never cut contradict each other, each by two cuts: one of them was misread.
    const std::vector<Observation> rows{verdict(-0.1, 0.4, Judgement::good), verdict(-0.1, 0.42, Judgement::good),
                                        verdict(0.1, -0.4, Judgement::good), verdict(0.1, -0.42, Judgement::good)};
    const Brute exact = brute(rows, 0.0);
    Model one = line_model();
    one.starts = 1;
    const Distribution found = fit(rows, one).distribution({1.0, 0.0}, 0);
    CAPTURE(exact.low, exact.middle, exact.high, found.quantile(0.1), found.quantile(0.5), found.quantile(0.9));
    REQUIRE(exact.high - exact.low > 0.7); // both
    CHECK(std::max(std::abs(found.quantile(0.1) - exact.low), std::abs(found.quantile(0.9) - exact.high)) > 0.05);
    for (const double at : {-1.0, -0.1, 0.0, 0.1, 0.5}) {
        compare(rows, at);
    }
    const auto beliefs = fit(rows, line_model()).beliefs({1.0, 0.0}, 0);
    REQUIRE(beliefs.size() == 2);
    CHECK_THAT(beliefs[0].weight + beliefs[1].weight, WithinAbs(1.0, 1e-12));
    CHECK(beliefs[1].weight > 0.3);
}

TEST_CASE("Readings that agree speak against a drift that would set them apart") {
    Model m = line_model();
    m.others = {{window, std::log(0.1), m.prior, m.stock_sd, -0.1}};
    std::vector<Observation> rows{verdict(0.0, 0.1, Judgement::good)};
    for (int i = 0; i < 7; ++i) {
        rows.push_back(reading(0.0, 0.1, 0.05));
        rows.back().used = 10.0; // with a drift these would lie 1 off, and the verdict with them
    }
    const ResponseFit found = fit(rows, m);
    CHECK(found.model().drift == 0.0);
    CHECK_THAT(found.distribution({1.0, 0.0}, 0).mean, WithinAbs(0.1, 0.02));
}

TEST_CASE("Verdicts that agree are fitted once") {
    const std::vector<Observation> rows{verdict(-0.7, 0.0, Judgement::low), verdict(-0.7, 0.2, Judgement::good),
                                        verdict(0.0, 0.15, Judgement::good), verdict(0.7, 0.4, Judgement::high)};
    CHECK(fit(rows, line_model()).beliefs({1.0, 0.0}, 0).size() == 1);
}

TEST_CASE("Random logs: how near to brute force, on plates that were cut and on others") {
    // Cuts made anywhere near, so that some rule each other out: harder than the logs that asking for the next test makes.
    constexpr int logs = 80;
    struct Off {
        std::vector<double> middle, ends; // of ln(feed): shares of the feed
    };
    const auto off = [](std::uint64_t seed, bool cut_before) {
        Off o;
        Rng rng(seed);
        for (int log = 0; log < logs; ++log) {
            const std::vector<Observation> rows = random_log(rng);
            const double at = cut_before ? rows[rng.below(rows.size())].x[1] : rng.uniform(-1.4, 1.4);
            const Brute exact = brute(rows, at);
            const Distribution b = fit(rows, line_model()).distribution({1.0, at}, 0);
            o.middle.push_back(std::abs(b.quantile(0.5) - exact.middle));
            o.ends.push_back(std::max(std::abs(b.quantile(0.1) - exact.low), std::abs(b.quantile(0.9) - exact.high)));
        }
        return o;
    };
    const auto share = [](const std::vector<double>& all, double limit) {
        const auto near = std::count_if(all.begin(), all.end(), [&](double d) { return d <= limit; });
        return static_cast<double>(near) / logs;
    };
    const Off cut = off(1, true), other = off(2, false);
    CAPTURE(share(cut.middle, 0.01), share(cut.ends, 0.01), share(other.middle, 0.01), share(other.ends, 0.01));
    CHECK(share(cut.middle, 0.01) >= 0.98);
    CHECK(share(cut.ends, 0.01) >= 0.95);
    CHECK(share(other.middle, 0.01) >= 0.98);
    CHECK(share(other.ends, 0.01) >= 0.98);
}

TEST_CASE("A reading that is far off is flagged and weighted down; the others are left alone") {
    std::vector<Observation> rows;
    for (int i = 0; i < 8; ++i) {
        rows.push_back(reading(0.1 * i, 0.1 + 0.01 * (i % 3), 0.05));
        rows.back().row = i;
    }
    rows[5].y = 1.2;
    const ResponseFit s = fit(rows, line_model());
    for (const Finding& f : s.findings()) {
        CAPTURE(f.row, f.sd_off, f.weight);
        CHECK(f.flagged == (f.row == 5));
        CHECK((f.weight < 0.2) == (f.row == 5));
    }
    CHECK_THAT(s.curve({1.0, 0.3}), WithinAbs(0.11, 0.03));
}

TEST_CASE("A verdict against all others is flagged and told as misread") {
    std::vector<Observation> rows;
    for (int i = 0; i < 6; ++i) {
        rows.push_back(verdict(0.0, 0.02 * i, Judgement::good));
        rows.back().row = i;
    }
    rows.push_back(verdict(0.0, 0.9, Judgement::low));
    rows.back().row = 6;
    const ResponseFit s = fit(rows, line_model());
    const Finding& odd = s.findings()[6];
    CHECK(odd.flagged);
    CHECK(odd.weight < 0.01);
    CHECK_FALSE(s.findings()[2].flagged);
    CHECK_THAT(s.distribution({1.0, 0.0}, 0).mean, WithinAbs(0.05, 0.03));
}

TEST_CASE("Verdicts that speak for another window are read by it") {
    Model m = line_model();
    m.others = {{{0.04, 0.02, 0.03}, -3.0, m.prior, m.stock_sd}, {{0.12, 0.02, 0.03}, -3.0, m.prior, m.stock_sd}};
    std::vector<Observation> rows;
    for (int i = 0; i < 8; ++i) { // clean at the middle, never 0.055 away from it
        const double u = 0.2 * i;
        rows.push_back(verdict(u, 0.055, Judgement::high));
        rows.push_back(verdict(u, -0.055, Judgement::low));
        rows.push_back(verdict(u, 0.0, Judgement::good));
    }
    CHECK(fit(rows, m).model().window.width == 0.04);
    rows.resize(1);
    CHECK(fit(rows, m).model().window.width == 0.08);
}

TEST_CASE("Quantiles of a belief enclose the mass they say") {
    const std::vector<Observation> rows{verdict(0.0, 0.1, Judgement::low)};
    const Distribution b = fit(rows, line_model()).distribution({1.0, 0.0}, 0);
    double below = 0.0;
    for (std::size_t i = 0; i < b.mass.size(); ++i) {
        below += b.low + b.step * static_cast<double>(i) < b.quantile(0.3) ? b.mass[i] : 0.0;
    }
    CHECK_THAT(below, WithinAbs(0.3, 0.03)); // to one node
    CHECK(b.quantile(0.1) < b.quantile(0.5));
    CHECK(b.quantile(0.5) < b.quantile(0.9));
}

TEST_CASE("Normal quantiles") {
    // Tables of the normal distribution.
    CHECK_THAT(normal_quantile(0.9), WithinAbs(1.2815515655446004, 1e-13));
    CHECK_THAT(normal_quantile(0.975), WithinAbs(1.959963984540054, 1e-13));
    CHECK_THAT(normal_quantile(0.0013498980316300933), WithinAbs(-3.0, 1e-12));
    CHECK_THAT(normal_quantile(0.5), WithinAbs(0.0, 1e-15));
}

TEST_CASE("The window of the header's example") {
    const Judge judge(window);
    CHECK_THAT(judge.happens(Judgement::good, 0.0), WithinAbs(0.999925, 5e-7));
    CHECK_THAT(judge.reads(Judgement::good, 0.0), WithinAbs(0.969928, 1e-6));
    CHECK_THAT(judge.happens(Judgement::good, std::log(1.08)), WithinAbs(0.5, 1e-9));
    CHECK_THAT(judge.reads(Judgement::low, 5.0), WithinAbs(0.015, 1e-12));
}

TEST_CASE("An edge is as soft as the normal distribution says, to the last place before it is flat") {
    const Judge judge(window);
    double worst = 0.0;
    for (double x = -7.0; x <= 7.0; x = std::nextafter(x + 1e-4, 8.0)) {
        const double z = judge.upper_edge() + window.soft * x;
        worst = std::fmax(worst, std::abs(judge.happens(Judgement::high, z) - normal_cdf(x)));
    }
    CHECK(worst < 5e-12);
    double x = 7.0; // the doubles next to the end
    for (int i = 0; i < 40; ++i, x = std::nextafter(x, 0.0)) {
        CHECK_THAT(judge.happens(Judgement::high, judge.upper_edge() + window.soft * x), WithinAbs(1.0, 2e-12));
    }
}
