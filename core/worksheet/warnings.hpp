// What the worksheet has to say beside its figures: stable codes, worst first.
#pragma once

#include <vector>

#include "core/worksheet/metal_model.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside {

/// All that a warning may look at.
struct WarningContext {
    const Workbook& workbook;
    const Worksheet& worksheet; // all but its warnings
    const cut::Limits& limits;
    Estimate<Speed> arc_feed{}; // not held down to the table
    Length proven{};            // thickest plate of this metal that the log shows cut cleanly at this current or less
};

void warn_of_plate(const WarningContext& context, std::vector<Message>& out);
void warn_of_machine(const WarningContext& context, std::vector<Message>& out);
void warn_of_feed(const WarningContext& context, std::vector<Message>& out);
void warn_of_tap(const WarningContext& context, std::vector<Message>& out);
void warn_of_circuit(const WarningContext& context, std::vector<Message>& out);
void warn_of_air(const WarningContext& context, std::vector<Message>& out);
void warn_of_hazards(const WarningContext& context, std::vector<Message>& out);
void warn_of_part(const WarningContext& context, std::vector<Message>& out);
void warn_of_gaps(const WarningContext& context, std::vector<Message>& out);
void warn_of_time(const WarningContext& context, std::vector<Message>& out);
void warn_of_wear(const WarningContext& context, std::vector<Message>& out);
void warn_of_price(const WarningContext& context, std::vector<Message>& out);

/// All of the above; stops before cautions before notes, otherwise in the order above.
[[nodiscard]] std::vector<Message> warnings(const WarningContext& context);

} // namespace torchside
