// What a figure of Cut rests on, and how far this current reaches.
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
    panel(app, at, "figure", app.say(figure->name), [&](Body& body) {
        const cut::Settings& settings = *app.worksheet().settings;
        const Shop& shop = app.book().shop;
        const std::string_view key = figure->key;
        const auto e = figure->of(settings, UnitSystem::metric);
        const std::string range = show_range(*figure, settings, shop.display.units);
        body.gap(6);
        if (key == "arc") { // the reading comes first: its answer must stand above the keypad
            arc_tools(body);
        }
        body.line("figure/value", "Use", e ? show(*figure, settings, shop).whole() : "Edge start: no pierce");
        if (key == "arc" && shop.height_control.divider_ratio > 1) {
            body.line("figure/controller", "At the controller", show(settings.controller).whole());
        }
        if (!range.empty()) {
            body.line("figure/range", "8 times in 10 within", range);
        }
        if (e) {
            body.line("figure/basis", "Rests on", show_basis(e->basis, shop.example));
        }
        if (key == "feed") {
            body.heading("figure/trail", "What moved this number");
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
    panel(app, at, "reach", "Reach of this current", [&](Body& body) {
        const cut::Capacity& c = app.worksheet().capacity;
        const UnitSystem units = app.book().shop.display.units;
        const Job& job = app.book().job;
        body.gap(6);
        body.line("reach/plate", "This plate", show_plate(job.thickness, job.material, units).whole());
        body.line("reach/pierce", "Standing pierce, up to", show_limit(c.pierce, units).whole());
        body.line("reach/clean", "Clean cut, up to", show_limit(c.clean, units).whole());
        body.line("reach/sever", "Severance cut, up to", show_limit(c.sever, units).whole());
        body.gap(14);
        body.text("reach/reason", app.say(c.reason));
        body.gap(14);
        if (c.suggested_current && std::abs(c.suggested_current->in(ampere)-job.current.in(ampere)) >= 0.05) {
            if (body.button("reach/use", "Use " + show(*c.suggested_current).whole(), Look::main)) {
                app.set("job.current_a", c.suggested_current->in(ampere), "Current");
            }
            body.gap(14);
        }
        const std::string clean = show_feed(Speed{500, mm_min}, units).whole();
        const std::string sever = show_feed(Speed{125, mm_min}, units).whole();
        body.note("reach/basis",
                  "Clean: a production feed of " + clean + " or more. Severance: " + sever +
                      ". Both are trade words, rule of thumb. These are estimates; the machine's own manual comes "
                      "first.");
        body.gap(20);
    });
}

} // namespace torchside::web
