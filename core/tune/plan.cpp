#include "core/tune/plan.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::tune {
namespace {

constexpr double cuts_per_miss = 1.55;
constexpr double worth_looking = 0.6; // tests with less than this share of the best chance of good are left out
constexpr double tail = 1e-6;         // of the mass, left out at either end

// Density of the belief at f, up to a factor.
double density(const Distribution& b, double f) {
    if (b.mass.empty()) {
        const double z = (f - b.mean) / b.sd;
        return std::exp(-0.5 * z * z);
    }
    const double place = (f - b.low) / b.step;
    const double below = std::floor(place);
    const double share = place - below;
    const auto value = [&](double i) {
        return i < 0.0 || i >= static_cast<double>(b.mass.size()) ? 0.0 : b.mass[static_cast<std::size_t>(i)];
    };
    return (1.0 - share) * value(below) + share * value(below + 1.0);
}

} // namespace

Search::Search(const Distribution& belief, const Window& window) : judge_(window) {
    const double high = belief.quantile(1.0 - tail) + step;
    low_ = belief.quantile(tail) - step;
    mass_.resize(static_cast<std::size_t>((high - low_) / step) + 2);
    double sum = 0.0;
    for (std::size_t i = 0; i < mass_.size(); ++i) {
        sum += mass_[i] = density(belief, low_ + static_cast<double>(i) * step);
    }
    for (double& m : mass_) {
        m /= sum;
    }
}

double Search::good(double y) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < mass_.size(); ++i) {
        sum += mass_[i] * judge_.happens(Judgement::good, y - low_ - static_cast<double>(i) * step);
    }
    return sum;
}

// Chance of good of a test at every node: the window's profile is the same everywhere, so it is worked out once.
std::vector<double> Search::chances() const {
    const auto reach = static_cast<std::ptrdiff_t>((-judge_.lower_edge() + judge_.reach()) / step) + 1;
    std::vector<double> profile;
    for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
        profile.push_back(judge_.happens(Judgement::good, static_cast<double>(k) * step));
    }
    const auto n = static_cast<std::ptrdiff_t>(mass_.size());
    std::vector<double> result(mass_.size(), 0.0);
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        for (std::ptrdiff_t j = std::max<std::ptrdiff_t>(0, i - reach); j <= std::min(n - 1, i + reach); ++j) {
            result[static_cast<std::size_t>(i)] +=
                mass_[static_cast<std::size_t>(j)] * profile[static_cast<std::size_t>(i - j + reach)];
        }
    }
    return result;
}

// Chance that a test reads so, by the distance in nodes from the right setting to the test, -n..n.
std::vector<double> Search::profile(Judgement reading) const {
    std::vector<double> result;
    result.reserve(2 * mass_.size() + 1);
    const auto n = static_cast<std::ptrdiff_t>(mass_.size());
    for (std::ptrdiff_t k = -n; k <= n; ++k) {
        result.push_back(judge_.reads(reading, static_cast<double>(k) * step));
    }
    return result;
}

// Cuts to come after a test at a node read as the profile is of, times the chance that it does. The window is taken as
// sharp here.
double Search::rest(std::size_t node, const std::vector<double>& profile, std::vector<double>& below) const {
    below.resize(mass_.size() + 1);
    below[0] = 0.0;
    const auto half = static_cast<std::size_t>(std::lround(judge_.upper_edge() / step));
    double best = 0.0;
    for (std::size_t i = 0; i < mass_.size(); ++i) {
        below[i + 1] = below[i] + mass_[i] * profile[node + mass_.size() - i];
    }
    for (std::size_t i = 0; i < mass_.size(); ++i) {
        best = std::max(best, below[std::min(mass_.size(), i + half + 1)] - below[i > half ? i - half : 0]);
    }
    const double all = below.back();
    if (all == 0.0) { // a reading that cannot come: nothing is ever misread
        return 0.0;
    }
    return all + (all - judge_.read_as(best / all) * all) * cuts_per_miss;
}

std::size_t Search::within(double limit) const {
    if (limit >= low_ + static_cast<double>(mass_.size()) * step) {
        return mass_.size();
    }
    return static_cast<std::size_t>(std::fmax(0.0, std::floor((limit - low_) / step))) + 1;
}

Test Search::at(std::size_t node) const {
    Test t;
    t.y = low_ + static_cast<double>(node) * step;
    t.good = good(t.y);
    t.reads = judge_.read_as(t.good);
    return t;
}

Test Search::best(double limit) const {
    const std::vector<double> chance = chances();
    const auto end = chance.begin() + static_cast<std::ptrdiff_t>(std::min(within(limit), chance.size()));
    Test t = at(static_cast<std::size_t>(std::max_element(chance.begin(), end) - chance.begin()));
    if (t.y > limit) {
        t.y = limit;
        t.good = good(limit);
        t.reads = judge_.read_as(t.good);
    }
    return t;
}

Test Search::next(double limit) const {
    const std::vector<double> chance = chances();
    const std::size_t end = std::min(within(limit), chance.size());
    const double most = *std::max_element(chance.begin(), chance.begin() + static_cast<std::ptrdiff_t>(end));
    const std::vector<double> low = profile(Judgement::low);
    const std::vector<double> high = profile(Judgement::high);
    std::vector<double> scratch;
    double least = std::numeric_limits<double>::infinity();
    std::size_t node = 0;
    for (std::size_t i = 0; i < end; ++i) {
        if (chance[i] < worth_looking * most) {
            continue;
        }
        const double cuts = 1.0 + rest(i, low, scratch) + rest(i, high, scratch);
        if (cuts < least) {
            least = cuts;
            node = i;
        }
    }
    Test t = at(node);
    if (t.y > limit) {
        t.y = limit;
        t.good = good(limit);
        t.reads = judge_.read_as(t.good);
    }
    t.cuts = least;
    return t;
}

void Search::observe(double y, Judgement reading) {
    double sum = 0.0;
    for (std::size_t i = 0; i < mass_.size(); ++i) {
        sum += mass_[i] *= judge_.reads(reading, y - low_ - static_cast<double>(i) * step);
    }
    for (double& m : mass_) {
        m /= sum;
    }
}

} // namespace torchside::tune
