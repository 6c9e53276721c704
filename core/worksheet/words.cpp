#include "core/worksheet/words.hpp"

#include "core/quantity/print.hpp"
#include "core/stock/thickness.hpp"

namespace torchside::words {

Text plate(Length thickness, Metal metal) {
    return either(size(thickness), stock::plate_name(metal, thickness, UnitSystem::inch).text());
}

} // namespace torchside::words
