// One made-up shop of the simulation: what is true in it, and how its cuts are read. Shared inside core/tune.
#pragma once

#include <array>
#include <cstdint>

#include "core/tune/priors.hpp"
#include "core/tune/window.hpp"
#include "tools/simulate/simulate.hpp"

namespace torchside::tune {

inline constexpr std::array<double, 12> job_thickness_mm{1.5, 2, 3, 4.5, 6, 8, 10, 12, 3, 6, 10, 16};

/// A number in (0, 1) for every (seed, a, b, c): a counter, not a sequence, so that one more draw shifts no other.
[[nodiscard]] double uniform(std::uint64_t seed, std::uint64_t a, std::uint64_t b, std::uint64_t c);

class ShopDraw {
public:
    ShopDraw(const Population& population, std::uint64_t seed, int shop, int shops);

    /// ln(right feed / chart) of a job.
    [[nodiscard]] double truth(std::size_t job) const { return truth_[job]; }
    /// Starts of its set of consumables when the job comes up.
    [[nodiscard]] double starts(std::size_t job) const { return used_[job] * priors().feed_set_starts; }
    /// The part of it that bias, slope, bend and drift make.
    [[nodiscard]] double curve(std::size_t job) const { return curve_[job]; }

    [[nodiscard]] Judgement happened(std::size_t job, double y) const;
    /// `cut` counts from 0 within the job.
    [[nodiscard]] Judgement read(std::size_t job, int cut, double y) const;

private:
    Population population_;
    std::uint64_t seed_;
    std::uint64_t shop_;
    std::array<double, 12> truth_{};
    std::array<double, 12> curve_{};
    std::array<double, 12> used_{};
    std::array<double, 12> first_verdict_{};
};

} // namespace torchside::tune
