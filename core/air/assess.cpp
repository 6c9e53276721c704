#include "core/air/assess.hpp"

#include <algorithm>
#include <utility>

#include "core/air/cycle.hpp"
#include "core/air/hose.hpp"
#include "core/air/water.hpp"
#include "generated/words/air.hpp"
#include "generated/words/air_more.hpp"

namespace torchside::air {
namespace {

constexpr Pressure worth_a_hose{0.1, bar}; // a drop below this is not cured by another hose

void add_hose(Report& report, const AirSystem& s) {
    const Hose hose{s.hose_bore, s.hose, s.torch};
    report.receiver_min = inlet_for(hose, s.torch_pressure);
    report.hose_drop = drop(hose, report.receiver_min.value);
    report.inlet_at_cut_in = std::max(Pressure{}, s.cut_in - drop(hose, s.cut_in).value);
    report.inlet_at_cut_out = std::max(Pressure{}, s.cut_out - drop(hose, s.cut_out).value);
}

void add_cycle(Report& report, const AirSystem& s) {
    Cycle cycle = cycle_of(s, report.receiver_min.value);
    report.verdict = cycle.verdict;
    report.runs = cycle.runs;
    report.recovers = cycle.recovers;
    report.cycle = std::move(cycle.points);
    report.hose_decides = cycle_of(s, report.receiver_min.low).verdict != cycle.verdict ||
                          cycle_of(s, report.receiver_min.high).verdict != cycle.verdict;
    report.demand_share = s.torch / s.compressor;
    report.arc_share = std::min(1.0, s.duty * (s.compressor / s.torch));
    report.post_flow_air = Volume{s.torch.in(litre_min)*s.post_flow.in(minute), litre};
    report.post_flow_refill = Duration{report.post_flow_air.in(litre) / s.compressor.in(litre_min), minute};
}

void add_water(Report& report, const AirSystem& s) {
    const TankAir air{s.intake_c, s.humidity, (s.cut_in + s.cut_out) / 2, s.intake_c};
    report.water_g_h = condensate_g_m3(air) * s.torch.in(litre_min)*60 / 1000;
    report.dew_point_c = dew_point_c(air);
    report.water_class = water_class(report.dew_point_c);
    report.dryness = words::air_more::DewPoint{.point = words::celsius(report.dew_point_c)};
    if (report.water_class == 0) {
        report.dryness += words::air_more::dew_wet;
    } else {
        report.dryness += words::air_more::DewClass{.number = report.water_class};
    }
}

Message sustained(const Report& report, const AirSystem& s) {
    Message out{"air_holds", Topic::air, Severity::note, words::air::holds};
    out.detail = words::air::HoldsFlow{.delivered = s.compressor, .used = s.torch};
    if (report.hose_decides) {
        out.remedy = words::air::hose_decides;
    } else if (report.water_g_h >= 1) {
        out.remedy = words::air::Water{.water = words::water(report.water_g_h)};
    }
    return out;
}

Message not_enough_pressure(const Report& report, const AirSystem& s) {
    Message out{"air_pressure", Topic::air, Severity::stop, words::air::pressure_low};
    out.field = "shop.air.cut_in_bar";
    const Pressure needs = report.receiver_min.value;
    const bool never = needs >= s.cut_out;
    if (never) {
        out.detail = words::air::PressureFull{.full = s.cut_out, .needs = words::at_least(needs)};
    } else {
        out.detail = words::air::PressureCutIn{.cut_in = s.cut_in, .needs = words::at_least(needs)};
    }
    if (report.hose_drop.value > worth_a_hose && s.torch_pressure <= s.cut_in) {
        out.remedy = words::air::HoseDo{.cut_in = words::at_least(needs)};
    } else if (never) {
        out.remedy = words::air::compressor_do;
    } else {
        out.remedy = words::air::CutInDo{.cut_in = words::at_least(needs)};
    }
    return out;
}

Message message_of(const Report& report, const AirSystem& s) {
    switch (report.verdict) {
    case AirVerdict::sustained:
        return sustained(report, s);
    case AirVerdict::overworked:
        return {
            "air_compressor_duty",
            Topic::air,
            Severity::caution,
            words::air::overworks,
            words::air::OverworksShare{.duty = words::percent(s.duty), .share = words::percent(report.demand_share)},
            words::air::OverworksDo{.share = words::percent(report.arc_share)},
            "shop.air.compressor_duty"};
    case AirVerdict::runs_then_waits:
        return {"air_runs_out",
                Topic::air,
                Severity::caution,
                words::air::Waits{.runs = *report.runs, .waits = *report.recovers},
                {},
                words::air::WaitsDo{.flow = (1 / s.duty) * s.torch, .share = words::percent(report.arc_share)},
                "shop.air.compressor_l_min"};
    case AirVerdict::not_enough_pressure:
        break;
    }
    return not_enough_pressure(report, s);
}

} // namespace

Report assess(const AirSystem& system) {
    Report report;
    add_hose(report, system);
    add_cycle(report, system);
    add_water(report, system);
    report.message = message_of(report, system);
    report.basis = {words::air_more::basis_tank,   words::air_more::basis_hose,  words::air_more::basis_compressor,
                    words::air_more::basis_dew,    words::air_more::basis_water, words::air_more::basis_post_flow,
                    words::air_more::basis_manuals};
    return report;
}

} // namespace torchside::air
