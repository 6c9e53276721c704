#include "web/screens/cut/tank_picture.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "core/quantity/print.hpp"
#include "generated/words/compressor.hpp"
#include "generated/words/picture.hpp"

namespace torchside::web {
namespace {

constexpr float tank_h = 84;
constexpr float tank_w = 46;
constexpr std::size_t most_steps = 4;

/// What happens at a corner of the cycle.
Word what_of(const std::vector<air::CyclePoint>& cycle, std::size_t i) {
    const air::CyclePoint& p = cycle[i];
    if (i == 0) {
        return words::picture::tank_full;
    }
    if (cycle[i - 1].cutting && !p.cutting) {
        return words::picture::tank_stop;
    }
    if (p.cutting && p.compressor && !cycle[i - 1].compressor) {
        return words::picture::tank_starts;
    }
    if (p.cutting && p.compressor) {
        return words::picture::tank_stays;
    }
    return p.cutting && !p.compressor && p.tank < cycle.front().tank ? words::picture::tank_least
                                                                     : words::picture::tank_again;
}

struct Step {
    Word what;
    std::string time, pressure;
    float share; // of a full tank
};

/// The gauge itself: walls, feet, the air in it down to its mark, and what the torch needs as a line that is labeled.
void tank(const Pen& pen, const Tokens& t, Rect place, float share, float need) {
    const Rect wall{place.centre().x - tank_w / 2, place.y + 6, tank_w, tank_h - 14};
    const float level = wall.bottom() - wall.h * std::clamp(share, 0.0F, 1.0F);
    const float least = wall.bottom() - wall.h * std::clamp(need, 0.0F, 1.0F);
    pen.fill({wall.x, level, wall.w, wall.bottom() - level}, t.hairline);
    for (float y = wall.bottom() - 5; y > std::max(level, least); y -= 6) { // air that the torch cannot use
        pen.hline(wall.x + 5, wall.right() - 5, y, t.quiet, 1);
    }
    pen.hline(wall.x, wall.right(), level, t.ink, 3);
    pen.frame(wall, t.ink, 2);
    for (const float x : {wall.x + 8, wall.right() - 8}) {
        pen.vline(x, wall.bottom(), wall.bottom() + 6, t.ink, 2);
    }
    pen.vline(wall.centre().x, wall.y - 6, wall.y, t.ink, 2);
    pen.dashes({wall.x - 7, least}, {wall.right() + 7, least}, t.accent, 2, 5, 3);
}

} // namespace

void tank_picture(Body& body) {
    App& app = body.app;
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const air::Report& r = app.worksheet().air;
    const Units units = app.units();
    const double full = app.book().shop.air.cut_out.in(bar);
    std::vector<Step> steps;
    for (std::size_t i = 0; i < r.cycle.size() && steps.size() < most_steps; ++i) {
        steps.push_back({what_of(r.cycle, i), print(r.cycle[i].at, units).text(), print(r.cycle[i].tank, units).text(),
                         static_cast<float>(r.cycle[i].tank.in(bar) / full)});
    }
    const std::size_t columns = ui.glove() && body.room() < 480 ? 2 : steps.size();
    const float room = (body.room() - 8 * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    float most = 0;
    for (const Step& s : steps) {
        most = std::max(most, pen.paragraph(Type::title, {}, {}, s.pressure, room, false) +
                                  pen.paragraph(Type::label, {}, {}, s.time, room, false) +
                                  pen.paragraph(Type::label, {}, {}, app.word(s.what), room, false));
    }
    body.heading("air/tank/title", words::picture::tank);
    const Grid grid = body.grid(steps.size(), columns, tank_h + most + 4);
    ui.open_group("air/tank", Role::list, {grid.place.x, grid.place.y, grid.place.w, grid.height(steps.size())},
                  words::picture::tank);
    const auto need = static_cast<float>(r.receiver_min.value.in(bar) / full);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const Step& s = steps[i];
        const Rect cell = grid.cell(i);
        ui.node("air/tank/" + std::to_string(i), Role::listitem, cell, app.word(s.what), s.pressure + ", " + s.time);
        tank(pen, t, cell, s.share, need);
        float y = cell.y + tank_h;
        y += pen.paragraph(Type::title, {cell.x, y}, t.ink, s.pressure, room, true, Align::centre);
        y += pen.paragraph(Type::label, {cell.x, y}, t.quiet, s.time, room, true, Align::centre);
        pen.paragraph(Type::label, {cell.x, y}, t.ink, app.word(s.what), room, true, Align::centre);
    }
    ui.close_group();
    body.gap(6);
    body.note("air/tank/need",
              app.say(words::picture::TankNeed{.pressure = print(r.receiver_min.value, units).text()}));
    body.gap(4);
}

} // namespace torchside::web
