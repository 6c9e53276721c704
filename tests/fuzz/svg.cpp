// Any bytes as SVG.
#include <cstddef>
#include <cstdint>

#include "tests/fuzz/drawing.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    torchside::fuzz::read({reinterpret_cast<const char*>(data), size});
    return 0;
}
