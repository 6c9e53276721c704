// Timings with a budget, for the programs of tests/bench. One program a file: its main() makes a Bench, asks at_most()
// or at_least() of it, once a figure, and returns done().
//
// What       Runs `work` again and again, prints the best run against the budget, by the processor's time: what other
//            programs take meanwhile does not count, and what they do to the caches is not in the best of many runs.
//            While the budget is not met it goes on for up to 5 s, so a busy machine makes a bench longer, not wrong.
// Range      budgets are for the release build on a desk computer; a phone is taken to be 4 times slower. As wasm a
//            program has three times the budget.
// Example    Bench bench;
//            bench.at_most("a fit of 500 rows", 5.0, [&] { return learn(rows, machine).notes[0].weight; });
//            return bench.done();
#pragma once

#include <cmath>
#include <cstdio>
#include <ctime>
#include <limits>

namespace torchside::bench {

class Bench {
public:
    /// `work` must take no more than that many milliseconds. It returns a double that rests on all it did, so that
    /// none of it can be left out.
    template <class Work>
    void at_most(const char* what, double native_ms, Work work) {
        const double budget_ms = slower * native_ms;
        report(what, best_s(budget_ms * 1e-3, work) * 1e3, budget_ms, "ms, at most", true);
    }

    /// `work`, which does `count` of something, must do at least that many a second.
    template <class Work>
    void at_least(const char* what, double native_per_s, double count, Work work) {
        const double per_s = native_per_s / slower;
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
    static constexpr double usual_s = 0.3;
    static constexpr double most_s = 5.0;

    template <class Work>
    double best_s(double budget_s, Work& work) {
        const auto now = [] { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; };
        double best = std::numeric_limits<double>::infinity();
        for (const double start = now(); now() - start < (best > budget_s ? most_s : usual_s);) {
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

    volatile double sink_ = 0.0;
    int passed_ = 0;
    int failed_ = 0;
};

} // namespace torchside::bench
