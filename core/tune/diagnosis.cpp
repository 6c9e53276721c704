#include "core/tune/diagnosis.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/cut/capacity.hpp"
#include "core/tune/diagnosis_rules.hpp"
#include "core/tune/next_test.hpp"
#include "core/tune/plate_terms.hpp"
#include "core/tune/squareness.hpp"
#include "core/words/range.hpp"
#include "generated/words/refusal.hpp"
#include "generated/words/tune.hpp"

namespace torchside::tune {
namespace {

struct Said {
    Word what, turn, why;
};

// In the order of Cause.
constexpr std::array<Said, cause_count> said_of_cause{{
    {words::tune::right, words::tune::right_do, words::tune::right_why},
    {words::tune::fast, words::tune::fast_do, words::tune::fast_why},
    {words::tune::slow, words::tune::slow_do, words::tune::slow_why},
    {words::tune::high, words::tune::high_do, words::tune::high_why},
    {words::tune::low, words::tune::low_do, words::tune::low_why},
    {words::tune::leaning, words::tune::leaning_do, words::tune::leaning_why},
    {words::tune::worn, words::tune::worn_do, words::tune::worn_why},
    {words::tune::corners, words::tune::corners_do, words::tune::corners_why},
    {words::tune::limit, words::tune::limit_do, words::tune::limit_why},
}};

constexpr Said unsure{words::tune::unsure, words::tune::unsure_do, words::tune::unsure_why};

constexpr Sign taper_signs[] = {Sign::square, Sign::narrow_top_both, Sign::narrow_top_one, Sign::narrow_bottom_both,
                                Sign::narrow_bottom_one};
constexpr Sign lag_signs[] = {Sign::lag_short, Sign::lag_good, Sign::lag_long};

bool sane(const std::optional<double>& degrees) {
    return !degrees || std::abs(*degrees) < 45.0;
}

bool sane(const std::optional<Length>& length, double low_mm) {
    return !length || (length->in(mm) >= low_mm && length->in(mm) <= 30.0);
}

std::optional<Fault> refusal(const Signs& seen, const MeasuredCut& m, const MadeCut& made) {
    const bool taper = m.kerf_top && m.kerf_bottom;
    if (seen.none() && !taper && !m.lag && !m.left_deg && !m.right_deg) {
        return Fault{"signs", words::refusal::no_signs};
    }
    if (!sane(m.kerf_top, 0.05) || !sane(m.kerf_bottom, 0.05)) {
        return Fault{"kerf_mm", words::range(0.05, 30, FieldUnit::mm)};
    }
    if (!sane(m.lag, 0.0)) {
        return Fault{"lag_mm", words::range(0, 30, FieldUnit::mm)};
    }
    if (!sane(m.left_deg) || !sane(m.right_deg)) {
        return Fault{"angle_deg", words::range(-45, 45, FieldUnit::degree)};
    }
    if (m.left_deg.has_value() != m.right_deg.has_value()) {
        return Fault{"angle_deg", words::refusal::other_face};
    }
    if (!(made.feed.in(mm_min) >= 10.0 && made.feed.in(mm_min) <= 50000.0)) {
        return Fault{"feed_mm_min", words::range(10, 50000, FieldUnit::mm_min)};
    }
    return std::nullopt;
}

// The faces as measured, whichever way; nothing when they were not.
std::optional<Faces> measured_faces(const MeasuredCut& m, Length thickness) {
    if (m.left_deg && m.right_deg) {
        return faces(*m.left_deg, *m.right_deg);
    }
    if (m.kerf_top && m.kerf_bottom) {
        return Faces{face_angle_deg(*m.kerf_top, *m.kerf_bottom, thickness), 0.0};
    }
    return std::nullopt;
}

Sign taper_sign(const Faces& f) {
    const bool leans = std::abs(f.leaning_deg) > reading_rules().taper_square_deg &&
                       std::abs(f.leaning_deg) > reading_rules().leaning_share * std::abs(f.alike_deg);
    if (leans) { // the worse face decides which way it is narrow
        return f.alike_deg + std::abs(f.leaning_deg) >= std::abs(f.alike_deg - std::abs(f.leaning_deg))
                   ? Sign::narrow_top_one
                   : Sign::narrow_bottom_one;
    }
    if (std::abs(f.alike_deg) <= reading_rules().taper_square_deg) {
        return Sign::square;
    }
    return f.alike_deg > 0.0 ? Sign::narrow_top_both : Sign::narrow_bottom_both;
}

Signs with_measurements(Signs signs, const MeasuredCut& m, const std::optional<Faces>& f, Length thickness) {
    if (f) {
        for (const Sign s : taper_signs) {
            signs.clear(s);
        }
        signs.mark(taper_sign(*f));
    }
    if (m.lag) {
        for (const Sign s : lag_signs) {
            signs.clear(s);
        }
        const double angle = lag_angle_deg(*m.lag, thickness);
        signs.mark(angle < reading_rules().lag_short_deg  ? Sign::lag_short
                   : angle > reading_rules().lag_long_deg ? Sign::lag_long
                                                          : Sign::lag_good);
    }
    return signs;
}

Squareness squareness_of(const Faces& f, Length thickness) {
    Squareness s;
    s.angle_deg = std::abs(f.alike_deg) + std::abs(f.leaning_deg);
    if (f.alike_deg < 0.0) {
        s.angle_deg = -s.angle_deg;
    }
    s.u = out_of_square(s.angle_deg, thickness);
    s.zone = edge_zone(thickness);
    s.range = squareness_range(s.u, thickness);
    if (s.range) {
        s.limit = squareness_limit(*s.range, thickness);
    }
    return s;
}

// What the signs say of the feed: nothing unless a sign that the feed makes is among them.
std::optional<Verdict> verdict_of(const Signs& s, const std::array<double, cause_count>& chance, Cause cause) {
    const auto p = [&](Cause c) { return chance[static_cast<std::size_t>(c)]; };
    if (cause == Cause::too_fast || cause == Cause::too_slow) {
        if (p(cause) < reading_rules().sure_from) {
            return std::nullopt;
        }
        return cause == Cause::too_fast ? Verdict::too_fast : Verdict::too_slow;
    }
    const bool feed_looks_right = s.has(Sign::dross_none) || s.has(Sign::corners_only);
    const bool blamed = s.has(Sign::sparks_back) || s.has(Sign::sparks_level) || s.has(Sign::lag_long);
    if (feed_looks_right && !blamed && p(Cause::too_fast) + p(Cause::too_slow) < reading_rules().sure_from) {
        return Verdict::clean;
    }
    return std::nullopt;
}

TestCut row_of(const MadeCut& made, const MeasuredCut& m) {
    TestCut row;
    row.material = made.plate.metal;
    row.thickness = made.plate.thickness;
    row.current = made.plate.current;
    row.feed = made.feed;
    row.kerf_top = m.kerf_top;
    row.kerf_bottom = m.kerf_bottom;
    row.arc = made.arc;
    row.cut_height = made.plate.height;
    row.nozzle = made.nozzle;
    return row;
}

void turn_height(Advice& a, const std::optional<Faces>& f, const MadeCut& made, const ShopView& shop,
                 const Posterior& posterior) {
    double by = a.cause == Cause::too_high ? -reading_rules().height_step_mm : reading_rules().height_step_mm;
    if (f && std::abs(f->alike_deg) > reading_rules().taper_square_deg) {
        by = std::clamp(-f->alike_deg / reading_rules().deg_per_mm_height, -reading_rules().height_step_most_mm,
                        reading_rules().height_step_most_mm);
    }
    by = std::fmax(by, std::fmin(0.0, reading_rules().height_least_mm - made.plate.height.in(mm)));
    cut::CutSetup moved = made.plate;
    moved.height = moved.height + Length{by, mm};
    a.knob = Knob::height;
    a.height_by = Length{by, mm};
    a.arc_by = arc(posterior, moved).value - arc(posterior, made.plate).value;
    a.controller_by = *a.arc_by / shop.height_control.divider_ratio;
}

void turn(Advice& a, const std::optional<Faces>& f, const MadeCut& made, const ShopView& shop, const TestCut& row,
          const Posterior& posterior) {
    switch (a.cause) {
    case Cause::too_fast:
    case Cause::too_slow: {
        std::vector<TestCut> log(shop.log.begin(), shop.log.end());
        log.push_back(row);
        const Posterior after = learn(log, shop.machine, shop.height_control.gradient);
        a.knob = Knob::feed;
        if (const auto outlook = look(after, made.plate, shop.table)) {
            a.feed_to = outlook.value().next;
        }
        return;
    }
    case Cause::too_high:
    case Cause::too_low:
        return turn_height(a, f, made, shop, posterior);
    case Cause::leaning:
        a.knob = f && f->leaning_deg != 0.0 ? Knob::tilt : Knob::direction;
        if (a.knob == Knob::tilt) {
            a.tilt_by_deg = -f->leaning_deg;
        }
        return;
    case Cause::worn:
        a.knob = Knob::consumables;
        return;
    case Cause::corners:
        a.knob = Knob::corner_speed;
        return;
    case Cause::right:
    case Cause::near_limit:
        a.knob = Knob::none;
        return;
    }
}

} // namespace

Outcome<CutDiagnosis> read_cut(const Signs& seen, const MeasuredCut& measured, const MadeCut& made,
                               const ShopView& shop) {
    if (auto fault = refusal(seen, measured, made)) {
        return *fault;
    }
    const cut::CutSetup plate = plate_of(made.plate, shop.machine.nozzles);
    const cut::Terms& terms = cut::small_air_torch(plate.metal);
    if (const auto balance = cut::balance(plate, terms); !balance) {
        return balance.fault();
    }
    const Posterior posterior = learn(shop.log, shop.machine, shop.height_control.gradient);
    const Length clean =
        cut::limits(plate, LearntFeed(posterior), terms, proven(shop.log, plate.metal, plate.current)).clean;
    const std::optional<Faces> f = measured_faces(measured, plate.thickness);
    const Signs signs = with_measurements(seen, measured, f, plate.thickness);
    const auto chance = causes(signs, plate.thickness > reading_rules().near_limit_share * clean);
    if (!chance) {
        return chance.fault();
    }

    CutDiagnosis r;
    r.causes = chance.value();
    const auto likeliest = std::max_element(r.causes.begin(), r.causes.end());
    r.advice.cause = static_cast<Cause>(likeliest - r.causes.begin());
    r.advice.chance = *likeliest;
    r.row = row_of(made, measured);
    r.row.verdict = verdict_of(signs, r.causes, r.advice.cause);
    r.row.worn = r.advice.cause == Cause::worn && r.advice.chance >= reading_rules().sure_from;
    r.worth_logging = r.row.verdict || r.row.kerf_top || r.row.kerf_bottom || r.row.arc || r.row.worn;
    if (f) {
        r.squareness = squareness_of(*f, plate.thickness);
    }
    if (r.advice.chance < reading_rules().sure_from) {
        r.advice.what = unsure.what;
        r.advice.turn = unsure.turn;
        r.advice.why = unsure.why;
        return r;
    }
    const Said& w = said_of_cause[static_cast<std::size_t>(r.advice.cause)];
    r.advice.what = w.what;
    r.advice.turn = w.turn;
    r.advice.why = w.why;
    turn(r.advice, f, made, shop, r.row, posterior);
    return r;
}

} // namespace torchside::tune
