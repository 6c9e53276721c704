#include <algorithm>
#include <cmath>

#include "core/air/assess.hpp"
#include "core/cut/rules.hpp"
#include "core/safety/assess.hpp"
#include "core/supply/assess.hpp"
#include "core/supply/low_voltage.hpp"
#include "core/worksheet/country.hpp"
#include "core/worksheet/job_stages.hpp"
#include "core/worksheet/metal_model.hpp"
#include "core/worksheet/warnings.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside {
namespace {

// The circuit is asked about other currents too, so it gets the arc's voltage as a line: this plate's learnt voltage at
// the job's current, with level 1's slope.
supply::ArcLine arc_line(const Estimate<Voltage>& arc, Current current, const cut::Terms& terms) {
    supply::ArcLine line;
    line.per_ampere = Resistance{terms.arc_per_a.value, ohm};
    line.offset = arc.value - Voltage{terms.arc_per_a.value * current.in(ampere), volt};
    return line;
}

cut::Capacity capacity_of(const MetalModel& metal, const Job& job, const cut::Limits& limits) {
    const cut::Choice choice = metal.choose(job.thickness);
    cut::Capacity c;
    const auto feed_at = [&](Length limit) { return metal.feed(metal.plate(limit, job.current)); };
    c.recommended = limits.recommended;
    c.recommended_feed = feed_at(limits.recommended);
    c.clean = limits.clean;
    c.clean_feed = feed_at(limits.clean);
    c.pierce = limits.pierce;
    c.pierce_feed = feed_at(limits.pierce);
    c.sever = limits.sever;
    c.sever_feed = feed_at(limits.sever);
    c.verdict = cut::reach(job.thickness, limits);
    c.suggested_current = choice.current;
    c.suggested_nozzle = choice.nozzle;
    c.reason = choice.reason;
    return c;
}

std::optional<There> there_of(const MetalModel& metal, const Machine& machine, const supply::Report& circuit) {
    if (!circuit.highest_current || circuit.highest_below_machine) {
        return std::nullopt;
    }
    // Down, as a dial is set: rounded up it would trip.
    const Current whole{std::floor(circuit.highest_current->in(ampere)), ampere};
    const Current current = std::max(whole, machine.min_current);
    return There{current, metal.limits(current)};
}

safety::Report safety_of(const Workbook& w, bool raw_tap) {
    safety::Input in;
    in.metal = w.job.material;
    in.current = w.job.current;
    in.by_hand = w.job.torch != TorchHold::table;
    in.raw_tap = raw_tap;
    in.country = country_of(w.shop);
    in.water_table = w.shop.table.water;
    return safety::assess(in);
}

} // namespace

Worksheet evaluate(const Workbook& workbook, PartMemo* memo, const ShopModel& model) {
    const Shop& shop = workbook.shop;
    const Job& job = workbook.job;
    const MetalModel metal{shop, job.material, model};
    const cut::CutSetup plate = metal.plate(job.thickness, job.current);
    const cut::Limits limits = metal.limits(job.current);
    const Estimate<Speed> arc_feed = metal.arc_feed(plate);
    const Estimate<Voltage> arc = metal.arc_volts(plate);

    Worksheet worksheet;
    worksheet.capacity = capacity_of(metal, job, limits);
    worksheet.settings = metal.settings(plate, worksheet.capacity.verdict);
    if (worksheet.settings) {
        worksheet.by_hand = cut::by_hand(arc_feed.value, job.current, job.torch == TorchHold::hand_drag);
        if (job.torch == TorchHold::hand_drag && worksheet.by_hand->drag) { // the tip rides on the plate
            worksheet.settings->cut_height = {Length{}, Length{}, Length{}, worksheet.settings->cut_height.basis};
        }
        worksheet.trail = metal.trail(plate);
    }
    if (job.torch == TorchHold::table) {
        worksheet.tap = supply::check_tap(shop.height_control, arc.high);
    }
    worksheet.asked = {shop.circuit, supply::machine_on(shop.machine, shop.circuit.line), job.current,
                       arc_line(arc, job.current, metal.terms()), country_of(shop)};
    worksheet.circuit = supply::assess(worksheet.asked);
    worksheet.there = there_of(metal, worksheet.asked.machine, worksheet.circuit);
    worksheet.air = air::assess(shop.air);
    worksheet.safety = safety_of(workbook, worksheet.tap.shock);
    worksheet.gaps = gaps_of(job);
    worksheet.part = part_stage(
        part_inputs(workbook, worksheet.settings, worksheet.capacity.verdict, worksheet.gaps.open_share), memo);
    fill_job(workbook, arc, worksheet);
    const WarningContext context{workbook, worksheet, limits, arc_feed,
                                 tune::proven(shop.tests, job.material, job.current)};
    worksheet.warnings = warnings(context);
    return worksheet;
}

} // namespace torchside
