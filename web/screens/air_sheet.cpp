// Air: does the compressor keep up with the torch; one cut-and-recover cycle drawn from a full tank.
#include "core/air/assess.hpp"
#include "core/quantity/print.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float plot_height = 150;

// Relative humidity of days to ask about: common practice, no source.
constexpr double days[] = {0.3, 0.5, 0.85};
constexpr const char* day_names[] = {"Dry 30 %", "Usual 50 %", "Humid 85 %"};

void cycle_picture(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const air::Report& r = app.sheet().air;
    const air::AirSystem& system = app.book().shop.air;
    const UnitSystem units = app.book().shop.display.units;
    const Rect plot{place.x + 44, place.y + 8, place.w - 52, place.h - 34};
    const double end = std::max(1.0, r.cycle.back().at.in(second));
    double low = r.receiver_min.value.in(bar);
    double high = std::max(system.cut_out.in(bar), r.receiver_min.value.in(bar));
    for (const air::CyclePoint& p : r.cycle) {
        low = std::min(low, p.tank.in(bar));
        high = std::max(high, p.tank.in(bar));
    }
    const double room = std::max(0.5, (high - low) * 0.15);
    low -= room;
    high += room;
    const auto x_at = [&](Duration d) { return plot.x + plot.w * static_cast<float>(d.in(second) / end); };
    const auto y_at = [&](double p) { return plot.bottom() - plot.h * static_cast<float>((p - low) / (high - low)); };
    for (std::size_t i = 0; i + 1 < r.cycle.size(); ++i) {
        const Point a{x_at(r.cycle[i].at), y_at(r.cycle[i].tank.in(bar))};
        const Point b{x_at(r.cycle[i + 1].at), y_at(r.cycle[i + 1].tank.in(bar))};
        if (r.cycle[i].cutting) {
            const Point area[] = {a, b, {b.x, plot.bottom()}, {a.x, plot.bottom()}};
            pen.polygon(area, 4, t.fill);
        }
        r.cycle[i].compressor ? pen.line(a, b, t.ink, 2.5F) : pen.dashes(a, b, t.ink, 2, 6, 4);
    }
    const float need = y_at(r.receiver_min.value.in(bar));
    pen.hline(plot.x, plot.right(), need, t.accent, 1.5F);
    pen.text(Type::label, {plot.x + 6, need - Pen::line_height(Type::label) - 2}, t.accent, "the torch needs this");
    pen.hline(plot.x, plot.right(), plot.bottom(), t.ink, 1);
    pen.vline(plot.x, plot.y, plot.bottom(), t.ink, 1);
    const float apart = y_at(system.cut_in.in(bar)) - y_at(system.cut_out.in(bar));
    for (const Pressure p : {system.cut_out, system.cut_in}) {
        const float y = y_at(p.in(bar));
        pen.hline(plot.x - 4, plot.x, y, t.ink, 1);
        if (p == system.cut_in && apart < Pen::line_height(Type::label)) {
            continue; // no room for a second figure
        }
        pen.text(Type::label, {plot.x - 6, y - 8.5F}, t.quiet, print(p, units).number, Align::right);
    }
    pen.text(Type::label, {place.x, plot.bottom() + 5}, t.quiet, std::string(print(system.cut_in, units).unit));
    pen.text(Type::label, {plot.x, plot.bottom() + 5}, t.quiet, "0");
    pen.text(Type::label, {plot.right(), plot.bottom() + 5}, t.quiet, print(r.cycle.back().at).text(), Align::right);
    ui.node("air/cycle", Role::img, place,
            "Tank pressure over one cut and its recovery; " + say_summary(r.message, app.speech()));
}

float figures(App& app, Point at, float w) {
    const air::Report& r = app.sheet().air;
    const UnitSystem units = app.book().shop.display.units;
    float y = at.y;
    const auto put = [&](const char* id, const char* name, const std::string& value) {
        y += line(app, id, {at.x, y}, w, name, value);
    };
    if (r.runs) {
        put("air/runs", "Arc on a full tank", print(*r.runs).text());
    }
    if (r.recovers) {
        put("air/recovers", "Pause to fill it again", print(*r.recovers).text());
    }
    put("air/share", "Arc the compressor can feed", print_percent(r.arc_share).text());
    put("air/drop", "Lost in the hose",
        print(r.hose_drop.low, units).number + " to " + print(r.hose_drop.high, units).text());
    put("air/min", "Tank, at least", print(r.receiver_min.value, units).text());
    put("air/inlet", "At the machine, tank at cut-in", print(r.inlet_at_cut_in, units).text());
    put("air/water", "Water in an arc hour", print_water(r.water_g_h, units).text());
    return y - at.y;
}

using Path = const char* const[2];

float entries(App& app, Rect body, float y0, std::span<Path> paths) {
    float y = y0;
    for (const auto& path : paths) {
        y += entry(app, {body.x, y, body.w, 0}, path[0], path[1]);
    }
    return y - y0;
}

constexpr const char* first_paths[][2] = {{"shop.air.compressor_l_min", "Compressor delivers"},
                                          {"shop.air.compressor_duty", "Compressor duty"},
                                          {"shop.air.receiver_l", "Tank"},
                                          {"shop.air.cut_in_bar", "Compressor starts"},
                                          {"shop.air.cut_out_bar", "Compressor stops"},
                                          {"shop.air.hose_m", "Hose"},
                                          {"shop.air.hose_bore_mm", "Hose bore"}};
constexpr const char* other_paths[][2] = {{"shop.air.torch_l_min", "Torch uses"},
                                          {"shop.air.torch_bar", "Torch wants"},
                                          {"shop.air.post_flow_s", "Post-flow"},
                                          {"shop.air.intake_c", "Intake air"},
                                          {"shop.air.humidity", "Humidity"}};

/// What it all comes to, below what was entered.
float outcome(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const air::Report& r = app.sheet().air;
    float y = at.y + section(ui, "air/cycle/title", at, w, "Tank. Shaded: arc on. Dashes: compressor off");
    cycle_picture(app, {at.x, y, w, plot_height});
    y += plot_height + 8;
    y += figures(app, {at.x, y}, w) + 10;
    return y + words(ui, "air/dryness", Type::text, {at.x, y}, w, app.say(r.dryness), ui.tokens().ink) + 6 - at.y;
}

float basis(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const air::Report& r = app.sheet().air;
    float y = at.y + section(ui, "air/basis", at, w, "What this rests on");
    for (std::size_t i = 0; i < r.basis.size(); ++i) {
        const std::string id = "air/basis/" + std::to_string(i);
        y += words(ui, id, Type::label, {at.x, y}, w, app.say(r.basis[i]), ui.tokens().quiet) + 6;
    }
    return y - at.y;
}

} // namespace

void air_sheet(App& app, Rect place, bool closable) {
    const air::Report r = app.sheet().air; // as the sheet begins: a touch below may make another
    const float w = place.w - 2 * sheet_margin;
    const Sign sign = r.verdict == air::AirVerdict::sustained             ? Sign::holds
                      : r.verdict == air::AirVerdict::not_enough_pressure ? Sign::stop
                                                                          : Sign::caution;
    const auto verdict = [&](Rect at) {
        return signed_words(app, "air/summary", sign, {at.x + sheet_margin, at.y}, w,
                            say_summary(r.message, app.speech()), app.say(r.message.remedy));
    };
    const auto body_of = [&](Rect body) {
        const float x = body.x + sheet_margin;
        float y = body.y + 10;
        y += number_choice(app, {body.x, y, body.w, 0}, "shop.air.humidity", "Humidity", days, day_names, 3);
        y += entries(app, body, y, first_paths);
        y += outcome(app, {x, y}, w);
        y += section(app.ui(), "air/fields", {x, y}, w, "Torch and weather");
        y += entries(app, body, y, other_paths);
        y += basis(app, {x, y}, w);
        return y + 20 - body.y;
    };
    SheetFrame frame{"air", "Air, compressor to torch", closable};
    frame.verdict_height =
        signed_words_height(app.ui(), w, say_summary(r.message, app.speech()), app.say(r.message.remedy));
    frame.verdict = Drawer::of(verdict);
    framed_sheet(app, place, frame, Drawer::of(body_of));
}

} // namespace torchside::web
