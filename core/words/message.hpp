// What a calculation has to tell the reader beside its figures. It is filled where the fact is known and only drawn
// elsewhere.
#pragma once

#include <string>
#include <string_view>

#include "core/words/text.hpp"

namespace torchside {

enum class Severity : std::uint8_t { note, caution, stop };

/// What a message is about. It says which row of a screen speaks for it, and which sheet opens.
enum class Topic : std::uint8_t {
    reach,     // whether the arc gets through the plate
    stock,     // the plate and the current set for it
    mesh,      // its openings
    machine,   // machine and nozzles
    table,     // what moves the torch
    height,    // height control
    circuit,   // outlet, wires, breaker
    air,       // compressor to torch
    safety,    // people
    part,      // outline and path
    slow_path, // where the table cannot hold the feed
    duty,      // rests that the machine's duty cycle asks for
    wear,      // nozzle and electrode
    price,     // what the job costs
    rates      // what the shop charges
};

struct Message {
    std::string_view code{}; // a short stable word of a literal: "plate_refused"
    Topic topic = Topic::reach;
    Severity severity = Severity::note;
    Text title{};            // no full stop
    Text detail{}, remedy{}; // sentences: how things stand, and what to do; either may be empty
    std::string field{};     // the workbook key it is about: "job.thickness_mm"
};

} // namespace torchside
