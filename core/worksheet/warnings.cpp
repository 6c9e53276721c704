#include "core/worksheet/warnings.hpp"

#include <algorithm>
#include <numbers>

#include "core/cut/rules.hpp"
#include "core/quantity/sort_rows.hpp"
#include "core/worksheet/words.hpp"

namespace torchside {
namespace {

using words::amps;

constexpr Length thin{1.0, mm};
constexpr double dense = 80.0, sparse = 20.0; // A/mm2: seen bores of all sizes give 23..62

std::string more_current(const cut::Capacity& capacity, Current now) {
    if (capacity.suggested_current && *capacity.suggested_current > now)
        return "set " + amps(*capacity.suggested_current) + " with the " + amps(*capacity.suggested_nozzle) + " nozzle";
    return "take a thinner plate or a larger machine";
}

} // namespace

void warn_of_plate(const Findings& f, std::vector<Warning>& out) {
    const Job& job = f.workbook.job;
    const cut::Capacity& capacity = f.sheet.capacity;
    const std::string plate = words::plate(job.thickness, job.material), at = amps(job.current),
                      field = "job.thickness_mm";
    switch (capacity.verdict) {
    case cut::Reach::refused:
        out.push_back({"plate_refused", Severity::stop, field,
                       plate + " is more than " + at + " parts, about " + words::limit(f.limits.sever) + ": " +
                           more_current(capacity, job.current) + "."});
        return;
    case cut::Reach::sever:
        out.push_back({"plate_sever_only", Severity::caution, field,
                       at + " parts " + plate +
                           " but does not cut it cleanly: expect a rough face and much dross, or " +
                           more_current(capacity, job.current) + "."});
        break;
    case cut::Reach::edge_start:
        out.push_back({"plate_edge_start", Severity::caution, field,
                       plate + " is too thick to pierce standing still at " + at + ", which is good for about " +
                           words::limit(f.limits.pierce) +
                           ": start at an edge, pierce moving, or drill a pilot hole."});
        break;
    case cut::Reach::clean:
        break;
    }
    const Length cap{cut::small_air_torch(job.material).capacity_cap.value, mm};
    if (job.thickness > std::max(cap, f.proven))
        out.push_back({"capacity_optimistic", Severity::caution, field,
                       "Above " + words::size(cap) +
                           " the estimate has no cut to rest on and is known to be too fast: make a test cut first."});
    if (job.thickness < thin)
        out.push_back({"thin_sheet_unreliable", Severity::caution, field,
                       "Below " + words::size(thin) +
                           " the arc has power to spare, and the table and the sheet's warping decide the feed: take "
                           "the figure as a ceiling and make a test cut."});
}

void warn_of_machine(const Findings& f, std::vector<Warning>& out) {
    const Machine& machine = f.workbook.shop.machine;
    const Current current = f.workbook.job.current;
    if (current > machine.max_current)
        out.push_back(
            {"current_above_machine", Severity::stop, "job.current_a",
             amps(current) + " is more than this machine gives: set " + amps(machine.max_current) + " or less."});
    if (current < machine.min_current)
        out.push_back({"current_below_machine", Severity::caution, "job.current_a",
                       "This machine does not go below " + amps(machine.min_current) +
                           ": it will cut at that, faster than this worksheet says."});
    const Nozzle* nozzle = cut::nozzle_for(machine.nozzles, current);
    if (!nozzle)
        return;
    if (nozzle->rated < current)
        out.push_back({"nozzle_over_rating", Severity::caution, "shop.machine.nozzles",
                       amps(current) + " through the " + amps(nozzle->rated) +
                           " nozzle wears it out fast and may strike a double arc: fit one rated for " + amps(current) +
                           ", or set " + amps(nozzle->rated) + "."});
    if (!nozzle->bore)
        return;
    const double d = nozzle->bore->in(mm);
    const double density = nozzle->rated.in(ampere) / (0.25 * std::numbers::pi * d * d);
    if (density > dense || density < sparse)
        out.push_back({"nozzle_bore_doubtful", Severity::note, "shop.machine.nozzles",
                       "A bore of " + words::size(*nozzle->bore) + " is unusual for " + amps(nozzle->rated) +
                           ": measure it again, or leave it out and it is estimated."});
}

void warn_of_feed(const Findings& f, std::vector<Warning>& out) {
    if (!f.sheet.settings || !f.sheet.settings->feed_capped || f.workbook.job.torch != TorchHold::table)
        return;
    const Speed table = f.workbook.shop.table.max_feed;
    const bool far = table < 0.8 * f.arc_feed.value;
    const cut::Capacity& capacity = f.sheet.capacity;
    const bool lower = capacity.suggested_current && *capacity.suggested_current < f.workbook.job.current;
    out.push_back({"feed_capped", far ? Severity::caution : Severity::note, "shop.table.max_feed_mm_min",
                   "The arc would cut at " + words::feed(f.arc_feed.value) + ", the table goes no faster than " +
                       words::feed(table) + ": " +
                       (lower ? "set " + amps(*capacity.suggested_current) + " with the " +
                                    amps(*capacity.suggested_nozzle) + " nozzle, or expect low-speed dross."
                              : "expect some low-speed dross and a wider kerf.")});
}

std::vector<Warning> warnings(const Findings& f) {
    std::vector<Warning> all;
    for (const auto warn : {warn_of_plate, warn_of_machine, warn_of_feed, warn_of_tap, warn_of_circuit, warn_of_air,
                            warn_of_hazards, warn_of_part, warn_of_gaps, warn_of_time, warn_of_wear, warn_of_price})
        warn(f, all);
    sort_rows(all, [](const Warning& a, const Warning& b) { return a.severity > b.severity; });
    return all;
}

} // namespace torchside
