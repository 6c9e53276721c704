// One step back: what was there before the last change, and what that change is called.
//
// The bar that offers it stays on the panel where the change was made and on the screen that one returns to, because that
// is where its effect shows; with the next step from there, or the next change, it goes. So it takes no room for good,
// and what it would undo is always what the user did last.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "core/schema/intent.hpp"
#include "core/tune/coupon.hpp"
#include "core/tune/signs.hpp"

namespace torchside::web {

class App;

/// Read off instruments to work settings out from; kept while the app is open, in no workbook.
struct Scratch {
    struct Cut { // that is read, in mm and V
        tune::Signs signs;
        std::optional<double> kerf_top, kerf_bottom, left_deg, right_deg, lag, height, arc;
    };
    Cut cut;
    // The coupon on show, and what it measured.
    tune::CouponKind coupon = tune::CouponKind::ladder;
    std::array<bool, 9> clean{};
    struct Leg { // of a height ladder, in mm and V
        bool square = false;
        std::optional<double> arc, kerf_top, kerf_bottom;
    };
    std::array<Leg, 9> heights{};
    std::size_t leg = 0; // of them, that is measured
    struct Start {       // what hangs on the largest current while that is typed
        bool duty_follows = false;
        double job_a = 0, least_a = 0;
    } start;
    std::optional<double> square, hole, kerf_square;
    std::array<std::optional<double>, 4> angle{};
    std::optional<double> cut_feed, reading_v, low_v, low_mm, high_v, high_mm, upper_kohm, lower_kohm, input_kohm;
};

struct Change {
    std::string name;                 // "Thickness 6 → 8 mm"
    Workbook before;                  // once undone: after
    std::optional<Scratch> scratch{}; // what a log row was made of
    bool undone = false;
    std::string typed{};      // path of the field it is being typed into
    document::Scalar first{}; // what that field held before
    bool shown = false;       // the user has seen the bar
    int steps = 0;            // from panel to panel or place to place since
};

/// A value of the workbook as a person reads it: "6 mm", "8.25 %", "on", "blank".
[[nodiscard]] std::string value_words(const App& app, std::string_view path, const document::Scalar& value,
                                      const Workbook& book);

} // namespace torchside::web
