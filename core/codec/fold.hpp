// Letters made alike, so that what is typed finds what is meant: in small letters, without accents.
#pragma once

#include <string>
#include <string_view>

namespace torchside::codec {

/// ASCII and the accented letters of U+00C0 to U+00FF; anything else stays. Example: "Sangría ÁREA" is "sangria area"
[[nodiscard]] std::string folded(std::string_view text);

} // namespace torchside::codec
