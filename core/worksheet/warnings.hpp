// What the worksheet has to say beside its figures: stable codes, worst first.
#pragma once

#include <vector>

#include "core/worksheet/metal_model.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside {

/// All that a warning may look at.
struct Findings {
    const Workbook& workbook;
    const Worksheet& sheet; // all but its warnings
    const cut::Limits& limits;
    Estimate<Speed> arc_feed{}; // not held down to the table
    Length proven{};            // thickest plate of this metal that the log shows cut cleanly at this current or less
};

void warn_of_plate(const Findings& findings, std::vector<Message>& out);
void warn_of_machine(const Findings& findings, std::vector<Message>& out);
void warn_of_feed(const Findings& findings, std::vector<Message>& out);
void warn_of_tap(const Findings& findings, std::vector<Message>& out);
void warn_of_circuit(const Findings& findings, std::vector<Message>& out);
void warn_of_air(const Findings& findings, std::vector<Message>& out);
void warn_of_hazards(const Findings& findings, std::vector<Message>& out);
void warn_of_part(const Findings& findings, std::vector<Message>& out);
void warn_of_gaps(const Findings& findings, std::vector<Message>& out);
void warn_of_time(const Findings& findings, std::vector<Message>& out);
void warn_of_wear(const Findings& findings, std::vector<Message>& out);
void warn_of_price(const Findings& findings, std::vector<Message>& out);

/// All of the above; stops before cautions before notes, otherwise in the order above.
[[nodiscard]] std::vector<Message> warnings(const Findings& findings);

} // namespace torchside
