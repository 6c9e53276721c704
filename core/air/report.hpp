// What the compressor does with this torch.
#pragma once

#include <optional>
#include <vector>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"
#include "core/words/message.hpp"

namespace torchside::air {

/// overworked: the air is enough, but the compressor would run longer than its duty under a steady arc.
enum class AirVerdict { sustained, overworked, runs_then_waits, not_enough_pressure };

/// A corner of tank pressure against time; straight between corners (isothermal, steady flows).
struct CyclePoint {
    Duration at{};
    Pressure tank{};
    bool cutting = false;    // from here on
    bool compressor = false; // from here on
};

struct Report {
    AirVerdict verdict = AirVerdict::sustained;
    /// Arc time from a full receiver until it is down to what the torch needs. None when sustained, and when even a
    /// full receiver is too low.
    std::optional<Duration> runs{};
    std::optional<Duration> recovers{}; // pause that fills it again; none when the compressor would not start
    bool hose_decides = false;          // the other end of the hose drop's range would change the verdict
    Estimate<Pressure> hose_drop{};     // at the torch's flow and `receiver_min`
    Estimate<Pressure> receiver_min{};  // least tank pressure that gives the torch its pressure through this hose
    Pressure inlet_at_cut_in{};         // at the machine while air flows, tank at cut-in
    Pressure inlet_at_cut_out{};
    double demand_share = 0.0;       // torch / compressor delivery
    double arc_share = 1.0;          // largest share of time with the arc on that keeps the compressor within its duty
    Volume post_flow_air{};          // free air that the post-flow of one pierce uses at most
    Duration post_flow_refill{};     // time the compressor takes to make it up
    double water_g_h = 0.0;          // liquid water to drain, grams per arc hour
    double dew_point_c = 0.0;        // pressure dew point of the air that leaves the tank, no dryer, at least
    int water_class = 0;             // ISO 8573-1:2010 class of that dew point, 1..6; 0: wetter than class 6
    Text dryness{};                  // sentences
    std::vector<CyclePoint> cycle{}; // one cut-and-recover cycle from a full receiver; at least two corners
    Message message{};               // the verdict
    std::vector<Text> basis{};
};

} // namespace torchside::air
