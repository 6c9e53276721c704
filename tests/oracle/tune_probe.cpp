// Learns from logs given on standard input, for tests/oracle/tune_linear.py; no part of the product. A log:
//   rows plates gradient|0
//   metal thickness_mm current_a feed|0 kerf_top|0 kerf_bottom|0 arc_v|0 height_mm nozzle_a|0     a line a row
//   metal thickness_mm current_a height_mm bore_mm|0                                             a line a plate
// answers a line a row: bore feed kerf arc of level 1, flagged; a line a plate: the same four, then value low high of
// feed, kerf and arc.
#include <cstdio>
#include <vector>

#include "core/cut/balance.hpp"
#include "core/tune/plate_terms.hpp"
#include "core/tune/posterior.hpp"

using namespace torchside;
using namespace torchside::tune;

namespace {

void level_1(const cut::CutSetup& plate) {
    const cut::Terms& terms = cut::small_air_torch(plate.metal);
    std::printf("%.17g %.17g %.17g %.17g", plate.bore ? plate.bore->in(mm) : 0.0, balance_feed(plate, terms).in(mm_min),
                cut::kerf(plate, terms).in(mm), cut::arc_volts(plate, terms).in(volt));
}

template <class Q, class U>
void band(const Estimate<Q>& e, U unit) {
    std::printf(" %.17g %.17g %.17g", e.value.in(unit), e.low.in(unit), e.high.in(unit));
}

template <class Q, class U>
void set(std::optional<Q>& to, double value, U unit) {
    if (value > 0.0) {
        to = Q{value, unit};
    }
}

} // namespace

int main() {
    Machine machine;
    machine.nozzles = {{Current{45, ampere}, Length{1.1, mm}}, {Current{65, ampere}, Length{1.3, mm}}};
    int rows, plates;
    double gradient;
    while (std::scanf("%d %d %lf", &rows, &plates, &gradient) == 3) {
        std::vector<TestCut> log;
        for (int i = 0; i < rows; ++i) {
            int metal;
            double t, amps, feed, top, bottom, arc, height, nozzle;
            if (std::scanf("%d %lf %lf %lf %lf %lf %lf %lf %lf", &metal, &t, &amps, &feed, &top, &bottom, &arc, &height,
                           &nozzle) != 9) {
                return 1;
            }
            TestCut row;
            row.material = static_cast<Metal>(metal);
            row.thickness = Length{t, mm};
            row.current = Current{amps, ampere};
            set(row.feed, feed, mm_min);
            set(row.kerf_top, top, mm);
            set(row.kerf_bottom, bottom, mm);
            set(row.arc, arc, volt);
            set(row.cut_height, height, mm);
            set(row.nozzle, nozzle, ampere);
            log.push_back(row);
        }
        std::optional<Gradient> slope;
        set(slope, gradient, volt_per_mm);
        const Posterior posterior = learn(log, machine, slope);
        for (int i = 0; i < rows; ++i) {
            level_1(plate_of(log[static_cast<std::size_t>(i)], posterior.nozzles));
            std::printf(" %d\n", posterior.notes[static_cast<std::size_t>(i)].measure_again ? 1 : 0);
        }
        for (int i = 0; i < plates; ++i) {
            int metal;
            double t, amps, height, bore;
            if (std::scanf("%d %lf %lf %lf %lf", &metal, &t, &amps, &height, &bore) != 5) {
                return 1;
            }
            cut::CutSetup plate;
            plate.metal = static_cast<Metal>(metal);
            plate.thickness = Length{t, mm};
            plate.current = Current{amps, ampere};
            plate.height = Length{height, mm};
            set(plate.bore, bore, mm);
            plate = plate_of(plate, posterior.nozzles);
            level_1(plate);
            band(feed(posterior, plate), mm_min);
            band(kerf(posterior, plate), mm);
            band(arc(posterior, plate), volt);
            std::printf("\n");
        }
    }
}
