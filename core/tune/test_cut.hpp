// One row of the user's log: a cut that was made, and what it showed.
#pragma once

#include <optional>

#include "core/quantity/quantity.hpp"
#include "core/stock/metal.hpp"

namespace torchside::tune {

enum class Verdict { clean, too_fast, too_slow };
enum class PierceVerdict { good, is_short, is_long }; // "short" and "long" in the workbook

struct TestCut {
    Metal material = Metal::mild_steel;
    Length thickness{6, mm};
    Current current{45, ampere};
    std::optional<Speed> feed{};
    std::optional<Verdict> verdict{};
    std::optional<Length> kerf_top{};
    std::optional<Length> kerf_bottom{};
    std::optional<Voltage> arc{}; // at the torch, not at the controller
    std::optional<Length> cut_height{};
    std::optional<Duration> pierce_delay{}; // as it stood in the program: core/gear/start.hpp
    std::optional<PierceVerdict> pierce{};
    std::optional<Current> nozzle{}; // rated current of the nozzle used; absent: the one the shop would pick
    std::optional<double> starts{};  // of the set of consumables, before this cut
    bool worn = false;               // the nozzle or electrode was worn: kept, but it does not teach

    friend bool operator==(const TestCut&, const TestCut&) = default;
};

} // namespace torchside::tune
