// What all verdicts together say of the coefficients, with its shape: the fit's normal distribution, corrected on a grid.
//
// What       The fit hands the verdicts on one stock to the others as one normal message. That keeps mean and variance,
//            not the shape: after one "too fast" at 2 mm the feed of 3 mm has a long tail to the slow side and hardly
//            any to the fast one. Here the messages are replaced by what the verdicts say themselves.
// Formula    z: up to 3 directions of the coefficients, standard normal under the fit, that carry what the judged stocks
//            depend on (pivoted Cholesky factor of their covariance). At every node of a grid in z
//            weight(z) = N(z) prod over s of  int N(eta_s | z) L_s(eta_s) / int N(eta_s | z) message_s(eta_s)
//            and f of any stock is the mixture of N(f | z) so weighted. A log of one metal at one current has two
//            directions: then this is exact but for the grid. What lies outside three directions stays normal: response_fit.hpp says how far off that is.
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
#include <span>
#include <vector>

#include "core/tune/stock_evidence.hpp"

namespace torchside::tune {

/// f of a place, own readings in and own verdicts out, as a mixture of normal distributions of one variance.
struct Mixture {
    std::vector<double> means{}, weights{};
    double low = 0.0, high = 0.0; // of the means
    double variance = 0.0;
};

/// Marks the stocks whose verdicts keep their shape.
void choose_shaped(std::vector<StockEvidence>& stocks);

/// Holds no reference to what it was built from.
class VerdictGrid {
public:
    /// Of no verdicts.
    VerdictGrid() = default;
    /// `stocks`: marked by choose_shaped().
    VerdictGrid(const Gaussian& coefficients, std::span<const StockEvidence> stocks, double stock_sd);

    [[nodiscard]] bool empty() const { return nodes_.empty(); }

    /// ln of what the shaped stocks' verdicts and readings are likely by, over what their messages are.
    [[nodiscard]] double ln_evidence() const { return ln_evidence_; }

    /// Gives to another start's grid what lies nearer to that one: weight by p / (p + q) of every node. `own`, `other`: the
    /// stocks of both, in one order; `ln_more`: by how much the integral of the other's messages is larger, in ln.
    void leave_to(std::span<const StockEvidence> own, std::span<const StockEvidence> other, double ln_more);

    /// `own`: the stock at x; null where none was cut.
    [[nodiscard]] Mixture mixture(const Vector& x, const StockEvidence* own) const;

private:
    static constexpr std::size_t most_directions = 3;
    using Node = std::array<double, most_directions>;

    /// x'b at a node, and what is left open of it there.
    struct Along {
        double mean = 0.0;
        Node slope{};
        double variance = 0.0;
        [[nodiscard]] double at(const Node& z) const {
            return mean + slope[0] * z[0] + slope[1] * z[1] + slope[2] * z[2];
        }
    };
    [[nodiscard]] Along along(const Vector& x) const;
    void find_directions(std::span<const StockEvidence> stocks);
    void lay();
    void level();
    [[nodiscard]] std::vector<double> correction(const StockEvidence& stock) const;

    Gaussian coefficients_{};
    double stock_sd_ = 0.0;
    std::size_t directions_ = 0;
    std::array<Vector, most_directions> gain_{}; // x'gain[k]: how far x'b moves when z[k] moves by 1
    std::vector<Node> nodes_{};
    std::vector<double> ln_weight_{}; // of every node, the largest 0
    double ln_one_ = 0.0;             // of a node whose ln_weight_ is 0
    double ln_evidence_ = 0.0;
};

} // namespace torchside::tune
