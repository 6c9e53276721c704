#include "core/tune/series.hpp"

#include <algorithm>
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
    return std::tie(o.x, o.tag, o.noise, o.verdict, o.y);
}

} // namespace

void Series::sort_into_stocks() {
    sort_rows(rows_, [](const Observation& a, const Observation& b) { return said(a) < said(b); });
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (i == 0 || rows_[i].x != rows_[i - 1].x || rows_[i].tag != rows_[i - 1].tag) {
            Stock stock;
            stock.x = rows_[i].x;
            stock.tag = rows_[i].tag;
            stock.begin = i;
            stocks_.push_back(std::move(stock));
        }
        stocks_.back().end = i + 1;
    }
}

// All rows of a stock if some of them are verdicts, else none.
std::span<const Observation> Series::judged_rows(const Stock& stock) const {
    const std::span<const Observation> rows(rows_.data() + stock.begin, stock.end - stock.begin);
    const bool some = std::any_of(rows.begin(), rows.end(), [](const Observation& o) { return o.judged(); });
    return some ? rows : std::span<const Observation>{};
}

void Series::tabulate(const Window& window) {
    for (Stock& stock : stocks_) {
        const std::span<const Observation> rows = judged_rows(stock);
        if (rows.empty())
            continue;
        Product table = verdict_table(rows, window);
        stock.low = table.low;
        stock.step = table.step;
        stock.evidence = std::move(table.value);
    }
}

void Series::weigh(const std::vector<double>& weights) {
    for (Stock& stock : stocks_) {
        stock.reading_tau = stock.reading_nu = 0.0;
        for (std::size_t i = stock.begin; i < stock.end; ++i) {
            if (rows_[i].judged())
                continue;
            stock.reading_tau += weights[i] / rows_[i].noise;
            stock.reading_nu += weights[i] * rows_[i].y / rows_[i].noise;
        }
    }
}

Series::Cavity Series::cavity_of(const Stock& stock, const Gaussian::Along& all) {
    const double rest = 1.0 - stock.tau * all.variance;
    return {(all.mean - stock.nu * all.variance) / rest, all.variance / rest};
}

// f by everything but the stock's own verdicts.
Moments Series::prior_of(const Stock& stock, const Cavity& eta) const {
    const double prior = eta.variance + model_.stock_sd * model_.stock_sd;
    const double v = prior / (1.0 + prior * stock.reading_tau);
    return {v * (eta.mean / prior + stock.reading_nu), v, 0.0};
}

// Moves f of the stock to where prior and evidence put it.
void Series::locate(Stock& stock, const Cavity& eta) const {
    const Moments prior = prior_of(stock, eta);
    const Moments f = moments({stock.low, stock.step, stock.evidence}, prior.mean, prior.variance);
    stock.mean = f.mean;
    stock.variance = f.variance;
}

// One stock's message afresh; gives back how far it moved f.
double Series::update(Stock& stock, double share) {
    const Gaussian::Along all = coefficients_.along(stock.x);
    const Cavity eta = cavity_of(stock, all);
    if (!(eta.variance > 0.0) || !std::isfinite(eta.variance))
        return 0.0;
    const Moments before{stock.mean, stock.variance};
    const double prior = eta.variance + model_.stock_sd * model_.stock_sd;
    locate(stock, eta);
    const double shrink = std::fmax(0.0, prior - stock.variance) / (prior * prior);
    const double k = 1.0 / (1.0 - eta.variance * shrink);
    const double tau = shrink * k;
    const double nu = eta.mean * tau + (stock.mean - eta.mean) / prior * k;
    const double more_tau = share * (tau - stock.tau);
    const double more_nu = share * (nu - stock.nu);
    if (!coefficients_.add(all, more_tau, more_nu))
        return 0.0;
    stock.tau += more_tau;
    stock.nu += more_nu;
    return std::fmax(std::abs(stock.mean - before.mean) / std::sqrt(prior),
                     std::abs(stock.variance - before.variance) / prior);
}

void Series::settle() {
    coefficients_ = model_.prior;
    const double s2 = model_.stock_sd * model_.stock_sd;
    for (Stock& stock : stocks_) { // the normal rows of every stock: exact at once
        const double k = 1.0 + s2 * stock.reading_tau;
        stock.tau = stock.reading_tau / k;
        stock.nu = stock.reading_nu / k;
        coefficients_.add(stock.x, stock.tau, stock.nu);
    }
    double share = 1.0;
    double before = 0.0;
    for (int sweep = 0; sweep < most_sweeps; ++sweep) {
        double change = 0.0;
        for (Stock& stock : stocks_)
            if (!stock.evidence.empty())
                change = std::max(change, update(stock, share));
        if (change < settled)
            break;
        if (sweep >= damped_after && change > 0.8 * before)
            share = std::max(0.2, 0.6 * share);
        before = change;
    }
    for (Stock& stock : stocks_)
        locate(stock, cavity_of(stock));
}

std::vector<double> Series::distances(const std::vector<double>& weights) const {
    std::vector<double> z(rows_.size(), 0.0);
    for (const Stock& stock : stocks_) {
        for (std::size_t i = stock.begin; i < stock.end; ++i) {
            const Observation& row = rows_[i];
            if (row.judged())
                continue;
            const double own = weights[i] / row.noise;
            const double rest = 1.0 - own * stock.variance;
            if (!(rest > 1e-12))
                continue;
            const double v = stock.variance / rest;
            const double m = (stock.mean - own * row.y * stock.variance) / rest;
            z[i] = (row.y - m) / std::sqrt(v + row.noise);
        }
    }
    return z;
}

std::vector<double> Series::weigh_outliers() {
    std::vector<double> weights(rows_.size(), 1.0);
    std::vector<char> suspect(rows_.size(), 0);
    for (int round = 0; round < most_outlier_rounds; ++round) {
        weigh(weights);
        settle();
        const std::vector<double> z = distances(weights);
        double moved = 0.0;
        double worst = model_.outlier_sd;
        std::size_t next = rows_.size();
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            const double off = std::abs(z[i]);
            if (!suspect[i]) {
                if (off > worst) {
                    worst = off;
                    next = i;
                }
                continue;
            }
            const double weight =
                off > model_.outlier_sd ? (model_.student_dof + 1.0) / (model_.student_dof + off * off) : 1.0;
            moved = std::fmax(moved, std::abs(weight - weights[i]));
            weights[i] = weight;
        }
        if (next < rows_.size()) {
            suspect[next] = 1;
            weights[next] = (model_.student_dof + 1.0) / (model_.student_dof + worst * worst);
            moved = 1.0;
        }
        if (moved < 1e-14)
            break;
    }
    return weights;
}

// How well a window explains each stock's verdicts, given what the rest of the log says of that stock. A coarse grid
// will do: only differences of some tenths matter.
double Series::ln_evidence(const Window& window) const {
    double sum = 0.0;
    for (const Stock& stock : stocks_) {
        const std::span<const Observation> rows = judged_rows(stock);
        if (rows.empty())
            continue;
        const Moments prior = prior_of(stock, cavity_of(stock));
        const Product table = verdict_table(rows, window, 2.0);
        sum += table.ln_scale + moments({table.low, table.step, table.value}, prior.mean, prior.variance).ln_integral;
    }
    return sum;
}

Window Series::likeliest_window() const {
    Window best = model_.window;
    double most = ln_evidence(best);
    for (const OtherWindow& other : model_.others) {
        const double evidence = ln_evidence(other.window) + other.ln_odds;
        if (evidence > most) {
            most = evidence;
            best = other.window;
        }
    }
    return best;
}

Series fit(std::vector<Observation> rows, const Model& model) {
    Series s;
    s.model_ = model;
    s.rows_ = std::move(rows);
    s.sort_into_stocks();
    s.tabulate(model.window);
    std::vector<double> weights = s.weigh_outliers();
    if (!model.others.empty() && !s.rows_.empty()) {
        const Window window = s.likeliest_window();
        if (window != model.window) {
            s.model_.window = window;
            s.tabulate(window);
            weights = s.weigh_outliers();
        }
    }
    s.shape();
    s.report(weights);
    return s;
}

} // namespace torchside::tune
