// torchside schema: every key of the workbook with its range, default and meaning, as a JSON Schema.
#include "core/schema/schema.hpp"

#include "tools/cli/command.hpp"

namespace torchside::cli {

Outcome<std::string> run_schema(const Arguments& arguments, const Language&) {
    const auto words = Words::sort(arguments, 0, {});
    if (!words) {
        return words.fault();
    }
    return document::schema_json();
}

} // namespace torchside::cli
