// One learnt response (feed, kerf, arc volts or pierce delay): its curve, and every stock's own place around the curve.
//
// What       f = x'b + e_stock, in ln for feed, kerf and delay, in volts for the arc, all relative to level 1. b is
//            normal with a given prior, e_stock normal with a given sd. A row reads f with normal noise, or judges a
//            setting by a verdict (window.hpp).
// Formula    Evidence on one stock is put together exactly: normal rows by adding precisions, verdicts as a table of
//            their product over f. Between stocks it travels through b as one normal message a stock, found by
//            expectation propagation: with the cavity N(m, v) of eta = x'b, f has the prior N(m, v + s^2); M1, M2 are
//            mean and variance of prior x evidence; eta then has mean m + k (M1 - m) and variance v - k^2 (v + s^2 -
//            M2), k = v / (v + s^2). Sweeps over the stocks go on until nothing moves in the 12th digit, 100 at
//            most; with many contradictory verdicts some logs do not settle, and the last sweep stands. Without
//            verdicts the message is exact and this is Bayesian linear regression.
// Window     how wide a shop's clean window is, and how often it misreads, show in verdicts that do not agree with the
//            model's own window. Other windows are tried on the verdicts of every stock, given what all other stocks
//            say of it: sum over stocks of ln integral N(f; cavity) L(f) df, plus the window's prior odds. The best
//            one is used.
// Outliers   a normal row more than outlier_sd away from what all others predict of it is flagged, worst first, and
//            keeps (dof + 1) / (dof + z^2) of its weight (Student). A verdict cannot pull further than its misreading
//            chance allows; it is flagged when the others give it less than the tail chance of outlier_sd.
// Source     own; expectation propagation is textbook (Minka 2001, key minka_2001, from memory).
//            Asked for f of a stock, the messages are replaced by the verdicts' own shape again (verdict_grid.hpp).
// Range      0..500 rows. | rows                   | against                                                        |
//                         | readings only          | linear algebra over all rows at once: 1e-9                     |
//                         | verdicts, 1..5 stocks  | brute-force grid, 3000 random logs, 3 or 10 in 100 misread:    |
//                         | of one metal, current  | middle and ends of the band 0.2 % in 98 of 100, worst 0.5 %    |
//                         | the same, cut anywhere | middle 1 % in 99 of 100, ends in 96: where verdicts rule each  |
//                         | near                   | other out, two feeds are about as likely and one may be missed |
//            tests/bench/fit.cpp: 500 rows of many stocks take about 5 ms, all four responses together.
// Edges      No rows: the prior. What a stock says of the others never makes them less sure than the prior. Rows are
//            sorted by what they say, so their order cannot matter to the last bit; nothing is kept between fits, so
//            taking a row out gives back what was before it.
// Example    tests/published/tune_rows.cpp: rows E9.1 to E9.5 of the linear case.
#pragma once

#include <cstdint>
#include <vector>

#include "core/tune/observation.hpp"
#include "core/tune/verdict_grid.hpp"

namespace torchside::tune {

/// What fit() found: it does not change any more, and holds no reference to what it was made of.
class ResponseFit {
public:
    /// Of no rows and a prior of nothing.
    ResponseFit() = default;

    [[nodiscard]] const Gaussian& coefficients() const { return coefficients_; }
    [[nodiscard]] const std::vector<Finding>& findings() const { return findings_; } // in the order of the log
    [[nodiscard]] int rows() const { return static_cast<int>(findings_.size()); }

    /// f of a stock, tested or not.
    [[nodiscard]] Distribution distribution(const Vector& x, std::int64_t tag) const;

    /// x'b alone: the smooth curve, without any stock's own part.
    [[nodiscard]] double curve(const Vector& x) const { return coefficients_.at(x); }

    /// As given to fit(), with the window that the verdicts speak for.
    [[nodiscard]] const Model& model() const { return model_; }

    friend ResponseFit fit(std::vector<Observation> rows, const Model& model);

private:
    [[nodiscard]] const StockEvidence* find(const Vector& x, std::int64_t tag) const;

    Model model_{};
    Gaussian coefficients_{};
    std::vector<StockEvidence> stocks_{}; // by x and tag
    VerdictGrid grid_{};
    std::vector<Finding> findings_{};
};

[[nodiscard]] ResponseFit fit(std::vector<Observation> rows, const Model& model);

} // namespace torchside::tune
