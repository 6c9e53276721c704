// What is known of one number: a normal distribution, or a table of its probabilities.
#pragma once

#include <vector>

namespace torchside::tune {

/// Normal when `mass` is empty, else a table of probabilities at low + i step.
struct Distribution {
    double mean = 0.0;
    double sd = 0.0;
    double low = 0.0;
    double step = 0.0;
    std::vector<double> mass{};

    /// The value below which a share p of the mass lies; 0 < p < 1.
    [[nodiscard]] double quantile(double p) const;

    /// Up to a factor.
    [[nodiscard]] double density(double f) const;

    void move(double by) {
        mean += by;
        low += by;
    }

    /// Takes off nodes at the ends that hold nothing.
    void cut_ends();
};

} // namespace torchside::tune
