// What the circuit does with this machine at this current.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

enum class CircuitVerdict { holds, may_trip, trips_within_hour, trips_soon, cannot_deliver };

struct Report {
    Current input{};               // while cutting, line resistance included
    Current input_at_rated_load{}; // at the type-test load voltage, before any drop
    Current effective{};           // by duty
    Voltage machine{};             // at the machine while cutting
    double drop_share = 0.0;       // of the line voltage
    double load_ratio = 0.0;       // input (with the other load) / breaker rating
    CircuitVerdict verdict = CircuitVerdict::holds;
    std::optional<Duration> trips_within{}; // an upper time from the standard, never a promised one
    std::optional<Current>
        highest_current{}; // the largest output that holds on this circuit; none: not even the smallest
    std::optional<int> cord_min_awg{};
    std::optional<int> run_min_awg{};
    std::optional<ApparentPower> generator_min{};
    Duration arc_per_10_min{};
    std::string summary{};            // one sentence for the verdict row
    std::string way_out{};            // one quiet line
    std::vector<std::string> basis{}; // which code, edition and status each part rests on
};

} // namespace torchside::supply
