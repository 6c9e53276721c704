// Cutting a curve where it meets itself, and joining what is kept of it to loops (offset.hpp).
#pragma once

#include <cstddef>
#include <vector>

#include "core/part/piece.hpp"

namespace torchside::part {

/// A piece of a closed curve under work.
struct Link {
    static constexpr std::size_t no_source = static_cast<std::size_t>(-1);
    Piece piece{};
    std::size_t source = no_source; // what it was made from
    bool joined = true;             // the next one goes on from its end, and nothing else meets there
};

/// Links begin .. end - 1 of a curve, counted round past its end, that nothing crosses.
struct LinkRun {
    std::size_t begin = 0;
    std::size_t end = 0;
};

struct JoinedRuns {
    std::vector<std::vector<std::size_t>> loops{}; // numbers of the runs, in order
    bool whole = true;                             // false: some did not close
};

[[nodiscard]] std::vector<Link> cut_where_it_meets(const std::vector<Link>& curve);
[[nodiscard]] std::vector<LinkRun> runs_of(const std::vector<Link>& curve);
/// Joins runs whose ends lie within `same_mm` of one another; where several go on, the straightest.
[[nodiscard]] JoinedRuns join_runs(const std::vector<Link>& curve, const std::vector<LinkRun>& runs, double same_mm);

} // namespace torchside::part
