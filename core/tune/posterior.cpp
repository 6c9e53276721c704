#include "core/tune/posterior.hpp"

#include <algorithm>
#include <cmath>

#include "core/cut/pierce.hpp"
#include "core/tune/plate_terms.hpp"
#include "core/tune/rows.hpp"

namespace torchside::tune {
namespace {

Basis basis_of(const ResponseFit& response, int others, bool practice) {
    Basis basis;
    basis.physics = true;
    basis.practice = practice;
    basis.tests = response.rows();
    basis.others = others;
    return basis;
}

Distribution with_noise(Distribution belief, double sd) {
    belief.sd = std::sqrt(belief.sd * belief.sd + sd * sd);
    return belief;
}

// level 1 times e^f, at the median and the ends of the band.
template <class Q>
Estimate<Q> scaled(Q level_1, const Distribution& f, const Basis& basis) {
    return {std::exp(f.quantile(0.5)) * level_1, std::exp(f.quantile(0.1)) * level_1,
            std::exp(f.quantile(0.9)) * level_1, basis};
}

Distribution normal(const Gaussian& coefficients, const Vector& x, double stock_sd) {
    Distribution b;
    b.mean = coefficients.at(x);
    b.sd = std::sqrt(coefficients.variance(x) + stock_sd * stock_sd);
    return b;
}

} // namespace

double set_used(double starts, const Priors& priors) {
    constexpr double most = 2.0;
    return std::fmin(most, starts / priors.feed_set_starts);
}

namespace {

Estimate<Speed> feed_with(const Posterior& posterior, const cut::CutSetup& asked, double used) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Speed level_1 = cut::balance_feed(plate, cut::small_air_torch(plate.metal));
    if (!(level_1.in(mm_min) > 0.0)) {
        return {};
    }
    const Regressors place = feed_regressors(plate);
    return scaled(level_1, posterior.feed.distribution(place.x, place.tag, used),
                  basis_of(posterior.feed, posterior.others.feed, true));
}

} // namespace

Estimate<Speed> feed(const Posterior& posterior, const cut::CutSetup& plate) {
    return feed_with(posterior, plate, posterior.used);
}

Estimate<Length> kerf(const Posterior& posterior, const cut::CutSetup& asked) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Length level_1 = cut::kerf(plate, cut::small_air_torch(plate.metal));
    if (!(level_1.in(mm) > 0.0 && plate.thickness.in(mm) > 0.0)) {
        return {};
    }
    const Regressors place = power_regressors(plate);
    const Distribution f = with_noise(posterior.kerf.distribution(place.x, place.tag), priors().kerf_noise);
    return scaled(level_1, f, basis_of(posterior.kerf, posterior.others.kerf, false));
}

Estimate<Voltage> arc(const Posterior& posterior, const cut::CutSetup& asked) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Voltage level_1 = cut::arc_volts(plate, cut::small_air_torch(plate.metal));
    const Regressors place = arc_regressors(plate);
    const Distribution f = with_noise(posterior.arc.distribution(place.x, place.tag), priors().arc_noise);
    const double u = level_1.in(volt);
    // Absurd rows far from this plate could carry the line below any arc's voltage.
    constexpr double least = 20.0;
    return {Voltage{std::fmax(least, u + f.mean), volt}, Voltage{std::fmax(least, u + f.quantile(0.1)), volt},
            Voltage{std::fmax(least, u + f.quantile(0.9)), volt}, basis_of(posterior.arc, posterior.others.arc, true)};
}

Estimate<Gradient> arc_gradient(const Posterior& posterior) {
    constexpr std::size_t by_height = 3; // of arc_regressors()
    const Gaussian& line = posterior.arc.coefficients();
    const double middle = cut::small_air_torch(Metal::mild_steel).arc_per_height.value + line.mean[by_height];
    const double half = band80_sd * std::sqrt(line.cov[by_height][by_height]);
    const auto at = [](double slope) { return Gradient{slope, volt_per_mm}; };
    return {at(middle), at(middle - half), at(middle + half), basis_of(posterior.arc, posterior.others.arc, true)};
}

Estimate<Duration> pierce_delay(const Posterior& posterior, const cut::CutSetup& asked) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Length limit = pierce_limit(posterior, plate);
    if (plate.thickness >= limit) {
        return {};
    }
    const Duration level_1 = pierce_level_1(plate, limit);
    if (!(level_1.in(second) > 0.0)) {
        return {};
    }
    const Regressors place = power_regressors(plate);
    return scaled(level_1, posterior.pierce.distribution(place.x, place.tag),
                  basis_of(posterior.pierce, posterior.others.pierce, false));
}

// Regula falsi with Illinois' weight: ln(feed) over ln(t) is nearly straight, so a handful of steps will do.
Length pierce_limit(const Posterior& posterior, const cut::CutSetup& asked) {
    const double wanted = std::log(cut::small_air_torch(asked.metal).pierce_feed.value);
    const LearntFeed model(posterior);
    cut::CutSetup plate = asked;
    const auto excess = [&](double ln_t) {
        plate.thickness = Length{std::exp(ln_t), mm};
        return std::log(std::fmax(model.feed(plate).in(mm_min), 1e-3)) - wanted; // refused plate has a feed of 0
    };
    double a = std::log(0.1001);
    double b = std::log(199.9);
    double fa = excess(a);
    double fb = excess(b);
    if (!(fa > 0.0 && fb < 0.0)) {
        return fa > 0.0 ? Length{200.0, mm} : Length{};
    }
    double x = a;
    for (int i = 0; i < 60; ++i) {
        const double next = b - fb * (b - a) / (fb - fa);
        if (std::abs(next - x) < 1e-15) {
            break;
        }
        x = next;
        const double f = excess(x);
        if (f == 0.0) {
            break;
        }
        if ((f > 0.0) == (fb > 0.0)) {
            fa *= 0.5;
        } else {
            a = b;
            fa = fb;
        }
        b = x;
        fb = f;
    }
    return Length{std::exp(x), mm};
}

Duration pierce_level_1(const cut::CutSetup& plate, Length limit) {
    const Outcome<Duration> delay = cut::piercing_time(plate, limit, cut::small_air_torch(plate.metal));
    return delay ? delay.value() : Duration{};
}

Trail trail(const Posterior& posterior, const cut::CutSetup& asked) {
    const cut::CutSetup plate = plate_of(asked, posterior.nozzles);
    const Speed level_1 = cut::balance_feed(plate, cut::small_air_torch(plate.metal));
    if (!(level_1.in(mm_min) > 0.0)) {
        return {};
    }
    const Vector x = feed_regressors(plate).x;
    const double stock_sd = priors().feed_stock;
    Basis basis;
    basis.physics = true;
    Trail t;
    t.physics = scaled(level_1, normal(posterior.feed_physics, x, stock_sd), basis);
    basis.practice = true;
    t.practice = scaled(level_1, normal(posterior.feed_practice, x, stock_sd), basis);
    basis.others = posterior.others.feed;
    t.others = scaled(level_1, normal(posterior.feed_others, x, stock_sd), basis);
    t.own = feed(posterior, plate);
    t.new_set = posterior.used > 0.0 ? feed_with(posterior, plate, 0.0) : t.own;
    return t;
}

double Trail::for_wear() const {
    constexpr double noticed = 0.015; // as next_test.cpp tells two feeds apart
    const double share = new_set.value > Speed{} ? own.value / new_set.value - 1.0 : 0.0;
    return std::abs(share) < noticed ? 0.0 : share;
}

Speed LearntFeed::feed(const cut::CutSetup& asked) const {
    const cut::CutSetup plate = plate_of(asked, posterior_->nozzles);
    const Speed level_1 = cut::balance_feed(plate, cut::small_air_torch(plate.metal));
    return std::exp(posterior_->feed.curve(feed_regressors(plate).x, posterior_->used)) * level_1;
}

Length proven(std::span<const TestCut> cuts, Metal metal, Current current) {
    Length most{};
    for (const TestCut& row : cuts) {
        if (row.material == metal && row.current <= current && row.verdict == Verdict::clean && !row.worn) {
            most = std::max(most, row.thickness);
        }
    }
    return most;
}

} // namespace torchside::tune
