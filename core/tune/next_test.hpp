// The next test cut of one stock, and when to stop testing.
//
// What       The feed as it is known now, drawn as a curve; the chance that a cut at any feed is clean; the feed to
//            test next; whether the feed is known well enough to go to work.
// Formula    chance(v) = sum over f of P(f) P(clean | ln v - f)      P(f): posterior.hpp; P(clean): window.hpp
//            next: the feed with the fewest test cuts to come (plan.hpp)
//            stop: the best feed is clean with more than 90 %
//            ladder: no single feed is clean with 35 %; then 5..9 legs, 1.12 apart, over the 80 % band
//            past_table: the table's fastest feed lies in or above the clean window with a chance of less than 50 %,
//            and no slower feed is more likely to be clean by 2 points
//            cut's feed: the middle of what is likely, or the table's fastest. It is the next test too where past_table;
//            where to stop and it is clean with more than 90 %, else within 1.5 % of the test, if that costs no more
//            than 2 points of chance
// Source     own; 90 %, 35 %, 50 %, 1.12, 1.5 % and 2 points are priors.
// Range      any plate that core/cut accepts. P(clean) agrees with what the simulation then sees to 5
//            points (tools/simulate).
// Edges      a feed that the table cannot reach is not asked for, and no ladder is cut below a window that the table
//            hardly reaches; a plate that the balance refuses: a Fault.
// Example    no cuts yet, mild steel 6 mm, 45 A: one feed is clean with about 22 %, so a ladder is offered.
#pragma once

#include <string>
#include <vector>

#include "core/tune/posterior.hpp"
#include "core/words/outcome.hpp"
#include "core/words/text.hpp"

namespace torchside::tune {

inline constexpr double sure_enough = 0.9;

struct CurvePoint {
    Speed feed{};
    double density = 0.0; // per unit of ln(feed)
    double clean = 0.0;   // chance that a cut at this feed is clean
};

struct LadderPlan {
    int legs = 5;
    double ratio = 1.12;
    Speed middle{};
};

/// Why the feed to cut at is not the likeliest one.
enum class OffTop { no, table, leans, tells_more };

struct Outlook {
    Estimate<Speed> feed{};          // where the right feed lies
    std::vector<CurvePoint> curve{}; // to draw, slow to fast
    Speed next{};                    // feed of the next test; best where to stop
    double next_clean = 0.0;         // chance that it is clean
    double cuts_to_come = 0.0;       // expected, to the first clean one, it included
    Speed best{};                    // feed most likely to be clean
    double best_clean = 0.0;
    Speed top{};                 // likeliest to be the right feed: where the curve is highest
    OffTop off_top = OffTop::no; // of next: apart from top by 1.5 % at least, and advice does not say why already
    bool stop = false;           // best is clean with more than sure_enough
    bool ladder = false;         // a ladder finds it sooner than single cuts
    bool past_table =
        false; // the table goes no faster than feeds that are too slow for this plate: next is its fastest
    LadderPlan legs{};
    Text advice{}; // sentences
};

/// `coupons`: the plate can be pierced standing still, so that a ladder can be cut.
[[nodiscard]] Outcome<Outlook> look(const Posterior& posterior, const cut::CutSetup& plate,
                                    const torchside::Table& table, bool coupons = true);

} // namespace torchside::tune
