// The stock panel: metal, thickness and current, by chip, by keypad or as people say it.
#include <algorithm>
#include <iterator>
#include <vector>

#include "core/part/mesh.hpp"
#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "core/stock/thickness.hpp"
#include "core/supply/low_voltage.hpp"
#include "generated/words/change.hpp"
#include "generated/words/common.hpp"
#include "generated/words/manners.hpp"
#include "generated/words/stock.hpp"
#include "generated/words/title.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

void metals(Body& body) {
    App& app = body.app;
    std::vector<Choice> items;
    for (const Metal metal : all_metals) {
        items.push_back({"stock/metal/" + std::string(stock::key(metal)), app.say(stock::name(metal)),
                         app.book().job.material == metal});
    }
    if (const auto touched = body.choices("stock/metal", words::title::metal, items, 2)) {
        app.take(document::set(app.book(), "job.material", stock::key(all_metals[*touched])),
                 app.say(words::change::Choice{.to = items[*touched].label, .what = words::title::metal}));
    }
}

void size_chips(Body& body, const char* group, Word name, const std::vector<stock::Chip>& sizes, int columns) {
    App& app = body.app;
    std::vector<Choice> items;
    for (const stock::Chip& size : sizes) {
        std::string label(size.label);
        std::replace(label.begin(), label.end(), '.', app.units().decimal);
        items.push_back({"stock/plate/" + std::string(size.label), label,
                         std::abs(size.thickness.in(mm)-app.book().job.thickness.in(mm)) < 0.005});
    }
    if (const auto touched = body.choices(group, name, items, columns)) {
        app.ui().stop_edit();
        app.set("job.thickness_mm", sizes[*touched].thickness.in(mm), words::title::thickness);
    }
}

/// What is usually stocked; a metric shop is handed sheet by gauge and plate by the inch too.
void plates(Body& body) {
    const Metal metal = body.app.book().job.material;
    if (!body.app.metric()) {
        size_chips(body, "stock/plates", words::stock::usual_sizes, stock::chips(metal, UnitSystem::inch), 5);
        return;
    }
    size_chips(body, "stock/plates", words::stock::usual_sizes, stock::chips(metal, UnitSystem::metric), 6);
    body.gap(8);
    size_chips(body, "stock/inches", words::stock::by_gauge, stock::chips(metal, UnitSystem::inch), 5);
}

void currents(Body& body) {
    App& app = body.app;
    const Shop& shop = app.book().shop;
    const Machine machine = supply::machine_on(shop.machine, shop.circuit.line);
    std::vector<Choice> items;
    std::vector<double> amps;
    const double least = machine.min_current.in(ampere);
    const double most = machine.max_current.in(ampere);
    const double step = most - least > 60 ? 20 : most - least > 40 ? 10 : 5;
    for (double a = least; a < most - 1e-9; a += step) {
        amps.push_back(a);
    }
    if (!amps.empty() &&
        show(Current{amps.back(), ampere}, app.units()).number == show(Current{most, ampere}, app.units()).number) {
        amps.pop_back(); // nearer than a dial tells
    }
    amps.push_back(most);
    for (const double a : amps) {
        const Shown shown = show(Current{a, ampere}, app.units());
        items.push_back(
            {"stock/amps/" + shown.number, shown.whole(), std::abs(a - app.book().job.current.in(ampere)) < 0.05});
    }
    if (const auto touched = body.choices("stock/amps", words::stock::usual_currents, items, 4)) {
        app.ui().stop_edit();
        app.set("job.current_a", amps[*touched], words::title::current);
    }
}

/// The amperage look-up: which current and nozzle this plate wants, and why; one touch takes it.
void suggestion(Body& body) {
    App& app = body.app;
    const cut::Capacity& capacity = app.worksheet().capacity;
    if (capacity.suggested_current) {
        const Current amps = *capacity.suggested_current;
        const bool same = std::abs(capacity.suggested_current->in(ampere)-app.book().job.current.in(ampere)) < 0.05;
        const auto& nozzle = capacity.suggested_nozzle;
        const std::string label = same ? nozzle ? app.say(words::stock::BestNozzle{.current = amps, .nozzle = *nozzle})
                                                : app.say(words::stock::Best{.current = amps})
                                  : nozzle ? app.say(words::stock::UseNozzle{.current = amps, .nozzle = *nozzle})
                                           : app.say(words::common::Use{.what = amps});
        if (body.button("stock/suggested", label, Look::plain, same ? "disabled" : "")) {
            app.ui().stop_edit();
            app.set("job.current_a", capacity.suggested_current->in(ampere), words::title::current);
        }
        body.gap(8);
    }
    body.note("stock/why", app.say(capacity.reason));
}

void torch_hold(Body& body) {
    constexpr const char* keys[] = {"table", "hand_standoff", "hand_drag"};
    constexpr Word names[] = {words::stock::on_table, words::stock::by_hand_gap, words::stock::by_hand_drag};
    App& app = body.app;
    std::vector<Choice> items;
    for (int i = 0; i < 3; ++i) {
        items.push_back(
            {std::string("stock/torch/") + keys[i], app.say(names[i]), static_cast<int>(app.book().job.torch) == i});
    }
    if (const auto touched = body.choices("stock/torch", words::stock::torch, items, 3)) {
        app.take(document::set(app.book(), "job.torch", keys[*touched]),
                 app.say(words::change::Choice{.to = names[*touched], .what = words::stock::torch}));
    }
    if (const auto& hand = app.worksheet().by_hand; hand && app.book().job.torch != TorchHold::table) {
        const bool metric = app.metric();
        const Shown pace = show(metric ? hand->per_100_mm : hand->per_foot, app.units());
        body.gap(10);
        body.text("stock/pace", metric ? app.say(words::stock::PaceMetric{.advice = hand->advice, .time = pace.whole()})
                                       : app.say(words::stock::PaceInch{.advice = hand->advice, .time = pace.whole()}));
    }
}

struct PlateKind {
    part::MeshKind kind;
    const char* word; // of the workbook
    Word name;
    Word sizes[4]; // what pitch and opening of this kind are called
};
constexpr PlateKind plate_kinds[] = {
    {part::MeshKind::solid, "solid", words::stock::solid, {}},
    {part::MeshKind::expanded,
     "expanded",
     words::stock::expanded,
     {words::stock::mesh_length, words::stock::clear_length, words::stock::mesh_width, words::stock::clear_width}},
    {part::MeshKind::grating,
     "grating",
     words::stock::grating,
     {words::stock::bar_pitch, words::stock::bar_gap, words::stock::cross_pitch, words::stock::cross_gap}},
    {part::MeshKind::perforated,
     "perforated",
     words::stock::perforated,
     {words::stock::hole_pitch, words::stock::hole_diameter}}};

/// A kind comes with its usual sizes; the user's own go over them.
void choose_kind(App& app, const PlateKind& chosen) {
    const part::Mesh mesh = part::usual(chosen.kind);
    app.ui().stop_edit();
    app.take(document::apply(app.book(), {{"job.mesh.kind", chosen.word},
                                          {"job.mesh.pitch_mm", mesh.pitch.in(mm)},
                                          {"job.mesh.opening_mm", mesh.opening.in(mm)},
                                          {"job.mesh.pitch_2_mm", mesh.pitch_2.in(mm)},
                                          {"job.mesh.opening_2_mm", mesh.opening_2.in(mm)}}),
             app.say(words::change::Choice{.to = chosen.name, .what = words::stock::plate}));
}

/// Solid or with openings, the sizes of those, and what gaps they make of a cut.
void plate_kind(Body& body) {
    constexpr const char* paths[] = {"job.mesh.pitch_mm", "job.mesh.opening_mm", "job.mesh.pitch_2_mm",
                                     "job.mesh.opening_2_mm"};
    App& app = body.app;
    const PlateKind& now = plate_kinds[static_cast<std::size_t>(app.book().job.mesh.kind)];
    std::vector<Choice> items;
    for (const PlateKind& kind : plate_kinds) {
        items.push_back({std::string("stock/kind/") + kind.word, app.say(kind.name), kind.kind == now.kind});
    }
    body.heading("stock/kind/title", words::stock::plate);
    if (const auto touched = body.choices("stock/kind", words::stock::plate, items, 2);
        touched && !items[*touched].chosen) {
        choose_kind(app, plate_kinds[*touched]);
    }
    body.gap(8);
    for (std::size_t i = 0; i < std::size(paths); ++i) {
        if (now.sizes[i] != Word{}) {
            body.field(paths[i], now.sizes[i]);
        }
    }
    const Gaps& gaps = app.worksheet().gaps;
    if (now.kind != part::MeshKind::solid || gaps.per_m > 0) {
        body.field("job.gaps_per_m", words::stock::gaps_counted);
        if (gaps.fault) {
            body.sign("stock/kind/fault", Sign::stop, app.say(words::stock::WrongSizes{.why = gaps.fault->told()}));
        }
        gap_lines(body, "stock");
    }
}

/// The stocks before this one, in their own words; one touch brings metal, thickness and current back.
void recents(Body& body) {
    App& app = body.app;
    const std::vector<Stock> stocks = app.recent_stocks();
    if (stocks.empty()) {
        return;
    }
    std::vector<Choice> items;
    for (const Stock& s : stocks) {
        items.push_back({"stock/recent/" + std::to_string(items.size()),
                         app.say(stock::name(s.metal)) + ", " +
                             show_plate(Length{s.mm, mm}, s.metal, app.units()).whole() + ", " +
                             show(Current{s.amps, ampere}, app.units()).whole()});
    }
    body.gap(10);
    if (const auto touched = body.choices("stock/recent", words::manners::recent, items, 2)) {
        const Stock& s = stocks[*touched];
        app.ui().stop_edit();
        app.take(document::apply(
                     app.book(),
                     {{"job.material", stock::key(s.metal)}, {"job.thickness_mm", s.mm}, {"job.current_a", s.amps}}),
                 items[*touched].label);
    }
    body.gap(8);
}

} // namespace

void gap_lines(Body& body, const std::string& id) {
    const App& app = body.app;
    const Gaps& gaps = app.worksheet().gaps;
    if (!(gaps.per_m > 0)) {
        return;
    }
    const bool metric = app.metric();
    body.line(id + "/gaps", metric ? words::stock::gaps_meter : words::stock::gaps_foot,
              print_fixed(metric ? gaps.per_m : gaps.per_m * Length{1, foot}.in(metre), 0));
    if (const auto& time = app.worksheet().time) {
        body.line(id + "/restarts", words::stock::restarts, std::to_string(time->restarts));
    }
    body.gap(10);
    body.note(id + "/gaps/basis", gaps.basis.entered ? words::stock::gaps_entered : words::stock::gaps_estimated);
}

void stock_panel(App& app, PanelAt at) {
    panel(app, at, "stock", words::stock::title, [](Body& body) {
        recents(body);
        body.thickness();
        body.gap(10);
        plates(body);
        body.gap(2);
        body.current();
        body.gap(10);
        currents(body);
        body.gap(10);
        suggestion(body);
        body.heading("stock/metal/title", words::title::metal);
        metals(body);
        body.heading("stock/torch/title", words::stock::torch);
        torch_hold(body);
        body.gap(12);
        plate_kind(body);
        body.gap(20);
    });
}

} // namespace torchside::web
