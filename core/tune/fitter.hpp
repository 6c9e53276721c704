// Rows fitted as one kind of shop's by expectation propagation (response_fit.hpp). Shared inside core/tune.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/tune/observation.hpp"
#include "core/tune/verdict_grid.hpp"

namespace torchside::tune {

/// All that changes while rows are fitted.
struct Fitter {
    Model model{};
    std::vector<Observation> rows{};
    Gaussian coefficients{};
    std::vector<StockEvidence> stocks{};
    std::optional<std::size_t> believed{}; // the stock that is believed at the start

    void sort_into_stocks();
    void tabulate(const Window& window);
    void weigh(const std::vector<double>& weights);
    void settle();
    /// The prior and the readings alone.
    void begin();
    /// Takes the verdicts of a stock, by its place among the stocks, at their word.
    void believe(std::size_t which);
    /// Weighs readings that are far off down, and settles; the weights of the rows.
    [[nodiscard]] std::vector<double> weigh_outliers();

    /// How far each reading is from what all others say, in standard deviations; 0 for a verdict.
    [[nodiscard]] std::vector<double> distances(const std::vector<double>& weights) const;

    /// ln of the integral of the prior times all messages.
    [[nodiscard]] double ln_messages() const;
    /// ln of how likely the log is in such a shop, up to a constant that is the same for every kind: the messages' own
    /// integral, and what the verdicts say over what their messages do. `weights`: of the rows.
    [[nodiscard]] double ln_evidence(const VerdictGrid& grid, const std::vector<double>& weights) const;

private:
    double update(StockEvidence& stock, double share);
    bool send(StockEvidence& stock, const Gaussian::Along& all, const Cavity& eta, double share);
    void locate(StockEvidence& stock, const Cavity& eta) const;
    [[nodiscard]] std::span<const Observation> judged_rows(const StockEvidence& stock) const;
};

} // namespace torchside::tune
