// What a job costs and what to ask for it: the result of price::quote() (quote.hpp). Amounts that are estimates are in
// the shop's currency; what is shown and added up is Money.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/price/money.hpp"
#include "core/quantity/estimate.hpp"
#include "core/words/text.hpp"

namespace torchside::price {

/// Cost lines first; the last two make up the price.
enum class LineKind { setup, material, machine, labour, consumables, energy, minimum, margin };
inline constexpr std::size_t line_count = 8, cost_lines = 6;

struct Line {
    Estimate<double> each{}; // of one part, not rounded
    Money total{};           // of the batch, as shown
    Text how{};              // what it is made of: "0.68 kg at 1.60, 25 % of the plate is scrap"
};

/// The price of another quantity.
struct Break {
    int quantity = 1;
    Money each{}; // total / quantity, rounded
    Money total{};
};

enum class Choice { make, buy, even }; // even: the outside price lies inside our cost's band

struct MakeOrBuy {
    Choice choice = Choice::make;
    Estimate<double> saved_each{};   // outside price less our cost; below 0 when buying is cheaper
    std::optional<int> break_even{}; // from this quantity on making costs less; none: never
    Text title{}, detail{};          // which, by how much; from how many on
};

struct Report {
    std::array<Line, line_count> lines{}; // by LineKind
    Estimate<double> cost_each{};
    Estimate<double>
        price_each{}; // value: price_total / quantity, rounded; the band is what our own figures leave open
    Estimate<double> price_total{}; // value: `total`
    int decimals = 2;               // of the currency
    Money cost{};                   // sum of the cost lines
    Money total{};                  // sum of all lines, before tax
    Money each{};                   // total / quantity, rounded
    bool each_rounded = false;      // so that quantity times it is not the total
    std::optional<Money> tax{};     // on `total`
    Money to_pay{};                 // total and tax
    double margin = 0.0;            // profit / price as it comes out, minimum charge included
    double markup = 0.0;            // profit / cost, the same money
    Text margin_text{};             // both in words
    bool minimum_applies = false;
    std::vector<Break> breaks{}; // rising quantities, the job's own among them
    std::optional<MakeOrBuy> make_or_buy{};
    Text rounding{}; // the rule
    Text band{};     // how the bands come about
};

[[nodiscard]] inline const Line& line(const Report& report, LineKind kind) {
    return report.lines[static_cast<std::size_t>(kind)];
}

} // namespace torchside::price
