// The metals a small air plasma torch is asked to cut.
#pragma once

namespace torchside {

enum class Metal { mild_steel, stainless, aluminium, galvanised, copper };

inline constexpr Metal all_metals[] = {Metal::mild_steel, Metal::stainless, Metal::aluminium, Metal::galvanised,
                                       Metal::copper};

} // namespace torchside
