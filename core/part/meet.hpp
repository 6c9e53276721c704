// Where two pieces meet.
//
// Formula    a piece's line or circle is written about its start P with the unit tangent T, its left normal N and the
//            signed curvature k:  k |X - P|^2 = 2 N (X - P).  k = 0 is the straight line, so that a flat arc needs no
//            centre far away and loses no digits. Two circles are cut along their radical line.
// Source     geometry
// Range      coordinates within +-1e6 mm; pieces count as meeting when they come within `near_mm`
// Edges      pieces of one line or circle meet at those of their ends that lie on the other; `overlap` when they share
//            a length and not only an end, and then the first meeting is on it
// Example    (0,0)-(2,0) and (1,-1)-(1,1) meet at (1,0), half-way along both.
#pragma once

#include "core/part/piece.hpp"

namespace torchside::part {

struct Crossing {
    Point at{};
    double share_a = 0.0; // 0..1 along each piece
    double share_b = 0.0;
};

struct Crossings {
    Crossing found[4];
    int count = 0;
    bool overlap = false;
};

[[nodiscard]] Crossings meet(const Piece& a, const Piece& b, double near_mm = 1e-8);

} // namespace torchside::part
