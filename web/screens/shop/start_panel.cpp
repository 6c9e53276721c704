// Start my shop: the few figures that decide what the first answer says, each with a usual one in place until it is touched.
#include <algorithm>
#include <array>

#include "core/quantity/print.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/example.hpp"
#include "generated/words/shop_field.hpp"
#include "generated/words/start.hpp"
#include "generated/words/title.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/supply_choice.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

/// Supplies as they are wired: common practice, no source. The thinner of two usual wires that the breaker may feed
/// without a 75 C mark: the drop is then the larger one.
using supply::BreakerRule;
constexpr supply::UsualSupply supplies[] = {
    {240, 30, BreakerRule::ul489, 10, {}, 1},      {240, 50, BreakerRule::ul489, 6, {}, 1},
    {120, 20, BreakerRule::ul489, 12, {}, 1},      {120, 15, BreakerRule::ul489, 14, {}, 1},
    {230, 16, BreakerRule::iec60898c, {}, 2.5, 1}, {230, 32, BreakerRule::iec60898c, {}, 6.0, 1},
    {400, 16, BreakerRule::iec60898c, {}, 2.5, 3}, {400, 32, BreakerRule::iec60898c, {}, 6.0, 3}};
constexpr double usual_currents[] = {30, 40, 45, 50, 60, 80};
constexpr double usual_duties[] = {0.2, 0.35, 0.6, 1};
constexpr double usual_flows_cfm[] = {5, 8, 12, 18};
constexpr double usual_flows_l_min[] = {150, 250, 350, 500};
constexpr double usual_tanks_gal[] = {20, 30, 60, 80};
constexpr double usual_tanks_l[] = {50, 100, 200, 300};

struct Chip {
    std::string label;
    bool chosen;
};

/// A question with its usual answers; the index of the one that was touched.
std::optional<std::size_t> start_chips(Body& body, const std::string& id, Label question, std::span<const Chip> chips,
                                       int columns) {
    body.heading(id + "/title", question);
    std::vector<Choice> items;
    for (const Chip& chip : chips) {
        items.push_back({id + '/' + chip.label, chip.label, chip.chosen});
    }
    const auto touched = body.choices(id, question, items, columns);
    body.gap(6);
    if (touched) {
        body.ui().stop_edit();
    }
    return touched;
}

/// The same for a path's usual numbers, in the unit of the key, and the field for any other.
void start_number(Body& body, PathLabel field, Label question, std::span<const double> numbers,
                  std::span<const std::string> names) {
    const double now = document::get(body.app.book(), field.path)->number;
    std::vector<Chip> chips;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        chips.push_back({names[i], std::abs(now - numbers[i]) < 1e-6 * numbers[i]});
    }
    if (const auto touched =
            start_chips(body, std::string("start/") + field.path, question, chips, static_cast<int>(chips.size()))) {
        body.app.set(field.path, numbers[*touched], field.label);
    }
    body.field(field.path, field.label);
}

void assumed(Body& body, const char* id, const Text& what) {
    body.gap(8);
    body.text(id, body.app.say(what));
    body.gap(10);
}

/// A largest current with what hangs on it: the duty's current where that was the same, and the smallest and the job's
/// where they are more.
Outcome<Workbook> with_largest(const App& app, double amps) {
    const Machine& m = app.book().shop.machine;
    const App::Scratch::Start& held = app.scratch.start;
    return document::apply(app.book(),
                           {{"shop.machine.max_current_a", amps},
                            {"shop.machine.duty_current_a", held.duty_follows ? amps : m.duty_current.in(ampere)},
                            {"shop.machine.min_current_a", std::min(held.least_a, amps)},
                            {"job.current_a", std::min(held.job_a, amps)}});
}

void start_machine(Body& body) {
    App& app = body.app;
    const Machine& m = app.book().shop.machine;
    if (!app.ui().editing(
            "field/shop.machine.max_current_a")) { // what hangs on it follows the number, not its first digit
        app.scratch.start = {m.duty_current == m.max_current, app.book().job.current.in(ampere),
                             m.min_current.in(ampere)};
    }
    std::vector<Chip> chips;
    for (const double a : usual_currents) {
        chips.push_back({print_fixed(a, 0) + " A", m.max_current.in(ampere) == a});
    }
    if (const auto touched = start_chips(body, "start/max", words::start::largest, chips, 3)) {
        const double amps = usual_currents[*touched];
        app.take(with_largest(app, amps), app.say(words::start::LargestSet{.amps = chips[*touched].label}));
    }
    const Current before = m.max_current;
    body.field("shop.machine.max_current_a", words::shop_field::largest);
    if (app.book().shop.machine.max_current != before) {
        app.add(with_largest(app, app.book().shop.machine.max_current.in(ampere)));
    }
    const std::array<std::string, 4> duties{"20 %", "35 %", "60 %", "100 %"};
    start_number(body, {"shop.machine.duty_cycle", words::shop_field::duty},
                 app.say(words::start::DutyAt{.current = show(app.book().shop.machine.duty_current).whole()}),
                 usual_duties, duties);
    const Machine& now = app.book().shop.machine;
    assumed(body, "start/machine/assumed",
            words::start::MachineAssumed{.efficiency = words::percent(now.efficiency),
                                         .least = show(now.min_current).whole(),
                                         .nozzle = show(now.nozzles.front().rated).whole()});
}

Text wire_words(const supply::Circuit& c, UnitSystem units) {
    return c.run_mm2 ? words::verbatim(print_field(*c.run_mm2, FieldUnit::mm2, units))
                     : Text(words::circuit::Awg{.number = c.run_awg});
}

void start_supply(Body& body) {
    App& app = body.app;
    const auto& c = app.book().shop.circuit;
    std::vector<Chip> chips;
    for (const supply::UsualSupply& s : supplies) {
        chips.push_back(
            {app.say(words::start::Feed{.amps = Current{s.breaker_a, ampere}, .volts = Voltage{s.line_v, volt}}),
             supply::is_fed_by(c, s)});
    }
    if (const auto touched = start_chips(body, "start/supply", words::start::plugged_into, chips, 2)) {
        app.take(document::use_supply(app.book(), supplies[*touched]),
                 app.say(words::start::SupplySet{.feed = chips[*touched].label}));
    }
    country_choice(body);
    body.field("shop.circuit.run_m", words::start::run);
    const auto& now = app.book().shop.circuit;
    const UnitSystem units = app.book().shop.display.units;
    const Text wire = wire_words(now, units);
    const std::string length = print_field(now.run.in(metre), FieldUnit::metre, units);
    const bool shared = now.other_load > Current{} || now.compressor_motor_hp;
    assumed(body, "start/supply/assumed",
            shared ? Text(words::start::SupplyAssumed{.length = length, .wire = wire})
                   : words::start::SupplyAssumedAlone{.length = length, .wire = wire});
    const supply::Report& r = app.worksheet().circuit;
    body.sign("start/circuit", circuit_sign(app), say_summary(r.message, app.speech()), app.say(r.message.remedy));
}

void start_air(Body& body) {
    const App& app = body.app;
    const UnitSystem units = app.book().shop.display.units;
    const bool metric = units == UnitSystem::metric;
    std::array<double, 4> flows{};
    std::array<double, 4> tanks{};
    std::array<std::string, 4> flow_names;
    std::array<std::string, 4> tank_names;
    for (std::size_t i = 0; i < flows.size(); ++i) {
        flows[i] = metric ? usual_flows_l_min[i] : Flow{usual_flows_cfm[i], cfm}.in(litre_min);
        tanks[i] = metric ? usual_tanks_l[i] : Volume{usual_tanks_gal[i], us_gallon}.in(litre);
        flow_names[i] = print_fixed(metric ? usual_flows_l_min[i] : usual_flows_cfm[i], 0) + (metric ? "" : " cfm");
        tank_names[i] = print_fixed(metric ? usual_tanks_l[i] : usual_tanks_gal[i], 0) + (metric ? " L" : " gal");
    }
    start_number(body, {"shop.air.compressor_l_min", words::start::delivers}, app.say(words::start::delivers_which),
                 flows, flow_names);
    start_number(body, {"shop.air.receiver_l", words::start::tank}, words::start::tank_which, tanks, tank_names);
    const air::AirSystem& a = app.book().shop.air;
    assumed(body, "start/air/assumed",
            words::start::AirAssumed{.flow = a.torch,
                                     .high = a.cut_out,
                                     .hose = print_field(a.hose.in(metre), FieldUnit::metre, units),
                                     .low = print(a.cut_in, units).number});
    const air::Report& r = app.worksheet().air;
    body.sign("start/air", sign_of(r.verdict), say_summary(r.message, app.speech()), app.say(r.message.remedy));
}

} // namespace

void start_panel(App& app, PanelAt at) {
    constexpr const char* units[] = {"metric", "inch"};
    constexpr Label unit_names[] = {words::shop_field::mm, words::shop_field::inch};
    const auto body_of = [&](Body& body) {
        body.gap(12);
        body.words("start/how", Type::text, words::start::how, body.ui().tokens().quiet);
        body.word_choice("shop.display.units", words::title::units, units, unit_names);
        start_machine(body);
        start_supply(body);
        start_air(body);
        body.gap(12);
        body.field("shop.name", words::shop_field::name);
        body.gap(20);
    };
    const auto foot = [&](Body& body) {
        body.rule();
        body.gap(8);
        if (body.button("start/done", words::start::done, Look::main)) {
            app.go(Page::cut);
        }
        body.gap(8);
    };
    PanelFrame frame{"start", words::example::start};
    if (!app.ui().edit()) { // the field that is typed in needs the room
        frame.foot = Drawer::of(foot);
    }
    framed_panel(app, at, frame, Drawer::of(body_of));
}

} // namespace torchside::web
