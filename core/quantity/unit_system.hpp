// Which units the reader of a screen thinks in.
#pragma once

namespace torchside {

enum class UnitSystem { metric, inch };

} // namespace torchside
