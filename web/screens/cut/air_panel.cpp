// Air: does the compressor keep up with the torch; one cut-and-recover cycle drawn from a full tank.
#include "core/air/assess.hpp"
#include "core/quantity/print.hpp"
#include "generated/words/common.hpp"
#include "generated/words/compressor.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/settings.hpp"
#include "web/screens/cut/tank_picture.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr float plot_height = 150;

// Relative humidity of days to ask about: common practice, no source.
constexpr double days[] = {0.3, 0.5, 0.85};
constexpr Label day_names[] = {words::compressor::dry, words::compressor::usual, words::compressor::humid};

void cycle_picture(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const air::Report& r = app.worksheet().air;
    const air::AirSystem& system = app.book().shop.air;
    const Units units = app.units();
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
    pen.text(Type::label, {plot.x + 6, need - Pen::line_height(Type::label) - 2}, t.accent,
             ui.word(words::compressor::needed));
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
    pen.text(Type::label, {plot.right(), plot.bottom() + 5}, t.quiet, print(r.cycle.back().at, units).text(),
             Align::right);
    ui.node("air/cycle", Role::img, place,
            app.say(words::compressor::Picture{.verdict = say_summary(r.message, app.speech())}));
}

void figures(Body& body) {
    const air::Report& r = body.app.worksheet().air;
    const Units units = body.app.units();
    if (r.runs) {
        body.line("air/runs", words::compressor::runs, print(*r.runs, units).text());
    }
    if (r.recovers) {
        body.line("air/recovers", words::compressor::recovers, print(*r.recovers, units).text());
    }
    body.line("air/share", words::compressor::share, print_percent(r.arc_share).text());
    body.line(
        "air/drop", words::compressor::drop,
        body.app.say(words::settings::Range{.high = r.hose_drop.high, .low = print(r.hose_drop.low, units).number}));
    body.line("air/min", words::compressor::least, print(r.receiver_min.value, units).text());
    body.line("air/inlet", words::compressor::inlet, print(r.inlet_at_cut_in, units).text());
    body.line("air/water", words::compressor::water, print_water(r.water_g_h, units).text());
}

constexpr PathLabel first_fields[] = {
    {"shop.air.compressor_l_min", words::compressor::delivers}, {"shop.air.compressor_duty", words::compressor::duty},
    {"shop.air.receiver_l", words::compressor::tank},           {"shop.air.cut_in_bar", words::compressor::cut_in},
    {"shop.air.cut_out_bar", words::compressor::cut_out},       {"shop.air.hose_m", words::compressor::hose},
    {"shop.air.hose_bore_mm", words::compressor::hose_bore}};
constexpr PathLabel other_fields[] = {{"shop.air.torch_l_min", words::compressor::torch_flow},
                                      {"shop.air.torch_bar", words::compressor::torch_pressure},
                                      {"shop.air.post_flow_s", words::figure::post_flow},
                                      {"shop.air.intake_c", words::compressor::intake},
                                      {"shop.air.humidity", words::compressor::humidity}};

/// What it all comes to, below what was entered.
void outcome(Body& body) {
    tank_picture(body);
    body.heading("air/cycle/title", words::compressor::picture_title);
    cycle_picture(body.app, body.inside(plot_height));
    body.gap(8);
    figures(body);
    body.gap(10);
    body.text("air/dryness", body.app.say(body.app.worksheet().air.dryness));
    body.gap(6);
}

} // namespace

void air_panel(App& app, PanelAt at) {
    const air::Report r = app.worksheet().air; // as the panel begins: a touch below may make another
    const auto verdict = [&](Body& body) {
        body.sign("air/summary", sign_of(r.verdict), say_summary(r.message, app.speech()), app.say(r.message.remedy));
    };
    const auto body_of = [&](Body& body) {
        body.gap(10);
        body.number_choice("shop.air.humidity", words::compressor::humidity, days, day_names, 3);
        body.fields(first_fields);
        outcome(body);
        body.heading("air/fields", words::compressor::torch_and_weather);
        body.fields(other_fields);
        body.notes("air/basis", words::common::based_on, app.say_all(r.basis));
        body.gap(20);
    };
    framed_panel(app, at, {"air", words::compressor::title, Drawer::of(verdict)}, Drawer::of(body_of));
}

} // namespace torchside::web
