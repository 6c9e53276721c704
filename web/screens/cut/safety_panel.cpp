// Safety: the shade, and all cautions of this job under seven drawings; stops and cautions bear their sign.
#include "core/safety/words.hpp"
#include "generated/words/hazards.hpp"
#include "web/screens/cut/safety_picture.hpp"
#include "web/screens/panel.hpp"

namespace torchside::web {
namespace {

constexpr Word group_names[] = {words::hazards::shock, words::hazards::eyes, words::hazards::fume,
                                words::hazards::fire,  words::hazards::ears, words::hazards::moving,
                                words::hazards::people};

void caution_words(Body& body, const safety::Caution& c) {
    App& app = body.app;
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const std::string id = "safety/" + std::string(c.code);
    body.gap(8);
    const Point mark{body.at().x + 10, body.at().y + Pen::line_height(Type::text) / 2};
    if (c.severity == Severity::note) {
        ui.pen().disc(mark, 2.5F, t.ink);
    } else {
        draw_sign(ui.pen(), t, c.severity == Severity::stop ? Sign::stop : Sign::caution, mark);
    }
    const auto indented = [&](const std::string& name, Type type, std::string_view text, Colour colour, float gap) {
        body.gap(gap + words(ui, name, type, {body.at().x + 32, body.at().y}, body.room() - 32, text, colour));
    };
    indented(id, Type::text, app.say(c.text), t.ink, 2);
    std::string limits;
    for (const Word limit : safety::limits_of(c, app.worksheet().safety.country)) {
        limits += (limits.empty() ? "" : " · ") + app.say(limit);
    }
    if (!limits.empty()) {
        indented(id + "/limits", Type::label, app.say(words::hazards::Limits{.all = limits}), t.ink, 2);
    }
    indented(id + "/source", Type::label, app.say(c.citation), t.quiet, 4);
}

/// The drawing, the name beside it, and what belongs to it.
void group_words(Body& body, safety::Group group) {
    Ui& ui = body.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.hline(body.at().x, body.at().x + body.room(), body.at().y, t.rule, 1.5F);
    if (group != safety::Group::last) {
        const auto index = static_cast<std::size_t>(group);
        const Rect head = body.inside(64);
        safety_picture(pen, t, group, {head.x + 32, head.y + 33});
        pen.text(Type::title, {head.x + 76, head.centre().y - Pen::line_height(Type::title) / 2}, t.ink,
                 ui.word(group_names[index]));
        ui.node("safety/group/" + std::to_string(index), Role::heading, head, group_names[index], {}, "level3");
    }
    for (const safety::Caution& c : body.app.worksheet().safety.cautions) {
        if (c.group == group) {
            caution_words(body, c);
        }
    }
    body.gap(10);
}

} // namespace

void safety_panel(App& app, PanelAt at) {
    panel(app, at, "safety", words::hazards::title, [&](Body& body) {
        const safety::Report& r = app.worksheet().safety;
        body.gap(12);
        body.words("safety/shade", Type::title, app.say(r.shade_text), body.ui().tokens().ink);
        body.gap(4);
        body.text("safety/shade/note", app.say(safety::shade_note(r)));
        body.gap(14);
        for (int group = 0; group <= static_cast<int>(safety::Group::last); ++group) {
            group_words(body, static_cast<safety::Group>(group));
        }
        body.gap(12);
    });
}

} // namespace torchside::web
