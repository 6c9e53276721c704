// Safety: the shade, and all cautions of this job under seven drawings; stops and cautions bear their sign.
#include "core/safety/words.hpp"
#include "web/screens/safety_picture.hpp"
#include "web/screens/sheet_frame.hpp"

namespace torchside::web {
namespace {

constexpr const char* group_names[] = {"Shock", "Eyes and skin",        "Fume and gas",  "Fire",
                                       "Ears",  "Moving and hot parts", "People near by"};

Sign sign_of_caution(Severity severity) {
    return severity == Severity::stop ? Sign::stop : Sign::caution;
}

float caution_words(App& app, const safety::Caution& c, Point at, float w) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const std::string id = "safety/" + std::string(c.code);
    const float x = at.x + 32;
    const float room = w - 32;
    float y = at.y + 8;
    if (c.severity == Severity::note) {
        ui.pen().disc({at.x + 10, y + Pen::line_height(Type::text) / 2}, 2.5F, t.ink);
    } else {
        draw_sign(ui.pen(), t, sign_of_caution(c.severity), {at.x + 10, y + Pen::line_height(Type::text) / 2});
    }
    y += words(ui, id, Type::text, {x, y}, room, app.say(c.text), t.ink) + 2;
    std::string limits;
    for (const Word limit : safety::limits_of(c, app.sheet().safety.country)) {
        limits += (limits.empty() ? "Limits: " : " · ") + app.say(limit);
    }
    if (!limits.empty()) {
        y += words(ui, id + "/limits", Type::label, {x, y}, room, limits, t.ink) + 2;
    }
    return y + words(ui, id + "/source", Type::label, {x, y}, room, app.say(c.citation), t.quiet) + 4 - at.y;
}

/// The drawing, the name beside it, and what belongs to it.
float group_words(App& app, safety::Group group, Point at, float w) {
    Ui& ui = app.ui();
    const safety::Report& r = app.sheet().safety;
    float y = at.y;
    if (group != safety::Group::last) {
        const auto index = static_cast<std::size_t>(group);
        const Rect head{at.x, y, w, 64};
        ui.pen().hline(at.x, at.x + w, y, ui.tokens().rule, 1.5F);
        safety_picture(ui.pen(), ui.tokens(), group, {at.x + 32, y + 33});
        ui.pen().text(Type::title, {at.x + 76, head.centre().y - Pen::line_height(Type::title) / 2}, ui.tokens().ink,
                      group_names[index]);
        ui.node("safety/group/" + std::to_string(index), Role::heading, head, group_names[index], {}, "level3");
        y += head.h;
    } else {
        ui.pen().hline(at.x, at.x + w, y, ui.tokens().rule, 1.5F);
    }
    for (const safety::Caution& c : r.cautions) {
        if (c.group == group) {
            y += caution_words(app, c, {at.x, y}, w);
        }
    }
    return y + 10 - at.y;
}

} // namespace

void safety_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "safety", "Safety", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const safety::Report& r = app.sheet().safety;
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y + 12;
        y += words(ui, "safety/shade", Type::title, {x, y}, w, app.say(r.shade_text), ui.tokens().ink) + 4;
        y +=
            words(ui, "safety/shade/note", Type::text, {x, y}, w, app.say(safety::shade_note(r)), ui.tokens().ink) + 14;
        for (int group = 0; group <= static_cast<int>(safety::Group::last); ++group) {
            y += group_words(app, static_cast<safety::Group>(group), {x, y}, w);
        }
        return y + 12 - body.y;
    });
}

} // namespace torchside::web
