#include "core/supply/line.hpp"

#include <cmath>
#include <numbers>

namespace torchside::supply {
namespace {

// One loop of the circuit: the whole of a single-phase one, one phase against the star point of a three-phase one.
struct Loop {
    double source;  // E, V
    double run;     // ohm
    double all;     // r, ohm
    double loops;   // how many share the load
    double to_line; // loop voltage to the voltage a meter shows between lines
};

Loop loop_of(const Line& line) {
    const bool three = line.phases == 3;
    const double to_line = three ? std::numbers::sqrt3 : 1.0;
    const double wires = three ? 1.0 : 2.0;
    const double run = wires * line.run.in(ohm);
    return {line.source.in(volt) / to_line - run * line.other.in(ampere), run, run + wires * line.cord.in(ohm),
            three ? 3.0 : 1.0, to_line};
}

Draw at(const Loop& loop, double current, bool delivered) {
    return {delivered, Current{current, ampere}, Voltage{loop.to_line * (loop.source - loop.run * current), volt},
            Voltage{loop.to_line * (loop.source - loop.all * current), volt}};
}

} // namespace

Draw draw(const Line& line, ApparentPower machine) {
    const Loop loop = loop_of(line);
    if (loop.source <= 0) {
        return {false, {}, {}, {}};
    }
    const double power = machine.in(volt_ampere) / loop.loops;
    const double square = loop.source * loop.source - 4 * loop.all * power;
    if (square < 0) {
        return at(loop, loop.source / (2 * loop.all), false);
    }
    return at(loop, 2 * power / (loop.source + std::sqrt(square)), true);
}

Voltage power_voltage(Voltage line, int phases) {
    return phases == 3 ? std::numbers::sqrt3 * line : line;
}

} // namespace torchside::supply
