#include "web/screens/cut/pierce_picture.hpp"

#include <algorithm>
#include <string>

#include "generated/words/picture.hpp"
#include "web/screens/show.hpp"
#include "web/screens/torch_scene.hpp"

namespace torchside::web {
namespace {

using Arc = TorchScene::Arc;
using Goes = TorchScene::Goes;

constexpr std::size_t count = 5;
constexpr float drawn_h = 72; // of one picture
constexpr float drawn_w = 84;
constexpr float wide = 560; // from here on they stand side by side

struct Step {
    std::string title, about;
    float gap_mm;
    Arc arc;
    Goes goes;
};

/// Where the words of a step go: beside its picture, or under it.
struct Places {
    Rect picture, words;
};
Places places_in(Rect cell, bool side_by_side) {
    Rect rest = cell;
    if (side_by_side) {
        const Rect picture = rest.take_top(drawn_h);
        rest.take_top(6);
        return {picture, rest};
    }
    const Rect picture = rest.take_left(drawn_w);
    rest.take_left(12);
    return {{picture.x, picture.y, picture.w, drawn_h}, rest};
}

float words_height(const Pen& pen, const Step& step, float room) {
    return pen.paragraph(Type::title, {}, {}, step.title, room, false) +
           pen.paragraph(Type::label, {}, {}, step.about, room, false);
}

} // namespace

void pierce_picture(Body& body) {
    App& app = body.app;
    const auto& s = app.worksheet().settings;
    if (!s || !s->pierce_delay) {
        return;
    }
    const Units units = app.units();
    const auto high = static_cast<float>(s->pierce_height.value.in(mm));
    const auto low = static_cast<float>(s->cut_height.value.in(mm));
    const std::string up = show(s->pierce_height.value, units).whole();
    const std::string down = show(s->cut_height.value, units).whole();
    const std::string wait = show(s->pierce_delay->value, units).whole();
    const std::string feed = show_feed(app, s->feed.value).whole();
    const Step steps[count] = {
        {app.say(words::picture::touch), app.say(words::picture::touch_about), 0, Arc::off, Goes::down},
        {app.say(words::picture::Lift{.height = up}), app.say(words::picture::lift_about), high, Arc::off, Goes::up},
        {app.say(words::picture::Wait{.delay = wait}), app.say(words::picture::wait_about), high, Arc::into,
         Goes::nowhere},
        {app.say(words::picture::Down{.height = down}), app.say(words::picture::down_about), low, Arc::through,
         Goes::down},
        {app.say(words::picture::Move{.feed = feed}), app.say(words::picture::move_about), low, Arc::through,
         Goes::on}};
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    body.heading("pierce/title", words::picture::pierce);
    body.gap(6);
    const bool side_by_side = body.room() >= wide;
    const float room = side_by_side ? (body.room() - 4 * 10) / 5 : body.room() - drawn_w - 12;
    float most = 0;
    for (const Step& step : steps) {
        most = std::max(most, words_height(pen, step, room));
    }
    Grid grid = body.grid(count, side_by_side ? count : 1, side_by_side ? drawn_h + 6 + most : std::max(drawn_h, most));
    grid.apart = side_by_side ? Point{10, 8} : grid.apart;
    const float px = torch_scene_scale({0, 0, drawn_w, drawn_h}, std::max(high, low));
    const float plate = px * static_cast<float>(app.book().job.thickness.in(mm));
    ui.open_group("pierce/steps", Role::list, {grid.place.x, grid.place.y, grid.place.w, grid.height(count)},
                  words::picture::pierce);
    for (std::size_t i = 0; i < count; ++i) {
        const Step& step = steps[i];
        const Rect cell = grid.cell(i);
        const Places at = places_in(cell, side_by_side);
        ui.node("pierce/step/" + std::to_string(i), Role::listitem, cell, std::to_string(i + 1) + ". " + step.title,
                step.about);
        torch_scene(pen, t, at.picture, {px * step.gap_mm, plate, step.arc, step.goes});
        pen.text(Type::label, {at.picture.x, at.picture.y}, t.quiet, std::to_string(i + 1));
        const float top = side_by_side ? at.words.y : at.words.centre().y - words_height(pen, step, at.words.w) / 2;
        const float title = pen.paragraph(Type::title, {at.words.x, top}, t.ink, step.title, at.words.w);
        pen.paragraph(Type::label, {at.words.x, top + title}, t.quiet, step.about, at.words.w);
    }
    ui.close_group();
    body.gap(6);
    body.note("pierce/scale", words::picture::heights_to_scale);
    body.gap(8);
}

} // namespace torchside::web
