// What is known of a shop before its own log speaks, and what the cuts of other shops add to it.
//
// What       One normal distribution over the coefficients of each response: physics and practice, then one shop after the other.
// Formula    Each shop's rows are fitted as that shop's own log, from N(m0, C0), which gives N(m1, C1). Of its coefficients the part D
//            (variances) is that shop's own; what remains says something of shops at large:
//              G = I - D C0^-1      m = m0 + G (m1 - m0)      C = C0 - G (C0 - C1) G'
//            N(m, C), the next shop's own part counted in, is the start of the next shop, and at last of this one. Rows of one shop
//            err together: however many there are, a shop at large is never known better than D allows.
// Source     own; the textbook step from one level of a hierarchy to the next (conditioning of jointly normal T and T + d, d with
//            variance D). D: rows ..._shop... of assets/data/tune_priors.json, priors.
// Range      0..500 rows of 1..99 shops, in any order: the shop with the smallest number first. D = C0 moves nothing; D = 0 takes a
//            shop for this one.
// Edges      A shop is taken for the usual kind (tune_shops.json): the step is one between normal distributions. A row without a bore has that of the usual current density. Rows that a log would not learn from teach nothing here.
// Example    one coefficient, C0 = 0.35^2, D = 0.22^2, a shop found at m1 = 0.2 with C1 = 0.05^2: G = 0.6049, m = 0.1210,
//            C = 0.2247^2.
#pragma once

#include <span>
#include <vector>

#include "core/tune/posterior.hpp"
#include "core/tune/shared_cut.hpp"

namespace torchside::tune {

/// Physics and practice alone.
[[nodiscard]] Start usual_start(const Priors& priors);

/// With other shops.
[[nodiscard]] Start start_with(std::span<const SharedCut> others, const Priors& priors);

/// One step: what a shop that was found at `after` says of shops at large; `own` are the variances of its own part.
[[nodiscard]] Gaussian one_level_up(const Gaussian& before, const Gaussian& after, const Vector& own);

/// Shared cuts as a log of the shop that made them: its nozzles have the rows' bores.
struct OtherLog {
    std::vector<TestCut> cuts{};
    Machine machine{};
};
[[nodiscard]] OtherLog log_of(std::span<const SharedCut> cuts);

} // namespace torchside::tune
