// torchside coupon: a test coupon of the job's plate as a program for the shop's controller, or as JSON.
#include "core/worksheet/coupons.hpp"

#include "tools/cli/command.hpp"
#include "tools/cli/results/coupon.hpp"

namespace torchside::cli {

Outcome<std::string> run_coupon(const Arguments& arguments, const Language& language) {
    const auto words = Words::sort(arguments, 1, {"--kind", "--units", "--format"});
    if (!words) {
        return words.fault();
    }
    const auto kind = words.value().choice("--kind", {"ladder", "heights", "kerf", "swirl"});
    const auto units = words.value().choice("--units", {"metric", "inch"}, std::size_t{2}); // 2: the workbook's own
    const auto format = words.value().choice("--format", {"program", "json"}, std::size_t{0});
    for (const auto* choice : {&kind, &units, &format}) {
        if (!*choice) {
            return choice->fault();
        }
    }
    auto workbook = load_workbook(words.value().file(0));
    if (!workbook) {
        return workbook.fault();
    }
    if (units.value() != 2) {
        workbook.value().shop.controller.units = static_cast<UnitSystem>(units.value());
    }
    const auto made = coupon(workbook.value(), static_cast<tune::CouponKind>(kind.value()));
    if (!made) {
        return made.fault();
    }
    if (format.value() == 1) {
        return printed(coupon_json(made.value()));
    }
    return coupon_program(workbook.value(), made.value(), language);
}

} // namespace torchside::cli
