#include "core/worksheet/warnings.hpp"

#include <algorithm>
#include <numbers>
#include <utility>

#include "core/cut/rules.hpp"
#include "core/quantity/sort_rows.hpp"
#include "core/worksheet/words.hpp"
#include "generated/words/machine.hpp"
#include "generated/words/reach.hpp"
#include "generated/words/table.hpp"

namespace torchside {
namespace {

constexpr Length thin{1.0, mm};
constexpr double dense = 80.0, sparse = 20.0; // A/mm2: seen bores of all sizes give 23..62

bool more_helps(const WarningContext& f) {
    const auto& current = f.worksheet.capacity.suggested_current;
    return current && *current > f.workbook.job.current;
}

Message refused(const WarningContext& f) {
    const Job& job = f.workbook.job;
    const cut::Capacity& capacity = f.worksheet.capacity;
    Message out{"plate_refused", Topic::reach, Severity::stop, words::reach::Refused{.current = job.current}};
    out.detail = words::reach::RefusedLimit{.feed = words::feed(capacity.sever_feed),
                                            .limit = words::limit(f.limits.sever),
                                            .plate = words::plate(job.thickness, job.material)};
    if (more_helps(f)) {
        out.remedy = words::reach::Set{.current = *capacity.suggested_current, .nozzle = *capacity.suggested_nozzle};
    } else {
        out.remedy = words::reach::thinner;
    }
    return out;
}

Message sever_only(const WarningContext& f) {
    const cut::Capacity& capacity = f.worksheet.capacity;
    Message out{"plate_sever_only", Topic::reach, Severity::caution, words::reach::sever_only,
                words::reach::rough_face};
    if (more_helps(f)) {
        out.remedy =
            words::reach::CleanSet{.current = *capacity.suggested_current, .nozzle = *capacity.suggested_nozzle};
    } else {
        out.remedy = words::reach::clean_thinner;
    }
    return out;
}

Message slow(const WarningContext& f) {
    const cut::Capacity& capacity = f.worksheet.capacity;
    Message out{"plate_slow", Topic::reach, Severity::note, words::reach::slow};
    out.detail =
        words::reach::SlowLimit{.current = f.workbook.job.current, .limit = words::limit(capacity.recommended)};
    if (more_helps(f)) {
        out.remedy = words::reach::Set{.current = *capacity.suggested_current, .nozzle = *capacity.suggested_nozzle};
    }
    return out;
}

} // namespace

void warn_of_plate(const WarningContext& f, std::vector<Message>& out) {
    const Job& job = f.workbook.job;
    const std::size_t before = out.size();
    switch (f.worksheet.capacity.verdict) {
    case cut::Reach::refused:
        out.push_back(refused(f));
        break;
    case cut::Reach::sever:
        out.push_back(sever_only(f));
        break;
    case cut::Reach::edge_start:
        out.push_back({"plate_edge_start", Topic::reach, Severity::caution, words::reach::edge_start,
                       words::reach::EdgeLimit{.current = job.current,
                                               .limit = words::limit(f.limits.pierce),
                                               .plate = words::plate(job.thickness, job.material)},
                       words::reach::edge_start_do});
        break;
    case cut::Reach::clean:
        if (job.thickness > f.limits.recommended) {
            out.push_back(slow(f));
        }
        break;
    }
    const Length cap{cut::small_air_torch(job.material).capacity_cap.value, mm};
    const bool refused = f.worksheet.capacity.verdict == cut::Reach::refused;
    if (!refused && job.thickness > std::max(cap, f.proven)) {
        out.push_back({"capacity_optimistic", Topic::stock, Severity::caution,
                       words::reach::Optimistic{.limit = words::size(cap)}, words::reach::optimistic_why,
                       words::reach::test_cut});
    }
    if (!refused && job.thickness < thin) {
        out.push_back({"thin_sheet_unreliable", Topic::stock, Severity::caution, words::reach::thin,
                       words::reach::ThinWhy{.limit = words::size(thin)}, words::reach::test_cut});
    }
    for (std::size_t i = before; i < out.size(); ++i) {
        out[i].field = "job.thickness_mm";
    }
}

void warn_of_machine(const WarningContext& f, std::vector<Message>& out) {
    const Machine& machine = f.worksheet.asked.machine;
    const Current current = f.workbook.job.current;
    if (current > machine.max_current) {
        out.push_back({"current_above_machine",
                       Topic::stock,
                       Severity::stop,
                       words::machine::Above{.current = current},
                       {},
                       words::machine::AboveDo{.most = machine.max_current},
                       "job.current_a"});
    }
    if (current < machine.min_current) {
        out.push_back({"current_below_machine",
                       Topic::stock,
                       Severity::caution,
                       words::machine::Below{.least = machine.min_current},
                       words::machine::below_why,
                       {},
                       "job.current_a"});
    }
    const Nozzle* nozzle = cut::nozzle_for(machine.nozzles, current);
    if (!nozzle) {
        return;
    }
    if (nozzle->rated < current) {
        out.push_back(
            {"nozzle_over_rating", Topic::machine, Severity::caution,
             words::machine::NozzleOver{.current = current, .nozzle = nozzle->rated}, words::machine::nozzle_over_why,
             words::machine::NozzleOverDo{.current = current, .nozzle = nozzle->rated}, "shop.machine.nozzles"});
    }
    if (!nozzle->bore) {
        return;
    }
    const double d = nozzle->bore->in(mm);
    const double density = nozzle->rated.in(ampere) / (0.25 * std::numbers::pi * d * d);
    if (density > dense || density < sparse) {
        out.push_back({"nozzle_bore_doubtful",
                       Topic::machine,
                       Severity::note,
                       words::machine::Bore{.bore = words::size(*nozzle->bore), .nozzle = nozzle->rated},
                       {},
                       words::machine::bore_do,
                       "shop.machine.nozzles"});
    }
}

void warn_of_feed(const WarningContext& f, std::vector<Message>& out) {
    if (!f.worksheet.settings || !f.worksheet.settings->feed_capped || f.workbook.job.torch != TorchHold::table) {
        return;
    }
    const Speed table = f.workbook.shop.table.max_feed;
    const bool far = table < 0.8 * f.arc_feed.value;
    const cut::Capacity& capacity = f.worksheet.capacity;
    Message capped{"feed_capped", Topic::table, far ? Severity::caution : Severity::note, words::table::slow};
    capped.detail = words::table::SlowFeed{.arc = words::feed(f.arc_feed.value), .table = words::feed(table)};
    if (capacity.suggested_current && *capacity.suggested_current < f.workbook.job.current) {
        capped.remedy =
            words::table::SlowSet{.current = *capacity.suggested_current, .nozzle = *capacity.suggested_nozzle};
    } else {
        capped.remedy = words::table::slow_dross;
    }
    capped.field = "shop.table.max_feed_mm_min";
    out.push_back(std::move(capped));
}

std::vector<Message> warnings(const WarningContext& f) {
    std::vector<Message> all;
    for (const auto warn : {warn_of_plate, warn_of_machine, warn_of_feed, warn_of_tap, warn_of_circuit, warn_of_air,
                            warn_of_hazards, warn_of_part, warn_of_gaps, warn_of_time, warn_of_wear, warn_of_price}) {
        warn(f, all);
    }
    sort_rows(all, [](const Message& a, const Message& b) { return a.severity > b.severity; });
    return all;
}

} // namespace torchside
