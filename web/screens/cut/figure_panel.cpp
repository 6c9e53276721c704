// What a figure of Cut rests on, and how far this current reaches.
#include "generated/words/common.hpp"
#include "generated/words/evidence.hpp"
#include "generated/words/figure_about.hpp"
#include "generated/words/manners.hpp"
#include "generated/words/title.hpp"
#include "web/screens/cut/figure_help.hpp"
#include "web/screens/cut/figure_tools.hpp"
#include "web/screens/cut/pierce_picture.hpp"
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
        figure_with_help(body, *figure, words::figure_about::use,
                         e ? show(app, *figure, settings).whole() : app.say(words::figure_about::edge_start));
        if (key == "arc" && shop.height_control.divider_ratio > 1) {
            body.line("figure/controller", words::common::at_controller,
                      show(settings.controller, app.units()).whole());
        }
        if (key == "pierce_delay" && settings.dwell) {
            body.line("figure/dwell", words::figure_about::dwell, show(*settings.dwell, app.units()).whole());
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
        if (key == "pierce_delay" || key == "pierce_height") {
            pierce_picture(body);
        }
        body.gap(14);
        body.text("figure/how", app.say(figure->what));
        if (key == "pierce_delay" && settings.dwell) {
            body.gap(8);
            body.text("figure/dwell/how",
                      app.say(shop.machine.waits_for_transfer
                                  ? Text(words::figure_about::dwell_waits)
                                  : words::figure_about::DwellLag{.lag = settings.start_lag.value}));
        }
        body.gap(20);
        if (body.button("figure/copy", words::manners::copy_this)) {
            copy_figure(app, "cut/" + std::string(key));
        }
        body.gap(8);
        if ((key == "feed" || key == "kerf" || key == "arc") &&
            body.button("figure/evidence", words::evidence::title)) {
            app.open("evidence");
        }
        body.gap(12);
    });
}

void reach_panel(App& app, PanelAt at) {
    panel(app, at, "reach", words::figure_about::reach, [&](Body& body) {
        const cut::Capacity& c = app.worksheet().capacity;
        const Units units = app.units();
        const Job& job = app.book().job;
        body.gap(6);
        body.line("reach/plate", words::figure_about::this_plate,
                  show_plate(job.thickness, job.material, units).whole());
        const struct {
            const char* id;
            Word name;
            Length limit;
            Speed feed;
        } rows[] = {{"reach/recommended", words::figure_about::recommended, c.recommended, c.recommended_feed},
                    {"reach/pierce", words::figure_about::pierce, c.pierce, c.pierce_feed},
                    {"reach/clean", words::figure_about::clean, c.clean, c.clean_feed},
                    {"reach/sever", words::figure_about::sever, c.sever, c.sever_feed}};
        for (const auto& row : rows) {
            body.line(row.id, row.name,
                      app.say(words::figure_about::LimitAt{.feed = show_feed(row.feed, units).whole(),
                                                           .limit = show_limit(row.limit, units).whole()}));
        }
        body.gap(14);
        body.text("reach/reason", app.say(c.reason));
        body.gap(14);
        if (c.suggested_current && std::abs(c.suggested_current->in(ampere)-job.current.in(ampere)) >= 0.05) {
            if (body.button("reach/use", app.say(words::common::Use{.what = *c.suggested_current}), Look::main)) {
                app.set("job.current_a", c.suggested_current->in(ampere), words::title::current);
            }
            body.gap(14);
        }
        body.note("reach/basis", app.say(words::figure_about::reach_basis));
        body.gap(20);
    });
}

} // namespace torchside::web
