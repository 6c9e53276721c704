// The answer: Workbook in, Worksheet out. The one entry that runs every calculation and collects the warnings.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/air/report.hpp"
#include "core/cut/capacity.hpp"
#include "core/cut/settings.hpp"
#include "core/motion/report.hpp"
#include "core/price/report.hpp"
#include "core/safety/report.hpp"
#include "core/supply/assess.hpp"
#include "core/supply/divider.hpp"
#include "core/supply/report.hpp"
#include "core/tune/posterior.hpp"
#include "core/wear/report.hpp"
#include "core/words/message.hpp"
#include "core/worksheet/part_stage.hpp"
#include "core/worksheet/shop_model.hpp"

namespace torchside {

/// Gaps that a cut crosses; in each the arc goes out.
struct Gaps {
    double per_m = 0.0;
    double open_share = 0.0;      // of the plate's area
    Basis basis{};                // entered, or geometry of the openings
    std::optional<Fault> fault{}; // sizes that make no mesh: then it is taken as solid
};

/// What the circuit allows: the highest whole ampere at which it holds and the machine can be set to, and its reach.
struct There {
    Current current{};
    cut::Limits limits{};
};

struct Worksheet {
    std::optional<cut::Settings> settings{}; // none when the plate is refused; the reason is in capacity and warnings
    cut::Capacity capacity{};
    std::optional<cut::ByHand> by_hand{}; // none when the plate is refused
    std::optional<tune::Trail> trail{};   // what moved the feed; none when the plate is refused
    supply::ControllerInput tap{};        // what the height control's input gets
    supply::Input asked{};                // of the circuit, with the machine as it is rated at the line
    supply::Report circuit{};
    std::optional<There> there{}; // none when nothing that the machine can be set to holds
    air::Report air{};
    safety::Report safety{};
    Gaps gaps{};
    std::shared_ptr<const PartStage> part{}; // never null; without a path when the plate is refused
    std::optional<Mass> mass{};              // of one part; none without an area
    std::optional<motion::Report> time{};    // none when there is no path
    wear::Report wear{};                     // without a path: what is known of the set in the torch alone
    std::optional<price::Report> price{};    // none when there is no path
    std::vector<Message> warnings{};         // worst first
};

/// Total: every workbook whose fields are in range has a worksheet. With a memo the part is not built again as long as
/// nothing that it depends on has changed, with the shop's model its log is not fitted again; the answer is the same.
[[nodiscard]] Worksheet evaluate(const Workbook& workbook, PartMemo* memo = nullptr, const ShopModel& model = {});

} // namespace torchside
