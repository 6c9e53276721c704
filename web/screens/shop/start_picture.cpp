#include "web/screens/shop/start_picture.hpp"

#include <algorithm>
#include <string>

#include "core/quantity/print.hpp"
#include "generated/words/start.hpp"
#include "generated/words/wiring.hpp"
#include "web/kit/plot.hpp"
#include "web/screens/cut/circuit_picture.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float stroke = 2;

/// What a picture is drawn with; a word below a thing, and a figure in it.
struct Sheet {
    const Pen& pen;
    const Tokens& t;

    void box(Rect place) const {
        pen.fill(place, t.ground);
        pen.frame(place, t.ink, stroke);
    }
    void figure(Point centre, std::string_view text) const {
        pen.text(Type::strong_label, {centre.x, centre.y - Pen::line_height(Type::strong_label) / 2}, t.ink, text,
                 Align::centre);
    }
};

/// A torch whose tip is at `tip`, with its arc down to the plate.
void start_torch(const Sheet& s, Point tip, float arc, Rect plate) {
    const Point body[] = {{tip.x - 10, tip.y - 34}, {tip.x + 10, tip.y - 34}, {tip.x + 10, tip.y - 10},
                          {tip.x + 4, tip.y},       {tip.x - 4, tip.y},       {tip.x - 10, tip.y - 10}};
    s.pen.fill(plate, s.t.fill);
    for (const float y : {plate.y, plate.bottom()}) {
        s.pen.hline(plate.x, plate.right(), y, s.t.ink, stroke);
    }
    s.pen.fill({tip.x - 1.5F, tip.y, 3, arc + plate.h}, s.t.accent);
    s.pen.polyline(body, 6, s.t.ink, stroke, true);
}

void start_plug(const Sheet& s, Point at, std::string_view volts) {
    s.pen.hline(at.x, at.x + 22, at.y, s.t.ink, stroke);
    s.box({at.x - 14, at.y - 10, 16, 20});
    for (const float dy : {-5.0F, 5.0F}) {
        s.pen.hline(at.x - 22, at.x - 14, at.y + dy, s.t.ink, stroke);
    }
    s.pen.text(Type::label, {at.x - 22, at.y - 12 - Pen::line_height(Type::label)}, s.t.quiet, volts);
}

/// Ticks of a ruler's edge, the middling and the long ones by their count, figures at the long ones where they go in, and the
/// unit at the end.
struct Scale {
    float step; // px
    int middling, longest;
    double one; // a long one, in that unit
    std::string_view unit;
};
void start_scale(const Sheet& s, Rect ruler, bool top, bool chosen, const Scale& scale) {
    const Colour ink = chosen ? s.t.ink : s.t.quiet;
    const float edge = top ? ruler.y : ruler.bottom();
    const float way = top ? 1.0F : -1.0F;
    const float words = top ? edge + 12 : edge - 12 - Pen::line_height(Type::label);
    const float end = s.pen.text(Type::label, {ruler.right() - 6, words}, ink, scale.unit, Align::right) -
                      s.pen.width(Type::label, scale.unit);
    const float apart = scale.step * static_cast<float>(scale.longest);
    const int every = scale.longest * (s.pen.width(Type::label, "000") + 6 > apart ? 2 : 1);
    for (int i = 0; scale.step * static_cast<float>(i) <= ruler.w; ++i) {
        const float x = ruler.x + scale.step * static_cast<float>(i);
        const bool is_long = i % scale.longest == 0;
        const float length = is_long ? 16.0F : i % scale.middling == 0 ? 11.0F : 6.0F;
        s.pen.vline(x, edge, edge + way * length, ink, is_long || chosen ? 1.5F : 1);
        const std::string figure = print_trimmed(scale.one * static_cast<double>(i / scale.longest), 0);
        if (i > 0 && i % every == 0 && x + 3 + s.pen.width(Type::label, figure) < end - 6) {
            s.pen.text(Type::label, {x + 3, words}, ink, figure);
        }
    }
}

} // namespace

float start_picture_height() {
    return 94;
}

void start_machine_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech) {
    const Sheet s{ui.pen(), ui.tokens()};
    const Machine& m = book.shop.machine;
    const Units units = speech.units;
    const float y = place.y + 46;
    const bool two = m.low_voltage.max_current.has_value();
    const Rect machine{place.x + 78, place.y + 10, 104, 74};
    start_plug(s, {place.x + 26, two ? y - 14 : y}, print(book.shop.circuit.line, units).text());
    if (two) {
        start_plug(s, {place.x + 26, y + 32}, print(Voltage{120, volt}, units).text());
        s.pen.hline(place.x + 48, machine.x, y - 14, s.t.ink, stroke);
    }
    s.pen.hline(place.x + 48, machine.x, two ? y + 32 : y, s.t.ink, stroke);
    s.box(machine);
    const Point dial{machine.x + 34, machine.centre().y};
    constexpr float radius = 22;
    constexpr double most = 100;
    s.pen.ring(dial, radius, s.t.ink, stroke);
    const auto at = [&](double amps, float r) {
        return on_circle(dial, r, 0.375F + 0.75F * linear_share(amps, 0, most)); // from lower left to lower right
    };
    for (double amps = 0; amps <= most; amps += 20) {
        s.pen.line(at(amps, radius + 2), at(amps, radius + 6), s.t.quiet, 1.5F);
    }
    s.pen.line(dial, at(m.max_current.in(ampere), radius - 3), s.t.accent, 3);
    s.figure({machine.right() - 24, machine.centre().y}, print(m.max_current, units).text());
    const Rect plate{place.right() - 100, place.y + 76, 100, 14};
    const Point tip{plate.centre().x, plate.y - 8};
    s.pen.hline(machine.right(), tip.x, place.y + 20, s.t.ink, stroke);
    s.pen.vline(tip.x, place.y + 20, tip.y - 34, s.t.ink, stroke);
    start_torch(s, tip, 8, plate);
    ui.node("start/picture", Role::img, place, words::start::machine_picture);
}

void start_supply_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech) {
    using supply::Stop;
    const Sheet s{ui.pen(), ui.tokens()};
    const supply::Circuit& c = book.shop.circuit;
    struct At {
        Stop stop;
        Word name;
        std::string figure;
    };
    const At stops[] = {
        {Stop::panel, words::wiring::panel, print(c.line, speech.units).text()},
        {Stop::breaker, words::wiring::breaker, print(c.breaker, speech.units).text()},
        {Stop::run, words::wiring::run,
         c.run_mm2 ? print_field(*c.run_mm2, FieldUnit::mm2, speech.units) : std::to_string(c.run_awg) + " AWG"},
        {Stop::machine, words::wiring::machine, {}},
        {Stop::torch, words::wiring::torch, {}}};
    constexpr float count = 5;
    const float cell = place.w / count;
    const float y = place.y + 30;
    const bool named = std::all_of(std::begin(stops), std::end(stops),
                                   [&](const At& at) { return s.pen.width(Type::label, ui.word(at.name)) <= cell; });
    float x = place.x + cell / 2;
    s.pen.hline(x, x + cell * (count - 1), y, s.t.ink, stroke);
    for (const At& at : stops) {
        if (at.stop == Stop::run) {
            s.pen.fill({x - cell / 2 + 4, y - 3, cell - 8, 6}, s.t.ink);
        } else {
            circuit_symbol(s.pen, s.t, at.stop, {x, y}, s.t.ink, 1.7F);
        }
        const float below = place.y + 56;
        if (named) {
            s.pen.text(Type::label, {x, below}, s.t.quiet, ui.word(at.name), Align::centre);
        }
        if (s.pen.width(Type::label, at.figure) <= cell - 4) { // what is assumed says it too
            s.pen.text(Type::label, {x, below + (named ? Pen::line_height(Type::label) + 2 : 0)}, s.t.ink, at.figure,
                       Align::centre);
        }
        x += cell;
    }
    ui.node("start/picture", Role::img, place, words::wiring::chain);
}

void start_air_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech) {
    const Sheet s{ui.pen(), ui.tokens()};
    const air::AirSystem& a = book.shop.air;
    // The usual tanks apart from each other, the largest as large as its place.
    const float grow = 0.5F + 0.5F * log_share(a.receiver.in(litre), 50, 300);
    const float h = 50 * grow, w = 150 * grow;
    const Rect tank{place.x + 8, place.y + 84 - h, w, h};
    const float end = h / 4;
    const Point shell[] = {{tank.x + end, tank.y},
                           {tank.right() - end, tank.y},
                           {tank.right(), tank.y + end},
                           {tank.right(), tank.bottom() - end},
                           {tank.right() - end, tank.bottom()},
                           {tank.x + end, tank.bottom()},
                           {tank.x, tank.bottom() - end},
                           {tank.x, tank.y + end}};
    s.pen.polygon(shell, 8, s.t.fill);
    s.pen.polyline(shell, 8, s.t.ink, stroke, true);
    for (const float x : {tank.x + w / 4, tank.right() - w / 4}) {
        s.pen.vline(x, tank.bottom(), tank.bottom() + 10, s.t.ink, stroke);
    }
    const Rect pump{tank.x + w / 2 - 20, tank.y - 22, 40, 22};
    s.box(pump);
    s.pen.ring({pump.x - 10, pump.centre().y}, 10, s.t.ink, stroke);
    s.figure(tank.centre(), print(a.receiver, speech.units).text());
    s.pen.text(Type::strong_label, {pump.right() + 8, pump.centre().y - Pen::line_height(Type::strong_label) / 2},
               s.t.ink, print(a.compressor, speech.units).text());
    const Rect plate{place.right() - 80, place.y + 76, 80, 14};
    const Point tip{plate.centre().x, plate.y - 8};
    const Point hose[] = {{tank.right(), tank.centre().y},
                          {tank.right() + 18, tank.centre().y},
                          {tank.right() + 18, place.bottom() - 8},
                          {plate.x - 18, place.bottom() - 8},
                          {plate.x - 18, place.y + 20},
                          {tip.x, place.y + 20},
                          {tip.x, tip.y - 34}};
    s.pen.polyline(hose, 7, s.t.ink, stroke);
    start_torch(s, tip, 8, plate);
    ui.node("start/picture", Role::img, place, words::start::air_picture);
}

void start_units_picture(Ui& ui, Rect place, const Workbook& book, const Speech& speech) {
    const Sheet s{ui.pen(), ui.tokens()};
    const bool metric = speech.units.metric();
    Rect rest{place.x, place.y + 14, place.w, 76};
    const Rect tag = rest.take_right(76);
    const Rect ruler{rest.x + 1, rest.y, rest.w - 20, rest.h};
    s.box(ruler);
    constexpr float px_a_mm = 2.6F;
    start_scale(s, ruler, true, metric, {px_a_mm, 5, 10, 10, "mm"});
    start_scale(s, ruler, false, !metric, {px_a_mm * 25.4F / 8, 4, 8, 1, "in"});
    const Point edge[] = {{tag.x + 16, tag.y + 12},
                          {tag.right() - 1, tag.y + 12},
                          {tag.right() - 1, tag.bottom() - 12},
                          {tag.x + 16, tag.bottom() - 12},
                          {tag.x, tag.centre().y}};
    s.pen.polyline(edge, 5, s.t.ink, stroke, true);
    s.pen.ring({tag.x + 14, tag.centre().y}, 3, s.t.ink, 1.5F);
    s.figure({tag.x + 46, tag.centre().y}, book.shop.rates.currency);
    ui.node("start/picture", Role::img, place, words::start::units_picture);
}

} // namespace torchside::web
