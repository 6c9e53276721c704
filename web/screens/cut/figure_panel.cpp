// What a figure of Cut rests on, and how far this current reaches.
#include "web/screens/cut/figure_tools.hpp"
#include "web/screens/cut/trail_picture.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

struct FigureText {
    const char* key;
    const char* name;
    const char* how; // what it rests on and how to make it better, in words
};
constexpr FigureText figure_texts[] = {
    {"feed", "Feed",
     "A typical production feed: the heat of the arc against the heat to melt the kerf and to warm the plate, shifted "
     "by shop "
     "practice and by your own cuts. Too fast throws sparks back over the top; too slow leaves dross that comes off "
     "easily."},
    {"arc", "Arc volts",
     "At the torch, over the plate, at the cut height. Volts rise with height, current and thickness, and drift as the "
     "electrode wears."},
    {"pierce_height", "Pierce height",
     "One and a half to two and a half cut heights, so that the spray of the pierce stays off the nozzle."},
    {"pierce_delay", "Pierce delay",
     "Time from the arc until the torch may move. Too short leaves an uncut tail at the lead-in; too long wears the "
     "nozzle. Take off "
     "0.1 s until the lead-in skips, then add 0.2 s."},
    {"kerf", "Kerf", "Width of the slot, the mean of top and bottom edge."},
    {"lead_in", "Lead-in", "Far enough that the crater of the pierce stays in the scrap."},
    {"min_hole", "Smallest hole",
     "Smaller holes come out tapered and rough. Drill them, or mark their centre with the torch."},
};

std::string settings_range(const App& app, std::string_view key, std::string& value, std::string& basis) {
    const cut::Settings& s = *app.worksheet().settings;
    const UnitSystem units = app.book().shop.display.units;
    const auto length = [&](const Estimate<Length>& e) {
        value = show(e.value, units).whole();
        basis = show_basis(e.basis, app.book().shop.example);
        return show_range(e, units);
    };
    if (key == "feed") {
        value = show_feed(s.feed.value, app.book().shop).whole();
        basis = show_basis(s.feed.basis, app.book().shop.example);
        return show_range(s.feed, units);
    }
    if (key == "arc") {
        value = show(s.arc.value).whole();
        basis = show_basis(s.arc.basis, app.book().shop.example);
        return show_range(s.arc);
    }
    if (key == "min_hole") {
        value = show_least_hole(s, units).whole();
        basis = show_basis(s.min_hole.basis, app.book().shop.example);
        return show_range(s.min_hole, units);
    }
    if (key == "pierce_delay" && !s.pierce_delay) {
        value = "Edge start: no pierce";
        return {};
    }
    if (key == "pierce_delay") {
        value = show(s.pierce_delay->value).whole();
        basis = show_basis(s.pierce_delay->basis, app.book().shop.example);
        return show_range(*s.pierce_delay);
    }
    return length(key == "pierce_height" ? s.pierce_height : key == "kerf" ? s.kerf : s.lead_in);
}

} // namespace

void figure_panel(App& app, PanelAt at) {
    const FigureText* text = nullptr;
    for (const FigureText& candidate : figure_texts) {
        if (at.of == candidate.key) {
            text = &candidate;
        }
    }
    if (text == nullptr || !app.worksheet().settings) {
        reach_panel(app, at);
        return;
    }
    panel(app, at, "figure", text->name, [&](Body& body) {
        const std::string_view figure = text->key;
        std::string value;
        std::string basis;
        const std::string range = settings_range(app, figure, value, basis);
        body.gap(6);
        if (figure == "arc") { // the reading comes first: its answer must stand above the keypad
            arc_tools(body);
        }
        body.line("figure/value", "Use", value);
        if (figure == "arc" && app.book().shop.height_control.divider_ratio > 1) {
            body.line("figure/controller", "At the controller", show(app.worksheet().settings->controller).whole());
        }
        if (!range.empty()) {
            body.line("figure/range", "8 times in 10 within", range);
            body.line("figure/basis", "Rests on", basis);
        }
        if (figure == "feed") {
            body.heading("figure/trail", "What moved this number");
            trail_picture(body);
        }
        if (figure == "kerf") {
            kerf_tools(body);
        }
        body.gap(14);
        body.text("figure/how", app.in_units(text->how));
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
