// What a shop usually is where a browser is set to: the answers that Start my shop has marked before anybody touches one.
//
// What       By the region of a language tag (BCP 47: "en-US", "zh-Hans-CN"): money, units, country, the usual supply of its
//            voltage, and a compressor and tank as they are sold in those units. Without a region the language speaks: "de" is
//            Germany, "en" the United States. A region that is not listed is metric, on 230 V.
// Source     assets/data/regions.json, usual_supplies.json. The flows and tanks below: common practice, no source.
// Edges      What was chosen before stays: inches, and a currency that is not a new workbook's.
// Example    "en-US": inches, USD, 240 V on 30 A, 5 cfm, 30 gal. "es-ES": mm, EUR, 230 V on 16 A. "es": the same.
#pragma once

#include <string_view>

#include "core/worksheet/workbook.hpp"

namespace torchside::document {

/// As the labels of compressors and tanks have them, small to large; the second tank is the usual one.
inline constexpr double usual_flows_cfm[] = {5, 8, 12, 18};
inline constexpr double usual_flows_l_min[] = {150, 250, 350, 500};
inline constexpr double usual_tanks_gal[] = {20, 30, 60, 80};
inline constexpr double usual_tanks_l[] = {50, 100, 200, 300};

/// `workbook`, in which nothing of the shop has been entered, with what is usual there.
[[nodiscard]] Workbook usual_shop(const Workbook& workbook, std::string_view language);

} // namespace torchside::document
