// SVG: the tree of elements, its transforms and viewports, and the shapes, drawn with a Pen. Internal to reading.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/number.hpp"
#include "core/drawing/sketch.hpp"
#include "core/drawing/svg_path.hpp"
#include "core/drawing/svg_xml.hpp"

namespace torchside::drawing {

class SvgReader {
public:
    SvgReader(std::string_view text, const ReadSettings& settings, Sketch& sketch)
        : xml_(text), size_(text.size()), settings_(settings), sketch_(sketch), pen_(sketch, settings.flatten_mm) {}

    [[nodiscard]] bool read();
    [[nodiscard]] const Fault& fault() const { return fault_; }

private:
    struct State {
        Affine place{};
        double width = 100.0; // of the viewport, in its own units: what a percentage is of
        double height = 100.0;
        bool visible = true;
    };
    struct Box {
        double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
    };

    bool refuse(const Text& what);
    bool index(); // names, and whether it is XML at all
    bool root(State& state);
    bool tree(const State& outside, int uses, const Box* size); // the element at hand with all in it
    bool pass_over();                                           // the same, without looking
    bool element(State& state, int uses, const Box* size, bool& inside);
    bool common(State& state, bool& shown);
    bool length(std::string_view name, double whole, double otherwise, double& out);
    bool view(State& state, const Box& box);
    bool nested_view(State& state, const Box* size);
    bool use(const State& state, int uses);
    bool shape(std::string_view name, const State& state);
    bool rect(const State& state);
    bool round(std::string_view name, const State& state); // circle, ellipse
    bool straight(const State& state);                     // line
    bool nothing(const State& state);                      // of no size
    bool points(const State& state, bool closed);
    void note(Found found, const State& state) { report(sketch_.problems, found, state.place({0, 0})); }

    SvgXml xml_;
    std::size_t size_;
    const ReadSettings& settings_;
    Sketch& sketch_;
    Pen pen_;
    Fault fault_{};
    NameIndex ids_{false};
    std::string_view prefix_{};
    std::vector<std::uint32_t> using_{}; // offsets of what is being used: a loop if one comes again
    std::size_t work_ = 0;
    std::size_t elements_ = 0;
    std::size_t top_ = 0;
};

} // namespace torchside::drawing
