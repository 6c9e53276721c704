// What to dial in for one plate, one current and one nozzle: the result structs of the cut and capacity calculations.
#pragma once

#include <optional>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"
#include "core/words/text.hpp"

namespace torchside::cut {

struct Settings {
    Estimate<Speed> feed{};
    Estimate<Voltage> arc{}; // at the torch
    Estimate<Length> cut_height{};
    Estimate<Length> pierce_height{};
    std::optional<Estimate<Duration>> pierce_delay{}; // none: not to be pierced standing still (Capacity::verdict)
    Estimate<Duration> start_lag{};                   // from the torch code to the arc on the plate
    std::optional<Duration> dwell{};                  // of a program after its torch code; none as the delay
    Estimate<Length> kerf{};
    Estimate<Length> lead_in{};
    Estimate<Length> min_hole{};
    Estimate<Pressure> pressure{};  // at the machine's inlet while air flows, gauge
    Estimate<Duration> post_flow{}; // air after the arc goes out
    Voltage controller{};           // arc volts behind the divider
    bool feed_capped = false;       // the table cannot go as fast as the arc could; feed is the table's
};

enum class Reach {
    clean,      // pierces and cuts at a production feed
    edge_start, // cuts, but too thick to pierce standing still
    sever,      // parts the plate, no production cut
    refused     // past what this current severs, or outside what the model may be asked
};

struct Capacity {
    Length recommended{}; // thickest plate with a good production feed at this current
    Length clean{};       // thickest plate with a clean-cut rating
    Length pierce{};      // thickest plate to pierce standing still
    Length sever{};       // thickest plate it parts
    Speed recommended_feed{}, clean_feed{}, pierce_feed{}, sever_feed{}; // at each of them
    Reach verdict = Reach::clean;
    std::optional<Current> suggested_current{}; // none: nothing this machine has cuts the plate cleanly
    std::optional<Current> suggested_nozzle{};  // rated current of that nozzle
    Text reason{};                              // sentences: why that current and nozzle, or why none
};

/// The same cut with the torch in the hand.
struct ByHand {
    Duration per_100_mm{};
    Duration per_foot{};
    bool drag = false; // the tip may ride on the plate at this current
    Text advice{};     // sentences
};

} // namespace torchside::cut
