#include "core/tune/footing.hpp"

#include "core/tune/plate_terms.hpp"

namespace torchside::tune {
namespace {

constexpr double by_practice = 0.5;
constexpr double by_log = 0.75;

double square(double x) {
    return x * x;
}

double share(double before, double after) {
    return before > 0.0 ? 1.0 - after / before : 0.0;
}

// What the log took away of what was open before it.
bool rests_on_cuts(const ResponseFit& series, const Place& place) {
    const double before = series.model().prior.variance(place.x) + square(series.model().stock_sd);
    return series.rows() > 0 && share(before, square(series.distribution(place.x, place.tag).sd)) >= by_log;
}

double practice_share_at(const Posterior& posterior, const Vector& x) {
    const double stock = square(posterior.feed.model().stock_sd);
    return share(posterior.feed_physics.variance(x) + stock, posterior.feed_practice.variance(x) + stock);
}

} // namespace

double practice_share(const Posterior& posterior, const cut::Plate& plate) {
    return practice_share_at(posterior, feed_place(plate).x);
}

Footings footings(const Posterior& posterior, const cut::Plate& asked) {
    const cut::Plate plate = plate_of(asked, posterior.nozzles);
    const Place feed = feed_place(plate);
    const Place power = power_place(plate);
    Footings f;
    if (rests_on_cuts(posterior.feed, feed))
        f.feed = Footing::cuts;
    else if (practice_share_at(posterior, feed.x) >= by_practice)
        f.feed = Footing::practice;
    if (rests_on_cuts(posterior.arc, arc_place(plate)))
        f.arc = Footing::cuts;
    if (rests_on_cuts(posterior.pierce, power))
        f.pierce_delay = Footing::cuts;
    if (rests_on_cuts(posterior.kerf, power))
        f.kerf = Footing::cuts;
    return f;
}

} // namespace torchside::tune
