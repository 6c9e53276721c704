// Properties of cost and price over random jobs; fixed seeds.
#include <algorithm>
#include <cmath>

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/price/quote.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::price;

namespace {

struct RandomJob {
    Work work{};
    Rates rates{};
    JobPrice price{};
    std::optional<double> tax{};
    double set_price = 0.0;

    explicit RandomJob(test::Rng& rng) {
        constexpr const char* codes[] = {"USD", "EUR", "JPY", "KWD", "CLF"};
        rates.currency = codes[rng.below(5)];
        rates.labour_per_h = rng.chance(0.1) ? 0.0 : rng.by_factor(1, 5000);
        rates.machine_per_h = rng.chance(0.1) ? 0.0 : rng.by_factor(1, 5000);
        rates.energy_per_kwh = rng.by_factor(0.01, 50);
        rates.minimum_charge = rng.chance(0.6) ? 0.0 : rng.by_factor(1, 1000);
        price.setup = Duration{rng.uniform(0, 120), minute};
        price.material_per_kg = rng.by_factor(0.1, 500);
        price.scrap_share = rng.uniform(0, 0.9);
        if (rng.chance(0.3)) {
            price.waste_per_part = rng.uniform(0, 9);
        }
        price.handling = Duration{rng.chance(0.5) ? 0.0 : rng.uniform(0, 20), minute};
        price.margin = rng.uniform(0, 0.9);
        if (rng.chance(0.5)) {
            price.outside_quote_each = rng.by_factor(0.1, 1000);
        }
        if (rng.chance(0.5)) {
            tax = rng.uniform(0, 0.5);
        }
        set_price = rng.by_factor(0.5, 200);
        const double arc = rng.by_factor(0.5, 5000), sets = rng.by_factor(1e-4, 3), power = rng.by_factor(1000, 40000);
        work.mass = Mass{rng.by_factor(1e-3, 500), kg};
        work.arc = {Duration{arc, second},
                    Duration{arc * rng.uniform(0.6, 1), second},
                    Duration{arc * rng.uniform(1, 1.6), second},
                    {}};
        work.moving = Duration{rng.by_factor(0.1, 500), second};
        work.air_after = Duration{rng.uniform(0, 100), second};
        work.arc_per_10_min = Duration{rng.uniform(60, 600), second};
        work.sets = {sets, sets * rng.uniform(0.3, 1), sets * rng.uniform(1, 3), {}};
        work.sets_per_min = rng.by_factor(1e-4, 0.05);
        work.input = {Power{power, watt}, Power{0.9 * power, watt}, Power{1.1 * power, watt}, {}};
        work.air = Power{rng.by_factor(100, 9000), watt};
    }

    [[nodiscard]] Report at(int quantity) const { return quote(work, {rates, price, tax, set_price, quantity}); }
};

bool inside(const Estimate<double>& e) {
    return std::isfinite(e.high) && e.low <= e.value && e.value <= e.high;
}

} // namespace

TEST_CASE("The lines of 100 000 random jobs add up to the last coin", "[price][property]") {
    test::Rng rng{20240901};
    int wrong = 0;
    for (int i = 0; i < 100000; ++i) {
        const RandomJob job{rng};
        const int quantity = 1 + static_cast<int>(rng.below(rng.chance(0.5) ? 20 : 5000));
        const Report r = job.at(quantity);
        Money sum{}, cost{};
        bool sound = true;
        for (std::size_t k = 0; k < line_count; ++k) {
            sum = sum + r.lines[k].total;
            if (k < cost_lines) {
                cost = cost + r.lines[k].total;
            }
            sound = sound && inside(r.lines[k].each) && r.lines[k].total >= Money{};
        }
        sound = sound && sum == r.total && cost == r.cost && r.to_pay == r.total + r.tax.value_or(Money{});
        sound = sound && inside(r.cost_each) && inside(r.price_each) && inside(r.price_total);
        // The rounded cost is the cost to half a coin a line; one part's price is the total's share to half a coin.
        const double coin = amount(Money{1}, r.decimals), q = quantity;
        sound = sound && std::abs(amount(r.cost, r.decimals) - q * r.cost_each.value) <= 3.01 * coin;
        sound = sound && std::abs(amount(r.each, r.decimals) - amount(r.total, r.decimals) / q) <= 0.501 * coin;
        wrong += sound ? 0 : 1;
    }
    CHECK(wrong == 0);
}

TEST_CASE("More parts never cost less in all", "[price][property]") {
    test::Rng rng{20240902};
    for (int i = 0; i < 3000; ++i) {
        const RandomJob job{rng};
        Money last{};
        int quantity = 1;
        for (int step = 0; step < 25; ++step) {
            const Report r = job.at(quantity);
            CHECK(r.total >= last);
            CHECK(std::is_sorted(r.breaks.begin(), r.breaks.end(),
                                 [](const Break& a, const Break& b) { return a.total < b.total; }));
            last = r.total;
            quantity += 1 + static_cast<int>(rng.below(rng.chance(0.7) ? 2 : 300));
        }
    }
}

TEST_CASE("Margin and markup undo each other", "[price][property]") {
    test::Rng rng{20240903};
    for (int i = 0; i < 10000; ++i) {
        const double m = rng.uniform(0, 0.9), k = rng.uniform(0, 9);
        CHECK(margin_of(markup_of(m)) == Catch::Approx(m).epsilon(1e-12));
        CHECK(markup_of(margin_of(k)) == Catch::Approx(k).epsilon(1e-12));
        const RandomJob job{rng};
        const Report r = job.at(50);
        CHECK(r.markup == Catch::Approx(markup_of(r.margin)).epsilon(1e-9));
    }
}

TEST_CASE("Break-even is the first quantity that pays", "[price][property]") {
    test::Rng rng{20240904};
    int tried = 0;
    for (int i = 0; i < 3000; ++i) {
        RandomJob job{rng};
        job.work.arc_per_10_min = Duration{600, second}; // without rests every further part costs the same
        const double outside = job.price.outside_quote_each.value_or(5.0);
        job.price.outside_quote_each = outside;
        const auto from = job.at(30).make_or_buy->break_even;
        if (!from || *from > 100000) {
            CHECK(job.at(from ? 1000 : 100000).cost_each.value * (1 + 1e-9) >= outside);
            continue;
        }
        ++tried;
        CHECK(job.at(*from).cost_each.value <= outside * (1 + 1e-9));
        if (*from > 1) {
            CHECK(job.at(*from - 1).cost_each.value >= outside * (1 - 1e-9));
        }
    }
    CHECK(tried > 300);
}
