// The test coupons of a job, and their programs for the shop's controller.
//
// What       core/tune's coupons with the job's plate, the settings this shop has learnt for it, the ladder its log
// asks
//            for, and the words of its controller.
// Range      any workbook whose fields are in range.
// Edges      a plate past what the current severs, or too thick to pierce standing still; a safe height below the
//            pierce height: a Fault that names the key.
// Example    the default shop and job: a ladder of seven legs of 60 mm, G21.
#pragma once

#include <string>

#include "core/tune/coupon.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside {

[[nodiscard]] Outcome<tune::Coupon> coupon(const Workbook& workbook, tune::CouponKind kind);

/// The units a program is written in.
[[nodiscard]] UnitSystem program_units(const Shop& shop);

/// The coupon as a program in those units.
[[nodiscard]] Outcome<std::string> coupon_program(const Workbook& workbook, const tune::Coupon& coupon);

} // namespace torchside
