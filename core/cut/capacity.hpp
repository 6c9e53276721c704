// What a current can do: thickest plate to cut cleanly, to pierce and to part, and the nozzle to choose for a plate.
//
// What       Three limits in plate thickness, and where a plate lies among them.
// Formula    clean   thickness whose production feed is terms.clean_feed (500 mm/min), at most the cap
//            pierce  thickness whose production feed is terms.pierce_feed (750 mm/min), at most clean
//            sever   thickness whose production feed is terms.sever_feed (125 mm/min), at most terms.sever_ratio (1.6)
//                    times clean
//            cap     terms.capacity_cap (20 mm), or the thickest plate that the user has cut cleanly, if thicker
// Source     500 and 125 mm/min are trade words, from memory. 750 mm/min, 1.6 and 20 mm are priors, chosen as said in
//            assets/data/cut_terms.json: the balance has no jet momentum and no arc length, so on its own it severs
//            2.3 times the clean thickness of steel and goes on rising past 20 mm at 60..100 A, where it has not been
//            checked. On aluminium the ratio is 1.6 by itself.
// Edges      The limits rise with current (clean and sever stop at the cap). A refused plate has no settings.
// Example    mild steel, 45 A, level 1 with small_air_torch: clean 11.6, pierce 8.8, sever 18.6 mm.
#pragma once

#include <span>

#include "core/cut/feed_model.hpp"
#include "core/cut/settings.hpp"
#include "core/gear/machine.hpp"

namespace torchside::cut {

struct Limits {
    Length clean{};
    Length pierce{};
    Length sever{};
    bool capped = false; // the model would have claimed more
};

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

/// Which current and nozzle for this plate: the smallest nozzle that pierces and cuts it cleanly, then the smallest
/// that cuts it cleanly from an edge; the current is the largest whole ampere that the machine, the nozzle and the
/// table's fastest feed allow. Thin plate that is too fast for the table even at the lowest current gets that current.
[[nodiscard]] Choice choose(const CutSetup& plate, const Machine& machine, const Table& table, const FeedModel& model,
                            const Terms& terms, Length proven = {});

} // namespace torchside::cut
