// What a figure of Cut rests on, and how far this current reaches.
#include "generated/words/common.hpp"
#include "generated/words/figure_about.hpp"
#include "generated/words/title.hpp"
#include "web/screens/cut/figure_tools.hpp"
#include "web/screens/cut/trail_picture.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
void figure_panel(App& app, PanelAt at) {
    const Figure* figure = figure_of(at.of);
    if (figure == nullptr || !app.worksheet().settings) {
        reach_panel(app, at);
        return;
    }
    panel(app, at, "figure", figure->name, [&](Body& body) {
        const cut::Settings& settings = *app.worksheet().settings;
        const Shop& shop = app.book().shop;
        const std::string_view key = figure->key;
        const auto e = figure->of(settings, UnitSystem::metric);
        const std::string range = show_range(app, *figure, settings);
        body.gap(6);
        if (key == "arc") { // the reading comes first: its answer must stand above the keypad
            arc_tools(body);
        }
        body.line("figure/value", words::figure_about::use,
                  e ? show(app, *figure, settings).whole() : app.say(words::figure_about::edge_start));
        if (key == "arc" && shop.height_control.divider_ratio > 1) {
            body.line("figure/controller", words::common::at_controller, show(settings.controller).whole());
        }
        if (!range.empty()) {
            body.line("figure/range", words::figure_about::range, range);
        }
        if (e) {
            body.line("figure/basis", words::common::based_on, show_basis(app, e->basis));
        }
        if (key == "feed") {
            body.heading("figure/trail", words::figure_about::how);
            trail_picture(body);
        }
        if (key == "kerf") {
            kerf_tools(body);
        }
        body.gap(14);
        body.text("figure/how", app.say(figure->what));
        body.gap(20);
    });
}

void reach_panel(App& app, PanelAt at) {
    panel(app, at, "reach", words::figure_about::reach, [&](Body& body) {
        const cut::Capacity& c = app.worksheet().capacity;
        const UnitSystem units = app.book().shop.display.units;
        const Job& job = app.book().job;
        body.gap(6);
        body.line("reach/plate", words::figure_about::this_plate,
                  show_plate(job.thickness, job.material, units).whole());
        body.line("reach/pierce", words::figure_about::pierce, show_limit(c.pierce, units).whole());
        body.line("reach/clean", words::figure_about::clean, show_limit(c.clean, units).whole());
        body.line("reach/sever", words::figure_about::sever, show_limit(c.sever, units).whole());
        body.gap(14);
        body.text("reach/reason", app.say(c.reason));
        body.gap(14);
        if (c.suggested_current && std::abs(c.suggested_current->in(ampere)-job.current.in(ampere)) >= 0.05) {
            if (body.button("reach/use", app.say(words::common::Use{.what = *c.suggested_current}), Look::main)) {
                app.set("job.current_a", c.suggested_current->in(ampere), words::title::current);
            }
            body.gap(14);
        }
        const std::string clean = show_feed(Speed{500, mm_min}, units).whole();
        const std::string sever = show_feed(Speed{125, mm_min}, units).whole();
        body.note("reach/basis", app.say(words::figure_about::ReachBasis{.clean = clean, .sever = sever}));
        body.gap(20);
    });
}

} // namespace torchside::web
