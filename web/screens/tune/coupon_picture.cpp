#include "web/screens/tune/coupon_picture.hpp"

#include <algorithm>
#include <vector>

#include "core/part/trace.hpp"
#include "generated/words/coupon.hpp"
#include "generated/words/picture.hpp"
#include "web/screens/show.hpp"
#include "web/screens/torch_scene.hpp"

namespace torchside::web {
namespace {

constexpr float most_height = 250;
constexpr float margin = 1; // for the plate's own line
constexpr double arcs_within_mm = 0.05;
constexpr float words_room = 104; // beside the legs of a ladder

struct Scale {
    float px_per_mm;
    Point origin; // of the coupon, lower left

    [[nodiscard]] Point at(double x_mm, double y_mm) const {
        return {origin.x + px_per_mm * static_cast<float>(x_mm), origin.y - px_per_mm * static_cast<float>(y_mm)};
    }
};

void draw_run(const Pen& pen, const Tokens& t, const Scale& scale, const part::Run& run) {
    std::vector<Point> path;
    for (const part::Point& p : part::trace(run.path, false, arcs_within_mm)) {
        path.push_back(scale.at(p.x, p.y));
    }
    pen.polyline(path.data(), static_cast<int>(path.size()), t.accent, 2.5F);
    pen.disc(path.front(), 4, t.ink);
}

} // namespace

std::string leg_words(const App& app, const tune::Coupon& coupon, const tune::Leg& leg) {
    return coupon.kind == tune::CouponKind::heights ? app.say(words::coupon::LegHeight{.height = leg.cut_height})
                                                    : show_text(leg.feed, app.units());
}

std::vector<std::size_t> from_below(const tune::Coupon& coupon) {
    std::vector<std::size_t> order(coupon.legs.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        std::size_t below = 0;
        for (const part::Run& other : coupon.path.runs) {
            below += other.path.front().at.y < coupon.path.runs[i].path.front().at.y ? 1 : 0;
        }
        order[below] = i;
    }
    return order;
}

void coupon_picture(Body& body, const tune::Coupon& coupon) {
    const App& app = body.app;
    Ui& ui = body.ui();
    const float w = body.room();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const bool legs = coupon.kind == tune::CouponKind::ladder || coupon.kind == tune::CouponKind::heights;
    const auto width = static_cast<float>(coupon.width.in(mm));
    const auto height = static_cast<float>(coupon.height.in(mm));
    const float room = w - 2 * margin - (legs ? words_room : 0);
    const float px = std::min(room / width, (most_height - 2 * margin) / height);
    Rect plate = body.inside(px * height + 2 * margin);
    plate.w = std::min(w, px * width + 2 * margin + (legs ? words_room : 0));
    const Scale scale{px, {plate.x + margin, plate.bottom() - margin}};
    pen.fill(plate, t.fill);
    pen.frame(plate, t.ink, 1.5F);
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        const part::Run& run = coupon.path.runs[i];
        draw_run(pen, t, scale, run);
        if (legs) {
            const Point end = scale.at(run.path.back().at.x, run.path.back().at.y);
            pen.text(Type::label, {end.x + 10, end.y - 9}, t.ink, leg_words(app, coupon, coupon.legs[i]));
        }
    }
    ui.node("coupon/picture", Role::img, plate,
            app.say(words::coupon::Picture{.across = coupon.width, .up = coupon.height}));
}

void heights_picture(Body& body, const tune::Coupon& coupon) {
    constexpr float drawn_h = 92;
    const App& app = body.app;
    Ui& ui = body.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const std::vector<std::size_t> order = from_below(coupon);
    if (order.empty()) {
        return;
    }
    const float line = Pen::line_height(Type::label);
    body.heading("coupon/high/title", words::picture::heights);
    Grid grid = body.grid(order.size(), order.size(), drawn_h + 2 * line + 2);
    grid.apart.x = grid.columns > 6 ? 2.0F : 6.0F;
    double most = 0;
    for (const tune::Leg& leg : coupon.legs) {
        most = std::max(most, leg.cut_height.in(mm));
    }
    const float px = torch_scene_scale({0, 0, 0, drawn_h}, static_cast<float>(most));
    const float plate = px * static_cast<float>(app.book().job.thickness.in(mm));
    ui.open_group("coupon/high", Role::list, {grid.place.x, grid.place.y, grid.place.w, grid.height(order.size())},
                  words::picture::heights);
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Length height = coupon.legs[order[i]].cut_height;
        const Shown shown = show(height, app.units());
        const Rect cell = grid.cell(i);
        const std::string leg = app.say(words::coupon::Leg{.number = static_cast<int>(i) + 1});
        ui.node("coupon/high/" + std::to_string(i), Role::listitem, cell, leg, shown.whole());
        torch_scene(
            pen, t, {cell.x, cell.y, cell.w, drawn_h},
            {px * static_cast<float>(height.in(mm)), plate, TorchScene::Arc::through, TorchScene::Goes::nowhere});
        pen.words_in({cell.x, cell.y + drawn_h, cell.w, line}, Type::title, t.ink, shown.number, Align::centre);
        pen.words_in({cell.x, cell.y + drawn_h + line, cell.w, line}, Type::label, t.quiet, std::to_string(i + 1),
                     Align::centre);
    }
    ui.close_group();
    body.gap(4);
    body.note("coupon/high/note",
              app.say(words::picture::HeightsNote{.unit = std::string(app.metric() ? "mm" : "in")}));
    body.gap(8);
}

} // namespace torchside::web
