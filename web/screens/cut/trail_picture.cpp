#include "web/screens/cut/trail_picture.hpp"

#include <algorithm>

#include "core/quantity/print.hpp"
#include "core/worksheet/set_wear.hpp"
#include "generated/words/figure_about.hpp"
#include "generated/words/set_wear.hpp"
#include "web/kit/column.hpp"
#include "web/kit/plot.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr float row_height = 46;

struct Scale {
    double low, high;
    float x, w;

    [[nodiscard]] float at(double v) const { return x + w * linear_share(v, low, high); }
};

void row(App& app, const Scale& scale, Rect place, const char* id, Word name, const Estimate<Speed>& e, Speed fastest) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Units units = app.units();
    const Shown feed = show_feed(e.value, units, fastest);
    ui.node(id, Role::listitem, place, name, feed.whole() + ", " + show_range(app, e));
    pen.text(Type::label, {place.x, place.y + 2}, t.quiet, ui.word(name));
    pen.text(Type::strong_label, {place.right(), place.y + 2}, t.ink, feed.number, Align::right);
    const float axis = place.y + 34;
    pen.hline(place.x, place.right(), axis, t.hairline, 1);
    const float x0 = scale.at(e.low.in(mm_min));
    const float x1 = scale.at(e.high.in(mm_min));
    pen.fill({x0, axis - 1.5F, std::max(2.0F, x1 - x0), 3}, t.ink);
    const float x = scale.at(e.value.in(mm_min));
    pen.triangle({x - 5, axis - 10}, {x + 5, axis - 10}, {x, axis - 2}, t.accent);
}

} // namespace

void trail_picture(Body& body) {
    App& app = body.app;
    const auto& trail = app.worksheet().trail;
    if (!trail) {
        return;
    }
    const bool others = !app.book().shop.others.empty();
    const bool worn = set_slows(*trail, app.book().shop);
    const Estimate<Speed>* rows[] = {&trail->physics, &trail->practice, &trail->others, &trail->own, &trail->new_set};
    double low = 1e300;
    double high = 0;
    for (const auto* e : rows) {
        low = std::min(low, e->low.in(mm_min));
        high = std::max(high, e->high.in(mm_min));
    }
    const auto& settings = app.worksheet().settings;
    const bool capped = settings && settings->feed_capped;
    if (capped) {
        low = std::min(low, settings->feed.low.in(mm_min));
    }
    if (!(high > low)) {
        return;
    }
    const Rect at =
        body.inside(static_cast<float>(3 + (others ? 1 : 0) + (worn ? 1 : 0) + (capped ? 1 : 0)) * row_height);
    const Scale scale{low, high, at.x, at.w};
    app.ui().open_group("trail", Role::list, at, words::figure_about::how);
    Column column(app.ui(), at);
    const auto next = [&](const char* id, Word name, const Estimate<Speed>& e, Speed fastest = Speed{1e300, mm_min}) {
        row(app, scale, column.strip(row_height), id, name, e, fastest);
    };
    next("trail/physics", words::figure_about::physics, trail->physics);
    next("trail/practice", words::figure_about::practice, trail->practice);
    if (others) {
        next("trail/others", words::figure_about::others, trail->others);
    }
    next("trail/own",
         app.book().shop.example         ? words::figure_about::example
         : app.book().shop.tests.empty() ? words::figure_about::none_yet
                                         : words::figure_about::own,
         trail->own);
    if (worn) {
        next("trail/new_set", words::set_wear::new_set, trail->new_set);
    }
    if (capped) {
        next("trail/table", words::figure_about::table, settings->feed, app.book().shop.table.max_feed);
    }
    app.ui().close_group();
}

} // namespace torchside::web
