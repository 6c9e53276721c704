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
// Starts     where a second start ends elsewhere, its fit is one more part of the mixture, as another kind would be.
// Kinds      how far a shop's feeds lie off, how they bend, how wide its clean window is, how often it misreads, how wear
//            moves it: a log of verdicts is fitted as each kind of shop in turn (OtherShop). A kind's weight is its prior
//            odds times how likely it makes the log: ln P = the messages' own integral + ln of the sum over the grid of
//            verdicts over messages. f is the mixture of what all kinds say; kinds below 0.01 of the likeliest are left
//            out. A log of more than 32 rows is fitted as fewer kinds, from 64 rows on as one: 8 of its rows, spread over
//            its stocks, say which are the likeliest.
// Outliers   a normal row more than outlier_sd away from what all others predict of it is flagged, worst first, and
//            keeps (dof + 1) / (dof + z^2) of its weight (Student). A verdict cannot pull further than its misreading
//            chance allows; it is flagged when the others give it less than the tail chance of outlier_sd.
// Source     own; expectation propagation is textbook (Minka 2001, key minka_2001, from memory).
//            Asked for f of a stock, the messages are replaced by the verdicts' own shape again (verdict_grid.hpp).
// Range      0..500 rows. | rows                   | against                                                        |
//                         | readings only          | linear algebra over all rows at once: 1e-9                     |
//                         | verdicts, 1..5 stocks  | brute-force grid, 3000 random logs, 3 or 10 in 100 misread:    |
//                         | of one metal, current  | middle and ends of the band 0.2 % in 98 of 100, worst 0.5 %    |
//                         | the same, cut anywhere | middle 1 % in 99 of 100, ends in 96                            |
//                         | near                   |                                                                |
//                         | 2 or 3 metals, up to 3 | importance sampling, 40 logs, 275 stocks: middle 0.2 % in 95   |
//                         | currents: up to 6      | of 100, worst 1.3 %; ends 0.6 %, worst 7 %                     |
//                         | directions             | (tests/core/tune_directions.cpp)                               |
//            Where verdicts rule each other out, a second start finds the other explanation (second_start.hpp); of more than
//            two the third may be missed.
//            tests/bench/fit.cpp holds how long it takes.
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

/// f by one kind of shop.
struct Belief {
    double weight = 0.0; // chance that the shop is of that kind, and of one of two explanations of its log
    Window window{};
    Distribution f{};
};

/// The log read as one kind of shop's. Shared inside core/tune.
struct ShopKind {
    double weight = 1.0;
    Window window{};
    double stock_sd = 0.0;
    double drift = 0.0;
    Gaussian coefficients{};
    std::vector<StockEvidence> stocks{}; // by x and tag
    VerdictGrid grid{};

    [[nodiscard]] const StockEvidence* find(const Vector& x, std::int64_t tag) const;
    [[nodiscard]] Distribution distribution(const Vector& x, std::int64_t tag, double used) const;

private:
    [[nodiscard]] Distribution judged(const Vector& x, const StockEvidence* own) const;
};

/// What fit() found: it does not change any more, and holds no reference to what it was made of.
class ResponseFit {
public:
    /// Of no rows and a prior of nothing.
    ResponseFit() = default;

    [[nodiscard]] const Gaussian& coefficients() const { return coefficients_; }
    [[nodiscard]] const std::vector<Finding>& findings() const { return findings_; } // in the order of the log
    [[nodiscard]] int rows() const { return static_cast<int>(findings_.size()); }

    /// f of a stock, tested or not.
    [[nodiscard]] Distribution distribution(const Vector& x, std::int64_t tag, double used = 0.0) const;

    /// The same by every kind of shop that the log may come from; weights sum to 1, the likeliest first.
    [[nodiscard]] std::vector<Belief> beliefs(const Vector& x, std::int64_t tag, double used = 0.0) const;

    /// x'b alone: the smooth curve, without any stock's own part, as the likeliest kind of shop has it.
    [[nodiscard]] double curve(const Vector& x, double used = 0.0) const {
        return coefficients_.at(x) + model_.drift * used;
    }

    /// As given to fit(), with what the likeliest kind of shop has of its own.
    [[nodiscard]] const Model& model() const { return model_; }

    /// ln of how likely the log's feeds are, all kinds of shop together, up to what no prior changes.
    [[nodiscard]] double ln_evidence() const { return ln_evidence_; }

    friend ResponseFit fit(std::vector<Observation> rows, const Model& model);

private:
    Model model_{};
    Gaussian coefficients_{};
    std::vector<ShopKind> kinds_{};
    double ln_evidence_ = 0.0;
    std::vector<Finding> findings_{};
};

[[nodiscard]] ResponseFit fit(std::vector<Observation> rows, const Model& model);

} // namespace torchside::tune
