// Rules for telling from the look of a cut what to turn: angles that count as square, slopes, steps. Each is a row of
// assets/data/tune_rules.json with its source and status; most are priors.
#pragma once

namespace torchside::tune {

struct Rules {
    double taper_square_deg = 0.0;
    double lag_short_deg = 0.0;
    double lag_long_deg = 0.0;
    double deg_per_mm_height = 0.0;
    double deg_per_mm_height_sd = 0.0;
    double taper_open_deg = 0.0;
    double kerf_reading_mm = 0.0;
    double height_step_mm = 0.0;
    double height_step_most_mm = 0.0;
    double height_least_mm = 0.0;
    double near_limit_share = 0.0;
    double leaning_share = 0.0;
    double sure_from = 0.0;
};

[[nodiscard]] const Rules& reading_rules();

} // namespace torchside::tune
