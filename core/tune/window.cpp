#include "core/tune/window.hpp"

#include <cmath>
#include <numbers>

namespace torchside::tune {
namespace {

constexpr double flat_after = 7.0; // in sd: Phi(-7) = 1.3e-12

double edge(double x) {
    return x <= -flat_after ? 0.0 : x >= flat_after ? 1.0 : normal_cdf(x);
}

} // namespace

double normal_cdf(double x) {
    return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

Judge::Judge(const Window& w)
    : lower_(std::log1p(-w.width)), upper_(std::log1p(w.width)), per_soft_(1.0 / w.soft), reach_(flat_after * w.soft),
      sure_(1.0 - w.misread), doubt_(0.5 * w.misread) {}

double Judge::happens(Reading reading, double z) const {
    switch (reading) {
    case Reading::low:
        return edge((lower_ - z) * per_soft_);
    case Reading::high:
        return edge((z - upper_) * per_soft_);
    case Reading::good:
        break;
    }
    const double outside = edge((lower_ - z) * per_soft_) + edge((z - upper_) * per_soft_);
    return outside < 1.0 ? 1.0 - outside : 0.0;
}

} // namespace torchside::tune
