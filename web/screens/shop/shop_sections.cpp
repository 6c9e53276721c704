#include "web/screens/shop/shop_sections.hpp"

#include <vector>

#include "core/quantity/print.hpp"
#include "generated/words/evidence.hpp"
#include "generated/words/low_supply.hpp"
#include "generated/words/shop_field.hpp"
#include "generated/words/shop_screen.hpp"
#include "generated/words/title.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/quote/link_acts.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/height_tools.hpp"
#include "web/screens/shop/supply_choice.hpp"
#include "web/screens/show.hpp"
#include "web/screens/spoken.hpp"

namespace torchside::web {
namespace {

std::string amps(const App& app, Current c) {
    return show(c, app.units()).whole();
}

// --- summaries: what a section says of itself in the list

std::string machine_summary(const App& app) {
    const Machine& m = app.book().shop.machine;
    return app.say(words::shop_screen::MachineIs{.current = amps(app, m.duty_current),
                                                 .duty = words::percent(m.duty_cycle),
                                                 .least = amps(app, m.min_current),
                                                 .most = amps(app, m.max_current)});
}

std::string nozzle_summary(const App& app) {
    std::string out;
    for (const Nozzle& nozzle : app.book().shop.machine.nozzles) {
        out += (out.empty() ? "" : ", ") + amps(app, nozzle.rated);
    }
    return out;
}

std::string height_summary(const App& app) {
    const double ratio = app.book().shop.height_control.divider_ratio;
    return app.say(ratio > 1 ? Text(words::shop_screen::Divider{.ratio = words::number(ratio, 2)})
                             : words::shop_screen::no_divider);
}

std::string circuit_summary(const App& app) {
    return say_summary(app.worksheet().circuit.message, app.speech());
}

std::string country_summary(const App& app) {
    return app.say(country_name(app));
}

std::string air_summary(const App& app) {
    return say_summary(app.worksheet().air.message, app.speech());
}

std::string evidence_summary(const App& app) {
    return app.say(words::evidence::summary_line);
}

std::string table_summary(const App& app) {
    const Table& t = app.book().shop.table;
    return app.say(t.water ? Text(words::shop_screen::TableWet{.feed = t.max_feed})
                           : words::shop_screen::TableDry{.feed = t.max_feed});
}

std::string controller_summary(const App& app) {
    const Controller& c = app.book().shop.controller;
    return app.say(c.height_on.empty()
                       ? Text(words::shop_screen::Codes{.off = c.torch_off, .on = c.torch_on})
                       : words::shop_screen::CodesHeight{.heights = c.height_on, .off = c.torch_off, .on = c.torch_on});
}

std::string screen_summary(const App& app) {
    const Display& d = app.book().shop.display;
    const Word theme = d.theme == Theme::automatic ? words::shop_screen::theme_device
                       : d.theme == Theme::paper   ? words::shop_screen::theme_paper
                                                   : words::shop_screen::theme_night;
    return app.say(d.glove ? Text(words::shop_screen::ScreenGloves{.theme = theme})
                           : words::shop_screen::ScreenIs{.theme = theme});
}

std::string kept_summary(const App& app) {
    if (app.store().left_alone()) {
        return app.say(words::shop_screen::unreadable);
    }
    if (app.store().refused()) {
        return app.say(words::shop_screen::unsaved);
    }
    return app.say(app.notices().offline_ready ? words::shop_screen::saved_offline : words::shop_screen::saved);
}

std::string devices_summary(const App& app) {
    return app.say(words::shop_screen::devices_about);
}

// --- what a section shows besides plain fields

void display_choices(Body& body) {
    constexpr const char* units[] = {"metric", "inch"};
    constexpr Label unit_names[] = {words::shop_field::mm_first, words::shop_field::inch_first};
    constexpr const char* themes[] = {"auto", "paper", "night"};
    constexpr Label theme_names[] = {words::shop_field::device, words::shop_field::paper, words::shop_field::night};
    body.word_choice("shop.display.units", words::title::units, units, unit_names);
    body.word_choice("shop.display.theme", words::shop_field::theme, themes, theme_names);
    std::vector<const char*> codes{""};
    std::vector<Label> names{words::shop_field::devices_language};
    language_choices(codes, names);
    body.word_choice("shop.display.language", words::shop_field::language, codes, names, 2);
}

void controller_choices(Body& body) {
    constexpr const char* dwell[] = {"s", "ms"};
    constexpr Label dwell_names[] = {words::shop_field::seconds, words::shop_field::milliseconds};
    constexpr const char* units[] = {"", "metric", "inch"};
    constexpr Label unit_names[] = {words::shop_field::as_screen, words::shop_field::mm, words::shop_field::inch};
    body.word_choice("shop.controller.dwell_unit", words::shop_field::dwell_unit, dwell, dwell_names);
    body.word_choice("shop.controller.units", words::shop_field::program_units, units, unit_names);
}

void start_choice(Body& body) {
    constexpr const char* methods[] = {"contact", "high_frequency", "capacitor"};
    constexpr Label names[] = {words::shop_field::contact, words::shop_field::high_frequency,
                               words::shop_field::capacitor};
    body.word_choice("shop.machine.start", words::shop_field::start, methods, names);
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
    body.heading("height/ratio/title", words::shop_field::dividers);
    if (const auto touched = body.choices("height/ratio", words::shop_field::divider, items, 3)) {
        app.set("shop.height_control.divider_ratio", ratios[*touched], words::shop_field::ratio);
    }
    body.gap(10);
}

void nozzle_list(Body& body) {
    App& app = body.app;
    const auto& nozzles = app.book().shop.machine.nozzles;
    for (std::size_t i = 0; i < nozzles.size(); ++i) {
        const std::string at = "shop.machine.nozzles[" + std::to_string(i) + "]";
        body.heading(at + "/title", app.say(words::shop_field::Nozzle{.number = static_cast<int>(i) + 1}));
        body.field(at + ".rated_current_a", words::shop_field::rated);
        body.field(at + ".bore_mm", words::shop_field::bore);
        if (nozzles.size() > 1) {
            body.gap(8);
            if (body.button(at + "/remove", words::shop_field::delete_nozzle)) {
                app.ui().stop_edit();
                app.remove(at, words::shop_field::nozzle_deleted);
                break; // the list is another one now
            }
        }
    }
    body.gap(16);
    if (nozzles.size() < 8 && body.button("nozzles/add", words::shop_field::add_nozzle)) {
        app.take(document::add(app.book(), Nozzle{}), words::shop_field::nozzle_added);
    }
    body.gap(16);
}

constexpr PathLabel machine_fields[] = {{"shop.machine.max_current_a", words::shop_field::largest},
                                        {"shop.machine.min_current_a", words::shop_field::smallest},
                                        {"shop.machine.duty_cycle", words::shop_field::duty},
                                        {"shop.machine.duty_current_a", words::shop_field::duty_current},
                                        {"shop.machine.efficiency", words::shop_field::efficiency},
                                        {"shop.machine.power_factor", words::shop_field::power_factor},
                                        {"shop.machine.power_factor_corrected", words::shop_field::corrected},
                                        {"shop.machine.phases", words::shop_field::phases},
                                        {"shop.machine.idle_input_a", words::shop_field::idle},
                                        {"shop.machine.start_lag_s", words::shop_field::start_lag},
                                        {"shop.machine.waits_for_transfer", words::shop_field::waits},
                                        {"shop.machine.clockwise_swirl", words::shop_field::swirl},
                                        {"shop.machine.plate_i1max_a", words::shop_field::i1max},
                                        {"shop.machine.plate_i1eff_a", words::shop_field::i1eff},
                                        {"shop.machine.low_voltage.max_current_a", words::low_supply::largest},
                                        {"shop.machine.low_voltage.duty_cycle", words::low_supply::duty_field},
                                        {"shop.machine.low_voltage.duty_current_a", words::low_supply::duty_current},
                                        {"shop.machine.low_voltage.i1max_a", words::low_supply::i1max},
                                        {"shop.machine.low_voltage.i1eff_a", words::low_supply::i1eff}};
constexpr PathLabel height_fields[] = {{"shop.height_control.divider_ratio", words::shop_field::ratio},
                                       {"shop.height_control.input_limit_v", words::shop_field::input_limit},
                                       {"shop.height_control.gradient_v_mm", words::shop_field::gradient},
                                       {"shop.height_control.cut_height_mm", words::shop_field::cut_height},
                                       {"shop.height_control.touch_off_s", words::shop_field::touch_off}};
constexpr PathLabel table_fields[] = {{"shop.table.max_feed_mm_min", words::shop_field::fastest},
                                      {"shop.table.acceleration_mm_s2", words::shop_field::acceleration},
                                      {"shop.table.corner_tolerance_mm", words::shop_field::corner},
                                      {"shop.table.rapid_mm_min", words::shop_field::rapid},
                                      {"shop.table.water", words::shop_field::water}};
constexpr PathLabel controller_fields[] = {{"shop.controller.torch_on", words::shop_field::torch_on},
                                           {"shop.controller.torch_off", words::shop_field::torch_off},
                                           {"shop.controller.height_on", words::shop_field::height_on},
                                           {"shop.controller.height_off", words::shop_field::height_off},
                                           {"shop.controller.z_words", words::shop_field::heights},
                                           {"shop.controller.safe_height_mm", words::shop_field::safe_height}};
constexpr PathLabel screen_fields[] = {{"shop.display.glove", words::shop_field::gloves},
                                       {"shop.display.number_keys", words::shop_field::number_keys},
                                       {"shop.display.sound", words::shop_field::sound},
                                       {"shop.display.vibration", words::shop_field::vibration}};
constexpr PathLabel name_fields[] = {{"shop.name", words::shop_field::name}};

constexpr ShopSection sections[] = {
    {"machine", words::shop_screen::machine, Mark::machine, machine_summary, machine_fields, nullptr, start_choice},
    {"nozzles", words::shop_screen::nozzles, Mark::nozzle, nozzle_summary, {}, nozzle_list, nullptr},
    {"height", words::shop_screen::height, Mark::height, height_summary, height_fields, divider_choices, height_tools},
    {"circuit", words::shop_screen::circuit, Mark::circuit, circuit_summary, {}, nullptr, nullptr},
    {"country", words::shop_screen::country, Mark::shop, country_summary, {}, country_choice, nullptr},
    {"air", words::shop_screen::air, Mark::air, air_summary, {}, nullptr, nullptr},
    {"table", words::shop_screen::table, Mark::table, table_summary, table_fields, nullptr, nullptr},
    {"controller", words::shop_screen::controller, Mark::keyboard, controller_summary, controller_fields, nullptr,
     controller_choices},
    {"screen", words::shop_screen::screen, Mark::screen, screen_summary, screen_fields, display_choices, nullptr},
    {"devices", words::shop_screen::devices, Mark::screen, devices_summary, {}, own_devices, nullptr},
    {"evidence", words::evidence::title, Mark::kept, evidence_summary, {}, nullptr, evidence_body},
    {"kept", words::shop_screen::kept, Mark::kept, kept_summary, name_fields, nullptr, kept_body},
};

} // namespace

std::span<const ShopSection> shop_sections() {
    return sections;
}

} // namespace torchside::web
