// torchside: the calculator as a command, for scripts and for checks. `--help` lists them.
#include <cstdio>
#include <cstring>

#include "core/codec/utf8.hpp"
#include "core/words/say.hpp"
#include "tools/cli/command.hpp"

namespace {

using namespace torchside;
using namespace torchside::cli;

constexpr Command commands[] = {
    {"worksheet", "FILE", "settings, limits, circuit, air and safety of the workbook's job", run_worksheet},
    {"chart", "FILE --material M [--units metric|inch] [--format csv|json]", "the whole chart of the shop", run_chart},
    {"physics", "--material M --thickness_mm T --current_a I [--arc_v U] [--bore_mm D]", "the energy balance alone",
     run_physics},
    {"part", "DRAWING [--unit U] [--join_mm T] [--flatten_mm T] [--outline yes] [--material M --thickness_mm T]",
     "area, lengths, contours, pierces and problems of a DXF or SVG", run_part},
    {"tune", "FILE", "what the test cuts say about the job's stock, and the next test to cut", run_tune},
    {"coupon", "FILE --kind ladder|heights|kerf|swirl [--units metric|inch] [--format program|json]",
     "a test coupon as a program to cut", run_coupon},
    {"link", "job FILE | link quote FILE [--date D]", "the job, or what its customer may see, as a link's fragment",
     run_link},
    {"open", "LINK", "the workbook or the quote that a link holds", run_open},
    {"simulate", "tune --shops N --seed S", "test cuts that made-up shops need, against the 10 % rule", run_simulate},
    {"schema", "", "every key of the workbook: range, default, meaning", run_schema},
};

std::string help() {
    std::string out = "Torchside: what to dial in for a small air plasma torch, and what it costs.\n\n";
    for (const Command& command : commands) {
        out += "  torchside " + std::string(command.name) + (*command.usage != '\0' ? " " : "") + command.usage +
               "\n      " + command.about + "\n";
    }
    out += "  torchside --help | --version\n\n"
           "FILE is a workbook (JSON as `torchside schema` describes it), or - for standard input.\n"
           "Exit 0; or 2 and one line on standard error, FIELD: what is wrong, what is accepted.\n";
    return out;
}

Outcome<std::string> run(const Arguments& words) {
    std::string names;
    for (const Command& command : commands) {
        if (!words.empty() && words[0] == command.name) {
            return command.run({words.begin() + 1, words.end()});
        }
        names += (names.empty() ? "" : ", ") + std::string(command.name);
    }
    if (words.size() == 1 && words[0] == "--help") {
        return help();
    }
    if (words.size() == 1 && words[0] == "--version") {
        return std::string("torchside " TORCHSIDE_VERSION "\n");
    }
    if (words.empty()) {
        return Fault{"COMMAND", "missing, accepted is " + names + ", --help or --version"};
    }
    return Fault{words[0].empty() ? "COMMAND" : codec::one_line(words[0]),
                 "unknown command, accepted is " + names + ", --help or --version"};
}

int refuse(const Fault& fault) {
    std::fprintf(stderr, "%s: %s\n", fault.field.c_str(), say(fault.text, UnitSystem::metric).c_str());
    return 2;
}

} // namespace

int main(int argc, char** argv) {
    const auto answer = run(Arguments(argv + 1, argv + argc));
    if (!answer) {
        return refuse(answer.fault());
    }
    const std::string& text = answer.value();
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0) {
        return refuse({"standard output", "cannot be written, accepted is an open file or pipe with room"});
    }
    return 0;
}
