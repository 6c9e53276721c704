// A part as the user describes it: a shape by its sizes, or a drawing. Ranges: core/schema/schema*.cpp.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/part/finding.hpp"
#include "core/part/outline.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::part {

enum class Shape { plate, disc, ring, flange, gusset, slotted_plate, bracket, drawing };

struct PartSpec {
    Shape shape = Shape::plate;
    Length length{100, mm};     // plate, gusset, slotted plate, bracket
    Length width{100, mm};      // plate, gusset, slotted plate, bracket
    Length outside{120, mm};    // disc, ring, flange: outside diameter
    Length inside{40, mm};      // ring, flange: bore
    Length hole{11, mm};        // diameter of the holes of a pattern; 0 for none
    int holes = 4;              // how many
    Length hole_circle{90, mm}; // flange: diameter of the bolt circle
    Length hole_edge{15, mm};   // plate, bracket: hole centre to the nearest edges
    Length corner{0, mm};       // corner radius; of a bracket: of its outside corners
    Length leg{30, mm};         // bracket: how wide its legs are
    Length inner_corner{5, mm}; // bracket: radius of its inside corner
    Length slot_length{40, mm}; // slotted plate: overall
    Length slot_width{12, mm};
    std::string drawing_name{};               // drawing: its file's name
    std::shared_ptr<const Outline> drawing{}; // drawing: what was read, in mm; never changed once made
    std::vector<Finding> findings{};          // drawing: what reading it found, see drawing::kept()

    friend bool operator==(const PartSpec&, const PartSpec&) = default;
};

/// What the plate is made like.
enum class MeshKind { solid, expanded, grating, perforated };

/// Its openings: what each size is of which kind, mesh.hpp says.
struct Mesh {
    MeshKind kind = MeshKind::solid;
    Length pitch{62, mm};   // long way, bearing bars, or holes
    Length opening{52, mm}; // of the same
    Length pitch_2{25, mm}; // short way or cross bars; not of holes
    Length opening_2{18, mm};

    friend bool operator==(const Mesh&, const Mesh&) = default;
};

/// The sheet that parts are cut from.
struct StockSheet {
    Length width{2500, mm};
    Length height{1250, mm};
    Length margin{10, mm};  // free at the sheet's edges
    Length spacing{10, mm}; // between parts as drawn

    friend bool operator==(const StockSheet&, const StockSheet&) = default;
};

} // namespace torchside::part
