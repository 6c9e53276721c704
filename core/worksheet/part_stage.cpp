#include "core/worksheet/part_stage.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/drawing/nest.hpp"
#include "core/drawing/problems.hpp"
#include "core/part/checks.hpp"
#include "core/part/compensate.hpp"
#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"

namespace torchside {
namespace {

using drawing::Found;

std::vector<PartContour> measured(const part::Outline& outline) {
    std::vector<PartContour> out;
    out.reserve(outline.contours.size());
    for (std::size_t i = 0; i < outline.contours.size(); ++i) {
        const part::Contour& c = outline.contours[i];
        out.push_back({c.role, i, part::length_mm(c), std::abs(part::area_mm2(c))});
    }
    return out;
}

void compensate(const PartInputs& in, PartStage& out) {
    part::CompensateSettings settings;
    settings.kerf = in.kerf;
    settings.lead_in = in.lead_in;
    settings.edge_start = in.edge_start;
    settings.clockwise_swirl = in.clockwise_swirl;
    auto made = part::compensate(out.outline, settings);
    if (!made) {
        out.fault = made.fault();
        return;
    }
    part::Compensated& c = made.value();
    out.path = std::move(c.path);
    out.compensated = measured(c.outline);
    for (std::size_t i = 0; i < out.compensated.size() && i < c.source.size(); ++i) {
        out.compensated[i].source = c.source[i];
    }
    const auto checked = part::check_part(out.outline, in.thickness, in.kerf);
    for (const std::vector<part::Problem>* found : {&std::as_const(c.problems), &checked}) {
        for (const part::Problem& problem : *found) { // an insert of the whole row is a kilobyte more of code
            out.problems.push_back(problem);
        }
    }
    for (const part::Run& run : out.path.runs) {
        out.pierces += run.edge_start ? 0 : 1;
    }
}

// Lines that do not close, and closed ones without area, are seen in the outline itself.
void name_open_lines(PartStage& out) {
    for (const part::Contour& c : out.outline.contours) {
        if (c.role != part::Role::open || c.points.size() < 2) {
            continue;
        }
        const part::Point first = c.points.front().at, last = c.points.back().at;
        if (first == last) {
            drawing::report(out.problems, Found::no_area, first, part::length_mm(c));
        } else {
            drawing::report(out.problems, Found::open_contour, last, std::hypot(last.x - first.x, last.y - first.y));
        }
    }
}

// Drawings from a workbook or a link were not checked as an imported file is, so they are checked here.
bool can_be_cut(const part::PartSpec& spec, PartStage& out) {
    if (spec.shape == part::Shape::drawing) {
        drawing::check_nesting(out.outline, out.problems);
    }
    return std::none_of(out.problems.begin(), out.problems.end(), drawing::hinders_cutting);
}

// The rest of what reading the drawing found was kept with it.
void name_findings(const part::PartSpec& spec, PartStage& out) {
    if (spec.shape != part::Shape::drawing) {
        return;
    }
    for (const part::Finding& finding : spec.findings) {
        if (drawing::is_kept(finding.code)) {
            out.problems.push_back(drawing::problem(finding));
        }
    }
}

} // namespace

PartInputs part_inputs(const Workbook& w, const std::optional<cut::Settings>& settings, cut::Reach reach,
                       double open_share) {
    PartInputs in;
    in.spec = w.job.part;
    in.thickness = w.job.thickness;
    in.clockwise_swirl = w.shop.machine.clockwise_swirl;
    in.stock_sheet = w.job.stock_sheet;
    in.metal = w.job.material;
    in.open_share = open_share;
    if (!settings) {
        return in;
    }
    in.cuts = true;
    in.kerf = settings->kerf.value;
    in.lead_in = settings->lead_in.value;
    in.edge_start = reach != cut::Reach::clean;
    return in;
}

PartStage part_stage(const PartInputs& in) {
    PartStage out;
    auto outline = part::make_outline(in.spec);
    if (!outline) {
        out.fault = outline.fault();
        return out;
    }
    out.outline = std::move(outline.value());
    out.contours = measured(out.outline);
    out.area_mm2 = std::max(0.0, part::area_mm2(out.outline)); // a drawing may have inner contours alone
    out.cut_mm = part::length_mm(out.outline);
    if (const part::Box box = part::box_of(out.outline); !box.empty()) {
        out.low = box.low;
        out.high = box.high;
    }
    if (can_be_cut(in.spec, out)) {
        const part::StockSheet& s = in.stock_sheet;
        if (auto fit = part::fit_sheet(
                out.outline, {s.width, s.height, s.margin, s.spacing, in.thickness, in.metal, in.open_share})) {
            out.sheet = std::move(fit.value());
        }
        if (in.cuts) {
            compensate(in, out);
        }
    } else {
        out.area_mm2 = 0.0;
    }
    name_open_lines(out);
    name_findings(in.spec, out);
    return out;
}

std::shared_ptr<const PartStage> part_stage(const PartInputs& in, PartMemo* memo) {
    if (memo && memo->stage && memo->inputs == in) {
        return memo->stage;
    }
    auto stage = std::make_shared<const PartStage>(part_stage(in));
    if (memo) {
        *memo = {in, stage};
    }
    return stage;
}

} // namespace torchside
