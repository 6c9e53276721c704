// torchside: the calculator as a command, for scripts and for checks. `--help` lists them.
#include <algorithm>
#include <cstdio>
#include <cstring>

#include "core/codec/utf8.hpp"
#include "core/words/languages.hpp"
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
    {"simulate", "tune --shops N --seed S [--world W] [--pooled N]",
     "test cuts that made-up shops need, against the 10 % rule", run_simulate},
    {"pool", "LOG... [--held-out]", "what many shops' logs say of shops: spreads, clean window, misreading", run_pool},
    {"evidence", "[--format json|text]", "every published cut beside what is said of it now, and the error",
     run_evidence},
    {"schema", "", "every key of the workbook: range, default, meaning", run_schema},
};

std::string help() {
    std::string out = "Torchside: what to dial in for a small air plasma torch, and what it costs.\n\n";
    for (const Command& command : commands) {
        out += "  torchside " + std::string(command.name) + (*command.usage != '\0' ? " " : "") + command.usage +
               "\n      " + command.about + "\n";
    }
    out += "  torchside --help | --version\n\n"
           "--lang L before or after them: what is said is said in that language (" +
           language_codes() +
           ").\n"
           "FILE is a workbook (JSON as `torchside schema` describes it), or - for standard input.\n"
           "Exit 0; or 2 and one line on standard error, FIELD: what is wrong, what is accepted.\n";
    return out;
}

/// Takes `--lang L` out of the arguments, wherever it stands.
Outcome<const Language*> take_language(Arguments& arguments) {
    const auto at = std::find(arguments.begin(), arguments.end(), "--lang");
    if (at == arguments.end()) {
        return &english();
    }
    const std::string typed = at + 1 == arguments.end() ? std::string() : at[1];
    const Language* language = language_of(typed);
    if (language == nullptr) {
        return Fault{"--lang", words::cli::UnknownLanguage{.codes = language_codes(), .typed = codec::one_line(typed)}};
    }
    arguments.erase(at, at + 2);
    return language;
}

Outcome<std::string> run(const Arguments& arguments, const Language& language) {
    std::string names;
    for (const Command& command : commands) {
        if (!arguments.empty() && arguments[0] == command.name) {
            return command.run({arguments.begin() + 1, arguments.end()}, language);
        }
        names += (names.empty() ? "" : ", ") + std::string(command.name);
    }
    if (arguments.size() == 1 && arguments[0] == "--help") {
        return help();
    }
    if (arguments.size() == 1 && arguments[0] == "--version") {
        return std::string("torchside " TORCHSIDE_VERSION "\n");
    }
    if (arguments.empty()) {
        return Fault{"COMMAND", words::cli::NoCommand{.commands = names}};
    }
    return Fault{arguments[0].empty() ? "COMMAND" : codec::one_line(arguments[0]),
                 words::cli::UnknownCommand{.commands = names}};
}

int refuse(const Fault& fault, const Language& language) {
    std::fprintf(stderr, "%s: %s\n", fault.field.c_str(),
                 say(fault.text, Speech(language, UnitSystem::metric)).c_str());
    return 2;
}

} // namespace

int main(int argc, char** argv) {
    Arguments words(argv + 1, argv + argc);
    const auto language = take_language(words);
    if (!language) {
        return refuse(language.fault(), english());
    }
    const auto answer = run(words, *language.value());
    if (!answer) {
        return refuse(answer.fault(), *language.value());
    }
    const std::string& text = answer.value();
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0) {
        return refuse({"standard output", words::cli::not_written}, *language.value());
    }
    return 0;
}
