// What other reports have already put into words: here it is chosen what the worksheet says of it.
#include "core/safety/assess.hpp"
#include "core/worksheet/warnings.hpp"

namespace torchside {

void warn_of_tap(const WarningContext& f, std::vector<Message>& out) {
    if (f.worksheet.tap.message) {
        out.push_back(*f.worksheet.tap.message);
    }
}

void warn_of_circuit(const WarningContext& f, std::vector<Message>& out) {
    const supply::Report& circuit = f.worksheet.circuit;
    if (circuit.verdict != supply::CircuitVerdict::holds) {
        out.push_back(circuit.message);
    }
    for (const supply::Check& check : circuit.checks) {
        if (!check.ok) {
            out.push_back(check.message);
        }
    }
}

void warn_of_air(const WarningContext& f, std::vector<Message>& out) {
    if (f.worksheet.air.verdict != air::AirVerdict::sustained) {
        out.push_back(f.worksheet.air.message);
    }
}

void warn_of_hazards(const WarningContext& f, std::vector<Message>& out) {
    for (const safety::Caution& c : safety::worst_two(f.worksheet.safety)) {
        out.push_back({c.code, Topic::safety, c.severity, c.title, {}, c.remedy, "job.material"});
    }
}

} // namespace torchside
