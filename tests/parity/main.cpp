// Prints every number of the worksheets of random workbooks, so that two builds can be compared by
// tools/compare_parity. usage: torchside_parity [COUNT [SEED]]
//
// One line a workbook: its index, then in the order of the worksheet file each number with all its digits, each flag
// and null, and each word that stands for a verdict. Sentences are left out: they repeat the numbers, rounded.
#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/document/json.hpp"
#include "core/document/worksheet_file.hpp"
#include "tests/property/random_workbook.hpp"

namespace {

using namespace torchside;
using document::JsonValue;

bool is_word(std::string_view key) {
    return key == "verdict" || key == "code" || key == "severity" || key == "stop";
}

void print(const JsonValue& value, std::string_view key, std::string& out) {
    switch (value.type) {
    case JsonValue::Type::null:
        out += " -";
        return;
    case JsonValue::Type::flag:
        out += value.number != 0.0 ? " yes" : " no";
        return;
    case JsonValue::Type::number:
        out += ' ' + document::number_text(value.number);
        return;
    case JsonValue::Type::text:
        out += is_word(key) ? ' ' + value.text : "";
        return;
    default:
        for (std::size_t i = 0; i < value.items.size(); ++i) {
            print(value.items[i], value.keys.empty() ? key : std::string_view(value.keys[i]), out);
        }
    }
}

} // namespace

int main(int argc, char** argv) {
    const long count = argc > 1 ? std::strtol(argv[1], nullptr, 10) : 10000;
    test::Rng rng(argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1);
    for (long i = 0; i < count; ++i) {
        const Workbook workbook = test::random_workbook(rng);
        const auto sheet = document::parse_json(document::write_worksheet(evaluate(workbook), workbook));
        if (!sheet) {
            std::fprintf(stderr, "worksheet %ld: %s\n", i, sheet.fault().text.c_str());
            return 2;
        }
        std::string line = std::to_string(i);
        print(sheet.value(), "", line);
        std::puts(line.c_str());
    }
    return 0;
}
