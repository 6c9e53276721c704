#include "core/tune/next_test.hpp"

#include <algorithm>
#include <cmath>

#include "core/tune/plan.hpp"
#include "core/tune/plate_terms.hpp"
#include "generated/words/tune.hpp"

namespace torchside::tune {
namespace {

constexpr double ladder_below = 0.35;
constexpr double rung = 1.12;
constexpr double hardly = 0.5;
constexpr double told_apart = 0.015; // of ln(feed): less is the same feed on the screen

struct Known {
    Speed level_1{};
    Distribution belief{};
};

Known known(const Posterior& posterior, const cut::CutSetup& asked) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Regressors place = feed_regressors(plate);
    return {cut::balance_feed(plate, cut::small_air_torch(plate.metal)),
            posterior.feed.distribution(place.x, place.tag)};
}

// Chance that the right feed is at most so far below the limit that a cut there is clean, or slower still.
double reached(const Search& search, const Window& window, double limit) {
    double sum = 0.0;
    for (std::size_t i = 0; i < search.mass().size(); ++i) {
        if (search.low() + static_cast<double>(i) * Search::step <= limit - std::log1p(-window.width)) {
            sum += search.mass()[i];
        }
    }
    return sum;
}

Text advice_of(const Outlook& o) {
    if (o.past_table) {
        return words::tune::PastTable{.chance = words::percent(o.next_clean)};
    }
    if (o.stop) {
        return words::tune::GoToWork{.chance = words::percent(o.best_clean)};
    }
    if (o.ladder) {
        return words::tune::CutLadder{.chance = words::percent(o.best_clean), .legs = o.legs.legs};
    }
    return words::tune::CutOne{.chance = words::percent(o.next_clean)};
}

LadderPlan ladder_over(const Estimate<Speed>& feed, Speed fastest) {
    LadderPlan a;
    const Speed high = std::min(feed.high, fastest);
    const Speed low = std::min(feed.low, high);
    a.ratio = rung;
    a.legs = std::clamp(static_cast<int>(std::ceil(std::log(high / low) / std::log(rung))) + 1, 5, 9);
    a.middle = std::sqrt(low / high) * high;
    const Speed top = std::pow(rung, 0.5 * (a.legs - 1)) * a.middle;
    if (top > fastest) {
        a.middle = fastest / top * a.middle;
    }
    return a;
}

std::vector<CurvePoint> curve_of(const Search& search, Speed level_1) {
    std::vector<CurvePoint> curve;
    const std::vector<double> clean = search.chances();
    curve.reserve(clean.size());
    for (std::size_t i = 0; i < clean.size(); ++i) {
        const double y = search.low() + static_cast<double>(i) * Search::step;
        curve.push_back({std::exp(y) * level_1, search.mass()[i] / Search::step, clean[i]});
    }
    return curve;
}

Speed top_of(const std::vector<CurvePoint>& curve) {
    const auto less = [](const CurvePoint& a, const CurvePoint& b) { return a.density < b.density; };
    const auto top = std::max_element(curve.begin(), curve.end(), less);
    return top != curve.end() ? top->feed : Speed{};
}

bool are_one(Speed a, Speed b) {
    return std::abs(std::log(a / b)) < told_apart;
}

double clean_at(const std::vector<CurvePoint>& curve, Speed feed) {
    const auto nearer = [&](const CurvePoint& a, const CurvePoint& b) {
        return std::abs(std::log(a.feed / feed)) < std::abs(std::log(b.feed / feed));
    };
    return std::min_element(curve.begin(), curve.end(), nearer)->clean;
}

/// A test at the feed that the cut is set to, where that is as good: one figure, not two a step of the search apart.
void take_cut_feed(Outlook& o, Speed fastest) {
    const Speed cut = o.feed.value;
    if (o.curve.empty() || cut > fastest || !are_one(cut, o.next) || !are_one(cut, o.top)) {
        return;
    }
    const double clean = clean_at(o.curve, cut);
    if (o.stop && clean <= sure_enough) {
        return;
    }
    o.next = cut;
    o.next_clean = clean;
    if (o.stop) {
        o.best = o.next;
        o.best_clean = o.next_clean;
    }
}

OffTop off_top(const Outlook& o, Speed fastest) {
    const Speed at = o.stop ? o.best : o.next;
    if (!(o.top > Speed{}) || are_one(at, o.top)) {
        return OffTop::no;
    }
    if (fastest < o.top && at < o.top) {
        return OffTop::table;
    }
    return o.stop ? OffTop::leans : OffTop::tells_more;
}

} // namespace

Outcome<Outlook> look(const Posterior& posterior, const cut::CutSetup& plate, const torchside::Table& table,
                      bool coupons) {
    const Outcome<cut::Balance> balance =
        cut::balance(plate_of(plate, posterior.nozzles), cut::small_air_torch(plate.metal));
    if (!balance) {
        return balance.fault();
    }
    const Known k = known(posterior, plate);
    const Search search(k.belief, posterior.feed.model().window);
    const double limit = std::log(table.max_feed / k.level_1);
    const Test best = search.best(limit);
    Outlook o;
    o.feed = feed(posterior, plate);
    o.curve = curve_of(search, k.level_1);
    o.best = std::exp(best.y) * k.level_1;
    o.best_clean = best.good;
    o.stop = best.good > sure_enough;
    const Test next = o.stop ? best : search.next(limit);
    o.next = std::exp(next.y) * k.level_1;
    o.next_clean = next.good;
    o.cuts_to_come = o.stop ? 1.0 / best.reads : next.cuts;
    o.top = top_of(o.curve);
    take_cut_feed(o, table.max_feed);
    o.off_top = off_top(o, table.max_feed);
    o.past_table = !o.stop && reached(search, posterior.feed.model().window, limit) < hardly;
    o.ladder = coupons && !o.past_table && best.good < ladder_below;
    o.legs = ladder_over(o.feed, table.max_feed);
    o.advice = advice_of(o);
    return o;
}

} // namespace torchside::tune
