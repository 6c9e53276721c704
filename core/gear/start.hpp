// How long a machine takes from the torch code to an arc on the plate, and who waits for it.
//
// What       The start lag: gas pre-flow, pilot arc and transfer. A pierce delay counts from transfer, a program's dwell
//            from the torch code; so a program dwells lag + delay, unless the controller waits for the machine's transfer
//            signal: then it dwells the delay alone. The time a part takes has the lag in it either way.
// Formula    lag    the shop's own (a stopwatch), else by start method
//            dwell  delay + lag, or delay                    where the controller waits
//            read   max(d - lag, 0.1 d), or d                delay from transfer of a logged d, as it stood in a program
// Source     assets/data/start_lags.json: contact 0.3 to 1.0 s is common practice, no source; the other two are guesses.
//            Old nozzles, rust and long leads make it longer.
// Range      0 to 10 s.
// Edges      A logged dwell shorter than the lag would be no pierce at all: a tenth of it is taken to have been arc, and
//            such a row fits nothing else in the log and counts little. Where nobody timed the lag it is at most 0.8 of
//            the shortest dwell that the log calls good (a prior; core/tune/learn.cpp).
// Example    contact start, not measured: 0.5 s (0.3 to 1.0). A delay of 0.45 s is a dwell of 0.95 s, and a logged 0.95 s
//            is read as 0.45 s.
#pragma once

#include "core/gear/machine.hpp"
#include "core/quantity/estimate.hpp"

namespace torchside {

[[nodiscard]] Estimate<Duration> start_lag(const Machine& machine);

/// The part of it that a program has to wait: 0 where the controller waits.
[[nodiscard]] Duration program_lag(const Machine& machine);

/// The delay from transfer that a dwell in a program left.
[[nodiscard]] Duration after_transfer(Duration dwell, Duration program_lag);

} // namespace torchside
