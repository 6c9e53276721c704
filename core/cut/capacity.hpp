// What a current can do: thickest plate for good production, to cut cleanly, to pierce and to sever, and the nozzle to
// choose for a plate.
//
// What       Limits in plate thickness, the feed at each, and where a plate lies among them.
// Formula    recommended  thickness whose production feed is r = max(terms.recommended_feed (600 mm/min),
//                    terms.recommended_feed_a / I (30 000 mm/min A)), at most clean: thin sheet is cut at low current
//                    to be cut fast, so good production asks for more feed there
//            clean   thickness whose production feed is terms.clean_feed (500 mm/min), at most the cap
//            pierce  thickness whose production feed is terms.pierce_feed (700 mm/min), at most clean
//            sever   thickness whose production feed is terms.sever_feed (125 mm/min), at most terms.sever_ratio (1.6)
//                    times clean
//            cap     terms.capacity_cap (20 mm), or the thickest plate that the user has cut cleanly, if thicker
// Source     recommended is a prior of ours, two round numbers chosen to follow a shop rule (common practice, no source;
//            assets/data/recommended_practice.json), which is therefore no proof of it. Mild steel, practice rows in:
//            | current            | 20 A   | 30 A   | 40 A   | 50 A    |
//            | shop rule          | 3.2 mm | 6.4 mm | 9.5 mm | 12.7 mm |
//            | recommended        | 3.4 mm | 6.0 mm | 9.2 mm | 12.9 mm |
//            500 and 125 mm/min are trade words, from memory. 700 mm/min, 1.6 and 20 mm are priors, chosen as said in
//            assets/data/cut_terms.json: the balance has no jet momentum and no arc length, so on its own it severs
//            2.3 times the clean thickness of steel and goes on rising past 20 mm at 60..100 A, where it has not been
//            checked. On aluminium the ratio is 1.6 by itself.
// Edges      The limits rise with current (clean and sever stop at the cap). A refused plate has no settings.
// Example    mild steel, 45 A, level 1 with small_air_torch: recommended 9.5, clean 11.6, pierce 9.2, sever 18.6 mm.
#pragma once

#include <span>

#include "core/cut/feed_model.hpp"
#include "core/cut/settings.hpp"
#include "core/gear/machine.hpp"

namespace torchside::cut {

struct Limits {
    Length recommended{};
    Length clean{};
    Length pierce{};
    Length sever{};
    bool capped = false; // the model would have claimed more
};

/// The slowest feed that is good production at a current. Example: 20 A: 1500 mm/min; 80 A: 600 mm/min.
[[nodiscard]] Speed recommended_feed(Current current, const Terms& terms);

/// `plate` gives metal, current, bore and height; its thickness is not read. `proven`: the thickest plate of this metal
/// that the user has cut cleanly at this current or less, 0 for none.
[[nodiscard]] Limits limits(const CutSetup& plate, const FeedModel& model, const Terms& terms, Length proven = {});

/// Where a thickness lies among limits already found.
[[nodiscard]] Reach reach(Length thickness, const Limits& limits);

/// The same without the search, for one plate.
[[nodiscard]] Reach reach(const CutSetup& plate, const FeedModel& model, const Terms& terms, Length proven = {});

/// The nozzle a shop uses at a current: the smallest rated for it, else the largest it has. Null only when `nozzles` is
/// empty.
[[nodiscard]] const Nozzle* nozzle_for(std::span<const Nozzle> nozzles, Current current);

/// Bore of a nozzle: the given one, else from the current density at its rating.
[[nodiscard]] Length bore(const Nozzle& nozzle, const Terms& terms);

struct Choice {
    std::optional<Current> current{};
    std::optional<Current> nozzle{};
    Reach reach = Reach::refused;
    Text reason{};
};

/// Which current and nozzle for this plate: the smallest nozzle that pierces it and cuts it at a recommended feed, then the
/// smallest that pierces and cuts it cleanly, then the same two from an edge; the current is the largest whole ampere that the machine, the nozzle and the
/// table's fastest feed allow. Thin plate that is too fast for the table even at the lowest current gets that current.
[[nodiscard]] Choice choose(const CutSetup& plate, const Machine& machine, const Table& table, const FeedModel& model,
                            const Terms& terms, Length proven = {});

} // namespace torchside::cut
