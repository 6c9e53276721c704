// What a job costs, line by line, and the price to ask.
//
// What       One part's work (mass, table time, arc time, wear) times the batch, at the shop's rates.
// Formula    setup        minutes x labour
//            material     mass x price / (1 - scrap share), or mass x price x (1 + waste for each part)
//            machine      (table time of all parts + rests) x machine rate
//            labour       handling minutes x labour
//            consumables  share of a set x price of a set
//            energy       kWh of arc and of compressed air x price of a kWh
//            price        cost / (1 - margin), at least the minimum charge; markup k = m / (1 - m),
//                         margin m = k / (1 + k)
//            break-even   set-up / (outside price - cost of one part apart from set-up), rounded up
// Rounding   every cost line of the batch is rounded to the currency's minor unit (money.hpp) and the cost is their
//            sum; the price of the batch is worked from that sum and rounded once; margin is the difference. So the
//            lines always add up. The price of one is the total divided, rounded, and says so where quantity times it
//            is not the total: the total is what counts. To round the one and make the total its product instead would
//            charge up to half a coin a piece for nothing (12 of 2500 at 0.005), and the lines would no longer add up.
// Bands      delta method on three causes that know nothing of each other: the time under the arc, the rates of wear,
//            the arc's voltage. Within a cause lines move together; causes add in quadrature. What is typed in has no
//            band.
// Source     own arithmetic; energy.hpp.
// Range      as the schema has it; a batch up to 9e15 minor units.
// Edges      scrap is charged once, in the material; electricity once, in energy: the machine rate is to leave it out.
//            Nothing to do for free still costs the minimum charge.
// Example    0.12 m2 x 6 mm steel (5.652 kg) at 1.40, 25 % scrap; 4.761 min; set-up 15 min at 40; machine 60; 0.0401 of
//            a set at 18; 0.520 kWh at 0.25: 26.163, at 30 % margin 37.375 (30 % markup would be 34.012).
#pragma once

#include "core/price/energy.hpp"
#include "core/price/quote_terms.hpp"
#include "core/price/rates.hpp"
#include "core/price/report.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside::price {

/// What one part takes.
struct Work {
    Mass mass{};
    Estimate<Duration> arc{}; // cutting and piercing
    Duration moving{};        // the table's time without arc, rests apart
    Duration air_after{};     // air that flows on after the arc
    Duration arc_per_10_min{600, second};
    Estimate<double> sets{};   // share of a consumable set
    double sets_per_min = 0.0; // of it, for each minute of arc: moves with the arc's time
    Estimate<Power> input{};   // while the arc burns
    Power air{};               // the compressor's, while air flows
};

struct Order {
    const Rates& rates;
    const JobPrice& price;
    std::optional<double> tax{};
    double set_price = 0.0;
    int quantity = 1;
};

[[nodiscard]] Report quote(const Work& work, const Order& order);

/// Material for one part.
[[nodiscard]] double material_cost(Mass part, const JobPrice& price);

[[nodiscard]] constexpr double markup_of(double margin) {
    return margin / (1.0 - margin);
}
[[nodiscard]] constexpr double margin_of(double markup) {
    return markup / (1.0 + markup);
}

} // namespace torchside::price
