// How good the numbers are: every published cut, what is said of it now, and the error.
//
// What       Each row of assets/data/published_cuts.csv beside what a shop without a log is told of that plate, current and nozzle:
//            feed, kerf and arc volts, whichever the row states. Then, of what no fit has used, each quantity's summary.
// Formula    error e = ln(ours / published)   bias = mean of e   rms = sqrt(mean of e^2)   coverage: share inside our 80 % band
// Source     the rows' own; they are facts, read in the source or from memory as each row says.
// Range      published rows are 60..750 A and mostly not of small air torches: none of 20..50 A was found.
// Edges      Without a bore that of the usual current density; without a thickness, 6 mm (a kerf hardly hangs on it), and such a row
//            says nothing of feed or volts. A row without a current, or of no metal of ours, is listed and not compared. Used in a fit:
//            marked, and in no summary.
// Example    S235U01: 110 A, kerf 1.2156 mm; tests/core/evidence.cpp.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/quantity/estimate.hpp"
#include "core/stock/metal.hpp"

namespace torchside {

struct Published {
    enum class Use { fit, kerf, kerf_fit, check, context }; // fit: of the feed; kerf_fit: of the kerf
    std::string_view id;
    Use use = Use::context;
    std::optional<Metal> metal{};
    double thickness_mm = 0.0, current_a = 0.0, arc_v = 0.0, bore_mm = 0.0, height_mm = 0.0; // 0: not stated
    double feed_mm_min = 0.0, kerf_mm = 0.0;
    int source = 0;    // place in published_sources()
    bool seen = false; // read in the source itself; else from memory
};
[[nodiscard]] std::span<const Published> published_cuts();
[[nodiscard]] std::span<const std::string_view> published_sources();

enum class Measured { feed, kerf, arc };

/// In mm/min, mm or V.
struct Compared {
    const Published* row = nullptr;
    Measured what = Measured::feed;
    double published = 0.0;
    Estimate<double> ours{};
    double ln_error = 0.0;
    double off = 0.0;    // ours / published - 1
    bool inside = false; // our 80 % band
    bool fitted = false; // this figure was used in a fit
};

struct EvidenceSummary {
    Measured what = Measured::feed;
    int rows = 0;                                 // that no fit used
    int fitted = 0;                               // left out
    double bias = 0.0, rms = 0.0, coverage = 0.0; // of `rows`; 0 without any
    double off = 0.0;                             // exp(bias) - 1
    double factor = 1.0;                          // exp(rms)
};

struct Evidence {
    std::vector<Compared> compared{};             // in the order of Measured, then of the table
    std::vector<const Published*> not_compared{}; // something that must be known is not stated
    std::vector<EvidenceSummary> summaries{};     // one a quantity
};
[[nodiscard]] Evidence evidence();

} // namespace torchside
