// Stock with openings: how often a cut runs off metal and has to start again.
//
// What       solid             no openings
//            expanded metal    diamonds: pitch and opening along the long way and the short way of the mesh
//            grating           bars: pitch of bearing bars and cross bars, and the opening between each
//            perforated        round holes in a pattern of 60 degrees: pitch and diameter
// Formula    a line in any direction crosses edges 2 L / pi times for each unit of its length, L being the length of
//            edge for each unit of area; every second crossing leaves the metal: gaps = L / pi
//            diamonds: two for each long x short pitch, edge 2 sqrt(lwo^2 + swo^2) each; bars: one opening for each
//            pitch x pitch; holes: one for each (sqrt(3) / 2) pitch^2
//            open share: area of the openings for each unit of area
// Source     Crofton's formula, integral geometry. usual(): sizes in common use, from memory; measure your own
// Range      pitches of 1 to 500 mm; openings smaller than their pitch
// Edges      a cut square to one set of bars meets others than this mean: 1000 / pitch for each metre. A Fault names a
//            size that does not fit by its key in the workbook.
// Example    expanded metal 62 x 25 mm, openings 52 x 18: 2 x 110.05 / (62 x 25) / pi = 45.2 gaps a metre, 60.4 % open.
#pragma once

#include "core/part/part_spec.hpp"
#include "core/words/outcome.hpp"

namespace torchside::part {

struct MeshCrossings {
    double gaps_per_m = 0.0; // restarts for each metre of cut
    double open_share = 0.0; // of the area
};

[[nodiscard]] Outcome<MeshCrossings> crossings_of(const Mesh& mesh);

/// Sizes to begin with when a kind is chosen.
[[nodiscard]] Mesh usual(MeshKind kind);

} // namespace torchside::part
