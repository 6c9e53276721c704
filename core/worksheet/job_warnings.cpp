// Warnings of the part, its time, its wear and its price.
#include <algorithm>
#include <utility>

#include "core/worksheet/holes.hpp"
#include "core/worksheet/set_wear.hpp"
#include "core/worksheet/warnings.hpp"
#include "core/worksheet/words.hpp"
#include "generated/words/machine.hpp"
#include "generated/words/mesh.hpp"
#include "generated/words/part.hpp"
#include "generated/words/price.hpp"
#include "generated/words/table.hpp"
#include "generated/words/wear.hpp"

namespace torchside {
namespace {

constexpr double slow_enough = 0.02, much_slow = 0.15; // of the cut's length: a word, a caution

constexpr double nearly = 0.9; // of a life: not worth starting a batch on

// Holes that are no narrower than the plate is thick (those are among the problems), but too narrow for the kerf.
void warn_of_holes(const WarningContext& f, std::vector<Message>& out) {
    int count = 0;
    for (const Holes& holes : holes_of(f.worksheet, f.workbook.job.thickness)) {
        count += holes.state == HoleState::small ? holes.count : 0;
    }
    if (count > 0) {
        const cut::Settings& settings = *f.worksheet.settings;
        const Text least =
            words::either(words::size(least_hole(settings)), words::size(least_hole(settings, UnitSystem::inch)));
        out.push_back({"hole_below_least", Topic::part, Severity::note,
                       words::part::SmallHoles{.count = count, .least = least}, words::part::small_holes_why,
                       words::part::try_one, "job.part.hole_mm"});
    }
}

Message worn_past(const wear::InUse& now, const wear::Report& wear) {
    Message out{"consumables_counter", Topic::wear, Severity::caution};
    out.title = words::wear::Counter{.minutes = words::number(now.arc.in(minute), 1), .starts = now.starts};
    out.detail = words::wear::CounterLives{.lives = words::fixed(wear.life_used.value, 1)};
    out.remedy = words::wear::counter_do;
    return out;
}

Message wears_out(const wear::Report& wear, int quantity) {
    if (*wear.change_before == 1 || wear.life_used.value > nearly) {
        return {"consumables_due",
                Topic::wear,
                Severity::caution,
                words::wear::due,
                words::wear::DueLife{.share = words::percent(wear.life_used.value)},
                words::wear::due_do};
    }
    return {"consumables_change",
            Topic::wear,
            wear.finishes < 0.5 ? Severity::caution : Severity::note,
            words::wear::Change{.part = *wear.change_before, .quantity = quantity},
            {},
            words::wear::Have{.sets = wear.sets_to_hold}};
}

} // namespace

void warn_of_part(const WarningContext& f, std::vector<Message>& out) {
    const PartStage& part = *f.worksheet.part;
    if (part.fault) {
        out.push_back({"part_not_possible",
                       Topic::part,
                       Severity::stop,
                       words::part::sizes_impossible,
                       part.fault->told(),
                       {},
                       part.fault->field});
    }
    // One word for each kind; where they are is in the part's own list.
    for (auto p = part.problems.begin(); p != part.problems.end(); ++p) {
        const auto same = [&](const part::Problem& other) { return other.title == p->title; };
        if (std::any_of(part.problems.begin(), p, same)) {
            continue;
        }
        const auto count = static_cast<int>(std::count_if(p, part.problems.end(), same));
        out.push_back(message_of(*p));
        if (count > 1) {
            out.back().title = words::part::Places{.count = count, .problem = p->title};
        }
    }
    warn_of_holes(f, out);
}

// Common practice, no source: height control on hold over gaps, a pilot arc that stays lit.
void warn_of_gaps(const WarningContext& f, std::vector<Message>& out) {
    const Gaps& gaps = f.worksheet.gaps;
    if (gaps.fault) {
        out.push_back({"mesh_not_possible",
                       Topic::mesh,
                       Severity::stop,
                       words::mesh::sizes_impossible,
                       gaps.fault->told(),
                       {},
                       gaps.fault->field});
    }
    if (!(gaps.per_m > 0.0)) {
        return;
    }
    Message open{"open_plate", Topic::mesh, Severity::caution, words::mesh::gaps};
    open.detail = words::either(
        Text{words::mesh::GapsPerMeter{.count = words::number(gaps.per_m, 0)}},
        Text{words::mesh::GapsPerFoot{.count = words::number(gaps.per_m * Length{1, foot}.in(metre), 0)}});
    if (f.workbook.job.torch == TorchHold::table) {
        open.remedy = words::mesh::height_off;
    }
    open.remedy += words::mesh::pilot;
    open.field = "job.mesh.kind";
    out.push_back(std::move(open));
}

void warn_of_time(const WarningContext& f, std::vector<Message>& out) {
    if (!f.worksheet.time) {
        return;
    }
    const motion::Report& time = *f.worksheet.time;
    if (time.slow_share >= slow_enough) {
        out.push_back({"slow_places", Topic::slow_path,
                       time.slow_share >= much_slow ? Severity::caution : Severity::note,
                       words::table::SlowPlaces{.share = words::percent(time.slow_share)},
                       words::table::slow_places_why, words::table::slow_places_do, "shop.table.acceleration_mm_s2"});
    }
    if (time.resting > Duration{}) {
        out.push_back({"duty_rests",
                       Topic::duty,
                       Severity::note,
                       words::machine::Rests{.time = static_cast<double>(f.workbook.job.quantity) * time.resting},
                       words::machine::rests_why,
                       {},
                       "shop.machine.duty_cycle"});
    }
}

void warn_of_wear(const WarningContext& f, std::vector<Message>& out) {
    const wear::Report& wear = f.worksheet.wear;
    if (f.worksheet.trail && set_slows(*f.worksheet.trail, f.workbook.shop)) {
        out.push_back(set_slows_note(*f.worksheet.trail, f.workbook.shop));
    }
    if (!wear.outlived && !(f.worksheet.time && wear.change_before)) {
        return;
    }
    Message worn = wear.outlived ? worn_past(f.workbook.shop.wear.now, wear) : wears_out(wear, f.workbook.job.quantity);
    if (wear.guess) {
        worn.remedy += words::wear::guess;
    }
    worn.field = "shop.wear.now.starts";
    out.push_back(std::move(worn));
}

void warn_of_price(const WarningContext& f, std::vector<Message>& out) {
    if (!f.worksheet.price) {
        return;
    }
    const price::Report& price = *f.worksheet.price;
    if (price.minimum_applies) {
        out.push_back({"minimum_charge",
                       Topic::rates,
                       Severity::note,
                       words::price::minimum,
                       words::price::minimum_why,
                       {},
                       "shop.rates.minimum_charge"});
    }
    if (price.make_or_buy && price.make_or_buy->choice == price::Choice::buy) {
        out.push_back({"buying_costs_less",
                       Topic::price,
                       Severity::note,
                       price.make_or_buy->title,
                       price.make_or_buy->detail,
                       {},
                       "job.price.outside_quote_each"});
    }
}

} // namespace torchside
