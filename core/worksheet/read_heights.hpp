// What a height ladder showed: the height at which its faces are square, the volts that hold it, and rows for the log.
//
// What       Legs whose faces look square, and slots that were measured, give the height (tune/square_height.hpp).
// Volts      read on legs teach the arc's voltage as any row of the log does; the volts to set are those that the log
//            gives with these rows in it.
// Rows       one for each leg with volts or a measured kerf, with its height and feed, without a verdict: a height
//            ladder says nothing of the feed. A leg that was only looked at leaves no row: the log holds no finding of
//            that kind. Its height goes into shop.height_control.cut_height_mm.
// Range      a coupon of kind heights and one entry a leg, in the coupon's order.
// Edges      nothing marked and nothing measured, or a reading outside what the log accepts: a Fault that names it.
//            Legs that do not tell heights apart: no height, and the advice says so. A height past the legs is held to
//            half a step beyond them, and never below 0.8 mm: the nozzle would strike.
// Example    6 mm, legs at 0.9 and 2.1 mm that measure 1.45/1.55 and 1.75/1.45 mm: set 1.2 mm, 0.58 to 1.59.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/quantity/estimate.hpp"
#include "core/tune/coupon.hpp"
#include "core/words/text.hpp"
#include "core/worksheet/shop_model.hpp"

namespace torchside {

/// One leg as it came out.
struct HeightLeg {
    bool square = false;          // its faces are among the squarest
    std::optional<Voltage> arc{}; // at the torch
    std::optional<Length> kerf_top{};
    std::optional<Length> kerf_bottom{};
    friend bool operator==(const HeightLeg&, const HeightLeg&) = default;
};

struct HeightsResult {
    std::optional<Length> height{}; // to go on with, in steps of 0.05 mm
    Length low{};                   // where the square height lies, 8 times in 10
    Length high{};
    double deg_per_mm = 0.0;                      // taper that a millimetre of height makes
    Estimate<Voltage> arc{};                      // at that height, or at the usual one
    Voltage controller{};                         // behind the divider
    std::optional<Estimate<Gradient>> gradient{}; // volts of a millimetre; when two heights were read
    Word advice{};                                // a sentence
    std::vector<tune::TestCut> rows{};            // for the log
};

/// `model`: the shop's, where the caller has one. It serves as long as no leg leaves a row for the log.
[[nodiscard]] Outcome<HeightsResult> read_heights(const Workbook& workbook, const tune::Coupon& coupon,
                                                  std::span<const HeightLeg> legs, const ShopModel& model = {});

} // namespace torchside
