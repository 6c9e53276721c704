// The country of the shop: whose wiring rules and whose limits of fume, noise and light speak. They change together.
//
//   us      NEC, UL 489 breakers, gauges; OSHA
//   uk, eu  IEC 60364 and 60898-1, sections in mm2; HSE, or the EU's directives
//   other   wiring by the kind of breaker; of the safety limits the stricter
#pragma once

namespace torchside {

enum class Country { us, uk, eu, other };

} // namespace torchside
