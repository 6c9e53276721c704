// Start my shop: the four questions that decide what the first answer says, one a screen. Each has a picture, a usual answer
// that is marked already, what is assumed beside it, and what follows from it. The step is in the panel's name: "start/2".
#include <algorithm>

#include "core/quantity/print.hpp"
#include "core/schema/usual_shop.hpp"
#include "core/stock/properties.hpp"
#include "core/supply/usual.hpp"
#include "core/worksheet/metal_model.hpp"
#include "generated/words/circuit.hpp"
#include "generated/words/low_supply.hpp"
#include "generated/words/rate.hpp"
#include "generated/words/settings.hpp"
#include "generated/words/shop_field.hpp"
#include "generated/words/start.hpp"
#include "generated/words/supply.hpp"
#include "generated/words/wiring.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/start_picture.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

// Usual answers: common practice, no source.
constexpr double usual_currents[] = {30, 40, 45, 50, 60, 80};
constexpr double usual_low_currents[] = {20, 25, 30};
constexpr double usual_lines[] = {120, 230, 240, 400};
constexpr std::size_t usual_low = 1; // a two-voltage machine's, where nothing is known
constexpr const char* largest_path = "shop.machine.max_current_a";
constexpr const char* low_path = "shop.machine.low_voltage.max_current_a";

struct Chip {
    std::string label;
    bool chosen;
};

/// A question with its usual answers; the index of the one that was touched. What is being typed is left.
std::optional<std::size_t> start_chips(Body& body, const std::string& id, Label question, std::span<const Chip> chips,
                                       int columns) {
    body.heading(id + "/title", question);
    std::vector<Choice> items;
    for (const Chip& chip : chips) {
        items.push_back({id + '/' + chip.label, chip.label, chip.chosen});
    }
    const auto touched = body.choices(id, question, items, columns);
    if (touched) {
        body.ui().stop_edit();
    }
    return touched;
}

/// The same with "Other" behind the usual ones, which opens the field of that path; it stands there as long as it is used.
std::optional<std::size_t> start_chips_or_other(Body& body, PathLabel field, Label question, std::vector<Chip> chips,
                                                int columns) {
    App& app = body.app;
    const bool other = std::none_of(chips.begin(), chips.end(), [](const Chip& chip) { return chip.chosen; });
    chips.push_back({std::string(app.word(words::start::other)), other});
    auto touched = start_chips(body, std::string("start/") + field.path, question, chips, columns);
    if (touched == chips.size() - 1) {
        edit_entry(app, field.path);
        touched.reset();
    }
    const std::string id = std::string("field/") + field.path;
    if (other || app.ui().editing(id) || app.drafts.find(id) != nullptr) {
        body.gap(6);
        body.field(field.path, field.label);
    }
    return touched;
}

/// For a path's usual numbers, in the unit of the key, whose touch sets it.
void start_number(Body& body, PathLabel field, Label question, std::span<const double> numbers,
                  std::span<const std::string> names, int columns) {
    const document::Scalar now = document::get(body.app.book(), field.path).value_or(document::Scalar());
    std::vector<Chip> chips;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        chips.push_back({names[i], now.number > numbers[i] * (1 - 1e-6) && now.number < numbers[i] * (1 + 1e-6)});
    }
    if (const auto touched = start_chips_or_other(body, field, question, std::move(chips), columns)) {
        body.app.set(field.path, numbers[*touched], field.label);
    }
}

std::vector<std::string> start_names(std::span<const double> numbers, std::string_view unit) {
    std::vector<std::string> names;
    for (const double number : numbers) {
        names.push_back(print_fixed(number, 0) + std::string(unit));
    }
    return names;
}

void start_assumed(Body& body, const Text& what) {
    body.gap(10);
    body.text("start/assumed", body.app.say(what));
    body.gap(10);
}

/// A largest current with what hangs on it: the duty's current where that was the same, and the smallest and the job's
/// where they are more.
Outcome<Workbook> with_largest(const App& app, double amps) {
    const Machine& m = app.book().shop.machine;
    const ToolInputs::Start& held = app.scratch.inputs.start;
    return document::apply(app.book(),
                           {{largest_path, amps},
                            {"shop.machine.duty_current_a", held.duty_follows ? amps : m.duty_current.in(ampere)},
                            {"shop.machine.min_current_a", std::min(held.least_a, amps)},
                            {"job.current_a", std::min(held.job_a, amps)}});
}

void start_largest(Body& body) {
    App& app = body.app;
    const Machine& m = app.book().shop.machine;
    if (!app.ui().editing(std::string("field/") +
                          largest_path)) { // what hangs on it follows the number, not its first digit
        app.scratch.inputs.start = {m.duty_current == m.max_current, app.book().job.current.in(ampere),
                                    m.min_current.in(ampere)};
    }
    const Current before = m.max_current;
    std::vector<Chip> chips;
    for (const std::string& name : start_names(usual_currents, " A")) {
        chips.push_back({name, m.max_current.in(ampere) == usual_currents[chips.size()]});
    }
    if (const auto touched =
            start_chips_or_other(body, {largest_path, words::shop_field::largest}, words::start::largest, chips, 4)) {
        app.take(with_largest(app, usual_currents[*touched]),
                 app.say(words::start::LargestSet{.amps = chips[*touched].label}));
    } else if (app.book().shop.machine.max_current != before) {
        app.add(with_largest(app, app.book().shop.machine.max_current.in(ampere)));
    }
}

void start_machine(Body& body) {
    App& app = body.app;
    start_largest(body);
    const bool two = app.book().shop.machine.low_voltage.max_current.has_value();
    const Chip voltages[] = {{std::string(app.word(words::start::one_voltage)), !two},
                             {std::string(app.word(words::start::two_voltages)), two}};
    if (const auto touched = start_chips(body, "start/voltages", words::start::voltages, voltages, 2)) {
        app.set(low_path, *touched == 0 ? document::Scalar() : document::Scalar(usual_low_currents[usual_low]),
                words::start::largest_low);
    }
    if (app.book().shop.machine.low_voltage.max_current) {
        start_number(body, {low_path, words::low_supply::largest}, words::start::largest_low, usual_low_currents,
                     start_names(usual_low_currents, " A"), 4);
    }
    const Shop& shop = app.book().shop;
    const Machine& m = shop.machine;
    start_assumed(body, words::start::MachineAssumed{.current = m.duty_current,
                                                     .duty = words::percent(m.duty_cycle),
                                                     .least = m.min_current,
                                                     .nozzle = m.nozzles.front().rated});
    const Metal metal = app.book().job.material;
    const cut::Limits most = MetalModel(shop, metal, app.model()).limits(m.max_current);
    body.sign("start/follows", Sign::holds,
              app.say(words::start::Reach{
                  .clean = words::limit(most.clean), .current = m.max_current, .metal = stock::name(metal)}),
              app.say(words::start::ReachMore{.pierce = words::limit(most.pierce), .sever = words::limit(most.sever)}));
}

void start_breaker(Body& body) {
    App& app = body.app;
    const auto usual = supply::usual_supplies(app.book().shop.circuit.line);
    std::vector<Chip> chips;
    std::vector<const supply::UsualSupply*> one_phase; // or all there are
    for (const supply::UsualSupply& s : usual) {
        if (s.phases == usual.front().phases) {
            one_phase.push_back(&s);
            chips.push_back({print_fixed(s.breaker_a, 0) + " A", supply::is_fed_by(app.book().shop.circuit, s)});
        }
    }
    const int columns = static_cast<int>(chips.size()) + 1;
    if (const auto touched = start_chips_or_other(body, {"shop.circuit.breaker_a", words::wiring::breaker},
                                                  words::wiring::breaker, std::move(chips), columns)) {
        const supply::UsualSupply& s = *one_phase[*touched];
        app.take(document::use_supply(app.book(), s),
                 app.say(words::start::SupplySet{.feed = Text(words::start::Feed{.amps = Current{s.breaker_a, ampere},
                                                                                 .volts = Voltage{s.line_v, volt}})}));
    }
}

void start_supply(Body& body) {
    App& app = body.app;
    const Voltage line = app.book().shop.circuit.line;
    std::vector<Chip> chips;
    for (const std::string& name : start_names(usual_lines, " V")) {
        chips.push_back({name, line.in(volt) == usual_lines[chips.size()]});
    }
    if (const auto touched = start_chips_or_other(body, {"shop.circuit.line_v", words::supply::voltage},
                                                  words::supply::voltage, chips, 5)) {
        app.take(document::use_supply(app.book(), supply::usual_supplies(Voltage{usual_lines[*touched], volt}).front()),
                 app.say(words::start::SupplySet{.feed = chips[*touched].label}));
    }
    start_breaker(body);
    const supply::Circuit& c = app.book().shop.circuit;
    const Units units = app.units();
    const Text wire = c.run_mm2 ? words::verbatim(print_field(*c.run_mm2, FieldUnit::mm2, units))
                                : Text(words::circuit::Awg{.number = c.run_awg});
    const std::string length = print_field(c.run.in(metre), FieldUnit::metre, units);
    const bool shared = c.other_load > Current{} || c.compressor_motor_hp;
    start_assumed(body, shared ? Text(words::start::SupplyAssumed{.length = length, .wire = wire})
                               : words::start::SupplyAssumedAlone{.length = length, .wire = wire});
    const supply::Report& r = app.worksheet().circuit;
    body.sign("start/follows", circuit_sign(app), say_summary(r.message, app.speech()), app.say(r.message.remedy));
}

void start_air(Body& body) {
    const App& app = body.app;
    const bool metric = app.metric();
    std::vector<double> flows, tanks;
    for (const double flow : document::usual_flows_cfm) {
        flows.push_back(Flow{flow, cfm}.in(litre_min));
    }
    for (const double tank : document::usual_tanks_gal) {
        tanks.push_back(Volume{tank, us_gallon}.in(litre));
    }
    if (metric) {
        flows.assign(std::begin(document::usual_flows_l_min), std::end(document::usual_flows_l_min));
        tanks.assign(std::begin(document::usual_tanks_l), std::end(document::usual_tanks_l));
    }
    start_number(body, {"shop.air.compressor_l_min", words::start::delivers}, app.say(words::start::delivers_which),
                 flows, metric ? start_names(flows, "") : start_names(document::usual_flows_cfm, " cfm"), 5);
    start_number(body, {"shop.air.receiver_l", words::start::tank}, words::start::tank_which, tanks,
                 metric ? start_names(tanks, " L") : start_names(document::usual_tanks_gal, " gal"), 5);
    const air::AirSystem& a = app.book().shop.air;
    start_assumed(body, words::start::AirAssumed{.flow = a.torch,
                                                 .high = a.cut_out,
                                                 .hose = print_field(a.hose.in(metre), FieldUnit::metre, app.units()),
                                                 .low = print(a.cut_in, app.units()).number});
    const air::Report& r = app.worksheet().air;
    body.sign("start/follows", sign_of(r.verdict), say_summary(r.message, app.speech()), app.say(r.message.remedy));
}

void start_units(Body& body) {
    App& app = body.app;
    constexpr const char* units[] = {"metric", "inch"};
    constexpr Label unit_names[] = {words::shop_field::mm, words::shop_field::inch};
    body.word_choice("shop.display.units", words::start::first_units, units, unit_names);
    constexpr const char* currency_path = "shop.rates.currency";
    const price::Rates& rates = app.book().shop.rates;
    std::vector<Chip> chips;
    for (const std::string& code : {document::usual_shop({}, platform::locale()).shop.rates.currency,
                                    std::string("USD"), std::string("EUR"), std::string("GBP")}) {
        if (std::none_of(chips.begin(), chips.end(), [&](const Chip& chip) { return chip.label == code; })) {
            chips.push_back({code, rates.currency == code});
        }
    }
    const int columns = static_cast<int>(chips.size()) + 1;
    if (const auto touched =
            start_chips_or_other(body, {currency_path, words::rate::currency}, words::start::money, chips, columns)) {
        app.set(currency_path, std::string_view(chips[*touched].label), words::rate::currency);
    }
    const auto an_hour = [&](double rate) { return show_field(rate, FieldUnit::money, rates.currency, app.units()); };
    start_assumed(body, words::start::RatesAssumed{.labour = an_hour(rates.labour_per_h),
                                                   .machine = an_hour(rates.machine_per_h)});
    if (const auto& settings = app.worksheet().settings) {
        body.sign("start/follows", Sign::holds,
                  app.say(words::settings::Feed{.feed = show_feed(app, settings->feed.value).whole()}),
                  show_range(app, settings->feed) + " · " + show_basis(app, settings->feed.basis));
    }
}

Text start_machine_is(const Workbook& book) {
    const Current most = book.shop.machine.max_current;
    return book.shop.machine.low_voltage.max_current ? Text(words::start::MachineAnswerTwo{.current = most})
                                                     : words::start::MachineAnswer{.current = most};
}

Text start_supply_is(const Workbook& book) {
    return words::start::Feed{.amps = book.shop.circuit.breaker, .volts = book.shop.circuit.line};
}

Text start_air_is(const Workbook& book) {
    return words::start::AirAnswer{.flow = book.shop.air.compressor, .tank = book.shop.air.receiver};
}

Text start_units_is(const Workbook& book) {
    return words::start::UnitsAnswer{.currency = book.shop.rates.currency,
                                     .first = book.shop.display.units == UnitSystem::metric ? words::shop_field::mm
                                                                                            : words::shop_field::inch};
}

// What of `from` a question asks about, put back into `to`.
void start_machine_back(Workbook& to, const Workbook& from) {
    to.shop.machine = from.shop.machine;
    to.job.current = from.job.current;
}

void start_supply_back(Workbook& to, const Workbook& from) {
    to.shop.circuit = from.shop.circuit;
    to.shop.machine.phases = from.shop.machine.phases;
    to.shop.country = from.shop.country;
}

void start_air_back(Workbook& to, const Workbook& from) {
    to.shop.air = from.shop.air;
}

void start_units_back(Workbook& to, const Workbook& from) {
    to.shop.display.units = from.shop.display.units;
    to.shop.rates.currency = from.shop.rates.currency;
}

struct Step {
    Word question;
    Word next; // where the button leads to
    void (*picture)(Ui&, Rect, const Workbook&, const Speech&);
    void (*ask)(Body&);
    Text (*answer)(const Workbook&);
    void (*put_back)(Workbook& to, const Workbook& from);
};
// By names of their own, so that web/later.txt can have them.
constexpr Step steps[] = {
    {words::start::machine, words::start::next_supply, start_machine_picture, start_machine, start_machine_is,
     start_machine_back},
    {words::start::supply, words::start::next_air, start_supply_picture, start_supply, start_supply_is,
     start_supply_back},
    {words::start::air, words::start::next_units, start_air_picture, start_air, start_air_is, start_air_back},
    {words::start::units, words::start::done, start_units_picture, start_units, start_units_is, start_units_back},
};

/// From 0: "start" is the first.
std::size_t start_step(std::string_view name) {
    const char last = name.back();
    return std::min(last >= '1' && last <= '9' ? static_cast<std::size_t>(last - '1') : 0, std::size(steps) - 1);
}

void start_next(App& app, std::size_t step) {
    if (step + 1 < std::size(steps)) {
        app.open("start/" + std::to_string(step + 2));
    } else {
        app.go(Page::cut);
    }
}

/// The way on, the way back, and the way past the question, with what is assumed then.
void start_foot(Body& body, std::size_t step) {
    App& app = body.app;
    const Workbook& usual = app.scratch.before_start ? *app.scratch.before_start : app.book();
    const std::string answer = app.say(steps[step].answer(usual));
    body.rule();
    body.gap(2);
    if (body.button("start/skip", app.say(words::start::Skip{.what = answer}), Look::quiet)) {
        Workbook next = app.book();
        steps[step].put_back(next, usual);
        app.take(std::move(next), app.say(words::start::Assumed{.what = answer}));
        start_next(app, step);
    }
    const auto used =
        body.buttons({"start/back", words::start::back}, Column::Side{"start/next", steps[step].next, Look::main});
    if (used == 1) {
        start_next(app, step);
    } else if (used) {
        app.back();
    }
    body.gap(8);
}

} // namespace

std::string start_words(const App& app) {
    const std::size_t step = start_step(app.open_panel());
    return app.say(words::start::Spoken{.question = steps[step].question,
                                        .step = static_cast<int>(step + 1),
                                        .steps = static_cast<int>(std::size(steps))}) +
           ' ';
}

void start_panel(App& app, PanelAt at) {
    const std::size_t step = start_step(app.open_panel());
    const Step& asked = steps[step];
    const auto body_of = [&](Body& body) {
        body.gap(8);
        body.words("start/question", Type::second, asked.question, body.ui().tokens().ink);
        body.gap(4);
        asked.picture(body.ui(), body.inside(start_picture_height()), app.book(), app.speech());
        asked.ask(body);
        body.gap(12);
    };
    const auto foot = [&](Body& body) { start_foot(body, step); };
    const std::string id = step == 0 ? "start" : "start/" + std::to_string(step + 1);
    const std::string title =
        app.say(words::start::Step{.step = static_cast<int>(step + 1), .steps = static_cast<int>(std::size(steps))});
    PanelFrame frame{id, title};
    if (!app.ui().edit()) { // the field that is typed in needs the room
        frame.foot = Drawer::of(foot);
    }
    framed_panel(app, at, frame, Drawer::of(body_of));
}

} // namespace torchside::web
