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
//            Asked for f of a stock, the messages are replaced by the verdicts' own shape again (joint.hpp).
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
#include <span>
#include <vector>

#include "core/tune/gaussian.hpp"
#include "core/tune/joint.hpp"
#include "core/tune/product.hpp"
#include "core/tune/window.hpp"

namespace torchside::tune {

/// One row as the engine sees it. Rows with equal x and tag are of one stock.
struct Observation {
    Vector x{};
    std::int64_t tag = 0; // tells stocks apart that have the same x (nozzle bore)
    double y = 0.0;       // reading or setting, relative to level 1
    double noise = 0.0;   // variance of a reading; 0 for a verdict
    Reading verdict = Reading::good;
    int row = 0; // index in the log

    [[nodiscard]] bool judged() const { return noise == 0.0; }
};

/// Another window that the verdicts may have been given by, and the logarithm of its prior odds against the model's
/// own.
struct OtherWindow {
    Window window{};
    double ln_odds = 0.0;
};

struct Model {
    Gaussian prior{};
    double stock_sd = 0.0;
    Window window{};
    std::vector<OtherWindow> others{};
    double outlier_sd = 3.0;
    double student_dof = 4.0;
};

/// What the fit says of one row.
struct Finding {
    int row = 0;
    double weight = 1.0; // 1: taken at full weight
    double sd_off = 0.0; // how far it is from what all other rows say, in standard deviations
    bool flagged = false;
};

/// f of one stock: normal when `mass` is empty, else a table of probabilities at low + i step.
struct Belief {
    double mean = 0.0;
    double sd = 0.0;
    double low = 0.0;
    double step = 0.0;
    std::vector<double> mass{};

    /// The value below which a share p of the mass lies; 0 < p < 1.
    [[nodiscard]] double quantile(double p) const;

    /// Takes off nodes at the ends that hold nothing.
    void cut_ends();
};

/// Invariant: built by fit(). Holds no reference to what it was built from.
class Series {
public:
    [[nodiscard]] const Gaussian& coefficients() const { return coefficients_; }
    [[nodiscard]] const std::vector<Finding>& findings() const { return findings_; } // in the order of the log
    [[nodiscard]] int rows() const { return static_cast<int>(findings_.size()); }

    /// f of a stock, tested or not.
    [[nodiscard]] Belief belief(const Vector& x, std::int64_t tag) const;

    /// x'b alone: the smooth curve, without any stock's own part.
    [[nodiscard]] double curve(const Vector& x) const { return coefficients_.at(x); }

    /// eta = x'b with that stock's own evidence left out: what the rest of the log says of it.
    struct Cavity {
        double mean = 0.0;
        double variance = 0.0;
    };
    [[nodiscard]] Cavity cavity(const Vector& x, std::int64_t tag) const;

    /// As given to fit(), with the window that the verdicts speak for.
    [[nodiscard]] const Model& model() const { return model_; }

    friend Series fit(std::vector<Observation> rows, const Model& model);

private:
    struct Stock {
        Vector x{};
        std::int64_t tag = 0;
        std::size_t begin = 0, end = 0;             // rows_
        double reading_tau = 0.0, reading_nu = 0.0; // normal rows, weighted
        double low = 0.0, step = 0.0;               // table of verdicts
        std::vector<double> evidence{};             // their product, largest 1; empty: no verdicts
        double tau = 0.0, nu = 0.0;                 // message to b
        double mean = 0.0, variance = 0.0;          // of f, all in
        bool shaped = false;                        // its verdicts are in the joint as they are
    };
    void sort_into_stocks();
    void weigh(const std::vector<double>& weights);
    void settle();
    double update(Stock& stock, double share);
    void locate(Stock& stock, const Cavity& eta) const;
    [[nodiscard]] std::vector<double> distances(const std::vector<double>& weights) const;
    [[nodiscard]] std::vector<double> weigh_outliers();
    void report(const std::vector<double>& weights);
    [[nodiscard]] Finding appraise(const Observation& row, const Belief& belief) const;
    [[nodiscard]] static Cavity cavity_of(const Stock& stock, const Gaussian::Along& all);
    [[nodiscard]] Cavity cavity_of(const Stock& stock) const { return cavity_of(stock, coefficients_.along(stock.x)); }
    [[nodiscard]] std::span<const Observation> judged_rows(const Stock& stock) const;
    [[nodiscard]] Moments prior_of(const Stock& stock, const Cavity& eta) const;
    void tabulate(const Window& window);
    [[nodiscard]] double ln_evidence(const Window& window) const;
    [[nodiscard]] Window likeliest_window() const;
    void choose_shaped();
    void find_directions();
    void shape();
    [[nodiscard]] std::vector<double> correction(const Stock& stock) const;
    /// f of a place, own readings in and own verdicts out, as a mixture of normal distributions of one variance.
    struct Spread {
        std::vector<double> means{}, weights{};
        double low = 0.0, high = 0.0; // of the means
        double variance = 0.0;
    };
    [[nodiscard]] Spread spread_of(const Vector& x, const Stock* own) const;
    [[nodiscard]] Belief belief_of(const Stock& stock) const;
    [[nodiscard]] const Stock* find(const Vector& x, std::int64_t tag) const;

    Model model_{};
    Gaussian coefficients_{};
    std::vector<Observation> rows_{};
    std::vector<Stock> stocks_{};
    Joint joint_{};
    std::vector<Finding> findings_{};
};

[[nodiscard]] Series fit(std::vector<Observation> rows, const Model& model);

} // namespace torchside::tune
