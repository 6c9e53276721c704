// Where a contour's cut begins, and how the torch gets there: lead-in and lead-out, all in scrap (compensate.hpp).
#pragma once

#include <optional>
#include <vector>

#include "core/part/near.hpp"

namespace torchside::part {

struct LeadSettings {
    double kerf = 0.0; // all in mm
    double lead_in = 0.0;
    double lead_out = 0.0;
    double overburn = 0.0;
};

/// A path as a Run has it.
struct LeadPath {
    std::vector<Vertex> path{};
    std::size_t contour_begin = 0;
    std::size_t contour_end = 0;
    bool pierce_clear = false; // the pierce keeps a kerf from every edge
};

/// Sees to it that leads keep clear of the part and of each other.
class Leads {
public:
    /// `contours`: how many the drawing has.
    Leads(const Near& drawn, const LeadSettings& settings, std::size_t contours)
        : drawn_(drawn), s_(settings), laid_(contours + 1) {}

    /// The scrap that the next leads lie in: the contour whose inside it is, or as many as there are for outside.
    void enter(std::size_t scrap) { scrap_ = scrap; }

    /// For a closed contour in the way of travel, half a kerf beside the contour `source` of the drawing; scrap is to
    /// its right or left. In a hole no lead goes on past where its pierce is farthest from all edges.
    [[nodiscard]] LeadPath lead(const Contour& travelled, std::size_t source, bool scrap_right);
    /// Begins beside the box of the drawing; none when nothing goes straight there.
    [[nodiscard]] std::optional<LeadPath> from_edge(const Contour& travelled, std::size_t source, const Box& all);

private:
    struct Start {
        std::size_t piece = 0;
        double share = 0.0;
        double worth = 0.0;
        Point at{};
        Point along{};
    };
    [[nodiscard]] std::vector<Start> places(const Contour& c) const;
    [[nodiscard]] double deepest(const Start& at, Point scrap, double length) const;
    [[nodiscard]] bool clear(const Piece& lead, Point pierce, std::size_t source, bool pierced);
    [[nodiscard]] LeadPath finish(const Contour& c, const Start& start, const std::vector<Vertex>& lead_in,
                                  std::size_t source, std::optional<Point> scrap);
    [[nodiscard]] Piece piece(const Start& at, Point scrap, double length, bool curved, bool out) const;

    const Near& drawn_;
    LeadSettings s_;
    struct Laid {
        Piece piece{};
        Box reach{}; // with a kerf around it
    };
    void lay(const Piece& lead);
    std::vector<std::vector<Laid>> laid_; // leads so far, by the scrap they lie in
    std::size_t scrap_ = 0;
    std::vector<std::uint32_t> hits_{}; // of the search under way
    std::vector<Point> way_{};          // places along the lead that is looked at
};

} // namespace torchside::part
