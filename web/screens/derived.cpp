#include "web/screens/derived.hpp"

namespace torchside::web {

void Derived::follow(const Workbook& book) {
    model_ = model_.fitted_to(book.shop);
    worksheet_ = evaluate(book, &part_memo_, model_);
    stale_ = true;
}

void Derived::begin_build(const Workbook& book) {
    drop_stale(book);
    building_ = true;
}

void Derived::drop_stale(const Workbook& book) {
    if (stale_ && !building_) {
        stale_ = false;
        if (chart_ && chart_inputs_ != chart_inputs(book.shop, book.job.material, model_)) {
            chart_.reset(); // no thickness changes it
        }
        tuning_.reset();
        diagnosis_.reset();
        coupon_.reset();
    }
}

const Chart& Derived::chart(const Workbook& book) {
    drop_stale(book);
    if (!chart_) {
        chart_inputs_ = chart_inputs(book.shop, book.job.material, model_);
        chart_ = torchside::chart(book.shop, book.job.material, model_);
    }
    return *chart_;
}

const Outcome<Tuning>& Derived::tuning(const Workbook& book) {
    drop_stale(book);
    if (!tuning_) {
        tuning_ = torchside::tuning(book, model_);
    }
    return *tuning_;
}

const Outcome<tune::CutDiagnosis>& Derived::diagnosis(const Workbook& book, const SeenCut& seen) {
    drop_stale(book);
    if (!diagnosis_ || !(seen_ == seen)) {
        diagnosis_ = read_cut(book, seen, model_);
        seen_ = seen;
    }
    return *diagnosis_;
}

const Outcome<tune::Coupon>& Derived::coupon(const Workbook& book, tune::CouponKind kind) {
    drop_stale(book);
    if (!coupon_ || coupon_kind_ != kind) {
        coupon_kind_ = kind;
        coupon_ = torchside::coupon(book, kind, model_);
    }
    return *coupon_;
}

SeenCut seen_cut(const ToolInputs& inputs) {
    const auto length = [](std::optional<double> v) { return v ? std::optional(Length{*v, mm}) : std::nullopt; };
    SeenCut s;
    s.signs = inputs.cut.signs;
    s.measured.kerf_top = length(inputs.cut.kerf_top);
    s.measured.kerf_bottom = length(inputs.cut.kerf_bottom);
    s.measured.left_deg = inputs.cut.left_deg;
    s.measured.right_deg = inputs.cut.right_deg;
    s.measured.lag = length(inputs.cut.lag);
    s.height = length(inputs.cut.height);
    if (inputs.cut_feed) {
        s.feed = Speed{*inputs.cut_feed, mm_min};
    }
    if (inputs.cut.arc) {
        s.arc = Voltage{*inputs.cut.arc, volt};
    }
    return s;
}

} // namespace torchside::web
