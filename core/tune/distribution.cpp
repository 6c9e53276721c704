#include "core/tune/distribution.hpp"

#include <cmath>
#include <cstddef>

#include "core/tune/quantile.hpp"

namespace torchside::tune {

void Distribution::cut_ends() {
    std::size_t first = 0;
    std::size_t last = mass.size();
    while (first + 1 < last && mass[first] < 1e-14) {
        ++first;
    }
    while (last > first + 1 && mass[last - 1] < 1e-14) {
        --last;
    }
    mass.erase(mass.begin() + static_cast<std::ptrdiff_t>(last), mass.end());
    mass.erase(mass.begin(), mass.begin() + static_cast<std::ptrdiff_t>(first));
    low += static_cast<double>(first) * step;
}

double Distribution::density(double f) const {
    if (mass.empty()) {
        const double z = (f - mean) / sd;
        return std::exp(-0.5 * z * z);
    }
    const double place = (f - low) / step;
    const double below = std::floor(place);
    const double share = place - below;
    const auto value = [&](double i) {
        return i < 0.0 || i >= static_cast<double>(mass.size()) ? 0.0 : mass[static_cast<std::size_t>(i)];
    };
    return (1.0 - share) * value(below) + share * value(below + 1.0);
}

double Distribution::quantile(double p) const {
    if (mass.empty()) {
        return mean + sd * normal_quantile(p);
    }
    double below = 0.0;
    for (std::size_t i = 0; i < mass.size(); ++i) {
        if (below + mass[i] >= p) { // within a node's cell the mass lies evenly
            return low + step * (static_cast<double>(i) - 0.5 + (p - below) / mass[i]);
        }
        below += mass[i];
    }
    return low + step * static_cast<double>(mass.size() - 1);
}

} // namespace torchside::tune
