// A number that is advice is an Estimate: a value, its 80 % band, and what it rests on. The screen shows all three.
#pragma once

#include <string_view>

namespace torchside {

/// What an estimate rests on. Written to a worksheet as a list: "physics", "practice", "published:<key>", "tests:<n>",
/// "others:<n>", "entered".
struct Basis {
    bool physics = false;         // the energy balance or another formula of ours
    bool practice = false;        // common practice, no source
    bool entered = false;         // typed in by the user
    int tests = 0;                // how many of the user's own cuts bear on it
    int others = 0;               // how many findings of other shops' cuts do
    std::string_view published{}; // key into assets/data/sources.json; empty when none

    friend constexpr Basis operator|(Basis a, Basis b) {
        return {a.physics || b.physics,
                a.practice || b.practice,
                a.entered || b.entered,
                a.tests > b.tests ? a.tests : b.tests,
                a.others > b.others ? a.others : b.others,
                a.published.empty() ? b.published : a.published};
    }
};

/// Invariant: low <= value <= high, all finite. low..high holds the true figure with a probability of 80 %.
template <class Q>
struct Estimate {
    Q value{};
    Q low{};
    Q high{};
    Basis basis{};
};

/// Half-width of the central 80 % of a normal distribution, in standard deviations (the 90 % quantile; from any table
/// of the normal distribution, e.g. NIST/SEMATECH e-Handbook 1.3.6.7.1).
inline constexpr double band80_sd = 1.2815515655446004;

} // namespace torchside
