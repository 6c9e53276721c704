#include "core/worksheet/metal_model.hpp"

#include <algorithm>

#include "core/cut/rules.hpp"
#include "core/gear/start.hpp"
#include "core/supply/divider.hpp"
#include "core/supply/low_voltage.hpp"
#include "generated/words/refusal.hpp"

namespace torchside {
namespace {

// The table's fastest feed is then the one to set; the band keeps what it says of a slower cut.
bool hold_to(Estimate<Speed>& feed, Speed fastest) {
    const bool capped = feed.value > fastest;
    feed.value = std::min(feed.value, fastest);
    feed.low = std::min(feed.low, fastest);
    feed.high = std::min(feed.high, fastest);
    return capped;
}

} // namespace

MetalModel::MetalModel(const Shop& shop, Metal metal, const ShopModel& model)
    : shop_(&shop), metal_(metal), terms_(&cut::small_air_torch(metal)), model_(model.fitted_to(shop)) {}

const Nozzle* MetalModel::nozzle(Current current) const {
    return cut::nozzle_for(shop_->machine.nozzles, current);
}

Estimate<Length> MetalModel::cut_height() const {
    if (const auto& own = shop_->height_control.cut_height) {
        return {*own, *own, *own, Basis{.entered = true}};
    }
    return cut::cut_height();
}

cut::CutSetup MetalModel::plate(Length thickness, Current current) const {
    cut::CutSetup p;
    p.metal = metal_;
    p.thickness = thickness;
    p.current = current;
    if (const Nozzle* n = nozzle(current)) {
        p.bore = cut::bore(*n, *terms_);
    }
    p.height = cut_height().value;
    return p;
}

Speed MetalModel::feed(const cut::CutSetup& plate) const {
    return tune::LearntFeed{posterior()}.feed(plate);
}

Estimate<Speed> MetalModel::arc_feed(const cut::CutSetup& plate) const {
    return tune::feed(posterior(), plate);
}

Estimate<Voltage> MetalModel::arc_volts(const cut::CutSetup& plate) const {
    return tune::arc(posterior(), plate);
}

cut::Limits MetalModel::limits(Current current) const {
    return cut::limits(plate(Length{1, mm}, current), *this, *terms_, tune::proven(shop_->tests, metal_, current));
}

Outcome<cut::Reach> MetalModel::cuts(const cut::CutSetup& plate) const {
    const cut::Limits l = limits(plate.current);
    const cut::Reach reach = cut::reach(plate.thickness, l);
    if (reach == cut::Reach::refused) {
        return Fault{"job.thickness_mm", words::refusal::TooThick{.limit = words::limit(l.sever)}};
    }
    return reach;
}

cut::Choice MetalModel::choose(Length thickness) const {
    const Machine machine = supply::machine_on(shop_->machine, shop_->circuit.line);
    const Current most = machine.max_current;
    return cut::choose(plate(thickness, most), machine, shop_->table, *this, *terms_,
                       tune::proven(shop_->tests, metal_, most));
}

std::optional<cut::Settings> MetalModel::settings(const cut::CutSetup& plate, cut::Reach reach) const {
    if (reach == cut::Reach::refused) {
        return std::nullopt;
    }
    cut::Settings s;
    s.feed = tune::feed(posterior(), plate);
    s.feed_capped = hold_to(s.feed, shop_->table.max_feed);
    s.arc = tune::arc(posterior(), plate);
    s.kerf = tune::kerf(posterior(), plate);
    s.cut_height = cut_height();
    s.pierce_height = cut::pierce_height(plate.thickness, s.cut_height);
    s.start_lag = start_lag(shop_->machine);
    if (!shop_->machine.waits_for_transfer) { // the log may know better than the usual lag
        s.start_lag.value = posterior().program_lag;
        s.start_lag.low = std::min(s.start_lag.low, s.start_lag.value);
    }
    if (reach == cut::Reach::clean) {
        s.pierce_delay = tune::pierce_delay(posterior(), plate);
        s.dwell = s.pierce_delay->value + posterior().program_lag;
    }
    s.lead_in = cut::lead_in(plate.thickness, s.kerf);
    s.min_hole = cut::smallest_hole(plate.thickness, s.kerf);
    s.pressure = cut::air_pressure(shop_->air.torch_pressure);
    s.post_flow = cut::post_flow(shop_->air.post_flow);
    s.controller = supply::at_controller(s.arc.value, shop_->height_control.divider_ratio);
    return s;
}

} // namespace torchside
