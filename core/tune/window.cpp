#include "core/tune/window.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace torchside::tune {
namespace {

constexpr int flat_after = 7; // in sd: Phi(-7) = 1.3e-12
constexpr int per_sd = 16;

struct Tabled {
    double phi = 0.0;
    double density = 0.0;
};
constexpr int cells = 2 * flat_after * per_sd + 1; // the last for a sum that is rounded up to the end
using Table = std::array<Tabled, cells>;

// A table of verdicts asks for Phi tens of thousands of times: five terms of Taylor's series from the middle of a
// cell are off by 5e-12 at most.
double middle(int cell) {
    return (cell + 0.5) / per_sd - flat_after;
}

const Table table = [] {
    Table t;
    for (std::size_t i = 0; i < t.size(); ++i) {
        const double at = middle(static_cast<int>(i));
        t[i] = {normal_cdf(at), std::exp(-0.5 * at * at) / std::sqrt(2.0 * std::numbers::pi)};
    }
    return t;
}();

double edge(double x) {
    if (x <= -flat_after) {
        return 0.0;
    }
    if (x >= flat_after) {
        return 1.0;
    }
    const int i = static_cast<int>((x + flat_after) * per_sd);
    const double a = middle(i);
    const double d = x - a;
    const double aa = a * a;
    const Tabled& t = table[static_cast<std::size_t>(i)];
    return t.phi + t.density * d *
                       (1.0 + d * (-a / 2.0 + d * ((aa - 1.0) / 6.0 +
                                                   d * (a * (3.0 - aa) / 24.0 + d * (aa * (aa - 6.0) + 3.0) / 120.0))));
}

} // namespace

double normal_cdf(double x) {
    return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

Judge::Judge(const Window& w)
    : lower_(std::log1p(-w.width)), upper_(std::log1p(w.width)), per_soft_(1.0 / w.soft), reach_(flat_after * w.soft),
      sure_(1.0 - w.misread), doubt_(0.5 * w.misread) {}

double Judge::happens(Judgement reading, double z) const {
    switch (reading) {
    case Judgement::low:
        return edge((lower_ - z) * per_soft_);
    case Judgement::high:
        return edge((z - upper_) * per_soft_);
    case Judgement::good:
        break;
    }
    const double outside = edge((lower_ - z) * per_soft_) + edge((z - upper_) * per_soft_);
    return outside < 1.0 ? 1.0 - outside : 0.0;
}

} // namespace torchside::tune
