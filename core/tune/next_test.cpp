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
constexpr double told_apart = 0.015;    // of ln(feed): less is the same feed on the screen
constexpr double as_good_within = 0.02; // of the chance of a clean cut

struct Known {
    Speed level_1{};
    std::vector<Belief> beliefs{};
};

Known known(const Posterior& posterior, const cut::CutSetup& asked) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Regressors place = feed_regressors(plate);
    return {cut::balance_feed(plate, cut::small_air_torch(plate.metal)),
            posterior.feed.beliefs(place.x, place.tag, posterior.used)};
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

/// What the machine would be set to: no faster than the table.
Speed cut_feed(const Outlook& o, Speed fastest) {
    return std::min(o.feed.value, fastest);
}

/// A test at the feed that the cut is set to, where that is as good or the same on the screen: one figure, not two a step of the
/// search apart.
void take_cut_feed(Outlook& o, const Search& search, const Known& k, Speed fastest) {
    const Speed cut = cut_feed(o, fastest);
    const double clean = search.good(std::log(cut / k.level_1));
    const bool as_good = (o.stop ? clean > sure_enough : o.past_table) && clean >= o.next_clean - as_good_within;
    if (!as_good && !are_one(cut, o.next)) {
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
    if (!(o.top > Speed{}) || are_one(at, o.top) || (o.past_table && o.top < fastest)) {
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
    const Search search(k.beliefs);
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
    const bool slow = !o.stop && search.reached(limit) < hardly;
    o.past_table = slow && search.good(limit) >= o.next_clean - as_good_within;
    take_cut_feed(o, search, k, table.max_feed);
    o.off_top = off_top(o, table.max_feed);
    o.ladder = coupons && !slow && best.good < ladder_below;
    o.legs = ladder_over(o.feed, table.max_feed);
    o.advice = advice_of(o);
    return o;
}

} // namespace torchside::tune
