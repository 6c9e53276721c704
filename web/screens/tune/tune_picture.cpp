#include "web/screens/tune/tune_picture.hpp"

#include <algorithm>
#include <vector>

#include "core/quantity/print.hpp"
#include "generated/words/feed_test.hpp"
#include "web/kit/plot.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

struct Axis {
    double low, high;
    Rect plot;

    [[nodiscard]] float x(Speed feed) const { return plot.x + plot.w * log_share(feed.in(mm_min), low, high); }
};

/// The part of the curve worth drawing: where the density is more than a two-hundredth of its peak.
Axis axis_of(const std::vector<tune::CurvePoint>& curve, double peak, Rect plot) {
    double low = 0;
    double high = 0;
    for (const tune::CurvePoint& p : curve) {
        if (p.density > peak / 200) {
            low = low > 0 ? low : p.feed.in(mm_min);
            high = p.feed.in(mm_min);
        }
    }
    return {low, std::max(high, low * 1.01), plot};
}

} // namespace

void verdict_mark(const Pen& pen, const Tokens& t, tune::Verdict verdict, Point at) {
    switch (verdict) {
    case tune::Verdict::too_slow: {
        const Point diamond[] = {{at.x, at.y - 7}, {at.x + 7, at.y}, {at.x, at.y + 7}, {at.x - 7, at.y}};
        pen.polygon(diamond, 4, t.ink);
        break;
    }
    case tune::Verdict::clean:
        pen.disc(at, 6.5F, t.ground);
        pen.ring(at, 6, t.ink, 2);
        break;
    case tune::Verdict::too_fast:
        pen.triangle({at.x, at.y - 8}, {at.x + 8, at.y + 6}, {at.x - 8, at.y + 6}, t.ink);
        break;
    }
}

float tune_picture_height(float screen_height) {
    constexpr float below = 508; // what is touched here, so that it all stands in view on a phone
    return std::clamp(screen_height - below, 108.0F, 176.0F);
}

void tune_picture(App& app, Rect place, const Tuning& tuning) {
    const tune::Outlook& outlook = tuning.outlook;
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Units units = app.units();
    double peak = 0;
    for (const tune::CurvePoint& p : outlook.curve) {
        peak = std::max(peak, p.density);
    }
    if (!(peak > 0)) {
        return;
    }
    const Rect plot{place.x, place.y + 8, place.w, place.h - 40};
    const Axis axis = axis_of(outlook.curve, peak, plot);
    const auto y_at = [&](double density) { return plot.bottom() - (plot.h - 6) * linear_share(density, 0, peak); };
    std::vector<Point> line;
    for (const tune::CurvePoint& p : outlook.curve) {
        const double v = p.feed.in(mm_min);
        if (v >= axis.low && v <= axis.high) {
            line.push_back({axis.x(p.feed), y_at(p.density)});
        }
    }
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Point slab[] = {line[i], line[i + 1], {line[i + 1].x, plot.bottom()}, {line[i].x, plot.bottom()}};
        pen.polygon(slab, 4, t.fill);
    }
    // What the next cut would tell: a right feed inside this window makes it clean.
    const float next = axis.x(outlook.next);
    const float from = axis.x(tuning.right_from);
    const float to = axis.x(tuning.right_to);
    for (const float x : {from, to}) {
        pen.dashes({x, plot.y}, {x, plot.bottom()}, t.accent, 1.5F, 4, 4);
    }
    pen.dashes({from, plot.y}, {to, plot.y}, t.accent, 1.5F, 4, 4);
    pen.polyline(line.data(), static_cast<int>(line.size()), t.ink, 2);
    pen.fill({next - 1.5F, plot.y + 6, 3, plot.h - 6}, t.accent);
    pen.hline(plot.x, plot.right(), plot.bottom(), t.ink, 1.5F);
    for (const tune::TestCut* cut : cuts_of_job(app.book())) {
        if (cut->feed && cut->verdict) {
            verdict_mark(pen, t, *cut->verdict, {axis.x(*cut->feed), plot.bottom()});
        }
    }
    const float below = plot.bottom() + 10;
    pen.text(Type::label, {plot.x, below}, t.quiet, print(Speed{axis.low, mm_min}, units).text());
    pen.text(Type::label, {plot.right(), below}, t.quiet, print(Speed{axis.high, mm_min}, units).text(), Align::right);
    ui.node("tune/picture", Role::img, place,
            app.say(words::feed_test::Picture{.feed = show_feed(outlook.feed.value, units).whole(),
                                              .range = show_range(app, outlook.feed)}));
}

} // namespace torchside::web
