// The stocks that were worked with last, on this device alone: one touch brings one back.
#pragma once

#include <string>
#include <vector>

#include "core/worksheet/workbook.hpp"

namespace torchside::web {

struct Stock {
    Metal metal = Metal::mild_steel;
    double mm = 0;
    double amps = 0;

    friend bool operator==(const Stock&, const Stock&) = default;
};
[[nodiscard]] Stock stock_of(const Job& job);

class RecentStocks {
public:
    static constexpr std::size_t most = 5; // the job's own, and four to go to

    /// The user goes on with this one: it is the newest.
    void note(const Job& job);
    [[nodiscard]] std::vector<Stock> others(const Job& job);

private:
    void recall();

    std::vector<Stock> all_;
    bool recalled_ = false;
};

} // namespace torchside::web
