#include "core/worksheet/words.hpp"

#include <cmath>

#include "core/quantity/print.hpp"
#include "core/stock/thickness.hpp"

namespace torchside::words {

std::string plate(Length thickness, Metal metal) {
    return print_trimmed(thickness.in(mm), 2) + " mm (" + stock::plate_name(metal, thickness, UnitSystem::inch).text() +
           ")";
}

std::string size(Length length) {
    return print_trimmed(length.in(mm), 2) + " mm (" + print_trimmed(length.in(inch), 3) + " in)";
}

Printed at_most(Length thickness, UnitSystem units) {
    constexpr double hair = 1e-9; // 20 mm is not 19.9
    if (units == UnitSystem::metric)
        return {print_fixed(std::floor(thickness.in(mm)*10.0 + hair) / 10.0, 1), "mm"};
    return {print_fixed(std::floor(thickness.in(inch)*100.0 + hair) / 100.0, 2), "in"};
}

std::string limit(Length thickness) {
    return at_most(thickness, UnitSystem::metric).text() + " (" + at_most(thickness, UnitSystem::inch).text() + ")";
}

std::string feed(Speed speed) {
    return print_significant(speed.in(mm_min), 2) + " mm/min (" + print_significant(speed.in(in_min), 2) + " in/min)";
}

std::string amps(Current current) {
    return print_trimmed(current.in(ampere), 1) + " A";
}

std::string volts(Voltage voltage) {
    return print_fixed(voltage.in(volt), 0) + " V";
}

} // namespace torchside::words
