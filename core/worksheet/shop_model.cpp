#include "core/worksheet/shop_model.hpp"

#include <utility>

#include "core/gear/start.hpp"
#include "core/tune/others.hpp"

namespace torchside {

namespace {

double used_now(const Shop& shop) {
    return tune::set_used(shop.wear.now.starts, tune::priors());
}

} // namespace

ShopModel::ShopModel(const Shop& shop) : ShopModel(shop, {}) {}

ShopModel::ShopModel(const Shop& shop, const std::shared_ptr<const Fit>& before) {
    const std::optional<Gradient> gradient = shop.height_control.gradient;
    Fit fit{shop.tests,
            shop.machine.nozzles,
            gradient,
            program_lag(shop.machine),
            shop.machine.start_lag.has_value(),
            shop.others,
            used_now(shop),
            {},
            {}};
    if (shop.others.empty()) {
        fit.posterior = tune::learn(shop.tests, shop.machine, gradient);
    } else {
        fit.start =
            before && before->others == shop.others ? before->start : tune::start_with(shop.others, tune::priors());
        fit.posterior = tune::learn(shop.tests, shop.machine, gradient, fit.start, tune::priors());
    }
    fit.posterior.used = fit.used;
    fit_ = std::make_shared<const Fit>(std::move(fit));
}

bool ShopModel::holds_for(const Shop& shop) const {
    return same_fit(shop) && fit_->used == used_now(shop);
}

bool ShopModel::same_fit(const Shop& shop) const {
    return fit_ && fit_->tests == shop.tests && fit_->nozzles == shop.machine.nozzles &&
           fit_->gradient == shop.height_control.gradient && fit_->program_lag == program_lag(shop.machine) &&
           fit_->timed == shop.machine.start_lag.has_value() && fit_->others == shop.others;
}

ShopModel ShopModel::fitted_to(const Shop& shop) const {
    if (holds_for(shop)) {
        return *this;
    }
    if (!same_fit(shop)) {
        return ShopModel(shop, fit_);
    }
    Fit worn = *fit_;
    worn.used = worn.posterior.used = used_now(shop);
    ShopModel model;
    model.fit_ = std::make_shared<const Fit>(std::move(worn));
    return model;
}

} // namespace torchside
