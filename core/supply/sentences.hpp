// What the circuit's verdict row says, and the list of what it rests on.
#pragma once

#include <vector>

#include "core/supply/load.hpp"

namespace torchside::supply {

/// `report` has its checks and its highest current by now.
[[nodiscard]] Message message_of(const Input& input, const Load& load, const Report& report);
[[nodiscard]] Text duty_note_of(const Load& load);
[[nodiscard]] Text guard_of(const Input& input);
[[nodiscard]] std::vector<Text> basis_of(const Input& input, const Load& load); // ends with who decides

} // namespace torchside::supply
