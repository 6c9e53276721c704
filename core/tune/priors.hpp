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
    double feed_mean = 0.0;       // what pooled shops add to the typical shop's ln(feed)
    double feed_pooled = 0.0;     // precision of that, 1/variance; 0: no shops were pooled
    double feed_others = 0.0;     // 1: the log may be of another kind of shop, tune_shops.json; 0: it is the usual one
    double feed_bend = 0.0;       // coefficient on ln(t/6 mm) squared
    double feed_drift = 0.0;      // what a set's wear adds to ln(feed) by its end
    double feed_set_starts = 0.0; // starts of a set of consumables
    double feed_noise = 0.0;      // a stated clean feed around the curve, feed_stock included
    double window = 0.0;          // clean from (1 - window) v to (1 + window) v
    double window_soft = 0.0;     // of the window's edges
    double misread = 0.0;         // probability of a wrong verdict
    double kerf_bias = 0.0;
    double kerf_slope = 0.0;
    double kerf_current = 0.0;
    double kerf_noise = 0.0;
    double kerf_one_face = 0.0;      // added when one face alone was measured
    double kerf_shop_bias = 0.0;     // of kerf_bias, a shop's own part: what other shops' cuts are silent on
    double arc_noise = 0.0;          // V
    double arc_shop_offset = 0.0;    // V; a shop's own part of the arc's offset
    double arc_gradient_noise = 0.0; // V/mm
    double pierce_bias = 0.0;
    double pierce_shop_bias = 0.0; // of it, a shop's own part
    double pierce_slope = 0.0;
    double pierce_current = 0.0;
    double pierce_stock = 0.0;
    double pierce_window = 0.0;
    double pierce_soft = 0.0;
    double pierce_misread = 0.0;
    double pool_mean_doubt = 0.0;   // sd of many shops' mean bias before they are pooled
    double pool_spread_doubt = 0.0; // of the logarithm of each of their other figures
    double pool_bias = 0.0;         // their spread of bias before they are pooled, the chart's error counted in
    double pool_slope = 0.0;        // the same of the slope
    double outlier_sd = 0.0;        // in standard deviations
    double student_dof = 0.0;       // degrees of freedom
};

[[nodiscard]] const Priors& priors();

} // namespace torchside::tune
