// Judgement a cut: what is seen or measured on it -> the cause, the one knob to turn, by how much, why, how sure; and the
// row for the log.
//
// What       One piece of advice at a time, in the machine's own units.
// Formula    measurements become signs (a measured taper, lag or pair of angles replaces the marked one), signs become
//            causes (signs.hpp), the likeliest cause names its knob:
//            too fast or slow  feed: to the next test that the log asks for with this verdict in it (next_test.hpp)
//            too high or low   height by -theta / (1.5 deg/mm), at most 0.5 mm; 0.3 mm when theta was not measured;
//                              arc volts by that times the learnt volts per mm, at the controller behind its divider
//            leaning           tilt by (left - right) / 2, or the two-direction coupon when it was not measured. A
//                              torch whose top leans to the left of travel cuts both walls that way: the left one
//                              tapers more, the right one less; tilt_by_deg is negative, the top goes to the right
//            worn              nozzle and electrode; the row is logged as worn and does not teach
//            corners           the table's corner speed, not the feed; near the limit: nothing to turn
// Source     directions of knobs: common practice (standoff and spatter: Azlan 2024); slopes are priors
//            (assets/data/tune_rules.json).
// Range      any plate core/cut accepts.
// Edges      nothing marked and nothing measured, or one face alone: a Fault. No cause above 40 %: no knob; the advice
//            says what to look at next. A verdict is logged only when signs speak of the feed.
// Example    6 mm, kerf 1.8 over 1.4 mm, no dross, sparks below: too high; 0.5 mm lower (1.27 mm asked, the step is
//            capped).
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/gear/machine.hpp"
#include "core/tune/posterior.hpp"
#include "core/tune/signs.hpp"
#include "core/words/outcome.hpp"
#include "core/words/text.hpp"

namespace torchside::tune {

/// The cut as it was made.
struct MadeCut {
    cut::CutSetup plate{}; // its height is the cut height used
    Speed feed{};
    std::optional<Voltage> arc{}; // read at the torch
    std::optional<Current> nozzle{};
};

struct MeasuredCut {
    std::optional<Length> kerf_top{};
    std::optional<Length> kerf_bottom{};
    std::optional<Length> lag{};
    std::optional<double> left_deg{}; // left of travel; positive: kerf wider at the top
    std::optional<double> right_deg{};
    friend bool operator==(const MeasuredCut&, const MeasuredCut&) = default;
};

struct ShopView {
    const Machine& machine;
    const HeightControl& height_control;
    const Table& table;
    std::span<const TestCut> log;
};

enum class Knob { none, feed, height, tilt, direction, consumables, corner_speed };

struct Advice {
    Cause cause = Cause::right;
    double chance = 0.0; // how sure
    Knob knob = Knob::none;
    std::optional<Speed> feed_to{};
    std::optional<Length> height_by{};
    std::optional<Voltage> arc_by{};        // at the torch, what height_by does on a height control
    std::optional<Voltage> controller_by{}; // the same behind the divider
    std::optional<double> tilt_by_deg{};    // of the torch's top, positive: to the left of travel
    Word what{}, turn{}, why{};             // the cause, what to do, and why
};

struct Squareness {
    double angle_deg = 0.0;     // of the worse face
    Length u{};                 // between the edge zones
    Length zone{};              // left out at either edge
    std::optional<int> range{}; // ISO 9013:2017; none: past range 5, or the thickness is not covered
    std::optional<Length> limit{};
};

struct CutDiagnosis {
    Advice advice{};
    std::array<double, cause_count> causes{}; // in the order of Cause
    std::optional<Squareness> squareness{};   // when the taper was measured
    TestCut row{};                            // for the log
    bool worth_logging = false;               // the row says something of the feed, the kerf or the arc, or is worn
};

[[nodiscard]] Outcome<CutDiagnosis> read_cut(const Signs& seen, const MeasuredCut& measured, const MadeCut& made,
                                             const ShopView& shop);

} // namespace torchside::tune
