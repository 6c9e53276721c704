#include "core/tune/others.hpp"

#include <algorithm>
#include <cmath>

#include "core/tune/plate_terms.hpp"
#include "core/tune/rows.hpp"

namespace torchside::tune {
namespace {

double square(double x) {
    return x * x;
}

using Matrix = std::array<Vector, most_terms>;

/// cov^-1 e_k, by elimination; cov is positive definite, save for coefficients that are known: those are left out.
Vector column_of_inverse(const Gaussian& g, std::size_t k) {
    Matrix a = g.cov;
    Vector y{};
    y[k] = 1.0;
    const auto known = [&](std::size_t i) { return g.cov[i][i] == 0.0; };
    for (std::size_t i = 0; i < g.n; ++i) {
        for (std::size_t row = known(i) ? g.n : i + 1; row < g.n; ++row) {
            const double share = a[row][i] / a[i][i];
            for (std::size_t j = i; j < g.n; ++j) {
                a[row][j] -= share * a[i][j];
            }
            y[row] -= share * y[i];
        }
    }
    for (std::size_t i = g.n; i-- > 0;) {
        for (std::size_t j = i + 1; j < g.n; ++j) {
            y[i] -= a[i][j] * y[j];
        }
        y[i] = known(i) ? 0.0 : y[i] / a[i][i];
    }
    return y;
}

/// The variances that are a shop's own, never more than all that is open.
Vector own_part(const Gaussian& g, double bias_sd, double slope_sd) {
    Vector own{};
    own[0] = std::fmin(square(bias_sd), g.cov[0][0]);
    own[1] = std::fmin(square(slope_sd), g.cov[1][1]);
    return own;
}

Vector times(const Matrix& m, const Vector& x, std::size_t n) {
    Vector out{};
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            out[i] += m[i][j] * x[j];
        }
    }
    return out;
}

void take_shop(std::span<const SharedCut> cuts, Start& start, const Priors& p) {
    const OtherLog log = log_of(cuts);
    Priors usual = p;
    usual.feed_others = 0.0; // a step between two normal distributions: what kind of shop it is stays out of it
    const Posterior shop = learn(log.cuts, log.machine, std::nullopt, start, usual);
    Start next = start;
    next.feed =
        one_level_up(start.feed, shop.feed.coefficients(), own_part(start.feed, p.feed_shop_bias, p.feed_shop_slope));
    next.kerf = one_level_up(start.kerf, shop.kerf.coefficients(), own_part(start.kerf, p.kerf_shop_bias, 0.0));
    next.arc = one_level_up(start.arc, shop.arc.coefficients(), own_part(start.arc, p.arc_shop_offset, 0.0));
    next.pierce =
        one_level_up(start.pierce, shop.pierce.coefficients(), own_part(start.pierce, p.pierce_shop_bias, 0.0));
    next.others.feed += shop.feed.rows();
    next.others.kerf += shop.kerf.rows();
    next.others.arc += shop.arc.rows();
    next.others.pierce += shop.pierce.rows();
    start = next;
}

} // namespace

Gaussian one_level_up(const Gaussian& before, const Gaussian& after, const Vector& own) {
    const std::size_t n = before.n;
    Matrix g{}; // I - D C0^-1
    for (std::size_t i = 0; i < n; ++i) {
        g[i][i] = 1.0;
        if (own[i] > 0.0) {
            const Vector row = column_of_inverse(before, i);
            for (std::size_t j = 0; j < n; ++j) {
                g[i][j] -= own[i] * row[j];
            }
        }
    }
    Gaussian next = before;
    Vector moved{};
    Matrix half{}; // G (C0 - C1), row by row: C0 - C1 is symmetric
    for (std::size_t i = 0; i < n; ++i) {
        moved[i] = after.mean[i] - before.mean[i];
        Vector gained{};
        for (std::size_t j = 0; j < n; ++j) {
            gained[j] = before.cov[i][j] - after.cov[i][j];
        }
        half[i] = times(g, gained, n);
    }
    const Vector shift = times(g, moved, n);
    for (std::size_t i = 0; i < n; ++i) {
        next.mean[i] += shift[i];
        for (std::size_t j = 0; j < n; ++j) {
            for (std::size_t k = 0; k < n; ++k) {
                next.cov[i][j] -= g[i][k] * half[k][j];
            }
        }
    }
    return next;
}

OtherLog log_of(std::span<const SharedCut> cuts) {
    OtherLog log;
    log.machine.nozzles.clear();
    log.machine.waits_for_transfer = true; // delays are given away without the start lag
    for (const SharedCut& shared : cuts) {
        cut::CutSetup plate = plate_of(shared.cut, {});
        const Length bore = shared.bore.value_or(cut::bore(plate, cut::small_air_torch(plate.metal)));
        auto nozzle = std::find_if(log.machine.nozzles.begin(), log.machine.nozzles.end(),
                                   [&](const Nozzle& known) { return known.bore == bore; });
        if (nozzle == log.machine.nozzles.end()) { // its rating is only a name here, an ampere apart from the next
            const Current name{static_cast<double>(log.machine.nozzles.size() + 1), ampere};
            nozzle = log.machine.nozzles.insert(nozzle, {name, bore});
        }
        log.cuts.push_back(shared.cut);
        log.cuts.back().nozzle = nozzle->rated;
        log.cuts.back().worn = false;
    }
    return log;
}

Start start_with(std::span<const SharedCut> others, const Priors& p) {
    Start start = usual_start(p);
    std::vector<SharedCut> rows(others.begin(), others.end());
    std::stable_sort(rows.begin(), rows.end(), [](const SharedCut& a, const SharedCut& b) { return a.shop < b.shop; });
    for (auto first = rows.begin(); first != rows.end();) {
        const auto last =
            std::find_if(first, rows.end(), [&](const SharedCut& row) { return row.shop != first->shop; });
        take_shop({&*first, static_cast<std::size_t>(last - first)}, start, p);
        first = last;
    }
    return start;
}

} // namespace torchside::tune
