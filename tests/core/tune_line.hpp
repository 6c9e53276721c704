// A line over thickness with one usual window: the model that tests of the fit begin from.
#pragma once

#include "core/tune/observation.hpp"
#include "core/tune/response_fit.hpp"

namespace torchside::test {

inline constexpr double bias_sd = 0.30;
inline constexpr double slope_sd = 0.20;
inline constexpr double stock_sd = 0.06;
inline constexpr tune::Window window{0.08, 0.02, 0.03};

/// What a cut at y showed on a plate at u.
inline tune::Observation verdict(double u, double y, tune::Judgement reading) {
    tune::Observation o;
    o.x = {1.0, u};
    o.y = y;
    o.verdict = reading;
    return o;
}

inline tune::Model line_model() {
    tune::Model m;
    const double sd[] = {bias_sd, slope_sd};
    m.prior = tune::Gaussian::independent(sd);
    m.stock_sd = stock_sd;
    m.window = window;
    return m;
}

} // namespace torchside::test
