// The spreads that learning from test cuts rests on. None is a constant in code: each is a row of
// assets/data/tune_priors.json with its source and status, and a test or a simulation may pass its own.
#pragma once

namespace torchside::tune {

/// Standard deviations are of a natural logarithm unless said otherwise.
struct Priors {
    double feed_bias = 0.0;       // shop and model together
    double feed_shop_bias = 0.0;  // of it, the shop's own part: rules of thumb are silent on it
    double feed_slope = 0.0;      // exponent on thickness, shop and model together
    double feed_shop_slope = 0.0; // of it, the shop's own part
    double feed_current = 0.0;    // exponent on current
    double feed_metal = 0.0;      // a metal's own offset
    double feed_stock = 0.0;      // one stock around the smooth curve
    double feed_noise = 0.0;      // a stated clean feed around the curve, feed_stock included
    double window = 0.0;          // clean from (1 - window) v to (1 + window) v
    double window_soft = 0.0;     // of the window's edges
    double window_narrow = 0.0;   // a pickier shop
    double window_wide = 0.0;     // one that is less so
    double window_other = 0.0;    // prior odds of each other window or misreading against the usual
    double misread = 0.0;         // probability of a wrong verdict
    double misread_often = 0.0;   // of a less practised eye
    double kerf_bias = 0.0;
    double kerf_slope = 0.0;
    double kerf_current = 0.0;
    double kerf_noise = 0.0;
    double kerf_one_face = 0.0;      // added when one face alone was measured
    double arc_noise = 0.0;          // V
    double arc_gradient_noise = 0.0; // V/mm
    double pierce_bias = 0.0;
    double pierce_slope = 0.0;
    double pierce_current = 0.0;
    double pierce_stock = 0.0;
    double pierce_window = 0.0;
    double pierce_soft = 0.0;
    double pierce_misread = 0.0;
    double outlier_sd = 0.0;  // in standard deviations
    double student_dof = 0.0; // degrees of freedom
};

[[nodiscard]] const Priors& priors();

} // namespace torchside::tune
