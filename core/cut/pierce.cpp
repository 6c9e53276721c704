#include "core/cut/pierce.hpp"

#include <numbers>

#include "core/cut/feed_model.hpp"
#include "core/cut/kerf_heat.hpp"
#include "generated/words/refusal.hpp"

namespace torchside::cut {

Outcome<Duration> melting_time(const CutSetup& plate, const Terms& terms) {
    CutSetup high = plate;
    high.height = Length{terms.pierce_height.value, mm};
    const Outcome<Balance> b = balance(high, terms); // refuses what cannot be cut; width and power are wanted here
    if (!b) {
        return b.fault();
    }
    CutSetup matched = plate; // the arc at pierce height is as wide as its current makes it, whatever the bore
    matched.bore.reset();
    const double radius = 0.5 * terms.pierce_width.value * terms.melt_width.value * bore(matched, terms).in(metre);
    const double area = std::numbers::pi * radius * radius;
    const double heat = area * plate.thickness.in(metre)*kerf_heat(plate.metal, terms).melt_j_m3;
    return Duration{heat / (terms.efficiency.value * b.value().power.in(watt)), second};
}

Length pierce_limit(const CutSetup& plate, const Terms& terms) {
    return thickness_at(Speed{terms.pierce_feed.value, mm_min}, plate, PhysicsModel{terms});
}

Outcome<Duration> piercing_time(const CutSetup& plate, Length limit, const Terms& terms) {
    const Outcome<Duration> melt = melting_time(plate, terms);
    if (!melt) {
        return melt.fault();
    }
    const double share = limit > Length{} ? plate.thickness / limit : 1.0;
    return terms.pierce_margin.value * (1.0 + terms.pierce_growth.value * share * share) * melt.value();
}

Outcome<Duration> pierce_delay(const CutSetup& plate, Length limit, const Terms& terms) {
    Outcome<Duration> time = piercing_time(plate, limit, terms);
    if (time && !(plate.thickness < limit)) {
        return Fault{"job.thickness_mm", words::refusal::no_pierce};
    }
    return time;
}

Outcome<Duration> pierce_delay(const CutSetup& plate, const Terms& terms) {
    return pierce_delay(plate, pierce_limit(plate, terms), terms);
}

} // namespace torchside::cut
