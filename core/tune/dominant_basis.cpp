#include "core/tune/dominant_basis.hpp"

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
bool rests_on_cuts(const ResponseFit& response, const Regressors& place) {
    const double before = response.model().prior.variance(place.x) + square(response.model().stock_sd);
    return response.rows() > 0 && share(before, square(response.distribution(place.x, place.tag).sd)) >= by_log;
}

double practice_share(const Posterior& posterior, const Vector& x) {
    const double stock = square(posterior.feed.model().stock_sd);
    return share(posterior.feed_physics.variance(x) + stock, posterior.feed_practice.variance(x) + stock);
}

} // namespace

DominantBases dominant_bases(const Posterior& posterior, const cut::CutSetup& asked) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Regressors feed = feed_regressors(plate);
    const Regressors power = power_regressors(plate);
    DominantBases f;
    if (rests_on_cuts(posterior.feed, feed)) {
        f.feed = DominantBasis::cuts;
    } else if (practice_share(posterior, feed.x) >= by_practice) {
        f.feed = DominantBasis::practice;
    }
    if (rests_on_cuts(posterior.arc, arc_regressors(plate))) {
        f.arc = DominantBasis::cuts;
    }
    if (rests_on_cuts(posterior.pierce, power)) {
        f.pierce_delay = DominantBasis::cuts;
    }
    if (rests_on_cuts(posterior.kerf, power)) {
        f.kerf = DominantBasis::cuts;
    }
    return f;
}

} // namespace torchside::tune
