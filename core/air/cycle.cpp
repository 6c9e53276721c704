#include "core/air/cycle.hpp"

#include <algorithm>
#include <utility>

#include "core/air/receiver.hpp"

namespace torchside::air {
namespace {

constexpr Flow none{};
constexpr Duration steady_shown{10, minute}; // a flat line has to end somewhere

struct Trace {
    std::vector<CyclePoint> points{};
    Duration now{};

    void start(Pressure tank, bool cutting, bool compressor) { points.push_back({now, tank, cutting, compressor}); }
    void go(Duration lasts, Pressure tank, bool cutting, bool compressor) {
        now = now + lasts;
        points.push_back({now, tank, cutting, compressor});
    }
};

// The torch stays on; the tank swings between the compressor's two pressures, or settles at cut-in.
Cycle sustained(const AirSystem& s, Duration to_cut_in) {
    Trace trace;
    trace.start(s.cut_out, true, false);
    trace.go(to_cut_in, s.cut_in, true, true);
    if (const auto back = fill(s.receiver, s.cut_in, s.cut_out, s.torch, s.compressor)) {
        trace.go(*back, s.cut_out, true, false);
    } else {
        trace.go(steady_shown, s.cut_in, true, true);
    }
    const bool rests = s.torch.in(litre_min) <= s.duty * s.compressor.in(litre_min) * (1 + 1e-9);
    return {rests ? AirVerdict::sustained : AirVerdict::overworked, {}, {}, std::move(trace.points)};
}

Cycle runs_then_waits(const AirSystem& s, Pressure least, Duration to_cut_in) {
    Trace trace;
    trace.start(s.cut_out, true, false);
    trace.go(to_cut_in, s.cut_in, true, true);
    const Duration below = run_down(s.receiver, s.cut_in, least, s.torch, s.compressor).value_or(Duration{});
    trace.go(below, least, false, true);
    const Duration refill = fill(s.receiver, least, s.cut_out, none, s.compressor).value_or(Duration{});
    trace.go(refill, s.cut_out, false, false);
    return {AirVerdict::runs_then_waits, to_cut_in + below, refill, std::move(trace.points)};
}

// The tank has to be drawn down to cut-in before the compressor helps, past the point where the torch has too little.
Cycle starved(const AirSystem& s, Pressure least, Duration to_cut_in) {
    Trace trace;
    trace.start(s.cut_out, true, false);
    std::optional<Duration> runs;
    if (least < s.cut_out) {
        runs = run_down(s.receiver, s.cut_out, least, s.torch, none);
        trace.go(runs.value_or(Duration{}), least, true, false);
        trace.go(to_cut_in - runs.value_or(Duration{}), s.cut_in, false, true);
    } else {
        trace.go(to_cut_in, s.cut_in, false, true);
    }
    const Duration refill = fill(s.receiver, s.cut_in, s.cut_out, none, s.compressor).value_or(Duration{});
    trace.go(refill, s.cut_out, false, false);
    return {AirVerdict::not_enough_pressure, runs, {}, std::move(trace.points)};
}

} // namespace

Cycle cycle_of(const AirSystem& system, Pressure least_tank) {
    const Pressure least = std::max(Pressure{}, least_tank);
    const Duration to_cut_in =
        run_down(system.receiver, system.cut_out, system.cut_in, system.torch, none).value_or(Duration{});
    if (least > system.cut_in) {
        return starved(system, least, to_cut_in);
    }
    if (system.compressor >= system.torch) {
        return sustained(system, to_cut_in);
    }
    return runs_then_waits(system, least, to_cut_in);
}

} // namespace torchside::air
