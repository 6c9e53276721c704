// Timings with a budget, for the programs of tests/bench. One program a file: its main() makes a Bench, asks at_most()
// or at_least() of it, once a figure, and returns done().
//
// What       Runs `work` again and again, prints the best run against the budget, by the processor's time: what other
//            programs take meanwhile does not count, and what they do to the caches is not in the best of many runs.
//            While the budget is not met it goes on for up to 5 s, so a busy machine makes a bench longer, not wrong.
// Range      budgets are for the release build on a desk computer; a phone is taken to be 4 times slower. As wasm a
//            program has three times the budget. A machine that is slower at a yardstick, work of the same sort that no
//            change of ours touches, has so much more, three times at most; a faster one has no less. It is printed.
// Example    Bench bench;
//            bench.at_most("a fit of 500 rows", 5.0, [&] { return learn(rows, machine).notes[0].weight; });
//            return bench.done();
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <ctime>
#include <limits>
#include <vector>

namespace torchside::bench {

/// Functions of the normal distribution, and sorting in memory that is had and given back.
inline double yardstick() {
    double sum = 0.0;
    for (int round = 0; round < 8; ++round) {
        std::vector<double> values;
        for (int i = 0; i < 2000; ++i) {
            const double x = std::fmod(0.618033988749895 * (i + 1) * (round + 1), 1.0) * 6.0 - 3.0;
            values.push_back(std::erfc(x) * std::exp(-0.5 * x * x) + std::log1p(x * x));
        }
        std::sort(values.begin(), values.end());
        sum += values[1000] + values[100 * static_cast<std::size_t>(round)];
    }
    return sum;
}

class Bench {
public:
    Bench() {
        const double took_ms = best_s(0.0, yardstick, usual_s) * 1e3;
        stretch_ = slower * std::clamp(took_ms / (slower * yardstick_ms), 1.0, 3.0);
        std::printf("yardstick %.3f ms, budgets are for %.3f: %.2f times as long\n", took_ms, slower * yardstick_ms,
                    stretch_ / slower);
    }

    /// `work` must take no more than that many milliseconds. It returns a double that rests on all it did, so that
    /// none of it can be left out.
    template <class Work>
    void at_most(const char* what, double native_ms, Work work) {
        const double budget_ms = stretch_ * native_ms;
        report(what, best_s(budget_ms * 1e-3, work) * 1e3, budget_ms, "ms, at most", true);
    }

    /// `work`, which does `count` of something, must do at least that many a second.
    template <class Work>
    void at_least(const char* what, double native_per_s, double count, Work work) {
        const double per_s = native_per_s / stretch_;
        report(what, count / best_s(count / per_s, work), per_s, "a second, at least", false);
    }

    /// For main() to return: 0 when every budget was met.
    [[nodiscard]] int done() const {
        std::printf("%d passed, %d failed\n", passed_, failed_);
        return failed_ == 0 ? 0 : 1;
    }

private:
#ifdef __EMSCRIPTEN__
    static constexpr double slower = 3.0;
#else
    static constexpr double slower = 1.0;
#endif
    static constexpr double yardstick_ms = 1.65; // on the machine that the budgets were chosen on
    static constexpr double usual_s = 0.3;
    static constexpr double most_s = 5.0;

    template <class Work>
    double best_s(double budget_s, Work& work, double longest_s = most_s) {
        const auto now = [] { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; };
        double best = std::numeric_limits<double>::infinity();
        for (const double start = now(); now() - start < (best > budget_s ? longest_s : usual_s);) {
            const double begin = now();
            sink_ = sink_ + work();
            best = std::fmin(best, now() - begin);
        }
        return best;
    }

    void report(const char* what, double got, double budget, const char* unit, bool most) {
        const bool met = most ? got <= budget : got >= budget;
        ++(met ? passed_ : failed_);
        std::printf("%-5s %-50s %12.6g %s %g\n", met ? "ok" : "OVER", what, got, unit, budget);
    }

    double stretch_ = slower;
    volatile double sink_ = 0.0;
    int passed_ = 0;
    int failed_ = 0;
};

} // namespace torchside::bench
