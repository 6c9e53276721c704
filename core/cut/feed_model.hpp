// Where the searches over thickness and current get their feed from: level 1 alone, or the shop's own posterior.
#pragma once

#include "core/cut/balance.hpp"

namespace torchside::cut {

class FeedModel {
public:
    /// The middle estimate of the production feed, 0 where there is none. Falls with thickness.
    [[nodiscard]] virtual Speed feed(const CutSetup& plate) const = 0;

protected:
    ~FeedModel() = default;
};

/// Level 1: the energy balance with one set of terms.
class PhysicsModel final : public FeedModel {
public:
    explicit PhysicsModel(const Terms& terms) : terms_(&terms) {}
    [[nodiscard]] Speed feed(const CutSetup& plate) const override { return balance_feed(plate, *terms_); }

private:
    const Terms* terms_;
};

/// Thickest plate, 0.1..200 mm, still cut at `wanted`; all else as in `plate`, whose thickness is not read. 0 when even
/// the thinnest is slower, 200 mm when every plate is faster. Found by halving ln t to the last bits.
/// Example: handbook terms, mild steel, 45 A, 500 mm/min: 9.60 mm.
[[nodiscard]] Length thickness_at(Speed wanted, CutSetup plate, const FeedModel& model);

} // namespace torchside::cut
