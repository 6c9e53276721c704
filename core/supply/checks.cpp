#include "core/supply/checks.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <string_view>

#include "core/supply/article_630.hpp"
#include "core/supply/limits.hpp"
#include "core/supply/words.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/circuit_more.hpp"
#include "generated/words/circuit_source.hpp"

namespace torchside::supply {
namespace {

constexpr double plug_share = 0.8;
constexpr double shared_to_a = 20; // 210.23(A)
constexpr double larger_to_a = 30; // 210.23(B); above it no such rule was seen
constexpr double run_drop_note = 0.03;
constexpr double whole_drop_note = 0.05;

struct Named {
    std::string_view code;
    const char* field;
};
constexpr Named names[] = {
    // by CheckKind
    {"circuit_drop", "shop.circuit.run_awg"},
    {"circuit_low_line", "shop.circuit.line_v"},
    {"circuit_plug_load", "shop.circuit.breaker_a"},
    {"circuit_run_device", "shop.circuit.run_awg"},
    {"circuit_run_load", "shop.circuit.run_awg"},
    {"circuit_cord_load", "shop.circuit.cord_awg"},
    {"circuit_welder_device", "shop.circuit.breaker_a"},
    {"circuit_welder_run", "shop.circuit.run_awg"},
    {"circuit_generator", "shop.circuit.generator_va"},
    {"circuit_nameplate", "shop.machine.plate_i1max_a"},
    {"circuit_breaker_load", "shop.circuit.breaker_a"},
    {"circuit_plug", "shop.circuit.plug"},
    {"circuit_plug_fit", "shop.circuit.plug"},
    {"circuit_welder_size", "shop.circuit.run_awg"},
};
static_assert(std::size(names) == static_cast<std::size_t>(CheckKind::welder_size) + 1);

/// What a check says, without its code.
struct Said {
    Text title{}, detail{}, remedy{};
};

struct Case {
    const Input& input;
    const Load& load;
    const Report& report;
    std::vector<Check>& out;
    Rules rules;
    bool article_630;

    void add(CheckKind kind, Severity severity, bool ok, const Said& said, const Text& source) const {
        const Named& named = names[static_cast<std::size_t>(kind)];
        out.push_back({kind,
                       ok,
                       {named.code, Topic::circuit, severity, said.title, said.detail, said.remedy, named.field},
                       source});
    }
};

Text use(const Text& wire) {
    return words::circuit::UseWire{.wire = wire};
}

Text or_thicker(const std::optional<int>& awg) {
    if (!awg) {
        return words::circuit::ThickerThan{.wire = gauge(2)};
    }
    return words::circuit::OrThicker{.wire = gauge(*awg)};
}

Text or_thicker(const std::optional<double>& mm2, double last) {
    if (!mm2) {
        return words::circuit::ThickerThan{.wire = words::section(last)};
    }
    return words::circuit::OrThicker{.wire = words::section(*mm2)};
}

Text least_run_words(const Case& c) {
    const Report& r = c.report;
    if (c.input.circuit.run_mm2) {
        return or_thicker(r.run_min_mm2, 70);
    }
    if (c.input.circuit.marked_75c || r.run_min_awg == r.run_min_awg_60c) {
        return or_thicker(r.run_min_awg);
    }
    return words::circuit::UnlessMarked{.marked = or_thicker(r.run_min_awg), .plain = or_thicker(r.run_min_awg_60c)};
}

Word run_source(const Case& c) {
    if (c.input.circuit.run_mm2) {
        return c.input.machine.phases == 3 ? words::circuit_source::run_iec_three : words::circuit_source::run_iec_two;
    }
    return c.input.circuit.marked_75c ? words::circuit_source::run_nec_75 : words::circuit_source::run_nec_60;
}

void plug_fit(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (!circuit.plug) {
        return;
    }
    const PlugRow& plug = row_of(*circuit.plug);
    const bool supply = plug_fits_supply(circuit, c.input.machine.phases);
    const bool ok = supply && plug_fits_breaker(c.input);
    Said said{ok ? words::circuit_more::plug_fits : words::circuit::plug_wrong};
    const Voltage made_for{plug.volts, volt};
    if (supply) {
        said.detail = words::circuit::PlugBreaker{.most = Current{plug.breaker_max, ampere}, .plug = plug.name};
        said.detail += words::circuit::BreakerIs{.breaker = circuit.breaker};
    } else if (plug.phases == 3) {
        said.detail = words::circuit::PlugThreePhases{.plug = plug.name, .volts = made_for};
    } else {
        said.detail = words::circuit::PlugOnePhase{.plug = plug.name, .volts = made_for};
    }
    c.add(CheckKind::plug_fit, Severity::stop, ok, said,
          plug.where == PlugWhere::us ? words::circuit_source::nema : words::circuit_source::plugs_iec);
}

void run_device(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    const Current most = largest_device(c.input);
    const bool ok = circuit.breaker <= most;
    const Text wire = run_words(circuit);
    Said said{ok ? words::circuit_more::breaker_fits : words::circuit::breaker_too_large};
    if (most <= Current{}) {
        said.detail = words::circuit::WireBelowTable{.least = words::section(1.5), .wire = wire};
    } else if (c.article_630) {
        said.detail = words::circuit::WireAllowsAlone{.most = most, .wire = wire};
    } else {
        said.detail = words::circuit::WireAllows{.most = most, .wire = wire};
    }
    if (most > Current{}) {
        said.detail += words::circuit::BreakerIs{.breaker = circuit.breaker};
    }
    if (!ok) {
        said.remedy = use(least_run_words(c));
    }
    c.add(CheckKind::run_device, Severity::stop, ok, said,
          c.article_630           ? words::circuit_source::device_630
          : c.rules == Rules::nec ? words::circuit_source::device_nec
                                  : words::circuit_source::device_iec);
}

void breaker_load(const Case& c) {
    if (c.rules != Rules::iec) {
        return;
    }
    const bool ok = c.load.verdict != CircuitVerdict::cannot_deliver && c.load.total <= c.input.circuit.breaker;
    Said said{ok ? words::circuit_more::breaker_holds : words::circuit::breaker_overloaded,
              words::circuit::Load{.breaker = c.input.circuit.breaker, .load = c.load.total}};
    said.detail += words::circuit::breaker_at_least;
    c.add(CheckKind::breaker_load, Severity::caution, ok, said, words::circuit_source::device_iec);
}

Text run_load_words(const Case& c, Current asked, bool motor) {
    if (c.article_630) {
        return motor ? Text{words::circuit::EffectiveIsWithMotor{.load = asked}}
                     : Text{words::circuit::EffectiveIs{.load = asked}};
    }
    return motor ? Text{words::circuit::LoadIsWithMotor{.load = asked}} : Text{words::circuit::LoadIs{.load = asked}};
}

Text wire_carries(const Text& wire, Current most) {
    if (most > Current{}) {
        return words::circuit::WireCarries{.most = most, .wire = wire};
    }
    return words::circuit::WireUnlisted{.wire = wire};
}

void run_load(const Case& c) {
    const Current most = run_ampacity(c.input);
    const Current asked = run_asked(c.input, c.load);
    const bool ok = asked <= most;
    const bool motor = motor_share(c.input, c.load) > Current{};
    Said said{ok ? words::circuit_more::wire_holds : words::circuit::wire_overloaded,
              wire_carries(run_words(c.input.circuit), most)};
    said.detail += run_load_words(c, asked, motor);
    if (!ok) {
        said.remedy = use(least_run_words(c));
    }
    Text source = run_source(c);
    if (motor) {
        source += words::circuit_source::motor;
    }
    c.add(c.article_630 ? CheckKind::welder_run : CheckKind::run_load, Severity::stop, ok, said, source);
}

Word cord_source(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (circuit.cord_mm2) {
        return cord_from_memory_mm2(*circuit.cord_mm2) ? words::circuit_source::cord_bs_memory
                                                       : words::circuit_source::cord_bs;
    }
    return cord_from_memory(*circuit.cord_awg, c.input.machine.phases) ? words::circuit_source::cord_nec_memory
                                                                       : words::circuit_source::cord_nec;
}

void cord_load(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    const auto most = cord_carries(c.input);
    if (!most) {
        return;
    }
    const bool ok = c.load.asked <= *most;
    const Text cord = cord_words(circuit);
    Said said{ok ? words::circuit_more::cord_holds : words::circuit::cord_overloaded};
    if (*most > Current{}) {
        said.detail = words::circuit::CordCarries{.most = *most, .wire = cord};
    } else {
        said.detail = words::circuit::CordUnlisted{.wire = cord};
    }
    said.detail += words::circuit::MachineDraws{.load = c.load.asked};
    if (ok) {
        said.remedy = words::circuit_more::cord_lay_out;
    } else {
        said.remedy = use(circuit.cord_mm2 ? or_thicker(c.report.cord_min_mm2, 16) : or_thicker(c.report.cord_min_awg));
    }
    c.add(CheckKind::cord_load, Severity::stop, ok, said, cord_source(c));
}

void plug_load(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (!circuit.plug) {
        return;
    }
    const PlugRow& plug = row_of(*circuit.plug);
    const Current most{plug.amps, ampere};
    const bool ok = c.load.asked <= most;
    Said said{ok ? words::circuit_more::plug_holds : words::circuit::plug_overloaded};
    if (plug.plug == Plug::uk_13) {
        said.detail = words::circuit::PlugFused{.most = most, .plug = plug.name};
    } else {
        said.detail = words::circuit::PlugCarries{.most = most, .plug = plug.name};
    }
    said.detail += words::circuit::MachineDraws{.load = c.load.asked};
    c.add(CheckKind::plug, Severity::stop, ok, said,
          plug.where == PlugWhere::us ? words::circuit_source::nema_rating : words::circuit_source::plugs_iec);
}

void shared_rating(const Case& c) {
    const Circuit& circuit = c.input.circuit;
    if (c.rules != Rules::nec || circuit.dedicated || circuit.breaker.in(ampere) > larger_to_a) {
        return;
    }
    Current most = plug_share * circuit.breaker;
    if (circuit.plug) {
        most = std::min(most, Current{plug_share * row_of(*circuit.plug).amps, ampere}); // Table 210.21(B)(2)
    }
    const Current rated = rated_input(c.input, c.load.conversion);
    const bool ok = rated <= most;
    Said said{ok ? words::circuit_more::rating_shared : words::circuit::rating_shared};
    if (c.input.machine.plate_i1max) {
        said.detail = words::circuit::Rating{.rated = rated};
    } else {
        said.detail = words::circuit::RatingEstimated{.rated = rated};
    }
    said.detail += words::circuit::RatingMost{.most = most};
    c.add(CheckKind::plug_load, Severity::note, ok, said,
          circuit.breaker.in(ampere) <= shared_to_a ? words::circuit_source::shared_20
                                                    : words::circuit_source::shared_30);
}

void low_line(const Case& c) {
    if (c.load.draw.machine >= (1 - line_tolerance) * c.input.circuit.line) {
        return;
    }
    c.add(CheckKind::low_line, Severity::caution, false,
          {words::circuit::low_line, words::circuit::LowLineVolts{.volts = c.report.machine}},
          words::circuit_source::line_tolerance);
}

void drop(const Case& c) {
    const bool nec = c.rules == Rules::nec;
    const double run = c.report.run_drop_share;
    const double all = c.report.drop_share;
    const bool ok = all <= whole_drop_note && (!nec || run <= run_drop_note);
    Said said{ok ? words::circuit_more::drop_small : words::circuit::drop_large};
    if (run < all) {
        said.detail = words::circuit::DropLostRun{.lost = words::percent(all, 1), .run = words::percent(run, 1)};
    } else {
        said.detail = words::circuit::DropLost{.lost = words::percent(all, 1)};
    }
    said.detail += nec ? words::circuit::drop_nec : words::circuit::drop_iec;
    c.add(CheckKind::drop, Severity::note, ok, said,
          nec ? words::circuit_source::drop_nec : words::circuit_source::drop_iec);
}

void welder_size(const Case& c) {
    const Current run = run_ampacity(c.input);
    const Current size = welder_run_size(c.input, c.load);
    const bool ok = run >= size;
    Said said{ok ? words::circuit_more::rating_wire : words::circuit::rating_wire,
              wire_carries(run_words(c.input.circuit), run)};
    said.detail += words::circuit::RatingAsks{.size = size};
    if (!ok) {
        said.remedy = use(least_run_words(c));
    }
    c.add(CheckKind::welder_size, Severity::note, ok, said, words::circuit_source::size_630);
}

void welder_breaker(const Case& c) {
    const Current i1max = rated_input(c.input, c.load.conversion);
    const DeviceLimit device = welder_device(i1max);
    const Current most = device.permitted ? std::max(device.limit, *device.permitted) : device.limit;
    const bool ok = c.input.circuit.breaker <= most;
    Said said{ok ? words::circuit_more::rating_breaker : words::circuit::rating_breaker};
    if (c.input.machine.plate_i1max) {
        said.detail = words::circuit::RatingAlone{.most = most, .rated = i1max};
    } else {
        said.detail = words::circuit::RatingAloneEstimated{.most = most, .rated = i1max};
    }
    said.detail += words::circuit::BreakerIs{.breaker = c.input.circuit.breaker};
    c.add(CheckKind::welder_device, Severity::note, ok, said, words::circuit_source::breaker_630);
}

void generator(const Case& c) {
    if (!c.input.circuit.generator) {
        return;
    }
    const double share = c.load.source / *c.input.circuit.generator;
    const bool ok = c.load.generator_within;
    c.add(CheckKind::generator, Severity::caution, ok,
          {ok ? words::circuit_more::generator_holds : words::circuit::generator_overloaded,
           words::circuit::GeneratorShare{.share = words::percent(share)}},
          words::circuit_source::generator);
}

void nameplate(const Case& c) {
    const double share = c.load.conversion.plate_share;
    if (c.load.conversion.basis == PowerBasis::plate_refuted) {
        c.add(CheckKind::nameplate, Severity::note, false,
              {words::circuit::nameplate_small, words::circuit::nameplate_put_aside}, words::circuit_source::balance);
    } else if (share > 0 && share < 0.4) {
        c.add(CheckKind::nameplate, Severity::note, false,
              {words::circuit::nameplate_doubtful, words::circuit::NameplateShare{.share = words::percent(share)}},
              words::circuit_source::balance);
    }
}

} // namespace

Current welder_run_size(const Input& input, const Load& load) {
    const Machine& machine = input.machine;
    Current code{};
    if (machine.plate_i1eff) {
        code = *machine.plate_i1eff;
    } else {
        const Current duty = machine.duty_current;
        const Current primary = supply_current(apparent_power(duty, rated_load_voltage(duty), load.conversion.share),
                                               input.circuit.line, machine.phases);
        code = welder_multiplier(machine.duty_cycle) * primary;
    }
    return code + load.line.other + motor_share(input, load);
}

std::vector<Check> checks_of(const Input& input, const Load& load, const Report& report) {
    std::vector<Check> out;
    const Case c{input, load, report, out, rules_of(input), article_630_applies(input)};
    plug_fit(c);
    run_device(c);
    run_load(c);
    cord_load(c);
    breaker_load(c);
    plug_load(c);
    shared_rating(c);
    generator(c);
    low_line(c);
    drop(c);
    if (c.article_630) {
        welder_size(c);
        welder_breaker(c);
    }
    nameplate(c);
    return out;
}

} // namespace torchside::supply
