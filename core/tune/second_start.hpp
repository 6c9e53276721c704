// A second start of the fit, where verdicts contradict each other. Shared inside core/tune.
//
// What       Expectation propagation finds one explanation of a log: of two stocks whose verdicts rule each other out, the one
//            that is met first is believed and the other one taken as misread. Where it may be as well the other way about,
//            the fit is made once more with the other one believed first. Each fit then has the part of the coefficients
//            that lies nearer to it (VerdictGrid::leave_to), so that nothing is counted twice, and both are mixed by how
//            likely they make the log.
// Formula    doubted: a stock whose verdicts the others leave less than e^-2 of their best. For each of the 3 doubted most: it
//            is believed, its verdicts none of them misread, and ln L of the others is looked up at their best within 2 sd
//            of what that says of them. The one with the most, unless that is 7 below what the first fit left of all.
// Source     own; e^-2, 3, 2 sd and 7 are chosen: what is left out is less than one in a thousand
// Edges      no verdicts, or none doubted: no second start. More than two explanations: two are found.
#pragma once

#include <cstddef>
#include <optional>

#include "core/tune/fitter.hpp"

namespace torchside::tune {

/// The stock to believe first; none where no other explanation can be about as likely. `first`: settled.
[[nodiscard]] std::optional<std::size_t> second_start(const Fitter& first);

} // namespace torchside::tune
