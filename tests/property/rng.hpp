// Random numbers for tests that are the same on every platform: SplitMix64 (Steele, Lea, Flood 2014), and only
// arithmetic that IEEE 754 rounds exactly - no library functions.
#pragma once

#include <cstddef>
#include <cstdint>

namespace torchside::test {

class Rng {
public:
    explicit Rng(std::uint64_t seed) : state_(seed) {}

    std::uint64_t bits() {
        state_ += 0x9E3779B97F4A7C15U;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9U;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBU;
        return z ^ (z >> 31);
    }
    /// 0 <= x < 1
    double unit() { return static_cast<double>(bits() >> 11) * 0x1p-53; }
    /// 0 <= i < count
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(bits() % count); }
    bool chance(double share) { return unit() < share; }

    double uniform(double low, double high) {
        const double x = low + unit() * (high - low);
        return x < low ? low : x > high ? high : x;
    }
    /// Every factor of two between low > 0 and high is as likely.
    double by_factor(double low, double high) {
        unsigned doublings = 0;
        for (double x = low; x * 2.0 < high; x *= 2.0) {
            ++doublings;
        }
        double start = low;
        for (std::size_t i = below(doublings + 1); i > 0; --i) {
            start *= 2.0;
        }
        return uniform(start, start * 2.0 < high ? start * 2.0 : high);
    }

private:
    std::uint64_t state_;
};

} // namespace torchside::test
