#include "core/worksheet/job_stages.hpp"

#include <algorithm>

#include "core/motion/travel.hpp"
#include "core/part/measure.hpp"
#include "core/part/mesh.hpp"
#include "core/price/quote.hpp"

namespace torchside {
namespace {

motion::Drive drive_of(const Workbook& w, const Worksheet& worksheet) {
    const Table& table = w.shop.table;
    motion::Drive d;
    d.feed = worksheet.settings->feed;
    d.acceleration = table.acceleration;
    d.corner_tolerance = table.corner_tolerance;
    d.rapid = table.rapid;
    d.pierce_delay = worksheet.settings->pierce_delay;
    d.touch_off = w.shop.height_control.touch_off + worksheet.settings->start_lag.value; // both with the arc off
    d.thickness = w.job.thickness;
    d.gaps_per_m = worksheet.gaps.per_m;
    d.arc_per_10_min = worksheet.circuit.arc_per_10_min;
    d.quantity = w.job.quantity;
    d.by_hand = w.job.torch != TorchHold::table;
    return d;
}

price::Work work_of(const Workbook& w, const Estimate<Voltage>& arc, const Worksheet& worksheet) {
    const motion::Report& time = *worksheet.time;
    const air::AirSystem& air = w.shop.air;
    price::Work work;
    work.mass = worksheet.mass.value_or(Mass{});
    work.arc = time.arc;
    work.moving = time.moving;
    work.air_after = std::min(static_cast<double>(time.starts) * air.post_flow, time.moving);
    work.arc_per_10_min = worksheet.circuit.arc_per_10_min;
    work.sets = worksheet.wear.part_uses;
    work.sets_per_min = 1.0 / worksheet.wear.arc_per_set.value.in(minute);
    const auto input = [&](Voltage v) { return price::input_power(v, w.job.current, w.shop.machine.efficiency); };
    work.input = {input(arc.value), input(arc.low), input(arc.high), arc.basis};
    work.air = price::air_power(air.torch, w.shop.rates.compressor_kw_m3_min);
    return work;
}

} // namespace

Gaps gaps_of(const Job& job) {
    Gaps out;
    if (const auto found = part::crossings_of(job.mesh)) {
        out.per_m = found.value().gaps_per_m;
        out.open_share = found.value().open_share;
        out.basis.physics = out.per_m > 0.0;
    } else {
        out.fault = found.fault();
    }
    if (job.gaps_per_m > 0.0) {
        out.per_m = job.gaps_per_m;
        out.basis = {.entered = true};
    }
    return out;
}

wear::Load part_load(const Job& job, const Worksheet& worksheet) {
    if (!worksheet.time) {
        return {};
    }
    return {static_cast<double>(worksheet.time->starts), worksheet.time->arc, static_cast<double>(job.run_offs)};
}

void fill_job(const Workbook& w, const Estimate<Voltage>& arc, Worksheet& worksheet) {
    const PartStage& part = *worksheet.part;
    if (part.area_mm2 > 0.0) {
        worksheet.mass = part::mass_of(Area{part.area_mm2 * (1.0 - worksheet.gaps.open_share), mm2}, w.job.thickness,
                                       w.job.material);
    }
    if (!part.path.runs.empty()) {
        worksheet.time = motion::travel(part.path, drive_of(w, worksheet));
    }
    worksheet.wear = wear::assess(w.shop.wear, part_load(w.job, worksheet), w.job.quantity);
    if (worksheet.time) {
        worksheet.price = price::quote(work_of(w, arc, worksheet), {w.shop.rates, w.job.price, w.job.quote.tax,
                                                                    w.shop.wear.set_price, w.job.quantity});
    }
}

} // namespace torchside
