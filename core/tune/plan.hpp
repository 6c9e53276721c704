// Where to make the next test: the search for one unknown setting by cuts that read low, good or high.
//
// What       f = ln(right setting) is believed to be spread over a grid; a test at y costs one cut and the search ends
//            when one reads good. The next y is the one with the fewest cuts to come, looking one test ahead.
// Formula    cost(y) = 1 + sum over o = low, high of P(o | y) (1 + (1 - g_o) k)
//            g_o   the largest chance of reading good that any test has after o
//            k     1.55 cuts for each further miss
// Source     own. k and the depth were chosen by tools/simulate/simulate.hpp: mean cuts a shop, standard error 0.01 on the
//            same draws of 14 seeds in the first three rows, 0.04 in the others
//            | the test with the greatest chance of good               | 17.58 |
//            | one test ahead, this formula                            | 17.45 |
//            | the same, grid step 0.01; or k 1.3 or 1.9, more tests   | 17.47 |
//            |   looked at, at that step                               |       |
//            | two tests ahead                                         | within 0.05 of one, 20 times slower        |
//            | one test ahead + worth of a narrower f for later jobs   | 17.48 at a low weight, 17.58 at a high one |
//            | the exact feed told after every job (no choice of tests | 16.95 |
//            |   within the job knows more)                            |       |
//            Within one job, nothing misread, it needs 0.1 % more cuts than dynamic programming's best at most
//            (tests/property/tune_search.cpp, f normal with sd 0.06 to 0.35).
//            Several kinds of shop, each with its belief and window: chances are summed over them.
// Range      any spread of f from 0.005 to 2; grid step 0.005.
// Edges      a limit on y (the table's fastest feed) leaves out what is beyond; if all is beyond, the test is at
//            the limit.
// Example    f spread normally by 0.10, window 0.08: test in the middle, chance of good 0.57.
#pragma once

#include <limits>
#include <span>
#include <vector>

#include "core/tune/response_fit.hpp"
#include "core/tune/window.hpp"

namespace torchside::tune {

struct Test {
    double y = 0.0;     // ln of the setting
    double good = 0.0;  // chance that it is truly good
    double reads = 0.0; // chance that it reads good
    double cuts = 0.0;  // expected cuts to the first good reading, this one counted
};

class Search {
public:
    /// Of one kind of shop, or of several.
    explicit Search(std::span<const Belief> beliefs);

    /// The test with the fewest cuts to come.
    [[nodiscard]] Test next(double limit = std::numeric_limits<double>::infinity()) const;

    /// The setting most likely to be truly good.
    [[nodiscard]] Test best(double limit = std::numeric_limits<double>::infinity()) const;

    /// Chance that a setting is truly good.
    [[nodiscard]] double good(double y) const;

    /// Chance that the right setting is at most so far above the limit that a test there is good, or too high.
    [[nodiscard]] double reached(double limit) const;

    /// As good(), for every node of mass().
    [[nodiscard]] std::vector<double> chances() const;

    /// Takes in the reading of a test.
    void observe(double y, Judgement reading);

    [[nodiscard]] double low() const { return low_; }
    [[nodiscard]] const std::vector<double>& mass() const { return mass_; }
    static constexpr double step = 0.005;

private:
    [[nodiscard]] Test at(std::size_t node) const;
    [[nodiscard]] double reads_good(double y) const;
    /// What shops of one window believe; their share of all mass.
    struct Part {
        Window window{};
        Judge judge;
        std::vector<double> mass{};
    };
    [[nodiscard]] std::vector<double> profile(const Part& part, Judgement reading) const;
    [[nodiscard]] double rest(std::size_t node, const std::vector<std::vector<double>>& profiles,
                              std::vector<double>& below, std::vector<double>& reads) const;
    [[nodiscard]] std::size_t within(double limit) const;

    void gather();

    double low_ = 0.0;
    std::vector<Part> parts_{};
    std::vector<double> mass_{}; // of all parts together
};

} // namespace torchside::tune
