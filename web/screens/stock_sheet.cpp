// The stock sheet: metal, thickness and current, by chip, by keypad or as people say it.
#include <iterator>
#include <vector>

#include "core/part/mesh.hpp"
#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "core/stock/thickness.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

float metals(App& app, Point at, float w) {
    std::vector<Choice> items;
    for (const Metal metal : all_metals) {
        items.push_back({"stock/metal/" + std::string(stock::key(metal)), std::string(stock::name(metal)),
                         app.book().job.material == metal});
    }
    const float h = choices_height(app.ui(), items.size(), 2);
    if (const auto touched = choices(app.ui(), "stock/metal", {at.x, at.y, w, h}, "Metal", items, 2)) {
        app.take(document::set(app.book(), "job.material", stock::key(all_metals[*touched])),
                 "Metal: " + items[*touched].label);
    }
    return h;
}

float size_chips(App& app, Point at, float w, const char* group, const char* name,
                 const std::vector<stock::Chip>& sizes, int columns) {
    std::vector<Choice> items;
    for (const stock::Chip& size : sizes) {
        items.push_back({"stock/plate/" + std::string(size.label), std::string(size.label),
                         std::abs(size.thickness.in(mm)-app.book().job.thickness.in(mm)) < 0.005});
    }
    const float h = choices_height(app.ui(), items.size(), columns);
    if (const auto touched = choices(app.ui(), group, {at.x, at.y, w, h}, name, items, columns)) {
        app.ui().stop_edit();
        app.set("job.thickness_mm", sizes[*touched].thickness.in(mm), "Thickness");
    }
    return h;
}

/// What is usually stocked; a metric shop is handed sheet by gauge and plate by the inch too.
float plates(App& app, Point at, float w) {
    const Metal metal = app.book().job.material;
    if (!app.metric()) {
        return size_chips(app, at, w, "stock/plates", "Usual thicknesses", stock::chips(metal, UnitSystem::inch), 5);
    }
    float y = at.y;
    y += size_chips(app, at, w, "stock/plates", "Usual thicknesses", stock::chips(metal, UnitSystem::metric), 6);
    y += 8;
    y += size_chips(app, {at.x, y}, w, "stock/inches", "By gauge and inch", stock::chips(metal, UnitSystem::inch), 5);
    return y - at.y;
}

float currents(App& app, Point at, float w) {
    const Machine& machine = app.book().shop.machine;
    std::vector<Choice> items;
    std::vector<double> amps;
    const double least = machine.min_current.in(ampere);
    const double most = machine.max_current.in(ampere);
    const double step = most - least > 60 ? 20 : most - least > 40 ? 10 : 5;
    for (double a = least; a < most - 1e-9; a += step) {
        amps.push_back(a);
    }
    if (!amps.empty() && show(Current{amps.back(), ampere}).number == show(Current{most, ampere}).number) {
        amps.pop_back(); // nearer than a dial tells
    }
    amps.push_back(most);
    for (const double a : amps) {
        const Shown shown = show(Current{a, ampere});
        items.push_back(
            {"stock/amps/" + shown.number, shown.whole(), std::abs(a - app.book().job.current.in(ampere)) < 0.05});
    }
    const float h = choices_height(app.ui(), items.size(), 4);
    if (const auto touched = choices(app.ui(), "stock/amps", {at.x, at.y, w, h}, "Usual currents", items, 4)) {
        app.ui().stop_edit();
        app.set("job.current_a", amps[*touched], "Current");
    }
    return h;
}

/// The amperage look-up: which current and nozzle this plate wants, and why; one touch takes it.
float suggestion(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const cut::Capacity& capacity = app.sheet().capacity;
    float y = at.y;
    if (capacity.suggested_current) {
        const Shown amps = show(*capacity.suggested_current);
        const bool same = std::abs(capacity.suggested_current->in(ampere)-app.book().job.current.in(ampere)) < 0.05;
        std::string label = same ? amps.whole() + " is the one to use" : "Use " + amps.whole();
        if (capacity.suggested_nozzle) {
            label += ", " + show(*capacity.suggested_nozzle).whole() + " nozzle";
        }
        if (button(ui, "stock/suggested", {at.x, y, w, ui.reach()}, label, Look::plain, Role::button,
                   same ? "disabled" : "")) {
            ui.stop_edit();
            app.set("job.current_a", capacity.suggested_current->in(ampere), "Current");
        }
        y += ui.reach() + 8;
    }
    y += words(ui, "stock/why", Type::label, {at.x, y}, w, app.say(capacity.reason), ui.tokens().quiet);
    return y - at.y;
}

float torch_hold(App& app, Point at, float w) {
    constexpr const char* keys[] = {"table", "hand_standoff", "hand_drag"};
    constexpr const char* names[] = {"On the table", "By hand, gap", "By hand, drag"};
    std::vector<Choice> items;
    for (int i = 0; i < 3; ++i) {
        items.push_back({std::string("stock/torch/") + keys[i], names[i], static_cast<int>(app.book().job.torch) == i});
    }
    const float h = choices_height(app.ui(), items.size(), 3);
    if (const auto touched = choices(app.ui(), "stock/torch", {at.x, at.y, w, h}, "Torch", items, 3)) {
        app.take(document::set(app.book(), "job.torch", keys[*touched]), std::string("Torch: ") + names[*touched]);
    }
    float y = at.y + h;
    if (const auto& hand = app.sheet().by_hand; hand && app.book().job.torch != TorchHold::table) {
        const bool metric = app.metric();
        const Shown pace = show(metric ? hand->per_100_mm : hand->per_foot);
        const std::string text =
            pace.whole() + (metric ? " for each 100 mm. " : " for each foot. ") + app.say(hand->advice);
        y += 10 + words(app.ui(), "stock/pace", Type::text, {at.x, y + 10}, w, text, app.ui().tokens().ink);
    }
    return y - at.y;
}

struct PlateKind {
    part::MeshKind kind;
    const char* word; // of the workbook
    const char* name;
    const char* sizes[4]; // what pitch and opening of this kind are called
};
constexpr PlateKind plate_kinds[] = {
    {part::MeshKind::solid, "solid", "Solid", {}},
    {part::MeshKind::expanded,
     "expanded",
     "Expanded metal",
     {"Mesh length", "Clear length", "Mesh width", "Clear width"}},
    {part::MeshKind::grating, "grating", "Bar grating", {"Bar pitch", "Bar gap", "Cross bar pitch", "Cross bar gap"}},
    {part::MeshKind::perforated, "perforated", "Perforated", {"Hole pitch", "Hole diameter"}}};

/// A kind comes with its usual sizes; the user's own go over them.
void choose_kind(App& app, const PlateKind& chosen) {
    const part::Mesh mesh = part::usual(chosen.kind);
    app.ui().stop_edit();
    app.take(document::apply(app.book(), {{"job.mesh.kind", chosen.word},
                                          {"job.mesh.pitch_mm", mesh.pitch.in(mm)},
                                          {"job.mesh.opening_mm", mesh.opening.in(mm)},
                                          {"job.mesh.pitch_2_mm", mesh.pitch_2.in(mm)},
                                          {"job.mesh.opening_2_mm", mesh.opening_2.in(mm)}}),
             std::string("Plate: ") + chosen.name);
}

/// Solid or with openings, the sizes of those, and what gaps they make of a cut.
float plate_kind(App& app, Rect body) {
    constexpr const char* paths[] = {"job.mesh.pitch_mm", "job.mesh.opening_mm", "job.mesh.pitch_2_mm",
                                     "job.mesh.opening_2_mm"};
    Ui& ui = app.ui();
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    const PlateKind& now = plate_kinds[static_cast<std::size_t>(app.book().job.mesh.kind)];
    std::vector<Choice> items;
    for (const PlateKind& kind : plate_kinds) {
        items.push_back({std::string("stock/kind/") + kind.word, kind.name, kind.kind == now.kind});
    }
    float y = body.y + section(ui, "stock/kind/title", {x, body.y}, w, "Plate");
    const float h = choices_height(ui, items.size(), 2);
    if (const auto touched = choices(ui, "stock/kind", {x, y, w, h}, "Plate", items, 2);
        touched && !items[*touched].chosen) {
        choose_kind(app, plate_kinds[*touched]);
    }
    y += h + 8;
    for (std::size_t i = 0; i < std::size(paths); ++i) {
        if (now.sizes[i] != nullptr) {
            y += entry(app, {body.x, y, body.w, 0}, paths[i], now.sizes[i]);
        }
    }
    const Gaps& gaps = app.sheet().gaps;
    if (now.kind != part::MeshKind::solid || gaps.per_m > 0) {
        y += entry(app, {body.x, y, body.w, 0}, "job.gaps_per_m", "Gaps counted");
        if (gaps.fault) {
            y += signed_words(app, "stock/kind/fault", Sign::stop, {x, y}, w,
                              "Not with these sizes: " + app.in_units(gaps.fault->text), {});
        }
        y += gap_lines(app, "stock", {x, y}, w);
    }
    return y - body.y;
}

} // namespace

float gap_lines(App& app, const std::string& id, Point at, float w) {
    const Gaps& gaps = app.sheet().gaps;
    float y = at.y;
    if (!(gaps.per_m > 0)) {
        return 0;
    }
    const bool metric = app.metric();
    y += line(app, id + "/gaps", {at.x, y}, w, metric ? "Gaps in a meter of cut" : "Gaps in a foot of cut",
              print_fixed(metric ? gaps.per_m : gaps.per_m * Length{1, foot}.in(metre), 0));
    if (const auto& time = app.sheet().time) {
        y += line(app, id + "/restarts", {at.x, y}, w, "Restarts of one part", std::to_string(time->restarts));
    }
    y +=
        10 + words(app.ui(), id + "/gaps/basis", Type::label, {at.x, y + 10}, w,
                   gaps.basis.entered
                       ? "By what you entered. Each gap is a new arc start: timed, worn and paid for."
                       : "By the openings' sizes (geometry), the mean over cuts in all directions. Each gap is a new "
                         "arc start: timed, worn and paid for. Count them on the plate and enter that when it differs.",
                   app.ui().tokens().quiet);
    return y - at.y;
}

void stock_sheet(App& app, Rect place, bool closable) {
    Ui& ui = app.ui();
    ui.open_group("stock", sheet_role(closable), place, "Stock");
    const bool pad = wants_keypad(app, "stock/") || wants_keypad(app, "field/");
    SheetTop top{app, "stock", "Stock", closable};
    top.put(place, pad);
    const Rect pad_place = pad ? place.take_bottom(keypad_height(ui)) : Rect{};
    const Point at = ui.open_region_anew("stock", place);
    const float w = place.w - 2 * sheet_margin;
    const float x = at.x + sheet_margin;
    float y = at.y;
    y += thickness_entry(app, {at.x, y, place.w, 0});
    y += 10;
    y += plates(app, {x, y}, w);
    y += 2;
    y += current_entry(app, {at.x, y, place.w, 0});
    y += 10;
    y += currents(app, {x, y}, w) + 10;
    y += suggestion(app, {x, y}, w);
    y += section(ui, "stock/metal/title", {x, y}, w, "Metal");
    y += metals(app, {x, y}, w);
    y += section(ui, "stock/torch/title", {x, y}, w, "Torch");
    y += torch_hold(app, {x, y}, w) + 12;
    y += plate_kind(app, {at.x, y, place.w, 0}) + 20;
    ui.close_region({place.w, y - at.y});
    if (pad) {
        number_keypad(app, pad_place);
    }
    ui.close_group();
}

} // namespace torchside::web
