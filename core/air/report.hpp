// What the compressor does with this torch.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::air {

enum class AirVerdict { sustained, runs_then_waits, not_enough_pressure };

struct Report {
    AirVerdict verdict = AirVerdict::sustained;
    std::optional<Duration> runs{}; // arc time until the receiver is down to what the torch needs; none when sustained
    std::optional<Duration> recovers{}; // pause that fills it again
    Estimate<Pressure> hose_drop{};
    double water_g_h = 0.0; // liquid water to drain, grams per arc hour
    std::string summary{};
    std::string way_out{};
    std::vector<std::string> basis{};
};

} // namespace torchside::air
