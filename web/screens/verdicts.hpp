// The verdict rows of the Cut screen, made of what the worksheet says: no judgement is made here.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "generated/words/missing.hpp"
#include "web/kit/marks.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

struct Verdict {
    std::string code;
    Sign sign = Sign::holds;
    std::string sentence;
    std::string way_out;
    std::string panel;                    // what touching the row opens
    std::optional<std::size_t> problem{}; // or which of the part's problems it shows
};

[[nodiscard]] Sign sign_of(Severity severity);
[[nodiscard]] Sign sign_of(air::AirVerdict verdict);
[[nodiscard]] Sign circuit_sign(const App& app); // breaker, wires and plug together
void worst_first(std::vector<Verdict>& rows);
[[nodiscard]] Verdict of_message(const App& app, const Message& message);
[[nodiscard]] std::string panel_of(Topic topic); // where more of it stands
[[nodiscard]] bool is_of_part(Topic topic);
/// Whether this current reaches through this plate.
[[nodiscard]] Verdict plate_verdict(const App& app);
/// "No price: 45 A does not sever this plate", said alike wherever something is missing.
[[nodiscard]] std::string missing(const App& app, Word what);

/// Worst first.
[[nodiscard]] std::vector<Verdict> verdicts(const App& app);
/// What stands in the way of the part alone, worst first.
[[nodiscard]] std::vector<Verdict> part_verdicts(const App& app);

/// What is to say of price and consumables, worst first.
[[nodiscard]] std::vector<Verdict> quote_verdicts(const App& app);

} // namespace torchside::web
