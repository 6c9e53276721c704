#include "core/wear/assess.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/low_end.hpp"

namespace torchside::wear {
namespace {

constexpr double outlived = 2.0;     // lives of one set past which its counter is doubted (a prior)
constexpr double least_share = 0.02; // of a prior's rate: no life is shown longer than 50 times the guess

Estimate<double> banded(double value, double sd, const Basis& basis) {
    const double half = band80_sd * sd;
    return {value, low_end(value, half), value + half, basis};
}

/// A life from its rate: the band turned round.
Estimate<double> life(double rate, double variance, double prior_life, const Basis& basis) {
    const double least = least_share / prior_life, half = band80_sd * std::sqrt(variance);
    return {1.0 / std::max(rate, least), 1.0 / std::max(rate + half, least), 1.0 / std::max(rate - half, least), basis};
}

class Batch {
public:
    Batch(const WearRates& belief, Use now, Use part, double minutes_sd)
        : belief_(belief), now_(now), part_(part), minutes_sd_(minutes_sd), z0_(reach(0.0)), alive_(normal_below(z0_)) {
    }

    /// For the set in the torch: an old one is taken to be of the age at which least is left.
    [[nodiscard]] static Batch of_set(const WearRates& belief, Use now, Use part, double minutes_sd) {
        Batch worst(belief, now, part, minutes_sd);
        const double used = belief.damage(now);
        double least = used > 0.0 ? worst.parts_until(0.5) : 0.0;
        for (double age = 0.0; age < std::min(used, outlived); age += age_step) {
            const Batch younger(belief, (age / used) * now, part, minutes_sd);
            const double left = younger.parts_until(0.5);
            if (left < least) {
                least = left, worst = younger;
            }
        }
        return worst;
    }

    /// P(the set in the torch is whole after x more parts).
    [[nodiscard]] double whole(double parts) const { return ratio(reach(parts)); }

    /// Most parts after which whole() is still at least p.
    [[nodiscard]] double parts_until(double p) const {
        double low = 0.0, high = 1.0;
        while (whole(high) >= p && high < most) {
            low = high, high *= 2.0;
        }
        for (int i = 0; i < 30; ++i) {
            const double middle = 0.5 * (low + high);
            (whole(middle) >= p ? low : high) = middle;
        }
        return low;
    }

    /// Fewest new sets with which the batch ends with a probability of at least p.
    [[nodiscard]] double sets_for(double p, double parts) const {
        double low = -1.0, high = 0.0; // low does not do
        while (enough(high, parts) < p && high < most) {
            low = high, high = 2.0 * high + 1.0;
        }
        while (high - low > 1.0) {
            const double middle = std::floor(0.5 * (low + high));
            (enough(middle, parts) < p ? low : high) = middle;
        }
        return high;
    }

private:
    static constexpr double most = 1e9;

    // Variance of the damage of now + x parts, the arc minutes of a part being known to minutes_sd only.
    [[nodiscard]] double variance(Use all, double parts) const {
        const double minutes = parts * belief_.per_minute * minutes_sd_;
        return belief_.between(all, all) + minutes * minutes;
    }
    [[nodiscard]] double reach(double parts) const {
        const Use all = now_ + parts * part_;
        return (1.0 - belief_.damage(all)) / std::sqrt(belief_.spread * belief_.spread + variance(all, parts));
    }
    // Phi(z) / Phi(z0), also where both are next to nothing.
    [[nodiscard]] double ratio(double z) const {
        z = std::min(z, z0_); // far past a life, more use of another mix may look like less
        if (z0_ > -25.0) {
            return normal_below(z) / alive_;
        }
        return std::exp(0.5 * (z0_ * z0_ - z * z)) * hazard(z0_) / hazard(z);
    }
    [[nodiscard]] double enough(double sets, double parts) const {
        if (sets < 1.0) {
            return whole(parts);
        }
        const Use all = now_ + parts * part_;
        const double s2 = belief_.spread * belief_.spread;
        const double mean = sets + 1.0 - belief_.damage(all), var = (sets + 1.0) * s2 + variance(all, parts);
        const double with = (s2 + belief_.between(now_, all)) / std::sqrt(s2 + belief_.between(now_, now_));
        const double h = hazard(z0_);
        return normal_below((mean + with * h) / std::sqrt(std::max(var - with * with * h * (h + z0_), 1e-12)));
    }

    static constexpr double age_step = 0.05; // lives

    WearRates belief_;
    Use now_, part_;
    double minutes_sd_, z0_, alive_;
};

Use typical_start(const WearLog& log) {
    Use all{static_cast<double>(log.now.starts), log.now.arc.in(minute)};
    for (const ConsumableSet& set : log.sets) {
        all = all + use_of(set);
    }
    return {1.0, all.starts > 0.0 ? all.minutes / all.starts : priors().minutes_a_start};
}

/// Parts that the set in the torch lives to with 90, 50 and 10 %.
struct Lasts {
    double surely = 0.0, likely = 0.0, rarely = 0.0;
};

void fill_changes(const Batch& batch, const Batch& fresh, const Lasts& lasts, int quantity, Report& out) {
    const auto parts = static_cast<double>(quantity);
    out.finishes = std::min(batch.whole(parts), fresh.whole(parts));
    const double surely = std::floor(lasts.surely), likely = std::floor(lasts.likely);
    if (surely < parts) {
        out.change_before = static_cast<int>(surely) + 1;
    }
    if (likely < parts) {
        out.wears_at = static_cast<int>(likely) + 1;
    }
    out.changes.value = batch.sets_for(0.5, parts);
    out.changes.low = batch.sets_for(0.1, parts);
    out.changes.high = batch.sets_for(0.9, parts);
    out.sets_to_hold = static_cast<int>(out.changes.high);
}

} // namespace

double counted_starts(const Load& part) {
    return part.starts + priors().run_off_starts * part.run_offs;
}

Report assess(const WearLog& log, const Load& part, int quantity) {
    const Priors& prior = priors();
    const WearRates belief = learn(log.sets);
    const Use now{static_cast<double>(log.now.starts), log.now.arc.in(minute)};
    const Use each{counted_starts(part), part.arc.value.in(minute)};
    const bool cuts = each.starts > 0.0 || each.minutes > 0.0;
    const double minutes_sd = (part.arc.high - part.arc.low).in(minute) / (2.0 * band80_sd);

    Report out;
    Basis basis;
    basis.practice = true;
    basis.tests = static_cast<int>(
        std::count_if(log.sets.begin(), log.sets.end(), [](const ConsumableSet& s) { return s.ended == Ended::worn; }));
    out.guess = basis.tests == 0;
    out.starts_per_set = life(belief.per_start, belief.var_start, prior.starts_per_set, basis);
    const auto minutes = life(belief.per_minute, belief.var_minute, prior.minutes_per_set, basis);
    out.arc_per_set = {{minutes.value, minute}, {minutes.low, minute}, {minutes.high, minute}, basis};
    const double used = belief.damage(now);
    out.life_used = banded(used, std::hypot(std::sqrt(belief.between(now, now)), used * belief.spread), basis);

    out.outlived = used > outlived;
    const Use measure = cuts ? each : typical_start(log);
    const Batch left = Batch::of_set(belief, now, measure, cuts ? minutes_sd : 0.0);
    const double per = measure.starts;
    const Batch fresh{belief, {}, measure, cuts ? minutes_sd : 0.0};
    const auto until = [&](double p) { return std::min(left.parts_until(p), fresh.parts_until(p)); };
    const Lasts lasts{until(0.9), until(0.5), until(0.1)};
    out.starts_left = {per * lasts.likely, per * lasts.surely, per * lasts.rarely, basis};
    out.changes.basis = out.part_uses.basis = out.job_uses.basis = out.cost_each.basis = basis;
    if (!cuts) {
        return out;
    }
    const double uses = belief.damage(each),
                 sd = std::hypot(std::sqrt(belief.between(each, each)), belief.per_minute * minutes_sd);
    out.part_uses = banded(uses, sd, basis);
    const auto parts = static_cast<double>(quantity);
    const double sets = std::max(parts * uses, 1.0); // the spread of sets averages out over several
    out.job_uses = banded(parts * uses, parts * std::hypot(sd, uses * belief.spread / std::sqrt(sets)), basis);
    const double price = log.set_price;
    out.cost_each = {price * uses, price * out.part_uses.low, price * out.part_uses.high, basis};
    out.cost_each.basis.entered = true;
    fill_changes(left, fresh, lasts, quantity, out);
    return out;
}

} // namespace torchside::wear
