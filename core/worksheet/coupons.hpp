// The test coupons of a job, and their programs for the shop's controller.
//
// What       core/tune's coupons with the job's plate, the settings this shop has learnt for it, the ladder its log
//            asks for, and the words of its controller.
// Range      any workbook whose fields are in range.
// Edges      a plate past what the current severs, or too thick to pierce standing still; a safe height below the
//            pierce height: a Fault that names the key and says what is accepted.
// Example    the default shop and job: a ladder of seven legs of 60 mm, G21.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/tune/coupon.hpp"
#include "core/words/say.hpp"
#include "core/worksheet/shop_model.hpp"

namespace torchside {

/// `model`: the shop's, where the caller has one.
[[nodiscard]] Outcome<tune::Coupon> coupon(const Workbook& workbook, tune::CouponKind kind,
                                           const ShopModel& model = {});

/// The units a program is written in.
[[nodiscard]] UnitSystem program_units(const Shop& shop);

/// The coupon as a program in those units, with comments in this language.
[[nodiscard]] Outcome<std::string> coupon_program(const Workbook& workbook, const tune::Coupon& coupon,
                                                  const Language& language);

/// The row of the log that a leg starts: the job's stock, the leg's feed and height, nothing found yet.
[[nodiscard]] tune::TestCut leg_row(const Workbook& workbook, const tune::Leg& leg);

/// What a kerf coupon measures.
struct MeasuredKerf {
    std::optional<Length> square{}; // kerf along its sides
    std::optional<Length> hole{};   // kerf in the hole, cut slower
    Length offset{};                // half of the kerf, for the path beside an outline
    tune::TestCut row{};            // for the log
};

/// From the measured width of the square and diameter of the hole (each the mean of top and bottom edge); at least one.
[[nodiscard]] Outcome<MeasuredKerf> read_kerf(const Workbook& workbook, const tune::Coupon& coupon,
                                              std::optional<Length> square, std::optional<Length> hole);

/// What a feed ladder says when the legs from the slowest to the fastest marked one are clean.
struct LadderResult {
    Speed go_on{};                     // the feed to go on with
    std::vector<tune::TestCut> rows{}; // for the log: marked legs clean, slower ones too slow, faster ones too fast;
                                       // an unmarked leg between marked ones says nothing
};

/// `clean`: one flag a leg, in the coupon's order. None for a coupon of another kind, or with no leg marked.
[[nodiscard]] std::optional<LadderResult> read_ladder(const Workbook& workbook, const tune::Coupon& coupon,
                                                      std::span<const bool> clean);

} // namespace torchside
