#include "core/words/range.hpp"

#include "generated/words/ask.hpp"

namespace torchside::words {

Text range(double low, double high, FieldUnit unit) {
    return words::ask::Range{.high = high_end(high, unit), .low = low_end(low, unit)};
}

} // namespace torchside::words
