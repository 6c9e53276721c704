#include "web/screens/cut/volts_picture.hpp"

#include <algorithm>
#include <string>

#include "core/supply/divider.hpp"
#include "generated/words/picture.hpp"
#include "web/screens/show.hpp"
#include "web/screens/torch_scene.hpp"

namespace torchside::web {
namespace {

using supply::ArcState;

constexpr float drawn_h = 74;
constexpr double near_v = 2; // as supply::check_arc judges

struct Case {
    ArcState state;
    Word name;
    std::string volts;
    float gap; // of the cut height
};

/// How high the torch is, in cut heights: to scale where the reading and the gradient say it.
float read_gap(const App& app, const supply::ArcCheck& check) {
    const auto& gradient = app.book().shop.height_control.gradient;
    const Length cut = app.worksheet().settings->cut_height.value;
    if (!gradient) {
        return 0;
    }
    const bool low = check.off < Voltage{};
    const Length off = supply::height_at((low ? -1.0 : 1.0) * check.off, {}, *gradient);
    const double share = 1 + (low ? -1.0 : 1.0) * (off.in(mm) / cut.in(mm));
    return static_cast<float>(std::clamp(share, 0.1, 2.5));
}

} // namespace

void volts_picture(Body& body, const std::optional<supply::ArcCheck>& check) {
    App& app = body.app;
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const cut::Settings& s = *app.worksheet().settings;
    const double ratio = std::max(1.0, app.book().shop.height_control.divider_ratio);
    const auto at_controller = [&](double off) {
        return show(Voltage{(s.arc.value.in(volt) + off) / ratio, volt}, app.units());
    };
    const Shown least = at_controller(-near_v);
    const Shown most = at_controller(near_v);
    Case cases[] = {
        {ArcState::low, words::picture::too_low, app.say(words::picture::Below{.volts = least.whole()}), 0.4F},
        {ArcState::as_expected, words::picture::right,
         app.say(words::picture::Between{.high = most.whole(), .low = least.number}), 1},
        {ArcState::high, words::picture::too_high, app.say(words::picture::Above{.volts = most.whole()}), 1.9F}};
    for (Case& c : cases) {
        const float gap = check && check->state == c.state ? read_gap(app, *check) : 0;
        c.gap = gap > 0 ? gap : c.gap;
    }
    const std::string_view yours = app.word(words::picture::reading);
    Grid grid{{}, 3, 0};
    const float room = (body.room() - 16) / 3 - 8;
    float words_h = 0;
    for (const Case& c : cases) {
        words_h = std::max(words_h, pen.paragraph(Type::title, {}, {}, app.word(c.name), room, false) +
                                        pen.paragraph(Type::label, {}, {}, c.volts, room, false));
    }
    const float mark_h = check ? pen.paragraph(Type::label, {}, {}, yours, room, false) : 0;
    body.heading("arc/picture/title", words::picture::volts);
    grid = body.grid(3, 3, drawn_h + words_h + mark_h + 22);
    const auto cut_mm = static_cast<float>(s.cut_height.value.in(mm));
    const float px = torch_scene_scale({0, 0, room, drawn_h}, 2.5F * cut_mm);
    const float plate = px * static_cast<float>(app.book().job.thickness.in(mm));
    ui.open_group("arc/picture", Role::list, {grid.place.x, grid.place.y, grid.place.w, grid.height(3)},
                  words::picture::volts);
    for (std::size_t i = 0; i < 3; ++i) {
        const Case& c = cases[i];
        const Rect cell = grid.cell(i);
        const bool marked = check && check->state == c.state;
        ui.node("arc/picture/" + std::to_string(i), Role::listitem, cell, c.name,
                c.volts + (marked ? ". " + std::string(yours) : std::string()));
        if (marked) {
            pen.frame(cell, t.ink, 2);
            pen.fill({cell.x, cell.y, cell.w, 4}, t.accent);
        }
        torch_scene(pen, t, {cell.x + 4, cell.y + 6, cell.w - 8, drawn_h},
                    {px * c.gap * cut_mm, plate, TorchScene::Arc::through, TorchScene::Goes::nowhere});
        const Point at{cell.x + 4, cell.y + drawn_h + 10};
        const float name_h = pen.paragraph(Type::title, at, t.ink, app.word(c.name), room, true, Align::centre);
        const float volts_h =
            pen.paragraph(Type::label, {at.x, at.y + name_h}, t.quiet, c.volts, room, true, Align::centre);
        if (marked) {
            pen.paragraph(Type::label, {at.x, at.y + name_h + volts_h}, t.ink, yours, room, true, Align::centre);
        }
    }
    ui.close_group();
    body.gap(8);
}

} // namespace torchside::web
