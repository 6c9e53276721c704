// From rows to a ResponseFit.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "core/quantity/sort_rows.hpp"
#include "core/tune/fitter.hpp"
#include "core/tune/quantile.hpp"
#include "core/tune/response_fit.hpp"
#include "core/tune/second_start.hpp"

namespace torchside::tune {
namespace {

constexpr std::size_t most_as_all = 32;  // rows that are fitted as every kind of shop
constexpr std::size_t least_as_one = 64; // and as the likeliest alone
constexpr std::size_t told_by = 8;       // rows of a longer log that say which kinds are the likeliest
constexpr double told_apart = 1e-3;      // of a stock's sd: two starts that end nearer to each other are one
constexpr double hardly_likely = 0.01;   // of the likeliest kind of shop: less is left out

// A verdict against what all other rows say: they are had by dividing its own likelihood out again.
Finding appraise(const Observation& row, const Distribution& others, const Model& model) {
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

std::vector<Finding> report(const Fitter& fitter, const std::vector<double>& weights) {
    const std::vector<double> z = fitter.distances(weights);
    std::vector<Finding> findings;
    for (const StockEvidence& stock : fitter.stocks) {
        const Distribution f = stock.verdicts.empty()
                                   ? Distribution{}
                                   : distribution_of(stock, fitter.coefficients, fitter.model.stock_sd);
        for (std::size_t i = stock.begin; i < stock.end; ++i) {
            const Observation& row = fitter.rows[i];
            if (row.judged()) {
                findings.push_back(appraise(row, f, fitter.model));
            } else {
                const double off = std::abs(z[i]);
                findings.push_back({row.row, weights[i], off, off > fitter.model.outlier_sd});
            }
        }
    }
    sort_rows(findings, [](const Finding& a, const Finding& b) { return a.row < b.row; });
    return findings;
}

// One kind of shop, fitted from one start.
struct Tried {
    std::size_t shop = 0;
    Fitter fitter{};
    VerdictGrid grid{};
    std::vector<double> weights{};
    double ln_odds = 0.0;
};

void settle(Tried& t) {
    t.weights = t.fitter.weigh_outliers();
    choose_shaped(t.fitter.stocks);
    t.grid = VerdictGrid(t.fitter.coefficients, t.fitter.stocks, t.fitter.model.stock_sd);
}

// Both ended at the same place.
bool are_one(const Fitter& a, const Fitter& b) {
    for (std::size_t i = 0; i < a.stocks.size(); ++i) {
        if (std::abs(a.stocks[i].mean - b.stocks[i].mean) > told_apart * std::sqrt(a.stocks[i].variance)) {
            return false;
        }
    }
    return true;
}

// From a second start, where that ends elsewhere; each then has what lies nearer to it.
std::optional<Tried> tried_anew(Tried& first, std::size_t believed) {
    Tried second;
    second.shop = first.shop;
    second.fitter = first.fitter;
    second.fitter.believed = believed;
    settle(second);
    if (second.grid.empty() || are_one(first.fitter, second.fitter)) {
        return std::nullopt;
    }
    const double more = second.fitter.ln_messages() - first.fitter.ln_messages();
    first.grid.leave_to(first.fitter.stocks, second.fitter.stocks, more);
    second.grid.leave_to(second.fitter.stocks, first.fitter.stocks, -more);
    return second;
}

Tried tried(Fitter fitter, const OtherShop& shop) {
    Model& model = fitter.model;
    model.window = shop.window;
    model.prior = shop.prior;
    model.stock_sd = shop.stock_sd;
    model.drift = shop.drift;
    for (Observation& row : fitter.rows) {
        row.y -= shop.drift * row.used;
    }
    Tried t;
    fitter.tabulate(model.window);
    t.fitter = std::move(fitter);
    settle(t);
    return t;
}

std::vector<Tried> tried(const Fitter& fitter, const std::vector<OtherShop>& shops) {
    std::vector<Tried> all;
    for (std::size_t i = 0; i < shops.size(); ++i) {
        Tried first = tried(fitter, shops[i]);
        first.shop = i;
        std::optional<Tried> second;
        if (fitter.model.starts > 1 && !first.grid.empty()) {
            if (const std::optional<std::size_t> believed = second_start(first.fitter)) {
                second = tried_anew(first, *believed);
            }
        }
        all.push_back(std::move(first));
        if (second) {
            all.push_back(std::move(*second));
        }
    }
    for (Tried& t : all) {
        t.ln_odds = shops[t.shop].ln_odds + t.fitter.ln_evidence(t.grid, t.weights);
    }
    return all;
}

std::size_t likeliest(const std::vector<Tried>& all) {
    const auto less = [](const Tried& a, const Tried& b) { return a.ln_odds < b.ln_odds; };
    return static_cast<std::size_t>(std::max_element(all.begin(), all.end(), less) - all.begin());
}

Fitter sorted(std::vector<Observation> rows, const Model& model) {
    Fitter fitter;
    fitter.model = model;
    fitter.rows = std::move(rows);
    fitter.sort_into_stocks();
    return fitter;
}

// So many rows, as many of each stock as of any other where it has them: of stocks and of a stock's rows, sorted by what
// they say, evenly spaced ones.
std::vector<Observation> spread_rows(const Fitter& fitter, std::size_t most) {
    const std::size_t stocks = std::min(fitter.stocks.size(), most);
    const auto stock = [&](std::size_t i) -> const StockEvidence& {
        return fitter.stocks[i * fitter.stocks.size() / stocks];
    };
    std::vector<std::size_t> share(stocks, 0);
    for (std::size_t left = most, before = 0; left > 0 && left != before;) {
        before = left;
        for (std::size_t i = 0; i < stocks && left > 0; ++i) {
            if (share[i] < stock(i).end - stock(i).begin) {
                ++share[i];
                --left;
            }
        }
    }
    std::vector<Observation> rows;
    for (std::size_t i = 0; i < stocks; ++i) {
        for (std::size_t k = 0; k < share[i]; ++k) {
            const std::size_t own = stock(i).end - stock(i).begin;
            rows.push_back(fitter.rows[stock(i).begin + (2 * k + 1) * own / (2 * share[i])]);
        }
    }
    return rows;
}

// The likeliest ones by some of the rows; one explanation of them will do.
std::vector<OtherShop> likeliest_shops(const Fitter& fitter, const std::vector<OtherShop>& shops, std::size_t most) {
    struct Likely {
        std::size_t shop;
        double ln_odds;
    };
    Model model = fitter.model;
    model.starts = 1;
    std::vector<Likely> likely;
    for (const Tried& t : tried(sorted(spread_rows(fitter, told_by), model), shops)) {
        likely.push_back({t.shop, t.ln_odds});
    }
    sort_rows(likely, [](const Likely& a, const Likely& b) { return a.ln_odds > b.ln_odds; });
    std::vector<OtherShop> kept;
    for (std::size_t i = 0; i < most; ++i) {
        kept.push_back(shops[likely[i].shop]);
    }
    return kept;
}

// The kinds that the rows may be of: the longer the log, the fewer of them.
std::vector<OtherShop> shops_of(const Fitter& fitter) {
    const Model& model = fitter.model;
    std::vector<OtherShop> shops{{model.window, 0.0, model.prior, model.stock_sd, model.drift}};
    const std::vector<Observation>& rows = fitter.rows;
    if (std::none_of(rows.begin(), rows.end(), [](const Observation& o) { return o.judged(); })) {
        return shops;
    }
    shops.insert(shops.end(), model.others.begin(), model.others.end());
    if (shops.size() == 1 || rows.size() <= most_as_all) {
        return shops;
    }
    const std::size_t short_of_one = least_as_one - std::min(least_as_one, rows.size());
    return likeliest_shops(fitter, shops, 1 + (shops.size() - 1) * short_of_one / (least_as_one - most_as_all));
}

ShopKind kind_of(Tried& t, double weight) {
    ShopKind kind;
    kind.weight = weight;
    kind.window = t.fitter.model.window;
    kind.stock_sd = t.fitter.model.stock_sd;
    kind.drift = t.fitter.model.drift;
    kind.coefficients = t.fitter.coefficients;
    kind.stocks = std::move(t.fitter.stocks);
    kind.grid = std::move(t.grid);
    return kind;
}

} // namespace

ResponseFit fit(std::vector<Observation> rows, const Model& model) {
    const Fitter fitter = sorted(std::move(rows), model);
    const std::vector<OtherShop> shops = shops_of(fitter);
    std::vector<Tried> all = tried(fitter, shops);
    const Tried& best = all[likeliest(all)];
    const double most = best.ln_odds;
    ResponseFit done;
    done.findings_ = report(best.fitter, best.weights);
    done.model_ = best.fitter.model;
    done.coefficients_ = best.fitter.coefficients;
    double sum = 0.0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const double weight = std::exp(all[i].ln_odds - most);
        if (weight > hardly_likely) {
            done.kinds_.push_back(kind_of(all[i], weight));
            sum += weight;
        }
    }
    done.ln_evidence_ = most + std::log(sum);
    for (ShopKind& kind : done.kinds_) {
        kind.weight /= sum;
    }
    sort_rows(done.kinds_, [](const ShopKind& a, const ShopKind& b) { return a.weight > b.weight; });
    return done;
}

} // namespace torchside::tune
