// Why a drawing is not read, as a Fault. Internal to reading.
#pragma once

#include "core/drawing/drawing.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

inline Fault refused(const Text& why, const char* field = "drawing") {
    return {field, why};
}

inline Text at_line(const Text& what, std::size_t line) {
    return words::drawing_fault::AtLine{.line = static_cast<int>(line), .what = what};
}

} // namespace torchside::drawing
