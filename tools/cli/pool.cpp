// torchside pool: the population that many shops' logs speak for. A file is one shop: a workbook, or cuts that it gave away.
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "core/codec/utf8.hpp"
#include "core/store/cuts_file.hpp"
#include "core/store/workbook_file.hpp"
#include "core/tune/others.hpp"
#include "core/tune/pool.hpp"
#include "generated/words/cli.hpp"
#include "tools/cli/command.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {
namespace {

constexpr std::size_t most_bytes = 1 << 20;
constexpr std::size_t most_shops = 200;
constexpr std::size_t folds = 5;

/// A file's log, and whose path is wrong when it is none: one of many files was it.
Outcome<tune::ShopLog> shop_of(const std::string& file) {
    const auto text = load_text(file, most_bytes, words::cli::log_file);
    if (!text) {
        return text.fault();
    }
    const auto in_file = [&](const Fault& fault) {
        return Fault{codec::one_line(file) + " " + fault.field, fault.text};
    };
    if (document::looks_like_cuts(text.value())) {
        const auto cuts = document::read_cuts(text.value());
        if (!cuts) {
            return in_file(cuts.fault());
        }
        tune::OtherLog log = tune::log_of(cuts.value());
        return tune::ShopLog{std::move(log.cuts), std::move(log.machine)};
    }
    const auto workbook = document::read_workbook(text.value());
    if (!workbook) {
        return in_file(workbook.fault());
    }
    return tune::ShopLog{workbook.value().shop.tests, workbook.value().shop.machine};
}

Json figure_json(const tune::PooledFigure& f) {
    return {{"value", number(f.value)}, {"low", number(f.low)}, {"high", number(f.high)}};
}

Json to_json(const tune::Pooled& p, std::size_t shops, std::size_t cuts) {
    return {{"shops", shops},
            {"cuts", cuts},
            {"mean_bias", figure_json(p.mean)},
            {"bias_sd", figure_json(p.bias_sd)},
            {"slope_sd", figure_json(p.slope_sd)},
            {"stock_sd", figure_json(p.stock_sd)},
            {"window", figure_json(p.window)},
            {"misread", figure_json(p.misread)}};
}

// Each fifth of the shops by what the others say, and by the usual priors: ln of how likely a shop's log is, on average.
Json held_out(const std::vector<tune::ShopLog>& shops) {
    double pooled = 0.0;
    double usual = 0.0;
    const std::size_t parts = std::min(folds, shops.size());
    for (std::size_t fold = 0; fold < parts; ++fold) {
        std::vector<tune::ShopLog> in, out;
        for (std::size_t i = 0; i < shops.size(); ++i) {
            (i % parts == fold ? out : in).push_back(shops[i]);
        }
        pooled += tune::ln_evidence(out, tune::priors_of(tune::pool(in)));
        usual += tune::ln_evidence(out, tune::priors());
    }
    const auto n = static_cast<double>(shops.size());
    return {{"pooled", number(pooled / n)}, {"usual", number(usual / n)}, {"gain", number((pooled - usual) / n)}};
}

} // namespace

Outcome<std::string> run_pool(const Arguments& arguments, const Language&) {
    Arguments files = arguments;
    const bool hold_out = std::erase(files, "--held-out") > 0;
    if (files.empty() || files.size() > most_shops) {
        return Fault{"LOG", files.empty() ? words::cli::no_logs : words::cli::too_many_logs};
    }
    if (hold_out && files.size() < 2) {
        return Fault{"--held-out", words::cli::nobody_held_out};
    }
    const auto given = Words::sort(files, files.size(), {});
    if (!given) {
        return given.fault();
    }
    std::vector<tune::ShopLog> shops;
    std::size_t cuts = 0;
    for (std::size_t i = 0; i < files.size(); ++i) {
        auto shop = shop_of(given.value().file(i));
        if (!shop) {
            return shop.fault();
        }
        cuts += shop.value().cuts.size();
        shops.push_back(std::move(shop.value()));
    }
    Json out = to_json(tune::pool(shops), shops.size(), cuts);
    if (hold_out) {
        out["held_out"] = held_out(shops);
    }
    return printed(out);
}

} // namespace torchside::cli
