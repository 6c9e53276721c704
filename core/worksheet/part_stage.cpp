#include "core/worksheet/part_stage.hpp"

#include <cmath>

#include "core/part/measure.hpp"
#include "core/part/shapes.hpp"

namespace torchside {
namespace {

Outcome<part::Outline> outline_of(const part::PartSpec& spec) {
    if (spec.shape != part::Shape::drawing)
        return part::draw(spec);
    if (!spec.drawing)
        return Fault{"job.part.shape", "no drawing is open: accepted is a drawing, or another shape"};
    return *spec.drawing;
}

std::vector<PartContour> measured(const part::Outline& outline) {
    std::vector<PartContour> out;
    out.reserve(outline.contours.size());
    for (std::size_t i = 0; i < outline.contours.size(); ++i) {
        const part::Contour& c = outline.contours[i];
        out.push_back({c.role, i, part::length_mm(c), std::abs(part::area_mm2(c))});
    }
    return out;
}

// The torch's middle on the outline itself, without kerf and leads: until core/part/compensate.hpp is built.
void compensate(const PartInputs& in, PartStage& out) {
    for (std::size_t i = 0; i < out.outline.contours.size(); ++i) {
        const part::Contour& c = out.outline.contours[i];
        part::Run run;
        run.role = c.role;
        run.path = c.points;
        if (c.role != part::Role::open)
            run.path.push_back({c.points.front().at, 0.0});
        run.contour_end = run.path.size() - 1;
        run.source = i;
        run.hole_mm = c.role == part::Role::inner ? part::equal_diameter_mm(c) : 0.0;
        run.edge_start = in.edge_start && c.role == part::Role::outer;
        out.pierces += run.edge_start ? 0 : 1;
        out.path.runs.push_back(std::move(run));
    }
    out.compensated = out.contours;
}

} // namespace

PartInputs part_inputs(const Workbook& w, const std::optional<cut::Settings>& settings, cut::Reach reach) {
    PartInputs in;
    in.spec = w.job.part;
    in.thickness = w.job.thickness;
    in.clockwise_swirl = w.shop.machine.clockwise_swirl;
    if (!settings)
        return in;
    in.cuts = true;
    in.kerf = settings->kerf.value;
    in.lead_in = settings->lead_in.value;
    in.min_hole = settings->min_hole.value;
    in.edge_start = reach != cut::Reach::clean;
    return in;
}

PartStage part_stage(const PartInputs& in) {
    PartStage out;
    auto outline = outline_of(in.spec);
    if (!outline) {
        out.fault = outline.fault();
        return out;
    }
    out.outline = std::move(outline.value());
    out.contours = measured(out.outline);
    out.area_mm2 = part::area_mm2(out.outline);
    out.cut_mm = part::length_mm(out.outline);
    if (const part::Box box = part::box_of(out.outline); !box.empty()) {
        out.low = box.low;
        out.high = box.high;
    }
    if (in.cuts)
        compensate(in, out);
    return out;
}

std::shared_ptr<const PartStage> part_stage(const PartInputs& in, PartMemo* memo) {
    if (memo && memo->stage && memo->inputs == in)
        return memo->stage;
    auto stage = std::make_shared<const PartStage>(part_stage(in));
    if (memo)
        *memo = {in, stage};
    return stage;
}

} // namespace torchside
