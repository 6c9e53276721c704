// A coupon as a program in the words of RS-274 (ISO 6983).
//
// What       Text to be sent to a controller, after the user has checked it.
// Formula    header: what it is, plate, settings, "check before you run"; units (G21 mm or G20 inch), G90 absolute,
//            G94 feed per minute, G17 plane; for every leg: torch up, rapid to its start, down to pierce height, torch
//            on, dwell, down to cut height (at most 1000 mm/min), height control on (if the leg asks for it and the
//            shop has a code for it), path at its feed, height control off, torch off, torch up; at the end torch off
//            again and M2
// Source     words of RS-274 as in the NIST interpreter, NISTIR 6556 (Kramer, Proctor, Messina 2000, key nistir_6556),
//            from memory: G0 G1 G2 G3 G4 G17 G20 G21 G90 G94 M2; arcs by centre offsets I J. Nothing of any one
//            controller is taken for granted: the codes of torch and height control and the unit of a dwell come from the shop.
// Range      any Coupon. Coordinates to 0.001 mm or 0.00001 in; feeds rounded down, so never above the table's.
// Edges      Z 0 is the top of the plate; a shop whose controller sets heights by itself leaves Z words out, and then
//            a height ladder is refused. Codes must be plain letters without brackets or line ends: they are written
//            as they are.
// Example    tests/core/tune_program.cpp
#pragma once

#include <string>

#include "core/tune/coupon.hpp"
#include "core/words/outcome.hpp"
#include "core/words/say.hpp"

namespace torchside::tune {

/// `title` names the plate, e.g. "Mild steel 6 mm, 45 A"; it goes into the header. `speech`: the language of the comments, and the
/// units of the program.
[[nodiscard]] Outcome<std::string> program(const Coupon& coupon, const Controller& controller, const Speech& speech,
                                           const Text& title);

} // namespace torchside::tune
