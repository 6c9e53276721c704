// Kerf compensation: from the part as drawn to the path the torch follows, with leads, order and direction.
//
// What       Outer contours are followed half a kerf outside, inner ones half a kerf inside, open ones on the line
//            (offset.hpp). Each closed contour gets a lead-in that begins and stays in scrap, and an outer one a
//            lead-out; holes are closed without one, or with a short overburn. What lies inside a contour is cut before
//            it, the nearest next.
// Formula    lead      a quarter of a circle, tangent to the contour where it meets it, length `lead_in`; where that
//                      does not fit, shorter, then straight and square to the contour, then at another place. It fits
//                      when its middle keeps half a kerf from the part, one and a half from every other contour (so
//                      that two kerfs leave metal between them), and its pierce a whole kerf from every edge
//                      In a hole the pierce does not go on past the middle of the scrap, where it is farthest from the
//                      edges: from the rim of a round hole to its centre at most
//            direction the swirl of the gas squares one face: with a clockwise swirl (seen from above) the right one of
//                      travel. Then outside contours are cut clockwise, holes anticlockwise; else the other way
// Source     geometry; swirl rule: trade knowledge from memory, without source, so a switch. Lead shapes, clearances:
//            common practice, no source
// Range      kerf 0 to 15 mm, leads 0 to 200 mm
// Edges      A Fault names a setting out of range. Everything about the drawing is a Problem, and the rest is still
//            made:
//            vanishes        (stop)     an inner contour is narrower than the kerf: it cannot be cut
//            splits          (caution)  a narrow place falls together: the contour is cut in more than one piece
//            closes          (caution)  a slot or notch open to the outside is narrower than the kerf: it stays uncut
//            small_radius    (note)     an inside radius below half the kerf comes out as half the kerf
//            no_lead_in      (caution)  no room in the scrap: the pierce is on the contour and will mark the part
//            kerfs_meet      (caution)  two contours are so close that their kerfs run into each other
//            needs_pierce    (caution)  with an edge start: an inner contour needs a drilled hole to start in
//            no_area         (caution)  a closed contour without area; left out
// Example    a 50 mm square, kerf 1.65: the path's square is 51.65 mm wide with corners of 0.825 mm radius; a 20 mm
//            hole is cut on 18.35 mm.
#pragma once

#include <cstddef>
#include <vector>

#include "core/part/cut_path.hpp"
#include "core/part/outline.hpp"
#include "core/quantity/quantity.hpp"
#include "core/words/outcome.hpp"

namespace torchside::part {

struct CompensateSettings {
    Length kerf{1.6, mm};
    Length lead_in{5, mm};
    Length lead_out{2, mm}; // outer contours
    Length overburn{0, mm}; // inner contours: how far the cut runs on past its start
    bool clockwise_swirl = true;
    bool edge_start = false; // outer contours begin off the plate, whose edge is taken to be next to the part
    Point from{};            // where the torch stands before the first pierce
};

struct Compensated {
    CutPath path{};
    /// Where the torch's middle goes, without leads, outer ones anticlockwise: in the order of the contours as drawn. A
    /// contour that splits gives several, one that vanishes none; `source` has their index in the drawing.
    Outline outline{};
    std::vector<std::size_t> source{};
    std::vector<Problem> problems{};
};

[[nodiscard]] Outcome<Compensated> compensate(const Outline& drawn, const CompensateSettings& settings);

} // namespace torchside::part
