// What a batch does to the consumables: the result of wear::assess() (assess.hpp). Lives are counted as shares of one
// set: 1 is a set used up.
#pragma once

#include <optional>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::wear {

struct Report {
    Estimate<double> starts_per_set{};  // 1/a: starts alone, no arc time
    Estimate<Duration> arc_per_set{};   // 1/b: arc time alone, no starts
    Estimate<double> life_used{};       // by the set in the torch; may pass 1
    bool outlived = false;              // by so much that the counter was hardly reset when the set was changed
    Estimate<double> part_uses{};       // sets, by one part
    Estimate<double> job_uses{};        // sets, by the whole batch
    Estimate<double> starts_left{};     // on the set in the torch, at this job's arc time a start
    std::optional<int> change_before{}; // part (1 is the first) before which to change so that 9 in 10 sets get there
                                        // whole; 1: now. None: the set in the torch sees the batch through
    std::optional<int> wears_at{};      // part at which it wears out, as likely before as after; none: after the batch
    Estimate<double> changes{};         // whole numbers: median and 80 % band of sets taken into use in this batch
    int sets_to_hold = 0;               // new sets that see the batch through with 90 % probability: changes.high
    double finishes = 0.0;              // probability that the set in the torch alone does
    Estimate<double> cost_each{};       // of one part, in the currency of the set's price
    bool guess = true;                  // no set of the log has worn out yet: priors speak
};

} // namespace torchside::wear
