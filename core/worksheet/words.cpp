#include "core/worksheet/words.hpp"

#include "core/quantity/in_units.hpp"
#include "core/quantity/print.hpp"
#include "core/stock/thickness.hpp"
#include "generated/words/part.hpp"

namespace torchside::words {

Text plate(Length thickness, Metal metal) {
    return either(size(thickness), stock::plate_name(metal, thickness, UnitSystem::inch).text());
}

Text fault(const Fault& refused) {
    return words::part::Fault{
        .fault = either(in_units(refused.text, UnitSystem::metric), in_units(refused.text, UnitSystem::inch))};
}

std::string both_limits(Length thickness) {
    return print_at_most(thickness, UnitSystem::metric).text() + " (" +
           print_at_most(thickness, UnitSystem::inch).text() + ")";
}

} // namespace torchside::words
