// What a person asks who has to make do with a small supply: what the machine is there, what can be cut, how long at a time, and
// what supply would do.
//
// What       Beside the circuit's report: the rating that speaks at this line, an arc with pauses where the arc may not stay on, its
//            reach, and the least usual supply that carries the job's current.
// Formula    low_voltage.hpp, intermittent.hpp. The current of the pauses is the job's, held down to the machine's largest there; where
//            that does not help, the machine's smallest.
// Edges      The circuit holds the job's current: neither pauses nor another supply.
// Example    tests/core/supply_help.cpp.
#pragma once

#include <optional>
#include <vector>

#include "core/supply/intermittent.hpp"
#include "core/supply/low_voltage.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside {

struct SupplyHelp {
    supply::Rating rating = supply::Rating::full;
    std::optional<supply::Bursts> bursts{};
    std::optional<cut::Limits> in_bursts{}; // what they reach, of the job's metal
    bool asks = false;                      // the job's current does not hold, or the machine does not give it here
    std::optional<supply::UsualSupply> would_do{};
    std::vector<Text> says{}; // all of it, a sentence or two each
};

/// `worksheet` is the workbook's own.
[[nodiscard]] SupplyHelp supply_help(const Workbook& workbook, const Worksheet& worksheet, const ShopModel& model = {});

} // namespace torchside
