#include "core/gear/start.hpp"

#include <algorithm>

namespace torchside {
namespace {

struct Row {
    StartMethod method;
    double value_s;
    double low_s;
    double high_s;
};

constexpr Row rows[] = {
#include "generated/start_lags.inc"
};
static_assert(rows[2].method == StartMethod::capacitor && sizeof rows == 3 * sizeof(Row));

} // namespace

Estimate<Duration> start_lag(const Machine& machine) {
    if (const auto& own = machine.start_lag) {
        return {*own, *own, *own, Basis{.entered = true}};
    }
    const Row& row = rows[static_cast<std::size_t>(machine.start)];
    return {{row.value_s, second}, {row.low_s, second}, {row.high_s, second}, Basis{.practice = true}};
}

Duration program_lag(const Machine& machine) {
    return machine.waits_for_transfer ? Duration{} : start_lag(machine).value;
}

Duration after_transfer(Duration dwell, Duration program_lag) {
    return std::max(dwell - program_lag, 0.1 * dwell);
}

} // namespace torchside
