// What reading a drawing can find, each with its code, its weight and its sentence: one table, so that the module that
// reads and the app that shows need to hand over no more than a number.
#pragma once

#include <cstddef>
#include <vector>

#include "core/drawing/part_words.hpp"
#include "core/part/finding.hpp"

namespace torchside::drawing {

using part::Found;

constexpr std::size_t most_of_a_problem = 100; // of each kind are listed
constexpr std::size_t most_kept = 20;          // of each kind are kept with the job

[[nodiscard]] Problem problem(Found found, Point at, double size_mm = 0.0);
/// Adds it unless there are many of its kind.
void report(std::vector<Problem>& problems, Found found, Point at, double size_mm = 0.0);
/// Which it was: of a problem that problem() made.
[[nodiscard]] Found found_of(const Problem& problem);

/// Whether the job must keep it to know it: not what is asked and answered, nor what is seen in the outline itself.
[[nodiscard]] bool is_kept(Found found);
/// Whether, for it, nothing can be said of how to cut the outline, nor how much metal it is. Of what report() added.
[[nodiscard]] bool hinders_cutting(const Problem& problem);
/// What of all this the job keeps: the first most_kept of each such kind, places to 0.01 mm.
[[nodiscard]] std::vector<part::Finding> kept(const std::vector<Problem>& problems);
[[nodiscard]] Problem problem(const part::Finding& finding);

} // namespace torchside::drawing
