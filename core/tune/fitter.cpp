#include "core/tune/fitter.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "core/quantity/sort_rows.hpp"
#include "core/tune/product.hpp"

namespace torchside::tune {
namespace {

constexpr int most_sweeps = 100;
constexpr int damped_after = 6; // contradictory rows can make the sweeps swing: then ever shorter steps
constexpr double settled = 1e-12;
constexpr int most_outlier_rounds = 40;

auto said(const Observation& o) {
    return std::tie(o.x, o.tag, o.noise, o.verdict, o.y, o.used);
}

} // namespace

void Fitter::sort_into_stocks() {
    sort_rows(rows, [](const Observation& a, const Observation& b) { return said(a) < said(b); });
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i == 0 || rows[i].x != rows[i - 1].x || rows[i].tag != rows[i - 1].tag) {
            StockEvidence stock;
            stock.x = rows[i].x;
            stock.tag = rows[i].tag;
            stock.begin = i;
            stocks.push_back(std::move(stock));
        }
        stocks.back().end = i + 1;
    }
}

// All rows of a stock if some of them are verdicts, else none.
std::span<const Observation> Fitter::judged_rows(const StockEvidence& stock) const {
    const std::span<const Observation> own(rows.data() + stock.begin, stock.end - stock.begin);
    const bool some = std::any_of(own.begin(), own.end(), [](const Observation& o) { return o.judged(); });
    return some ? own : std::span<const Observation>{};
}

void Fitter::tabulate(const Window& window) {
    for (StockEvidence& stock : stocks) {
        const std::span<const Observation> own = judged_rows(stock);
        if (own.empty()) {
            continue;
        }
        Product table = verdict_table(own, window);
        stock.low = table.low;
        stock.step = table.step;
        stock.verdicts = std::move(table.value);
        stock.ln_scale = table.ln_scale;
    }
}

void Fitter::weigh(const std::vector<double>& weights) {
    for (StockEvidence& stock : stocks) {
        stock.reading_tau = stock.reading_nu = 0.0;
        for (std::size_t i = stock.begin; i < stock.end; ++i) {
            if (rows[i].judged()) {
                continue;
            }
            stock.reading_tau += weights[i] / rows[i].noise;
            stock.reading_nu += weights[i] * rows[i].y / rows[i].noise;
        }
    }
}

// Moves f of the stock to where prior and evidence put it.
void Fitter::locate(StockEvidence& stock, const Cavity& eta) const {
    const Moments prior = prior_of(stock, eta, model.stock_sd);
    const Moments f = moments(stock.table(), prior.mean, prior.variance);
    stock.mean = f.mean;
    stock.variance = f.variance;
}

// The message that makes f of a stock what it is, afresh; false where it would be improper.
bool Fitter::send(StockEvidence& stock, const Gaussian::Along& all, const Cavity& eta, double share) {
    const double prior = eta.variance + model.stock_sd * model.stock_sd;
    const double shrink = std::fmax(0.0, prior - stock.variance) / (prior * prior);
    const double k = 1.0 / (1.0 - eta.variance * shrink);
    const double tau = shrink * k;
    const double nu = eta.mean * tau + (stock.mean - eta.mean) / prior * k;
    const double more_tau = share * (tau - stock.tau);
    const double more_nu = share * (nu - stock.nu);
    if (!coefficients.add(all, more_tau, more_nu)) {
        return false;
    }
    stock.tau += more_tau;
    stock.nu += more_nu;
    return true;
}

// One stock's message afresh; gives back how far it moved f.
double Fitter::update(StockEvidence& stock, double share) {
    const Gaussian::Along all = coefficients.along(stock.x);
    const Cavity eta = cavity_of(stock, all);
    if (!(eta.variance > 0.0) || !std::isfinite(eta.variance)) {
        return 0.0;
    }
    const Moments before{stock.mean, stock.variance};
    const double prior = eta.variance + model.stock_sd * model.stock_sd;
    locate(stock, eta);
    if (!send(stock, all, eta, share)) {
        return 0.0;
    }
    return std::fmax(std::abs(stock.mean - before.mean) / std::sqrt(prior),
                     std::abs(stock.variance - before.variance) / prior);
}

// The normal rows of every stock: exact at once.
void Fitter::begin() {
    coefficients = model.prior;
    const double s2 = model.stock_sd * model.stock_sd;
    for (StockEvidence& stock : stocks) {
        const double k = 1.0 + s2 * stock.reading_tau;
        stock.tau = stock.reading_tau / k;
        stock.nu = stock.reading_nu / k;
        coefficients.add(stock.x, stock.tau, stock.nu);
    }
}

// Its verdicts with none of them misread: the table above what it says far away.
void Fitter::believe(std::size_t which) {
    StockEvidence& stock = stocks[which];
    const Gaussian::Along all = coefficients.along(stock.x);
    const Cavity eta = cavity_of(stock, all);
    const double far = std::fmin(stock.verdicts.front(), stock.verdicts.back());
    std::vector<double> sure = stock.verdicts;
    for (double& value : sure) {
        value = std::fmax(0.0, value - far);
    }
    const Moments prior = prior_of(stock, eta, model.stock_sd);
    const Moments f = moments({stock.low, stock.step, sure}, prior.mean, prior.variance);
    stock.mean = f.mean;
    stock.variance = f.variance;
    send(stock, all, eta, 1.0);
}

void Fitter::settle() {
    begin();
    if (believed) {
        believe(*believed);
    }
    double share = 1.0;
    double before = 0.0;
    for (int sweep = 0; sweep < most_sweeps; ++sweep) {
        double change = 0.0;
        for (StockEvidence& stock : stocks) {
            if (!stock.verdicts.empty()) {
                change = std::max(change, update(stock, share));
            }
        }
        if (change < settled) {
            break;
        }
        if (sweep >= damped_after && change > 0.8 * before) {
            share = std::max(0.2, 0.6 * share);
        }
        before = change;
    }
    for (StockEvidence& stock : stocks) {
        locate(stock, cavity_of(stock, coefficients.along(stock.x)));
    }
}

std::vector<double> Fitter::distances(const std::vector<double>& weights) const {
    std::vector<double> z(rows.size(), 0.0);
    for (const StockEvidence& stock : stocks) {
        for (std::size_t i = stock.begin; i < stock.end; ++i) {
            const Observation& row = rows[i];
            if (row.judged()) {
                continue;
            }
            const double own = weights[i] / row.noise;
            const double rest = 1.0 - own * stock.variance;
            if (!(rest > 1e-12)) {
                continue;
            }
            const double v = stock.variance / rest;
            const double m = (stock.mean - own * row.y * stock.variance) / rest;
            z[i] = (row.y - m) / std::sqrt(v + row.noise);
        }
    }
    return z;
}

std::vector<double> Fitter::weigh_outliers() {
    std::vector<double> weights(rows.size(), 1.0);
    std::vector<char> suspect(rows.size(), 0);
    for (int round = 0; round < most_outlier_rounds; ++round) {
        weigh(weights);
        settle();
        const std::vector<double> z = distances(weights);
        double moved = 0.0;
        double worst = model.outlier_sd;
        std::size_t next = rows.size();
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const double off = std::abs(z[i]);
            if (!suspect[i]) {
                if (off > worst) {
                    worst = off;
                    next = i;
                }
                continue;
            }
            const double weight =
                off > model.outlier_sd ? (model.student_dof + 1.0) / (model.student_dof + off * off) : 1.0;
            moved = std::fmax(moved, std::abs(weight - weights[i]));
            weights[i] = weight;
        }
        if (next < rows.size()) {
            suspect[next] = 1;
            weights[next] = (model.student_dof + 1.0) / (model.student_dof + worst * worst);
            moved = 1.0;
        }
        if (moved < 1e-14) {
            break;
        }
    }
    return weights;
}

double Fitter::ln_messages() const {
    Gaussian b = model.prior;
    double sum = 0.0;
    for (const StockEvidence& stock : stocks) {
        const Gaussian::Along eta = b.along(stock.x);
        sum += ln_normal(eta.mean, eta.variance, stock.tau, stock.nu);
        b.add(eta, stock.tau, stock.nu);
    }
    return sum;
}

double Fitter::ln_evidence(const VerdictGrid& grid, const std::vector<double>& weights) const {
    double sum = ln_messages() + grid.ln_evidence();
    for (std::size_t i = 0; i < rows.size(); ++i) { // a message leaves out what of a reading no f changes: drift does
        sum -= rows[i].judged() ? 0.0 : 0.5 * weights[i] * rows[i].y * rows[i].y / rows[i].noise;
    }
    const double s2 = model.stock_sd * model.stock_sd;
    for (const StockEvidence& stock : stocks) {
        sum += stock.ln_scale;
        if (stock.shaped && !grid.empty()) {
            continue;
        }
        const Cavity eta = cavity_of(stock, coefficients.along(stock.x));
        const Moments f = prior_of(stock, eta, model.stock_sd);
        sum += ln_normal(eta.mean, eta.variance + s2, stock.reading_tau, stock.reading_nu) +
               moments(stock.table(), f.mean, f.variance).ln_integral -
               ln_normal(eta.mean, eta.variance, stock.tau, stock.nu);
    }
    return sum;
}

} // namespace torchside::tune
