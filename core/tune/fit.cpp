// From rows to a ResponseFit.
#include <algorithm>
#include <cmath>
#include <span>
#include <tuple>
#include <utility>

#include "core/quantity/sort_rows.hpp"
#include "core/tune/product.hpp"
#include "core/tune/quantile.hpp"
#include "core/tune/response_fit.hpp"

namespace torchside::tune {
namespace {

constexpr int most_sweeps = 100;
constexpr int damped_after = 6; // contradictory rows can make the sweeps swing: then ever shorter steps
constexpr double settled = 1e-12;
constexpr int most_outlier_rounds = 40;

auto said(const Observation& o) {
    return std::tie(o.x, o.tag, o.noise, o.verdict, o.y);
}

// All that changes while rows are fitted.
struct Fitter {
    Model model{};
    std::vector<Observation> rows{};
    Gaussian coefficients{};
    std::vector<StockEvidence> stocks{};

    void sort_into_stocks();
    void tabulate(const Window& window);
    void weigh(const std::vector<double>& weights);
    void settle();
    double update(StockEvidence& stock, double share);
    void locate(StockEvidence& stock, const Cavity& eta) const;
    [[nodiscard]] std::span<const Observation> judged_rows(const StockEvidence& stock) const;
    [[nodiscard]] std::vector<double> distances(const std::vector<double>& weights) const;
    [[nodiscard]] std::vector<double> weigh_outliers();
    [[nodiscard]] double ln_evidence(const Window& window) const;
    [[nodiscard]] Window likeliest_window() const;
    [[nodiscard]] Finding appraise(const Observation& row, const Distribution& others) const;
    [[nodiscard]] std::vector<Finding> report(const std::vector<double>& weights) const;
};

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
    const double shrink = std::fmax(0.0, prior - stock.variance) / (prior * prior);
    const double k = 1.0 / (1.0 - eta.variance * shrink);
    const double tau = shrink * k;
    const double nu = eta.mean * tau + (stock.mean - eta.mean) / prior * k;
    const double more_tau = share * (tau - stock.tau);
    const double more_nu = share * (nu - stock.nu);
    if (!coefficients.add(all, more_tau, more_nu)) {
        return 0.0;
    }
    stock.tau += more_tau;
    stock.nu += more_nu;
    return std::fmax(std::abs(stock.mean - before.mean) / std::sqrt(prior),
                     std::abs(stock.variance - before.variance) / prior);
}

void Fitter::settle() {
    coefficients = model.prior;
    const double s2 = model.stock_sd * model.stock_sd;
    for (StockEvidence& stock : stocks) { // the normal rows of every stock: exact at once
        const double k = 1.0 + s2 * stock.reading_tau;
        stock.tau = stock.reading_tau / k;
        stock.nu = stock.reading_nu / k;
        coefficients.add(stock.x, stock.tau, stock.nu);
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

// How well a window explains each stock's verdicts, given what the rest of the log says of that stock. A coarse grid
// will do: only differences of some tenths matter.
double Fitter::ln_evidence(const Window& window) const {
    double sum = 0.0;
    for (const StockEvidence& stock : stocks) {
        const std::span<const Observation> own = judged_rows(stock);
        if (own.empty()) {
            continue;
        }
        const Moments prior = prior_of(stock, cavity_of(stock, coefficients.along(stock.x)), model.stock_sd);
        const Product table = verdict_table(own, window, 2.0);
        sum += table.ln_scale + moments({table.low, table.step, table.value}, prior.mean, prior.variance).ln_integral;
    }
    return sum;
}

Window Fitter::likeliest_window() const {
    Window best = model.window;
    double most = ln_evidence(best);
    for (const OtherWindow& other : model.others) {
        const double evidence = ln_evidence(other.window) + other.ln_odds;
        if (evidence > most) {
            most = evidence;
            best = other.window;
        }
    }
    return best;
}

// A verdict against what all other rows say: they are had by dividing its own likelihood out again.
Finding Fitter::appraise(const Observation& row, const Distribution& others) const {
    const Judge judge(model.window);
    // Away from its edges the verdict says the same everywhere: there the masses are summed before they are divided.
    double flat[2] = {0.0, 0.0};
    double without = 0.0;
    double expected = 0.0;
    for (std::size_t i = 0; i < others.mass.size(); ++i) {
        const double p = judge.happens(row.verdict, row.y - (others.low + static_cast<double>(i) * others.step));
        if (p == 0.0 || p == 1.0) {
            flat[p == 1.0] += others.mass[i];
            continue;
        }
        const double rest = others.mass[i] / judge.read_as(p);
        without += rest;
        expected += p * rest;
    }
    if (flat[0] > 0.0) {
        without += flat[0] / judge.read_as(0.0);
    }
    without += flat[1] / judge.read_as(1.0);
    expected += flat[1] / judge.read_as(1.0);
    const double chance = std::clamp(expected / without, 1e-300, 1.0);
    Finding f;
    f.row = row.row;
    f.weight = (1.0 - model.window.misread) * expected;
    f.flagged = chance < normal_cdf(-model.outlier_sd);
    f.sd_off = chance < 0.05 ? -normal_quantile(chance) : 0.0;
    return f;
}

std::vector<Finding> Fitter::report(const std::vector<double>& weights) const {
    const std::vector<double> z = distances(weights);
    std::vector<Finding> findings;
    for (const StockEvidence& stock : stocks) {
        const Distribution f =
            stock.verdicts.empty() ? Distribution{} : distribution_of(stock, coefficients, model.stock_sd);
        for (std::size_t i = stock.begin; i < stock.end; ++i) {
            const Observation& row = rows[i];
            if (row.judged()) {
                findings.push_back(appraise(row, f));
            } else {
                findings.push_back({row.row, weights[i], std::abs(z[i]), std::abs(z[i]) > model.outlier_sd});
            }
        }
    }
    sort_rows(findings, [](const Finding& a, const Finding& b) { return a.row < b.row; });
    return findings;
}

} // namespace

ResponseFit fit(std::vector<Observation> rows, const Model& model) {
    Fitter fitter;
    fitter.model = model;
    fitter.rows = std::move(rows);
    fitter.sort_into_stocks();
    fitter.tabulate(model.window);
    std::vector<double> weights = fitter.weigh_outliers();
    if (!model.others.empty() && !fitter.rows.empty()) {
        const Window window = fitter.likeliest_window();
        if (window != model.window) {
            fitter.model.window = window;
            fitter.tabulate(window);
            weights = fitter.weigh_outliers();
        }
    }
    choose_shaped(fitter.stocks);
    ResponseFit done;
    done.grid_ = VerdictGrid(fitter.coefficients, fitter.stocks, model.stock_sd);
    done.findings_ = fitter.report(weights);
    done.model_ = std::move(fitter.model);
    done.coefficients_ = fitter.coefficients;
    done.stocks_ = std::move(fitter.stocks);
    return done;
}

} // namespace torchside::tune
