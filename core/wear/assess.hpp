// What a batch does to the consumables: life used, when to change, how many sets to hold.
//
// What       The rates of damage.hpp put to the job: one part's starts and minutes of arc, times the batch.
// Formula    c0 the use of the set in the torch, c(x) = c0 + x parts; lives L0, L1 ... are normal around 1 with the
//            spread s, rates as believed (without the set in the torch):
//              P(whole after x parts)   = P(L0 > D(c(x))) / P(L0 > D(c0)),  P(L > D(c)) = Phi((1 - m) / sqrt(s^2 + v))
//              P(at most k new sets)    = P(L0 + ... + Lk > D(c(batch)) | L0 > D(c0))
//            the second with the condition's effect on mean and variance put in (a cut-off normal; exact for k = 0).
// Outlived   Not knowing the rates alone would make an old set young: the longer it has lasted, the longer lived sets
//            here must be, without end. So the set in the torch teaches nothing until it is logged, and one that is
//            past the age at which least is left (about one life) is taken to be of that age: what is left falls with
//            use and then stands still, never above a new set's, and is no longer a forecast. Past `outlived` lives (2, a prior) the likelier
//            story is a counter that was not reset when the set was changed, and the report says so.
// Extra      a restart behind a gap is a start; an arc that runs off the plate counts as run_off_starts more.
// Source     own; damage.hpp.
// Range      1 to 100 000 parts; any log. Probabilities within 0.04 of a simulation from the exact belief, rms 0.008
//            (tests/oracle/wear.py), for a set that is not past the age above; past it they are that age's.
// Edges      nothing cut: only the set's own figures are filled, at the log's own minutes a start.
// Example    No log, 120 starts and 40 min in the torch: life used 120/400 + 40/120 = 0.633, and the band says that
//            this is a guess. 2000 starts and 400 min: 8.3 lives, not reset.
#pragma once

#include "core/wear/damage.hpp"
#include "core/wear/report.hpp"

namespace torchside::wear {

/// One part.
struct Load {
    double starts = 0.0; // restarts included
    Estimate<Duration> arc{};
    double run_offs = 0.0;
};

/// Starts as the consumables count them: run-offs are worth more.
[[nodiscard]] double counted_starts(const Load& part);

[[nodiscard]] Report assess(const WearLog& log, const Load& part, int quantity);

} // namespace torchside::wear
