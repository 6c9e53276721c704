// What a verdict says about the right setting.
//
// What       A cut (or a pierce) made at y = ln(setting) reads low, good or high; f = ln(right setting).
// Formula    P(high) = Phi((y - f - ln(1 + w)) / s)        P(low) = Phi((ln(1 - w) - (y - f)) / s)
//            P(good) = 1 - P(low) - P(high)
//            read as o:  R(o) = (1 - e) P(o) + e/2 (1 - P(o))
//            w half-width of the window, s softness of its edges, e chance of misreading; Phi the normal distribution
// Source     own; w, s, e are priors (assets/data/tune_priors.json). Low and high are "too slow" and "too fast" of a
//            feed, "short" and "long" of a pierce delay.
// Range      0 < w < 1, s > 0, 0 <= e < 1. P to 5e-12.
// Edges      far from the window R is e/2 or 1 - e: one reading can never rule a setting out.
// Example    w 0.08, s 0.02, e 0.03: at y = f, P(good) = 0.999925, R(good) = 0.969928; at y - f = ln 1.08, P(good) 0.5.
#pragma once

namespace torchside::tune {

enum class Judgement { low, good, high };

struct Window {
    double width = 0.08;
    double soft = 0.02;
    double misread = 0.03;

    friend bool operator==(const Window&, const Window&) = default;
};

/// A window with its edges worked out.
class Judge {
public:
    explicit Judge(const Window& window);

    /// The edges of "good" in ln around f: ln(1 - w) and ln(1 + w).
    [[nodiscard]] double lower_edge() const { return lower_; }
    [[nodiscard]] double upper_edge() const { return upper_; }

    /// Beyond this distance from an edge it does not count any more: Phi is 0 or 1 to 1e-12.
    [[nodiscard]] double reach() const { return reach_; }

    /// P(o) with nothing misread; z = y - f.
    [[nodiscard]] double happens(Judgement reading, double z) const;

    /// R(o) of a P(o).
    [[nodiscard]] double read_as(double p) const { return sure_ * p + doubt_ * (1.0 - p); }

    /// The same of a part p of some mass.
    [[nodiscard]] double read_as(double p, double mass) const { return sure_ * p + doubt_ * (mass - p); }

    /// R(o); z = y - f.
    [[nodiscard]] double reads(Judgement reading, double z) const { return read_as(happens(reading, z)); }

private:
    double lower_, upper_, per_soft_, reach_, sure_, doubt_;
};

/// Standard normal distribution.
[[nodiscard]] double normal_cdf(double x);

} // namespace torchside::tune
