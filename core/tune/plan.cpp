#include "core/tune/plan.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::tune {
namespace {

constexpr double cuts_per_miss = 1.55;
constexpr double worth_looking = 0.6; // tests with less than this share of the best chance of good are left out
constexpr double tail = 1e-6;         // of the mass, left out at either end

} // namespace

Search::Search(std::span<const Belief> beliefs) {
    low_ = std::numeric_limits<double>::infinity();
    double high = -low_;
    for (const Belief& belief : beliefs) {
        high = std::max(high, belief.f.quantile(1.0 - tail) + step);
        low_ = std::min(low_, belief.f.quantile(tail) - step);
    }
    const std::size_t nodes = static_cast<std::size_t>((high - low_) / step) + 2;
    for (const Belief& belief : beliefs) {
        std::vector<double> mass(nodes);
        double sum = 0.0;
        for (std::size_t i = 0; i < nodes; ++i) {
            sum += mass[i] = belief.f.density(low_ + static_cast<double>(i) * step);
        }
        auto part = std::find_if(parts_.begin(), parts_.end(),
                                 [&](const Part& other) { return other.window == belief.window; });
        if (part == parts_.end()) {
            part = parts_.insert(part, {belief.window, Judge(belief.window), std::vector<double>(nodes, 0.0)});
        }
        for (std::size_t i = 0; i < nodes; ++i) {
            part->mass[i] += belief.weight / sum * mass[i];
        }
    }
    gather();
}

void Search::gather() {
    mass_.assign(parts_.front().mass.size(), 0.0);
    for (const Part& part : parts_) {
        for (std::size_t i = 0; i < mass_.size(); ++i) {
            mass_[i] += part.mass[i];
        }
    }
}

double Search::good(double y) const {
    double sum = 0.0;
    for (const Part& part : parts_) {
        for (std::size_t i = 0; i < mass_.size(); ++i) {
            sum += part.mass[i] * part.judge.happens(Judgement::good, y - low_ - static_cast<double>(i) * step);
        }
    }
    return sum;
}

double Search::reached(double limit) const {
    double sum = 0.0;
    for (const Part& part : parts_) {
        for (std::size_t i = 0; i < mass_.size(); ++i) {
            if (low_ + static_cast<double>(i) * step <= limit - part.judge.lower_edge()) {
                sum += part.mass[i];
            }
        }
    }
    return sum;
}

// Chance of good of a test at every node: the window's profile is the same everywhere, so it is worked out once.
std::vector<double> Search::chances() const {
    std::vector<double> result(mass_.size(), 0.0);
    const auto n = static_cast<std::ptrdiff_t>(mass_.size());
    for (const Part& part : parts_) {
        const auto reach = static_cast<std::ptrdiff_t>((-part.judge.lower_edge() + part.judge.reach()) / step) + 1;
        std::vector<double> profile;
        for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
            profile.push_back(part.judge.happens(Judgement::good, static_cast<double>(k) * step));
        }
        for (std::ptrdiff_t i = 0; i < n; ++i) {
            for (std::ptrdiff_t j = std::max<std::ptrdiff_t>(0, i - reach); j <= std::min(n - 1, i + reach); ++j) {
                result[static_cast<std::size_t>(i)] +=
                    part.mass[static_cast<std::size_t>(j)] * profile[static_cast<std::size_t>(i - j + reach)];
            }
        }
    }
    return result;
}

// Chance that a test reads so, by the distance in nodes from the right setting to the test, -n..n.
std::vector<double> Search::profile(const Part& part, Judgement reading) const {
    std::vector<double> result;
    result.reserve(2 * mass_.size() + 1);
    const auto n = static_cast<std::ptrdiff_t>(mass_.size());
    for (std::ptrdiff_t k = -n; k <= n; ++k) {
        result.push_back(part.judge.reads(reading, static_cast<double>(k) * step));
    }
    return result;
}

// Cuts to come after a test at a node read as the profiles are of, times the chance that it does. The window is taken as
// sharp here.
double Search::rest(std::size_t node, const std::vector<std::vector<double>>& profiles, std::vector<double>& below,
                    std::vector<double>& reads) const {
    const std::size_t n = mass_.size();
    below.resize(n + 1);
    below[0] = 0.0;
    reads.assign(n, 0.0);
    double all = 0.0;
    for (std::size_t k = 0; k < parts_.size(); ++k) {
        const Part& part = parts_[k];
        const auto half = static_cast<std::size_t>(std::lround(part.judge.upper_edge() / step));
        const double* profile = profiles[k].data() + node + n;
        for (std::size_t i = 0; i < n; ++i) {
            below[i + 1] = below[i] + part.mass[i] * *(profile - i);
        }
        all += below.back();
        for (std::size_t i = 0; i < n; ++i) {
            const double good = below[std::min(n, i + half + 1)] - below[i > half ? i - half : 0];
            reads[i] += part.judge.read_as(good, below.back());
        }
    }
    return all + (all - *std::max_element(reads.begin(), reads.end())) * cuts_per_miss;
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
    t.reads = reads_good(t.y);
    return t;
}

// Chance that a test there reads good.
double Search::reads_good(double y) const {
    double sum = 0.0;
    for (const Part& part : parts_) {
        for (std::size_t i = 0; i < mass_.size(); ++i) {
            sum += part.mass[i] * part.judge.reads(Judgement::good, y - low_ - static_cast<double>(i) * step);
        }
    }
    return sum;
}

Test Search::best(double limit) const {
    const std::vector<double> chance = chances();
    const auto end = chance.begin() + static_cast<std::ptrdiff_t>(std::min(within(limit), chance.size()));
    Test t = at(static_cast<std::size_t>(std::max_element(chance.begin(), end) - chance.begin()));
    if (t.y > limit) {
        t.y = limit;
        t.good = good(limit);
        t.reads = reads_good(limit);
    }
    return t;
}

Test Search::next(double limit) const {
    const std::vector<double> chance = chances();
    const std::size_t end = std::min(within(limit), chance.size());
    const double most = *std::max_element(chance.begin(), chance.begin() + static_cast<std::ptrdiff_t>(end));
    std::vector<std::vector<double>> low, high;
    for (const Part& part : parts_) {
        low.push_back(profile(part, Judgement::low));
        high.push_back(profile(part, Judgement::high));
    }
    std::vector<double> below, reads;
    double least = std::numeric_limits<double>::infinity();
    std::size_t node = 0;
    for (std::size_t i = 0; i < end; ++i) {
        if (chance[i] < worth_looking * most) {
            continue;
        }
        const double cuts = 1.0 + rest(i, low, below, reads) + rest(i, high, below, reads);
        if (cuts < least) {
            least = cuts;
            node = i;
        }
    }
    Test t = at(node);
    if (t.y > limit) {
        t.y = limit;
        t.good = good(limit);
        t.reads = reads_good(limit);
    }
    t.cuts = least;
    return t;
}

void Search::observe(double y, Judgement reading) {
    double sum = 0.0;
    for (Part& part : parts_) {
        for (std::size_t i = 0; i < mass_.size(); ++i) {
            sum += part.mass[i] *= part.judge.reads(reading, y - low_ - static_cast<double>(i) * step);
        }
    }
    for (Part& part : parts_) {
        for (double& m : part.mass) {
            m /= sum;
        }
    }
    gather();
}

} // namespace torchside::tune
