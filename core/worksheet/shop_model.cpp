#include "core/worksheet/shop_model.hpp"

namespace torchside {

ShopModel::ShopModel(const Shop& shop) {
    const std::optional<Gradient> gradient = shop.height_control.gradient;
    fit_ = std::make_shared<const Fit>(
        Fit{shop.tests, shop.machine.nozzles, gradient, tune::learn(shop.tests, shop.machine, gradient)});
}

bool ShopModel::holds_for(const Shop& shop) const {
    return fit_ && fit_->tests == shop.tests && fit_->nozzles == shop.machine.nozzles &&
           fit_->gradient == shop.height_control.gradient;
}

ShopModel ShopModel::fitted_to(const Shop& shop) const {
    return holds_for(shop) ? *this : ShopModel(shop);
}

} // namespace torchside
