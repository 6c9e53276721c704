// The commands of `torchside`: each takes the words after its name and the language to speak, and gives back the whole text to print, or a Fault
// that becomes the one line on stderr. Nothing is printed before all of it is known, so there are no partial results.
#pragma once

#include <string>

#include "core/words/outcome.hpp"
#include "core/words/say.hpp"
#include "tools/cli/words.hpp"

namespace torchside::cli {

struct Command {
    const char* name;
    const char* usage; // the words after the name
    const char* about; // one line
    Outcome<std::string> (*run)(const Arguments&, const Language&);
};

Outcome<std::string> run_worksheet(const Arguments& arguments, const Language& language);
Outcome<std::string> run_chart(const Arguments& arguments, const Language& language);
Outcome<std::string> run_physics(const Arguments& arguments, const Language& language);
Outcome<std::string> run_part(const Arguments& arguments, const Language& language);
Outcome<std::string> run_tune(const Arguments& arguments, const Language& language);
Outcome<std::string> run_coupon(const Arguments& arguments, const Language& language);
Outcome<std::string> run_link(const Arguments& arguments, const Language& language);
Outcome<std::string> run_open(const Arguments& arguments, const Language& language);
Outcome<std::string> run_simulate(const Arguments& arguments, const Language& language);
Outcome<std::string> run_evidence(const Arguments& arguments, const Language& language);
Outcome<std::string> run_pool(const Arguments& arguments, const Language& language);
Outcome<std::string> run_schema(const Arguments& arguments, const Language& language);

} // namespace torchside::cli
