// Two people at one workbook: what this tab and another one changed since they were the same, put together key by key.
//
// A key that one side changed is as that side has it. A key that both changed, to different values, is a conflict: it is
// never decided here. In a list the entries that both left alone hold the places; where both put entries in, both are
// kept, the others' first; where one changed or took out what the other changed too, the list is a conflict. A result
// that breaks a rule between two keys, or holds more entries than the list may, is a conflict of that key.
#pragma once

#include <string>
#include <vector>

#include "core/worksheet/workbook.hpp"

namespace torchside::document {

struct Merged {
    Workbook theirs{};                    // conflicts as they have them
    Workbook mine{};                      // conflicts as this tab has them; the same when there are none
    std::vector<std::string> conflicts{}; // their paths
};

/// `base` is the last that both had; all three are valid, and so are both results.
[[nodiscard]] Merged merge(const Workbook& base, const Workbook& mine, const Workbook& theirs);

} // namespace torchside::document
