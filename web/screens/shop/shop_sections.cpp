#include "web/screens/shop/shop_sections.hpp"

#include <vector>

#include "core/quantity/print.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/quote/link_acts.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/height_tools.hpp"
#include "web/screens/shop/supply_choice.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

std::string amps(Current c) {
    return show(c).whole();
}

// --- summaries: what a section says of itself in the list

std::string machine_summary(const App& app) {
    const Machine& m = app.book().shop.machine;
    return amps(m.min_current) + " to " + amps(m.max_current) + ", " + print_percent(m.duty_cycle).text() +
           " duty at " + amps(m.duty_current);
}

std::string nozzle_summary(const App& app) {
    std::string out;
    for (const Nozzle& nozzle : app.book().shop.machine.nozzles) {
        out += (out.empty() ? "" : ", ") + amps(nozzle.rated);
    }
    return out;
}

std::string height_summary(const App& app) {
    const double ratio = app.book().shop.height_control.divider_ratio;
    return ratio > 1 ? "Divider " + print_trimmed(ratio, 2) + ":1" : "Raw arc volts, 1:1: a shock hazard";
}

std::string circuit_summary(const App& app) {
    return say_summary(app.worksheet().circuit.message, app.speech());
}

std::string country_summary(const App& app) {
    return country_name(app);
}

std::string air_summary(const App& app) {
    return say_summary(app.worksheet().air.message, app.speech());
}

std::string table_summary(const App& app) {
    const Table& t = app.book().shop.table;
    return print(t.max_feed, app.book().shop.display.units).text() + (t.water ? ", water tray" : ", dry");
}

std::string controller_summary(const App& app) {
    const Controller& c = app.book().shop.controller;
    return "Torch " + c.torch_on + " on, " + c.torch_off + " off" +
           (c.height_on.empty() ? "" : ", heights " + c.height_on);
}

std::string screen_summary(const App& app) {
    const Display& d = app.book().shop.display;
    const char* theme = d.theme == Theme::automatic ? "theme of the device"
                        : d.theme == Theme::paper   ? "paper"
                                                    : "night";
    return std::string(d.units == UnitSystem::metric ? "mm, " : "inch, ") + theme + (d.glove ? ", gloves" : "");
}

std::string kept_summary(const App& app) {
    if (app.store().left_alone()) {
        return "What is kept can't be read";
    }
    if (app.store().refused()) {
        return "Nothing is kept in this browser";
    }
    return app.notices().offline_ready ? "On this device; works offline" : "On this device";
}

std::string devices_summary(const App&) {
    return "The whole job as a link or QR code";
}

// --- what a section shows besides plain fields

void display_choices(Body& body) {
    constexpr const char* units[] = {"metric", "inch"};
    constexpr const char* unit_names[] = {"mm first", "inch first"};
    constexpr const char* themes[] = {"auto", "paper", "night"};
    constexpr const char* theme_names[] = {"Device", "Paper", "Night"};
    body.word_choice("shop.display.units", "Units", units, unit_names);
    body.word_choice("shop.display.theme", "Theme", themes, theme_names);
}

void controller_choices(Body& body) {
    constexpr const char* dwell[] = {"s", "ms"};
    constexpr const char* dwell_names[] = {"Seconds", "Milliseconds"};
    constexpr const char* units[] = {"", "metric", "inch"};
    constexpr const char* unit_names[] = {"As shown", "mm", "inch"};
    body.word_choice("shop.controller.dwell_unit", "P after G4 counts", dwell, dwell_names);
    body.word_choice("shop.controller.units", "Programs in", units, unit_names);
}

void divider_choices(Body& body) {
    // Ratios in the trade: common practice, no source.
    constexpr double ratios[] = {1, 16, 20, 30, 40, 50};
    App& app = body.app;
    std::vector<Choice> items;
    for (const double ratio : ratios) {
        const std::string text = print_trimmed(ratio, 0) + ":1";
        items.push_back({"height/ratio/" + text, text, app.book().shop.height_control.divider_ratio == ratio});
    }
    body.heading("height/ratio/title", "Divider between torch and controller");
    if (const auto touched = body.choices("height/ratio", "Divider", items, 3)) {
        app.set("shop.height_control.divider_ratio", ratios[*touched], "Divider ratio");
    }
    body.gap(10);
}

void nozzle_list(Body& body) {
    App& app = body.app;
    const auto& nozzles = app.book().shop.machine.nozzles;
    for (std::size_t i = 0; i < nozzles.size(); ++i) {
        const std::string at = "shop.machine.nozzles[" + std::to_string(i) + "]";
        body.heading(at + "/title", "Nozzle " + std::to_string(i + 1));
        body.field(at + ".rated_current_a", "Rated current");
        body.field(at + ".bore_mm", "Bore");
        if (nozzles.size() > 1) {
            body.gap(8);
            if (body.button(at + "/remove", "Take this nozzle out")) {
                app.ui().stop_edit();
                app.remove(at, "Nozzle deleted");
                break; // the list is another one now
            }
        }
    }
    body.gap(16);
    if (nozzles.size() < 8 && body.button("nozzles/add", "Add a nozzle")) {
        app.take(document::add(app.book(), Nozzle{}), "Nozzle added");
    }
    body.gap(16);
}

constexpr PathLabel machine_fields[] = {{"shop.machine.max_current_a", "Largest current"},
                                        {"shop.machine.min_current_a", "Smallest current"},
                                        {"shop.machine.duty_cycle", "Duty cycle"},
                                        {"shop.machine.duty_current_a", "Duty is rated at"},
                                        {"shop.machine.efficiency", "Efficiency"},
                                        {"shop.machine.power_factor", "Power factor"},
                                        {"shop.machine.power_factor_corrected", "Corrected input"},
                                        {"shop.machine.phases", "Phases"},
                                        {"shop.machine.idle_input_a", "Input when idle"},
                                        {"shop.machine.clockwise_swirl", "Gas swirls clockwise"},
                                        {"shop.machine.plate_i1max_a", "Nameplate I1max"},
                                        {"shop.machine.plate_i1eff_a", "Nameplate I1eff"}};
constexpr PathLabel height_fields[] = {{"shop.height_control.divider_ratio", "Divider ratio"},
                                       {"shop.height_control.input_limit_v", "Input stands"},
                                       {"shop.height_control.gradient_v_mm", "Volts of height"},
                                       {"shop.height_control.cut_height_mm", "Cut height"},
                                       {"shop.height_control.touch_off_s", "Touch-off time"}};
constexpr PathLabel table_fields[] = {{"shop.table.max_feed_mm_min", "Fastest feed"},
                                      {"shop.table.acceleration_mm_s2", "Acceleration"},
                                      {"shop.table.corner_tolerance_mm", "Corner tolerance"},
                                      {"shop.table.rapid_mm_min", "Rapid"},
                                      {"shop.table.water", "Water tray"}};
constexpr PathLabel controller_fields[] = {
    {"shop.controller.torch_on", "Torch on"},           {"shop.controller.torch_off", "Torch off"},
    {"shop.controller.height_on", "Height control on"}, {"shop.controller.height_off", "Height control off"},
    {"shop.controller.z_words", "Heights in programs"}, {"shop.controller.safe_height_mm", "Safe height"}};
constexpr PathLabel screen_fields[] = {{"shop.display.glove", "Gloves"}, {"shop.display.number_keys", "Number keys"}};
constexpr PathLabel name_fields[] = {{"shop.name", "Shop name"}};

constexpr ShopSection sections[] = {
    {"machine", "Machine", Mark::machine, machine_summary, machine_fields, nullptr, nullptr},
    {"nozzles", "Nozzles", Mark::nozzle, nozzle_summary, {}, nozzle_list, nullptr},
    {"height", "Height control", Mark::height, height_summary, height_fields, divider_choices, height_tools},
    {"circuit", "Circuit", Mark::circuit, circuit_summary, {}, nullptr, nullptr},
    {"country", "Country", Mark::shop, country_summary, {}, country_choice, nullptr},
    {"air", "Air", Mark::air, air_summary, {}, nullptr, nullptr},
    {"table", "Table", Mark::table, table_summary, table_fields, nullptr, nullptr},
    {"controller", "Controller words", Mark::keyboard, controller_summary, controller_fields, nullptr,
     controller_choices},
    {"screen", "Screen", Mark::screen, screen_summary, screen_fields, display_choices, nullptr},
    {"devices", "My other devices", Mark::screen, devices_summary, {}, own_devices, nullptr},
    {"kept", "Kept work", Mark::kept, kept_summary, name_fields, nullptr, kept_body},
};

} // namespace

std::span<const ShopSection> shop_sections() {
    return sections;
}

} // namespace torchside::web
