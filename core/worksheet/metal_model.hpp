// The shop's own numbers for one metal: what its log of cuts has taught, asked by plate. Every worksheet and every
// chart cell goes through here, so that a chart and a worksheet can never disagree.
#pragma once

#include "core/cut/capacity.hpp"
#include "core/cut/settings.hpp"
#include "core/worksheet/shop_model.hpp"

namespace torchside {

class MetalModel final : public cut::FeedModel {
public:
    /// Keeps a pointer to the shop, which must outlive it. A model that does not hold for the shop is not used.
    MetalModel(const Shop& shop, Metal metal, const ShopModel& model = {});
    MetalModel(Shop&& shop, Metal metal, const ShopModel& model = {}) = delete;

    [[nodiscard]] Metal metal() const { return metal_; }
    [[nodiscard]] const cut::Terms& terms() const { return *terms_; }

    /// The plate as this shop would cut it: its nozzle for that current, its usual cut height.
    [[nodiscard]] cut::CutSetup plate(Length thickness, Current current) const;
    /// The nozzle this shop has for a current; null only for a shop without nozzles.
    [[nodiscard]] const Nozzle* nozzle(Current current) const;

    /// The height this shop cuts at, or the usual one.
    [[nodiscard]] Estimate<Length> cut_height() const;

    /// Middle estimate of the feed along the smooth curve, 0 where there is none: for limits over thickness.
    [[nodiscard]] Speed feed(const cut::CutSetup& plate) const override;

    [[nodiscard]] cut::Limits limits(Current current) const;
    /// How a plate can be cut. Fault: it is refused.
    [[nodiscard]] Outcome<cut::Reach> cuts(const cut::CutSetup& plate) const;
    [[nodiscard]] const tune::Posterior& posterior() const { return model_.posterior(); }
    /// What moved the feed.
    [[nodiscard]] tune::Trail trail(const cut::CutSetup& plate) const { return tune::trail(posterior(), plate); }
    [[nodiscard]] cut::Choice choose(Length thickness) const;

    /// None when the plate is refused; feed held down to the table's fastest, no pierce delay but for a standing
    /// pierce.
    [[nodiscard]] std::optional<cut::Settings> settings(const cut::CutSetup& plate, cut::Reach reach) const;

    /// The feed that the arc allows, whatever the table; and the arc's voltage.
    [[nodiscard]] Estimate<Speed> arc_feed(const cut::CutSetup& plate) const;
    [[nodiscard]] Estimate<Voltage> arc_volts(const cut::CutSetup& plate) const;

private:
    const Shop* shop_;
    Metal metal_;
    const cut::Terms* terms_;
    ShopModel model_; // fitted to the shop
};

} // namespace torchside
