// All that follows from the workbook. The worksheet is there at once; what only some panels show is worked out when it is
// first looked at, and kept until the workbook changes.
#pragma once

#include <optional>

#include "core/worksheet/chart.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/tuning.hpp"
#include "core/worksheet/worksheet.hpp"
#include "web/screens/scratch.hpp"

namespace torchside::web {

class Derived {
public:
    /// The workbook is this one now. The worksheet is evaluated; the rest goes, but not while a screen is being built:
    /// what is being drawn may still point into it.
    void follow(const Workbook& book);
    /// Around each build of the screen.
    void begin_build(const Workbook& book);
    void end_build() { building_ = false; }

    [[nodiscard]] const Worksheet& worksheet() const { return worksheet_; }
    /// What the log has taught.
    [[nodiscard]] const ShopModel& model() const { return model_; }
    [[nodiscard]] const Chart& chart(const Workbook& book);
    [[nodiscard]] const Outcome<Tuning>& tuning(const Workbook& book);
    /// Of a cut as it came out.
    [[nodiscard]] const Outcome<tune::CutDiagnosis>& diagnosis(const Workbook& book, const SeenCut& seen);
    [[nodiscard]] const Outcome<tune::Coupon>& coupon(const Workbook& book, tune::CouponKind kind);

private:
    void drop_stale(const Workbook& book);

    ShopModel model_;    // before what asks it: fitted anew when the log, a nozzle or the gradient has changed
    PartMemo part_memo_; // before the worksheet: a big drawing is not compensated again at every edit
    Worksheet worksheet_;
    bool stale_ = false; // what follows is of the workbook before
    bool building_ = false;
    std::optional<Chart> chart_;
    ChartInputs chart_inputs_; // what chart_ is of
    std::optional<Outcome<Tuning>> tuning_;
    std::optional<Outcome<tune::CutDiagnosis>> diagnosis_;
    SeenCut seen_; // what diagnosis_ is of
    std::optional<Outcome<tune::Coupon>> coupon_;
    tune::CouponKind coupon_kind_ = tune::CouponKind::ladder;
};

/// The cut that was typed into the tools, with its units.
[[nodiscard]] SeenCut seen_cut(const ToolInputs& inputs);

} // namespace torchside::web
