// How many test cuts it takes: the learning set to work in many made-up shops.
//
// What       Every shop cuts twelve jobs in mild steel at 45 A: 1.5 2 3 4.5 6 8 10 12 3 6 10 16 mm. In each job it
//            makes test cuts until the verdict reads clean (that cut counted, so at least one a job), each at the feed
//            that plan.hpp asks for with the shop's whole log so far. Compared on the same shops with the same luck:
//            rule     start at the chart (the feed with no cuts) in every job, step 10 % the way the verdict says
//            knowing  bias and slope of the shop known exactly, each job's stock unknown, also when it repeats
//            told     the exact right feed told after every job: no choice of tests can do better than about this
//            told the world   the same learner with the world's own mean, spreads, window, misreading and drift as its
//                     priors, and no doubt about them
//            pooled   the same learner after the logs of so many other shops of the world (core/tune/pool.hpp)
// Formula    ln v = ln v_chart(t) + bias + slope ln(t/6) + bend ln(t/6)^2 + drift u + e_t;  normal about 0, the bias about
//            the world's mean; u the share of the set of consumables that is used, 0.31 of a set a job, from anywhere in
//            the first one; a thickness that repeats keeps its e. A cut is too fast above (1 + w) v, too slow below (1 - w) v, else clean; with
//            probability `misread` one of the two other verdicts is read instead. Bias, slope, e and the luck of each
//            job's first verdict are spread over the shops evenly in probability (Latin hypercube), which leaves the
//            means where they are and makes them vary less from seed to seed.
// Source     own. Population: chosen, assets/data/tune_population.json.
// Range      1..100000 shops, any seed; the same numbers on every machine (own counter-based generator). 1000 shops take
//            about a minute. Before kinds of shop (tune_shops.json) mean cuts of 1000 shops differed by 0.04 (sd) between
//            seeds; of that 0.03 is how ties between tests fall: the last digit of a belief can decide one.
// Edges      a job is given up after 60 cuts and counted with them.
// Example    1000 shops, seed 2001, which chose nothing; P(clean): furthest off in a tenth, points
//            | world      | cuts  | told the world | coverage80 | furthest off |
//            | as_assumed | 17.51 | 17.48          | 0.823      |  6           |
//            | biased     | 18.05 | 17.48          | 0.806      |  6           |
//            | wide       | 22.70 | 21.99          | 0.660      | 20           |
//            | tails      | 20.38 | 21.00          | 0.745      |  9           |
//            | bent       | 19.15 | 18.48          | 0.759      |  9           |
//            | narrow     | 21.05 | 20.32          | 0.834      | 15           |
//            | careless   | 20.27 | 20.08          | 0.798      | 11           |
//            | drift      | 18.32 | 17.48          | 0.768      |  7           |
//            100 shops, seed 2002, and after 30 pooled shops: biased 17.94, 17.61; narrow 21.14, 20.43; wide 22.50, 22.14
//            What wide and narrow would cost, 150 shops, seed 101; odds of those kinds in tune_shops.json:
//            | odds            | as_assumed | wide       | narrow     |   coverage80 / furthest off, points
//            | as they are     | 0.826 /  9 | 0.659 / 22 | 0.839 / 18 |
//            | wide 0.12 -> .5 | 0.845 / 10 | 0.702 / 18 | 0.853 / 17 |
//            | narrow .1 -> .3 | 0.822 / 11 | 0.657 / 19 | 0.842 / 12 |
//            | wide in three   | 0.834 / 11 | 0.676 / 18 | 0.861 / 16 |   kinds: curve, stocks, both; odds 0.25, 0.1, 0.25
//            1000 shops, seed 2001, spreads 2.38 and 0.42 times the usual, odds 0.25 each, in place of twice, 0.12:
//            as_assumed 0.809 / 9, biased 0.802 / 8, wide 0.697 / 16, tails 0.748 / 6, narrow 0.831 / 14, careless 0.785 / 10, drift 0.761 / 6
//            A band that holds 80 % of usual first jobs holds 48 % where every spread is doubled; a shop's first chances of a
//            clean cut are said for a window of 8 %, and twelve jobs tell too little of either. The goal there would have
//            as_assumed above 0.84; pooled logs of such shops are the way.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

#include "core/words/outcome.hpp"

namespace torchside::tune {

struct Population {
    std::string_view world{}; // its name
    double mean = 0.0;        // of the bias
    double bias_sd = 0.0;
    double slope_sd = 0.0;
    double bend_sd = 0.0;
    double stock_sd = 0.0;
    double window = 0.0;
    double misread = 0.0;
    double drift = 0.0; // from a new set to a used one
    int dof = 0; // bias, slope and e from Student's t with so many degrees of freedom, scaled by their sd; 0: normal
};

/// The first is `as_assumed`, which the figures are kept for; each other one differs from it in one thing.
[[nodiscard]] std::span<const Population> worlds();
/// By its name; null when there is none.
[[nodiscard]] const Population* find_world(std::string_view name);
[[nodiscard]] const Population& usual_population();

struct Decile {
    double said = 0.0; // mean P(clean) of the tenth of all cuts that was given it
    double came = 0.0; // share of them that was truly clean
    int cuts = 0;
};

struct SimulationReport {
    int shops = 0;
    double mean_cuts = 0.0;      // a shop, twelve jobs
    double mean_cuts_se = 0.0;   // its standard error, counting shops as independent
    double rule_mean_cuts = 0.0; // the 10 % rule
    double ratio = 0.0;          // rule_mean_cuts / mean_cuts
    double knowing_mean_cuts = 0.0;
    double told_mean_cuts = 0.0;
    double told_world_mean_cuts = 0.0; // the same learner, told the world
    double ratio_to_told_world = 0.0;  // mean_cuts / told_world_mean_cuts
    double pooled_mean_cuts = 0.0;     // the same learner after other shops' logs; 0: none were pooled
    double coverage80 = 0.0;           // share of right feeds inside the band shown before the job's first cut
    double first_cut_clean = 0.0;      // share of jobs whose first cut read clean
    double truly_clean = 0.0;          // share of the cuts read as clean that were
    std::array<Decile, 10> calibration{};
    double worst_calibration = 0.0; // largest |said - came|
};

[[nodiscard]] Outcome<SimulationReport> simulate(int shops, std::uint64_t seed, const Population& population,
                                                 int pooled = 0);

} // namespace torchside::tune
