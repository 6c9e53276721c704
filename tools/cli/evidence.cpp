// torchside evidence: how good the numbers are, by every published cut.
#include "tools/cli/results/evidence.hpp"
#include "tools/cli/command.hpp"

namespace torchside::cli {

Outcome<std::string> run_evidence(const Arguments& arguments, const Language&) {
    const auto words = Words::sort(arguments, 0, {"--format"});
    if (!words) {
        return words.fault();
    }
    const auto format = words.value().choice("--format", {"json", "text"}, std::size_t{0});
    if (!format) {
        return format.fault();
    }
    const Evidence found = evidence();
    return format.value() == 0 ? printed(evidence_json(found)) : evidence_text(found);
}

} // namespace torchside::cli
