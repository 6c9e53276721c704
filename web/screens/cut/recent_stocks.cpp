#include "web/screens/cut/recent_stocks.hpp"

#include <algorithm>

#include "core/codec/csv.hpp"
#include "core/codec/decimal.hpp"
#include "core/stock/properties.hpp"
#include "web/platform/platform.hpp"

namespace torchside::web {
namespace {

constexpr std::string_view kept_as = "stocks";

/// What is kept may be anybody's: only a plate that the workbook would take is one.
bool sensible(const Stock& stock) {
    return stock.mm >= 0.3 && stock.mm <= 150 && stock.amps >= 5 && stock.amps <= 200;
}

} // namespace

Stock stock_of(const Job& job) {
    return {job.material, job.thickness.in(mm), job.current.in(ampere)};
}

void RecentStocks::recall() {
    if (recalled_) {
        return;
    }
    recalled_ = true;
    for (const codec::Cells& row : codec::read_tabbed(platform::remembered(kept_as))) {
        for (const Metal metal : all_metals) {
            if (row.size() == 3 && row[0] == stock::key(metal) && all_.size() < most) {
                const Stock stock{metal, codec::read_decimal(row[1]), codec::read_decimal(row[2])};
                if (sensible(stock)) {
                    all_.push_back(stock);
                }
            }
        }
    }
}

void RecentStocks::note(const Job& job) {
    recall();
    const Stock now = stock_of(job);
    if (!all_.empty() && all_.front() == now) {
        return;
    }
    std::erase(all_, now);
    all_.insert(all_.begin(), now);
    all_.resize(std::min(all_.size(), most));
    std::string text;
    for (const Stock& stock : all_) {
        text += stock::key(stock.metal);
        text += '\t' + codec::decimal_text(stock.mm) + '\t' + codec::decimal_text(stock.amps) + '\n';
    }
    platform::remember(kept_as, text);
}

std::vector<Stock> RecentStocks::others(const Job& job) {
    recall();
    std::vector<Stock> out = all_;
    std::erase(out, stock_of(job));
    out.resize(std::min(out.size(), most - 1));
    return out;
}

} // namespace torchside::web
