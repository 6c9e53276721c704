#include "web/screens/cut/figure_sketch.hpp"

#include "web/kit/arrow.hpp"
#include "web/screens/torch_scene.hpp"

namespace torchside::web {
namespace {

using Arc = TorchScene::Arc;
using Goes = TorchScene::Goes;

struct Sketch {
    const Pen& pen;
    const Tokens& t;
    Rect place;

    [[nodiscard]] Point at(float x, float y) const { return {place.centre().x + x, place.centre().y + y}; }
    void scene(float gap, Arc arc, Goes goes) const { torch_scene(pen, t, place, {gap, 14, arc, goes}); }
    /// The top of the plate in a scene.
    [[nodiscard]] float plate() const { return place.bottom() - 28; }

    /// What is measured: a line with two arrow heads.
    void measure(Point a, Point b) const {
        pen.line(a, b, t.accent, 2);
        arrow_head(pen, b, a, t.accent, 7);
        arrow_head(pen, a, b, t.accent, 7);
    }
    void height(float gap, Arc arc) const {
        scene(gap, arc, Goes::nowhere);
        const float x = place.centre().x + 34;
        pen.hline(place.centre().x + 8, x + 8, plate() - gap, t.quiet, 1);
        measure({x, plate() - gap}, {x, plate()});
    }
};

void feed(const Sketch& s) {
    s.scene(14, Arc::through, Goes::on);
}

void arc(const Sketch& s) {
    s.scene(20, Arc::through, Goes::nowhere);
    const float x = s.place.centre().x + 44;
    const float torch = s.plate() - 40;
    const float middle = (torch + s.plate()) / 2;
    s.pen.hline(s.place.centre().x + 10, x, torch, s.t.accent, 2);
    s.pen.vline(x, torch, s.plate(), s.t.accent, 2);
    s.pen.disc({x, middle}, 12, s.t.ground);
    s.pen.ring({x, middle}, 12, s.t.ink, 2);
    s.pen.text(Type::title, {x, middle - Pen::line_height(Type::title) / 2}, s.t.ink, "V", Align::centre);
}

void cut_height(const Sketch& s) {
    s.height(16, Arc::through);
}

void pierce_height(const Sketch& s) {
    s.height(32, Arc::into);
}

void pierce_delay(const Sketch& s) {
    s.scene(26, Arc::into, Goes::nowhere);
    const Point c{s.place.centre().x + 42, s.place.y + 22};
    s.pen.disc(c, 15, s.t.ground);
    s.pen.ring(c, 15, s.t.ink, 2);
    s.pen.line(c, {c.x, c.y - 11}, s.t.accent, 2);
    s.pen.line(c, {c.x + 8, c.y}, s.t.accent, 2);
}

/// The slot from the end of the cut.
void kerf(const Sketch& s) {
    for (const float side : {-1.0F, 1.0F}) {
        const Point corners[] = {s.at(side * 60, -4), s.at(side * 13, -4), s.at(side * 9, 24), s.at(side * 60, 24)};
        s.pen.polygon(corners, 4, s.t.fill);
        s.pen.polyline(corners, 4, s.t.ink, 2, true);
    }
    s.measure(s.at(-11, -18), s.at(11, -18));
    for (const float x : {-11.0F, 11.0F}) {
        s.pen.vline(s.at(x, 0).x, s.at(0, -26).y, s.at(0, 10).y, s.t.quiet, 1);
    }
}

/// From above: the pierce in the scrap, the way to the part.
void lead_in(const Sketch& s) {
    s.pen.fill({s.at(8, -34).x, s.at(8, -34).y, 60, 62}, s.t.fill);
    s.pen.frame({s.at(8, -34).x, s.at(8, -34).y, 60, 62}, s.t.ink, 2);
    s.pen.disc(s.at(-46, 4), 6, s.t.ink);
    s.pen.line(s.at(-46, 4), s.at(8, 4), s.t.accent, 3);
    s.measure(s.at(-46, 22), s.at(8, 22));
}

/// A hole as wide as the plate is thick, from above and cut open.
void min_hole(const Sketch& s) {
    const Rect plate{s.at(-60, 10).x, s.at(-60, 10).y, 120, 24};
    s.pen.fill(plate, s.t.fill);
    s.pen.frame(plate, s.t.ink, 2);
    s.pen.fill({s.at(-12, 9).x, s.at(-12, 9).y, 24, 26}, s.t.ground);
    for (const float x : {-12.0F, 12.0F}) {
        s.pen.vline(s.at(x, 0).x, s.at(0, 9).y, s.at(0, 35).y, s.t.ink, 2);
    }
    s.pen.ring(s.at(0, -20), 12, s.t.ink, 2);
    s.measure(s.at(-12, -20), s.at(12, -20));
    s.measure(s.at(50, 10), s.at(50, 34));
}

/// A gauge with its needle.
void pressure(const Sketch& s) {
    const Point c = s.at(0, -2);
    s.pen.disc(c, 32, s.t.ground);
    s.pen.ring(c, 32, s.t.ink, 2);
    constexpr Point ways[] = {{-0.86F, 0.5F},  {-0.98F, -0.17F}, {-0.64F, -0.77F}, {0, -1},
                              {0.64F, -0.77F}, {0.98F, -0.17F},  {0.86F, 0.5F}}; // of its marks, from the middle
    for (const Point way : ways) {
        s.pen.line({c.x + 26 * way.x, c.y + 26 * way.y}, {c.x + 32 * way.x, c.y + 32 * way.y}, s.t.ink, 2);
    }
    s.pen.line(c, {c.x + 24 * ways[4].x, c.y + 24 * ways[4].y}, s.t.accent, 2);
    s.pen.vline(c.x, c.y + 32, c.y + 44, s.t.ink, 4);
}

void post_flow(const Sketch& s) {
    s.scene(20, Arc::off, Goes::nowhere);
    for (const float x : {-6.0F, 0.0F, 6.0F}) {
        s.pen.dashes({s.place.centre().x + x / 2, s.plate() - 18}, {s.place.centre().x + x * 2.5F, s.plate() - 2},
                     s.t.accent, 2, 4, 3);
    }
}

struct Row {
    std::string_view key;
    void (*draw)(const Sketch&);
};
constexpr Row rows[] = {{"feed", feed},
                        {"arc", arc},
                        {"cut_height", cut_height},
                        {"pierce_height", pierce_height},
                        {"pierce_delay", pierce_delay},
                        {"kerf", kerf},
                        {"lead_in", lead_in},
                        {"min_hole", min_hole},
                        {"pressure", pressure},
                        {"post_flow", post_flow}};

} // namespace

void figure_sketch(const Pen& pen, const Tokens& t, std::string_view key, Rect place) {
    for (const Row& row : rows) {
        if (row.key == key) {
            row.draw({pen, t, place});
        }
    }
}

} // namespace torchside::web
