// Test cuts that shops give each other, as a file: metal, plate, current, bore, feed, what it showed. No name, no date.
//
//   std::string out = write_cuts(cuts_to_give(shop.tests, shop.machine));
//   Outcome<std::vector<tune::SharedCut>> in = read_cuts(out);
//
// What       {"torchside_cuts": 1, "cuts": [{"material": "mild_steel", "thickness_mm": 6, "current_a": 45, ...}]}
//            keys of a cut: material, thickness_mm, current_a (these three required), bore_mm, feed_mm_min, verdict,
//            kerf_top_mm, kerf_bottom_mm, arc_v, cut_height_mm, pierce_delay_s, pierce; each with the range and words that it
//            has in shop.tests. A key without a value is left out.
// Range      1..500 cuts, 1 MB.
// Edges      Given away are rows that teach: none that is worn, none without a finding. They stand in the order of what was
//            cut, not of when. The bore is that of the nozzle used, by the shop's own list; a pierce
//            delay is the one from transfer, its start lag taken off as the shop's own fit does (tune::lag_of). Refused by the key's path:
//            unknown key ("shop" and "name" too), out of range, not one of the words, a verdict without a feed;
//            another version. A file's rows have shop 1. Rows coincide whatever their bore and pierce delay: those hang on
//            settings that a shop may mend. Fewer than 3 that coincide are chance, beside one's own log or a longer one.
// Example    tests/core/cuts_file.cpp.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/gear/machine.hpp"
#include "core/tune/shared_cut.hpp"
#include "core/words/outcome.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

inline constexpr int cuts_version = 1;
inline constexpr std::size_t most_cuts = 500;

/// What of a log goes out, as it goes out.
[[nodiscard]] std::vector<tune::SharedCut> cuts_to_give(std::span<const tune::TestCut> tests, const Machine& machine);

[[nodiscard]] std::string write_cuts(std::span<const tune::SharedCut> cuts);
[[nodiscard]] Outcome<std::vector<tune::SharedCut>> read_cuts(std::string_view json);

/// A workbook with the cuts of one more shop. More than half of the cuts that are kept of a shop being in the file, it is that
/// shop's newer log and takes their place. A Fault when it is an older one, holds mostly this shop's own cuts, or there is no room.
[[nodiscard]] Outcome<Workbook> take_in(const Workbook& workbook, std::vector<tune::SharedCut> cuts);

/// Whether a text is such a file, right or wrong: it begins as one.
[[nodiscard]] bool looks_like_cuts(std::string_view json);

} // namespace torchside::document
