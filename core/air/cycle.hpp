// Tank pressure over one cut-and-recover cycle, and what it says: the corners are the drawing and the verdict both.
//
// What       From a full tank the torch takes air. The compressor stands still until the tank is down to cut-in, then
//            runs until cut-out; so the run-down has two slopes. It ends where the tank is down to what the torch
//            needs.
// Formula    to cut-in    t = V (cut_out - cut_in) / (p_atm Q_torch)
//            below it     t = V (cut_in - p_min) / (p_atm (Q_torch - Q_comp))         p_min: torch pressure + hose drop
//            recovery     t = V (cut_out - p_min) / (p_atm Q_comp), torch off
// Verdict    p_min > cut_in                    not enough pressure: between the two the torch starves and the
// compressor
//                                              still stands
//            Q_comp >= Q_torch, duty kept      sustained: Q_torch / Q_comp is the share of the time it runs
//            Q_comp >= Q_torch, duty passed    overworked: a piston compressor gets too hot
//            otherwise                         runs, then waits
// Source     core/air/receiver.hpp twice; own.
// Edges      p_min above cut_out: not even a full tank is enough, no running time. p_min below 0 counts as 0 bar.
//            Not enough pressure: no recovery time either, the compressor does not start by itself; the drawn cycle
//            goes on to cut-in, as it would with the torch starving. Sustained at Q_comp = Q_torch: flat, drawn for 10
//            min.
// Example    100 L, 8 and 6 bar, 150 out, 100 in, no hose drop, torch 4.5 bar: 78.95 s + 177.65 s = 256.6 s, then
//            207.25 s to fill.
#pragma once

#include <optional>
#include <vector>

#include "core/air/air_system.hpp"
#include "core/air/report.hpp"

namespace torchside::air {

struct Cycle {
    AirVerdict verdict = AirVerdict::sustained;
    std::optional<Duration> runs{};
    std::optional<Duration> recovers{};
    std::vector<CyclePoint> points{};
};

[[nodiscard]] Cycle cycle_of(const AirSystem& system, Pressure least_tank);

} // namespace torchside::air
