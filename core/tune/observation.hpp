// What a fit is made of, and what it says of each row (response_fit.hpp).
#pragma once

#include <cstdint>
#include <vector>

#include "core/tune/gaussian.hpp"
#include "core/tune/window.hpp"

namespace torchside::tune {

/// One row as the engine sees it. Rows with equal x and tag are of one stock.
struct Observation {
    Vector x{};
    std::int64_t tag = 0; // tells stocks apart that have the same x (nozzle bore)
    double y = 0.0;       // reading or setting, relative to level 1
    double noise = 0.0;   // variance of a reading; 0 for a verdict
    Judgement verdict = Judgement::good;
    int row = 0; // index in the log

    [[nodiscard]] bool judged() const { return noise == 0.0; }
};

/// Another window that the verdicts may have been given by, and the logarithm of its prior odds against the model's
/// own.
struct OtherWindow {
    Window window{};
    double ln_odds = 0.0;
};

struct Model {
    Gaussian prior{};
    double stock_sd = 0.0;
    Window window{};
    std::vector<OtherWindow> others{};
    double outlier_sd = 3.0;
    double student_dof = 4.0;
};

/// What the fit says of one row.
struct Finding {
    int row = 0;
    double weight = 1.0; // 1: taken at full weight
    double sd_off = 0.0; // how far it is from what all other rows say, in standard deviations
    bool flagged = false;
};

} // namespace torchside::tune
