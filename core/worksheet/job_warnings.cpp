// Warnings of the part, its time, its wear and its price.
#include <algorithm>
#include <cmath>

#include "core/quantity/print.hpp"
#include "core/worksheet/holes.hpp"
#include "core/worksheet/warnings.hpp"
#include "core/worksheet/words.hpp"

namespace torchside {
namespace {

constexpr double slow_enough = 0.02, much_slow = 0.15; // of the cut's length: a word, a caution

constexpr double nearly = 0.9; // of a life: not worth starting a batch on

std::string percent(double share) {
    return print_fixed(std::floor(100.0 * share + 0.5), 0) + " %";
}

// Holes that are no narrower than the plate is thick (those are among the problems), but too narrow for the kerf.
void warn_of_holes(const Findings& f, std::vector<Warning>& out) {
    int count = 0;
    for (const Holes& holes : holes_of(f.sheet, f.workbook.job.thickness))
        count += holes.state == HoleState::small ? holes.count : 0;
    if (count > 0)
        out.push_back({"hole_below_least", Severity::note, "job.part.hole_mm",
                       std::to_string(count) + (count == 1 ? " hole is" : " holes are") + " narrower than " +
                           words::size(least_hole(*f.sheet.settings)) +
                           ", the least that comes out round with this kerf: try one first."});
}

std::string part_text(int number) {
    return "part " + std::to_string(number);
}

Severity severity_of(part::Problem::Severity s) {
    return s == part::Problem::Severity::stop      ? Severity::stop
           : s == part::Problem::Severity::caution ? Severity::caution
                                                   : Severity::note;
}

} // namespace

void warn_of_part(const Findings& f, std::vector<Warning>& out) {
    const PartStage& part = *f.sheet.part;
    if (part.fault)
        out.push_back({"part_not_possible", Severity::stop, part.fault->field,
                       "The part cannot be made of these sizes: " + part.fault->text + "."});
    // One word for each kind; where they are is in the part's own list.
    for (auto p = part.problems.begin(); p != part.problems.end(); ++p) {
        const std::string_view text = p->text; // one code may come in two weights
        const auto same = [&](const part::Problem& other) { return other.text == text; };
        if (std::any_of(part.problems.begin(), p, same))
            continue;
        const auto count = std::count_if(p, part.problems.end(), same);
        out.push_back({p->code, severity_of(p->severity), "job.part.shape",
                       count > 1 ? std::to_string(count) + " places: " + p->text : p->text});
    }
    warn_of_holes(f, out);
}

// Common practice, no source: height control on hold over gaps, a pilot arc that stays lit.
void warn_of_gaps(const Findings& f, std::vector<Warning>& out) {
    const Gaps& gaps = f.sheet.gaps;
    if (gaps.fault)
        out.push_back({"mesh_not_possible", Severity::stop, gaps.fault->field,
                       "The plate's openings cannot have these sizes: " + gaps.fault->text + "."});
    if (!(gaps.per_m > 0.0))
        return;
    const bool by_hand = f.workbook.job.torch != TorchHold::table;
    const bool metric = f.workbook.shop.display.units == UnitSystem::metric;
    const double gaps_per = metric ? gaps.per_m : gaps.per_m * Length{1, foot}.in(metre);
    out.push_back({"open_plate", Severity::caution, "job.mesh.kind",
                   "The arc goes out at each gap, about " + print_fixed(std::floor(gaps_per + 0.5), 0) +
                       (metric ? " in a meter of cut: " : " in a foot of cut: ") +
                       (by_hand ? "" : "switch height control off or to hold, it dives where there is no metal; ") +
                       "use a pilot arc that stays lit if the machine has one (common practice, no source)."});
}

void warn_of_time(const Findings& f, std::vector<Warning>& out) {
    if (!f.sheet.time)
        return;
    const motion::Report& time = *f.sheet.time;
    if (time.slow_share >= slow_enough)
        out.push_back({"slow_places", time.slow_share >= much_slow ? Severity::caution : Severity::note,
                       "shop.table.acceleration_mm_s2",
                       percent(time.slow_share) +
                           " of the cut runs below 80 % of its feed, where the table slows down: expect dross there; "
                           "height control should hold there."});
    if (time.resting > Duration{})
        out.push_back({"duty_rests", Severity::note, "shop.machine.duty_cycle",
                       "The duty cycle makes this batch rest for " +
                           print(static_cast<double>(f.workbook.job.quantity) * time.resting).text() + " in all."});
}

void warn_of_wear(const Findings& f, std::vector<Warning>& out) {
    const wear::Report& wear = f.sheet.wear;
    const std::string field = "shop.wear.now.starts";
    const int quantity = f.workbook.job.quantity;
    const std::string guess = wear.guess ? " This is a guess until a worn set is logged." : "";
    if (wear.outlived) {
        const wear::InUse& now = f.workbook.shop.wear.now;
        out.push_back({"consumables_counter", Severity::caution, field,
                       "The counter says " + std::to_string(now.starts) + " starts and " +
                           print_trimmed(now.arc.in(minute), 1) + " minutes of arc, " +
                           print_fixed(wear.life_used.value, 1) +
                           " times the usual life: was it reset when the set was changed? What is left of a set that "
                           "old is not to be counted on." +
                           guess});
        return;
    }
    if (!f.sheet.time || !wear.change_before)
        return;
    if (*wear.change_before == 1 || wear.life_used.value > nearly)
        out.push_back({"consumables_due", Severity::caution, field,
                       "The set in the torch is near its end, about " + percent(wear.life_used.value) +
                           " of a life: change it before the first part." + guess});
    else
        out.push_back({"consumables_change", wear.finishes < 0.5 ? Severity::caution : Severity::note, field,
                       "Change nozzle and electrode before " + part_text(*wear.change_before) + " of " +
                           std::to_string(quantity) + "; hold " + std::to_string(wear.sets_to_hold) +
                           (wear.sets_to_hold == 1 ? " new set" : " new sets") + " for this batch." + guess});
}

void warn_of_price(const Findings& f, std::vector<Warning>& out) {
    if (!f.sheet.price)
        return;
    const price::Report& price = *f.sheet.price;
    if (price.minimum_applies)
        out.push_back({"minimum_charge", Severity::note, "shop.rates.minimum_charge",
                       "The minimum charge is more than this job's price: it is what is asked."});
    if (price.make_or_buy && price.make_or_buy->choice == price::Choice::buy)
        out.push_back({"buying_costs_less", Severity::note, "job.price.outside_quote_each", price.make_or_buy->text});
}

} // namespace torchside
