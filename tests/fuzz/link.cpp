// Any bytes as the text of a quote's link: what opens is in range, and under the seal of one quote no other one opens.
#include <cstddef>
#include <cstdint>
#include <cstdlib>

#include "tests/property/forged_link.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace torchside;
    static const test::SealedPair pair = [] {
        test::Rng rng(1);
        return test::sealed_pair(rng, 28);
    }();
    // A byte of 240 and more stands for a piece of the sealed quote or the other one, any other byte for itself.
    std::string text;
    for (std::size_t i = 0; i < size; ++i) {
        text += data[i] >= 240 && data[i] - 240U < test::forged_pieces ? test::forged_piece(pair, data[i] - 240U)
                                                                       : std::string(1, static_cast<char>(data[i]));
    }
    if (test::seen(pair, text) == test::Seen::fooled) {
        std::abort();
    }
    const auto read = document::open_sealed_quote(text);
    if (read && (document::check_quote(read.value().quote) || !document::open_quote_link(read.value().body))) {
        std::abort();
    }
    return 0;
}
