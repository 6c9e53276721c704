// Answers questions about consumables given on standard input, one a line, for tests/oracle/wear.py; no part of the
// product. SETS is  count (starts minutes worn)*
//   learn spread SETS                                   -> a b var_a var_b cov
//   batch starts minutes minutes_sd quantity now_starts now_minutes SETS
//     -> spread finishes change_before|0 wears_at|0 changes.low changes.value changes.high
#include <cstdio>
#include <cstring>
#include <vector>

#include "core/wear/assess.hpp"

using namespace torchside;

namespace {

double number() {
    double x = 0.0;
    return std::scanf("%lf", &x) == 1 ? x : 0.0;
}

std::vector<wear::ConsumableSet> sets() {
    std::vector<wear::ConsumableSet> all(static_cast<std::size_t>(number()));
    for (wear::ConsumableSet& set : all) {
        set.starts = static_cast<int>(number());
        set.arc = Duration{number(), minute};
        set.ended = number() > 0.5 ? wear::Ended::worn : wear::Ended::pulled;
    }
    return all;
}

void batch() {
    wear::Load part;
    part.starts = number();
    const double minutes = number(), half = band80_sd * number();
    part.arc = {Duration{minutes, minute}, Duration{minutes - half, minute}, Duration{minutes + half, minute}, {}};
    const int quantity = static_cast<int>(number());
    wear::WearLog log;
    log.now.starts = static_cast<int>(number());
    log.now.arc = Duration{number(), minute};
    log.sets = sets();
    const wear::Report r = wear::assess(log, part, quantity);
    std::printf("%.17g %.17g %d %d %.17g %.17g %.17g\n", wear::learn(log.sets).spread, r.finishes,
                r.change_before.value_or(0), r.wears_at.value_or(0), r.changes.low, r.changes.value, r.changes.high);
}

} // namespace

int main() {
    char what[16];
    while (std::scanf("%15s", what) == 1) {
        if (std::strcmp(what, "learn") == 0) {
            const double spread = number();
            const wear::WearRates b = wear::learn(sets(), spread);
            std::printf("%.17g %.17g %.17g %.17g %.17g\n", b.per_start, b.per_minute, b.var_start, b.var_minute,
                        b.covariance);
        } else {
            batch();
        }
    }
}
