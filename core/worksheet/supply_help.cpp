#include "core/worksheet/supply_help.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/supply/limits.hpp"
#include "core/supply/words.hpp"
#include "core/worksheet/metal_model.hpp"
#include "generated/words/low_supply.hpp"

namespace torchside {
namespace {

using namespace words::low_supply;

Text rating_words(const supply::Input& in, supply::Rating rating, bool duty_entered, bool plate_entered) {
    const Machine& m = in.machine;
    switch (rating) {
    case supply::Rating::full:
        return {};
    case supply::Rating::assumed: {
        Text out = RatingAssumed{.line = in.circuit.line};
        if (plate_entered) {
            out += plate_is_high;
        }
        return out;
    }
    case supply::Rating::plate:
    case supply::Rating::entered:
        break;
    }
    const Text duty = duty_entered ? Text(Duty{.at = m.duty_current, .duty = words::percent(m.duty_cycle)})
                                   : DutyAssumed{.at = m.duty_current, .duty = words::percent(m.duty_cycle)};
    Text out = RatingIs{.duty = duty, .line = in.circuit.line, .most = m.max_current};
    out += rating == supply::Rating::plate ? Text(Input{.i1max = *m.plate_i1max, .most = m.max_current})
                                           : Text(input_assumed);
    return out;
}

// Down to what a stop-watch tells for the arc, up for the rest.
Text burst_words(const supply::Bursts& b) {
    const Duration arc{std::floor(b.arc.in(second)), second};
    const Duration rest{std::ceil(b.rest.in(second)), second};
    Text out = BurstsAt{.arc = arc, .current = b.output, .rest = rest};
    if (b.beyond_tables) {
        out += beyond_tables;
    }
    return out;
}

Text supply_words(const supply::UsualSupply& s, Current current) {
    const Text wire = s.run_mm2 ? Text(Section{.section = words::section(*s.run_mm2)}) : supply::gauge(*s.run_awg);
    return WouldDo{
        .breaker = Current{s.breaker_a, ampere}, .current = current, .line = Voltage{s.line_v, volt}, .wire = wire};
}

std::optional<supply::Bursts> bursts_of(supply::Input in) {
    in.output = std::min(in.output, in.machine.max_current);
    if (const auto here = supply::bursts_at(in)) {
        return here;
    }
    if (!supply::first_over(in, supply::solve_load(in, in.output)) || !(in.machine.min_current < in.output)) {
        return {};
    }
    in.output = in.machine.min_current;
    return supply::bursts_at(in);
}

void say_all(const Workbook& workbook, const Worksheet& worksheet, SupplyHelp& help) {
    const auto add = [&](Text text) {
        if (!text.empty()) {
            help.says.push_back(std::move(text));
        }
    };
    const Machine& machine = workbook.shop.machine;
    add(rating_words(worksheet.asked, help.rating, machine.low_voltage.duty_cycle.has_value(),
                     machine.plate_i1max.has_value() || machine.plate_i1eff.has_value()));
    if (help.bursts) {
        add(burst_words(*help.bursts));
        add(BurstsReach{.clean = words::limit(help.in_bursts->clean),
                        .pierce = words::limit(help.in_bursts->pierce),
                        .sever = words::limit(help.in_bursts->sever)});
    }
    if (help.asks) {
        const Current most = std::min(workbook.job.current, machine.max_current);
        add(help.would_do ? supply_words(*help.would_do, most) : Text(NoneDoes{.current = most}));
    }
}

} // namespace

SupplyHelp supply_help(const Workbook& workbook, const Worksheet& worksheet, const ShopModel& model) {
    const supply::Input& in = worksheet.asked;
    SupplyHelp help;
    help.rating = supply::rating_of(workbook.shop.machine, in.circuit.line);
    const auto& most = worksheet.circuit.highest_current;
    help.asks = !most || *most < in.output;
    if (help.asks) {
        help.bursts = bursts_of(in);
        supply::Input wanted = in;
        wanted.output = std::min(in.output, workbook.shop.machine.max_current);
        help.would_do = supply::supply_for(wanted, workbook.shop.machine);
    }
    if (help.bursts) {
        help.in_bursts = MetalModel(workbook.shop, workbook.job.material, model).limits(help.bursts->output);
    }
    say_all(workbook, worksheet, help);
    return help;
}

} // namespace torchside
