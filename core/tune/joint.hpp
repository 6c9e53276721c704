// What all verdicts together say of the coefficients, with its shape: the fit's normal distribution, corrected on a grid.
//
// What       The fit hands the verdicts on one stock to the others as one normal message. That keeps mean and variance,
//            not the shape: after one "too fast" at 2 mm the feed of 3 mm has a long tail to the slow side and hardly
//            any to the fast one. Here the messages are replaced by what the verdicts say themselves.
// Formula    z: up to 3 directions of the coefficients, standard normal under the fit, that carry what the judged stocks
//            depend on (pivoted Cholesky factor of their covariance). At every node of a grid in z
//            weight(z) = N(z) prod over s of  int N(eta_s | z) L_s(eta_s) / int N(eta_s | z) message_s(eta_s)
//            and f of any stock is the mixture of N(f | z) so weighted. A log of one metal at one current has two
//            directions: then this is exact but for the grid. What lies outside three directions stays normal.
// Source     own; expectation propagation and its messages: Minka 2001, from memory
// Range      any log. Nodes: 33, 529 or 515 for 1, 2 or 3 directions, 0.2, 0.38 or 0.8 sd apart in the middle and
//            further apart outwards, where a misread verdict leaves a thin tail. The 8 stocks known least keep their
//            shape, more are normal messages: with that many nothing is far from normal.
// Edges      no verdicts: no nodes, nothing to correct
// Example    prior sd 0.3, stocks 0.06, one "too fast" at 0: f of another stock at the same x has 10, 50 and 90 % points
//            -0.532 -0.251 -0.057; the fit's normal distribution has -0.527 -0.272 -0.018.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "core/tune/gaussian.hpp"

namespace torchside::tune {

struct Joint {
    static constexpr std::size_t most_directions = 3;
    using Place = std::array<double, most_directions>;

    std::size_t directions = 0;
    std::array<Vector, most_directions> gain{}; // x'gain[k]: how far x'b moves when z[k] moves by 1
    std::vector<Place> nodes{};
    std::vector<double> ln_weight{}; // of every node, the largest 0

    /// x'b at a node, and what is left open of it there.
    struct Along {
        double mean = 0.0;
        Place slope{};
        double variance = 0.0;
        [[nodiscard]] double at(const Place& z) const {
            return mean + slope[0] * z[0] + slope[1] * z[1] + slope[2] * z[2];
        }
    };
    [[nodiscard]] Along along(const Gaussian& fit, const Vector& x) const;
};

} // namespace torchside::tune
