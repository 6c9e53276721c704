#include "core/tune/second_start.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/quantity/sort_rows.hpp"
#include "core/tune/product.hpp"

namespace torchside::tune {
namespace {

constexpr double doubted_below = -2.0; // ln of what the others leave of a stock's verdicts
constexpr std::size_t most_tried = 3;
constexpr double hopeless = 7.0; // in ln
constexpr double near_sd = 2.0;

struct Doubted {
    std::size_t stock = 0;
    double ln_left = 0.0;
};

// The largest value of the table within so far of m.
double best_near(const StockEvidence& stock, double m, double reach) {
    const auto last = static_cast<double>(stock.verdicts.size() - 1);
    const auto node = [&](double f) {
        return static_cast<std::ptrdiff_t>(std::clamp((f - stock.low) / stock.step, 0.0, last));
    };
    return *std::max_element(stock.verdicts.begin() + node(m - reach), stock.verdicts.begin() + node(m + reach) + 1);
}

// ln of the best that all verdicts can come to when one stock is believed.
double at_best(const Fitter& first, std::size_t believed) {
    Fitter other;
    other.model = first.model;
    other.stocks = first.stocks;
    other.begin();
    other.believe(believed);
    const double s2 = first.model.stock_sd * first.model.stock_sd;
    double sum = 0.0;
    for (std::size_t i = 0; i < other.stocks.size(); ++i) {
        const StockEvidence& stock = other.stocks[i];
        if (i != believed && !stock.verdicts.empty()) {
            const Gaussian::Along eta = other.coefficients.along(stock.x);
            sum += std::log(best_near(stock, eta.mean, near_sd * std::sqrt(eta.variance + s2)));
        }
    }
    return sum;
}

} // namespace

std::optional<std::size_t> second_start(const Fitter& first) {
    std::vector<Doubted> doubted;
    double all = 0.0;
    for (std::size_t i = 0; i < first.stocks.size(); ++i) {
        const StockEvidence& stock = first.stocks[i];
        if (stock.verdicts.empty()) {
            continue;
        }
        const Moments f = prior_of(stock, cavity_of(stock, first.coefficients.along(stock.x)), first.model.stock_sd);
        const double left = moments(stock.table(), f.mean, f.variance).ln_integral;
        all += left;
        if (left < doubted_below) {
            doubted.push_back({i, left});
        }
    }
    sort_rows(doubted, [](const Doubted& a, const Doubted& b) { return a.ln_left < b.ln_left; });
    std::optional<std::size_t> found;
    double most = all - hopeless;
    for (std::size_t i = 0; i < std::min(most_tried, doubted.size()); ++i) {
        const double best = at_best(first, doubted[i].stock);
        if (best > most) {
            most = best;
            found = doubted[i].stock;
        }
    }
    return found;
}

} // namespace torchside::tune
