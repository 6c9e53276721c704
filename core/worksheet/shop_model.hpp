// What a shop's log has taught, fitted once and handed to all that ask: worksheet, chart, next test, coupons, readings.
//
// What       tune::learn() of the log with the shop's nozzles, measured gradient and start lag, from what other shops' cuts
//            say. Nothing else of a shop changes it, so a thickness that is typed asks the same fit again. The others are
//            fitted once. It speaks of the set of consumables as it is worn now (wear.now.starts).
// Range      any shop. Copies share one fit.
// Edges      A model of another log, or one that was never fitted, is not used: whoever is handed it fits anew. So a model
//            kept too long costs time and never a figure: with and without one the answer is the same.
// Example    64 cuts in the log: the fit takes 1.3 ms, holds_for() of the same shop some 1 us.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/tune/posterior.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside {

class ShopModel {
public:
    /// Not fitted yet.
    ShopModel() = default;
    explicit ShopModel(const Shop& shop);

    /// It was fitted to this shop's log, nozzles, gradient and start lag, and is asked for the set as it is worn now.
    [[nodiscard]] bool holds_for(const Shop& shop) const;

    /// One and the same fit.
    friend bool operator==(const ShopModel&, const ShopModel&) = default;

    /// Itself where it holds for the shop, else one fitted to it.
    [[nodiscard]] ShopModel fitted_to(const Shop& shop) const;

    /// Of a fitted model only.
    [[nodiscard]] const tune::Posterior& posterior() const { return fit_->posterior; }

private:
    struct Fit { // the first seven are all that the last two depend on
        std::vector<tune::TestCut> tests{};
        std::vector<Nozzle> nozzles{};
        std::optional<Gradient> gradient{};
        Duration program_lag{};
        bool timed = false; // the lag
        std::vector<tune::SharedCut> others{};
        double used = 0.0;   // share of the set in use: asked of the fit, and changes nothing of it
        tune::Start start{}; // by the others alone
        tune::Posterior posterior{};
    };
    ShopModel(const Shop& shop, const std::shared_ptr<const Fit>& before);
    [[nodiscard]] bool same_fit(const Shop& shop) const;
    std::shared_ptr<const Fit> fit_{};
};

} // namespace torchside
