#include "core/supply/motor.hpp"

#include <iterator>

namespace torchside::supply {
namespace {

struct Motor {
    double hp, a115, a230;
};
constexpr Motor motors[] = {
// rising
#include "generated/motors.inc"
};

} // namespace

Current motor_current(double horsepower, Voltage line) {
    const Motor& last = *std::prev(std::end(motors));
    const Motor* found = &last;
    for (const Motor& row : motors) {
        if (row.hp >= horsepower) {
            found = &row;
            break;
        }
    }
    const double past = horsepower > last.hp ? horsepower / last.hp : 1.0;
    const double v = line.in(volt);
    if (v <= 150) {
        return Current{past * found->a115, ampere};
    }
    const double equal_power = v < 220 || v > 250 ? 230 / v : 1.0;
    return Current{past * equal_power * found->a230, ampere};
}

} // namespace torchside::supply
