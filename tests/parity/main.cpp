// Prints every number of the worksheets of random workbooks, so that two builds can be compared by
// tools/compare_parity. usage: torchside_parity [COUNT [SEED]]
//
// One line a workbook: its index, then in the order of the printed worksheet each number with all its digits, each flag
// and null, and each word that stands for a verdict. Sentences are left out: they repeat the numbers, rounded.
#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/codec/decimal.hpp"
#include "tests/property/random_workbook.hpp"
#include "tools/cli/results/worksheet.hpp"

namespace {

using namespace torchside;

bool is_word(std::string_view key) {
    return key == "verdict" || key == "code" || key == "severity" || key == "stop";
}

void print(const cli::Json& value, std::string_view key, std::string& out) {
    if (value.is_null()) {
        out += " -";
    } else if (value.is_boolean()) {
        out += value.get<bool>() ? " yes" : " no";
    } else if (value.is_number()) {
        out += ' ' + codec::decimal_text(value.get<double>());
    } else if (value.is_string()) {
        out += is_word(key) ? ' ' + value.get<std::string>() : "";
    } else {
        for (const auto& [name, entry] : value.items()) {
            print(entry, value.is_object() ? std::string_view(name) : key, out);
        }
    }
}

} // namespace

int main(int argc, char** argv) {
    const long count = argc > 1 ? std::strtol(argv[1], nullptr, 10) : 10000;
    test::Rng rng(argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1);
    for (long i = 0; i < count; ++i) {
        const Workbook workbook = test::random_workbook(rng);
        std::string line = std::to_string(i);
        print(cli::worksheet_json(evaluate(workbook), workbook), "", line);
        std::puts(line.c_str());
    }
    return 0;
}
