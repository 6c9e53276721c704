// Drawings written by hand, for tests, and what is read from them.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

#include <catch2/catch_test_macros.hpp>

#include "core/drawing/drawing.hpp"
#include "tests/core/said.hpp"

namespace torchside::test {

/// One entity or table row: pairs of group code and value.
inline std::string dxf_pairs(std::initializer_list<std::pair<int, const char*>> pairs) {
    std::string out;
    for (const auto& [code, value] : pairs) {
        out += std::to_string(code) + "\n" + value + "\n";
    }
    return out;
}

/// Unit as $INSUNITS; 0: not said.
inline std::string dxf(const std::string& entities, int unit = 4, const std::string& blocks = "",
                       const std::string& layers = "") {
    std::string out = "0\nSECTION\n2\nHEADER\n";
    out += unit != 0 ? "9\n$INSUNITS\n70\n" + std::to_string(unit) + "\n" : "";
    out += "0\nENDSEC\n0\nSECTION\n2\nTABLES\n" + layers + "0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n" + blocks;
    return out + "0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + entities + "0\nENDSEC\n0\nEOF\n";
}

inline std::string dxf_line(double x1, double y1, double x2, double y2, const std::string& more = "") {
    return "0\nLINE\n8\n0\n10\n" + std::to_string(x1) + "\n20\n" + std::to_string(y1) + "\n11\n" + std::to_string(x2) +
           "\n21\n" + std::to_string(y2) + "\n" + more;
}

inline std::string dxf_circle(double x, double y, double r) {
    return "0\nCIRCLE\n8\n0\n10\n" + std::to_string(x) + "\n20\n" + std::to_string(y) + "\n40\n" + std::to_string(r) +
           "\n";
}

inline std::string dxf_square(double x, double y, double side) {
    return dxf_line(x, y, x + side, y) + dxf_line(x + side, y + side, x + side, y) +
           dxf_line(x + side, y + side, x, y + side) + dxf_line(x, y + side, x, y);
}

inline std::string svg(const std::string& inside,
                       const std::string& head = "width=\"100mm\" height=\"100mm\" viewBox=\"0 0 100 100\"") {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" " + head + ">" + inside + "</svg>";
}

inline drawing::Drawing read(const std::string& text, const drawing::ReadSettings& settings = {}) {
    const auto drawing = drawing::read_drawing(text, settings);
    INFO((drawing ? "" : test::said(drawing.fault().text)));
    REQUIRE(drawing.ok());
    return drawing.value();
}

inline std::string why(const std::string& text) {
    const auto drawing = drawing::read_drawing(text, {});
    return drawing ? "read" : drawing.fault().field + ": " + test::said(drawing.fault().text);
}

/// How many problems of that code are listed.
inline std::size_t count(const drawing::Drawing& d, std::string_view code) {
    std::size_t n = 0;
    for (const part::Problem& p : d.problems) {
        n += p.code == code ? 1 : 0;
    }
    return n;
}

} // namespace torchside::test
