// The compressor, receiver and hose that feed the torch, as the user describes them. Ranges: core/schema/schema*.cpp.
#pragma once

#include "core/quantity/quantity.hpp"

namespace torchside::air {

struct AirSystem {
    Flow compressor{150, litre_min};   // free-air delivery, not displacement, 10..5000 L/min
    Volume receiver{100, litre};       // 1..5000 L
    Pressure cut_in{6, bar};           // the compressor starts, gauge
    Pressure cut_out{8, bar};          // the compressor stops, gauge
    Length hose_bore{9.5, mm};         // 4..50 mm
    Length hose{15, metre};            // 0..200 m
    Flow torch{150, litre_min};        // free air the torch uses while the arc is on
    Pressure torch_pressure{4.5, bar}; // at the machine's inlet while air flows, gauge
    Duration post_flow{10, second};    // air after the arc goes out, 0..60 s; prior, no source: the machine decides
    double duty = 0.6;                 // share of the time the compressor may run, 0.1..1; common practice, no source
    double intake_c = 25.0;            // air temperature at the compressor, -20..50 deg C
    double humidity = 0.60;            // relative, 0..1
};

} // namespace torchside::air
