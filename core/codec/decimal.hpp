// Doubles and decimal text, exactly: for JSON, links and drawings alike, in a tenth of the code that the C library's strtod and printf bring into the page.
// Oracle in tests/core/codec_decimal.cpp: the native C library, which rounds exactly too.
#pragma once

#include <string>
#include <string_view>

namespace torchside::codec {

/// What: the double nearest to a decimal number, a tie to the even one; infinite when past the largest double.
/// Range: digits, a point among, before or behind them, a sign before and an exponent behind; the syntax is not checked
/// here. The nearest for up to 64 digits from the first that is not 0; beyond that off by one unit in the last place.
/// Edges: "-0" and what is nearer to 0 than to any double are 0, of the text's sign.
/// Example: "0.1" is 0x1.999999999999ap-4
[[nodiscard]] double read_decimal(std::string_view text);

/// What: the shortest decimal of 15 to 17 figures that reads back as the same double, in JSON's syntax.
/// Edges: nan, inf and -inf, which JSON has not, are written for error texts; otherwise as C's %.15g: zeros at the end
/// are dropped, an exponent below 1e-04 and from 1e+15 on, or as many tens as there are figures. Example: 0.1 is
/// "0.1", 1.0 / 3 is "0.3333333333333333"
[[nodiscard]] std::string decimal_text(double value);

} // namespace torchside::codec
