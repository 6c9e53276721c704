// The sentences of the circuit's verdict row and the list of what it rests on.
#pragma once

#include <string>
#include <vector>

#include "core/supply/load.hpp"

namespace torchside::supply {

/// `report` has its checks and its highest current by now.
[[nodiscard]] std::string summary_of(const Input& input, const Load& load, const Report& report);
[[nodiscard]] std::string duty_note_of(const Load& load);
[[nodiscard]] std::string way_out_of(const Input& input, const Load& load, const Report& report);
[[nodiscard]] std::string guard_of(const Input& input);
[[nodiscard]] std::vector<std::string> basis_of(const Input& input, const Load& load); // ends with who decides

} // namespace torchside::supply
