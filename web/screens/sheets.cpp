// The sheets that open from a row or a figure, and which name opens which.
#include <cstdlib>

#include "web/kit/controls.hpp"
#include "web/kit/figures.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/figure_tools.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/shop_sections.hpp"
#include "web/screens/show.hpp"
#include "web/screens/trail_picture.hpp"

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
    const cut::Settings& s = *app.sheet().settings;
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

void figure_sheet(App& app, Rect place, std::string_view figure, bool closable) {
    const FigureText* text = nullptr;
    for (const FigureText& candidate : figure_texts) {
        if (figure == candidate.key) {
            text = &candidate;
        }
    }
    if (text == nullptr || !app.sheet().settings) {
        reach_sheet(app, place, closable);
        return;
    }
    sheet(app, place, "figure", text->name, closable, [&](Rect body) {
        Ui& ui = app.ui();
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        std::string value;
        std::string basis;
        const std::string range = settings_range(app, text->key, value, basis);
        float y = body.y + 6;
        if (figure == "arc") { // the reading comes first: its answer must stand above the keypad
            y += arc_tools(app, {body.x, y, body.w, 0});
        }
        y += line(app, "figure/value", {x, y}, w, "Use", value);
        if (figure == "arc" && app.book().shop.height_control.divider_ratio > 1) {
            y += line(app, "figure/controller", {x, y}, w, "At the controller",
                      show(app.sheet().settings->controller).whole());
        }
        if (!range.empty()) {
            y += line(app, "figure/range", {x, y}, w, "8 times in 10 within", range);
            y += line(app, "figure/basis", {x, y}, w, "Rests on", basis);
        }
        if (figure == "feed") {
            y += section(ui, "figure/trail", {x, y}, w, "What moved this number");
            y += trail_picture(app, {x, y}, w);
        }
        if (figure == "kerf") {
            y += kerf_tools(app, {body.x, y, body.w, 0});
        }
        y += 14;
        y += words(ui, "figure/how", Type::text, {x, y}, w, app.in_units(text->how), ui.tokens().ink);
        return y + 20 - body.y;
    });
}

void reach_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "reach", "Reach of this current", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const cut::Capacity& c = app.sheet().capacity;
        const UnitSystem units = app.book().shop.display.units;
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y + 6;
        const auto up_to = [&](const char* id, const char* name, Length l) {
            y += line(app, id, {x, y}, w, name, show_limit(l, units).whole());
        };
        const Job& job = app.book().job;
        y += line(app, "reach/plate", {x, y}, w, "This plate", show_plate(job.thickness, job.material, units).whole());
        up_to("reach/pierce", "Standing pierce, up to", c.pierce);
        up_to("reach/clean", "Clean cut, up to", c.clean);
        up_to("reach/sever", "Severance cut, up to", c.sever);
        y += 14;
        y += words(ui, "reach/reason", Type::text, {x, y}, w, app.say(c.reason), ui.tokens().ink) + 14;
        if (c.suggested_current) {
            const bool same = std::abs(c.suggested_current->in(ampere)-app.book().job.current.in(ampere)) < 0.05;
            if (!same && button(ui, "reach/use", {x, y, w, ui.reach()}, "Use " + show(*c.suggested_current).whole(),
                                Look::main)) {
                app.set("job.current_a", c.suggested_current->in(ampere), "Current");
            }
            y += same ? 0 : ui.reach() + 14;
        }
        const std::string clean = show_feed(Speed{500, mm_min}, units).whole();
        const std::string sever = show_feed(Speed{125, mm_min}, units).whole();
        y += words(ui, "reach/basis", Type::label, {x, y}, w,
                   "Clean: a production feed of " + clean + " or more. Severance: " + sever +
                       ". Both are trade words, rule of thumb. These are estimates; the machine's own manual comes "
                       "first.",
                   ui.tokens().quiet);
        return y + 20 - body.y;
    });
}

void section_sheet(App& app, Rect place, std::string_view name, bool closable) {
    for (const ShopSection& s : shop_sections()) {
        if (name != s.sheet) {
            continue;
        }
        sheet(app, place, s.sheet, s.title, closable, [&](Rect body) {
            float y = body.y;
            const auto rest = [&] { return Rect{body.x, y, body.w, 1e6F}; };
            if (s.above != nullptr) {
                y += s.above(app, rest());
            }
            for (const ShopField& f : s.fields) {
                y += entry(app, {body.x, y, body.w, 0}, f.path, f.label);
            }
            if (s.below != nullptr) {
                y += s.below(app, rest());
            }
            return y - body.y;
        });
        return;
    }
    reach_sheet(app, place, closable);
}

void sheet_panel(App& app, Rect place, std::string_view name, bool closable) {
    struct Named {
        std::string_view name;
        void (*draw)(App&, Rect, bool);
    };
    constexpr Named sheets[] = {
        {"stock", stock_sheet},       {"chart", chart_sheet}, {"circuit", circuit_sheet}, {"log", log_sheet},
        {"air", air_sheet},           {"reach", reach_sheet}, {"shape", shape_sheet},     {"time", time_sheet},
        {"safety", safety_sheet},     {"costs", costs_sheet}, {"breaks", breaks_sheet},   {"wear", wear_sheet},
        {"rates", rates_sheet},       {"terms", terms_sheet}, {"issued", issued_sheet},   {"send", send_sheet},
        {"incoming", incoming_sheet}, {"plate", plate_sheet}, {"read", read_sheet},       {"coupon", coupon_sheet},
        {"start", start_sheet},       {"tabs", clash_sheet},
    };
    for (const Named& sheet : sheets) {
        if (name == sheet.name) {
            sheet.draw(app, place, closable);
            return;
        }
    }
    if (name.starts_with("log/")) {
        cut_row_sheet(app, place, static_cast<std::size_t>(std::strtoul(name.data() + 4, nullptr, 10)), closable);
    } else if (name.starts_with("wear/")) {
        set_row_sheet(app, place, static_cast<std::size_t>(std::strtoul(name.data() + 5, nullptr, 10)), closable);
    } else if (name.starts_with("figure/")) {
        figure_sheet(app, place, name.substr(7), closable);
    } else {
        section_sheet(app, place, name, closable);
    }
}

} // namespace torchside::web
