// DXF, text form: sections, units, layers, blocks; and the entities, drawn with a Pen. Internal to reading.
#pragma once

#include <array>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/dxf_pairs.hpp"
#include "core/drawing/number.hpp"
#include "core/drawing/sketch.hpp"

namespace torchside::drawing {

enum class DxfKind : std::uint8_t {
    other,
    line,
    circle,
    arc,
    lwpolyline,
    polyline,
    vertex,
    ellipse,
    spline,
    insert,
    seqend
};

/// The groups of one entity. Group codes 10 to 59 are numbers, 60 to 99 whole numbers.
struct DxfEntity {
    DxfKind kind = DxfKind::other;
    std::string_view type{};
    std::string_view name{};  // 2
    std::string_view layer{}; // 8
    DxfPairs::Place place{};
    std::uint64_t given = 0; // bit n - 10 for group code n, 10 to 59
    std::array<double, 50> real{};
    std::array<std::int32_t, 40> whole{}; // 60 to 99
    Point normal{};                       // 210, 220
    double normal_z = 1.0;                // 230
    std::vector<Vertex> vertices{};       // LWPOLYLINE and POLYLINE; SPLINE: control points
    std::vector<Point> through{};         // SPLINE: fit points
    std::vector<double> knots{};
    std::vector<double> weights{};
    bool level = true;       // POLYLINE: all points at one height
    bool lacks_y = false;    // the last point's 20 has not come
    bool half_point = false; // and never will

    [[nodiscard]] bool has(int code) const { return (given >> (code - 10) & 1U) != 0; }
    [[nodiscard]] double at(int code, double otherwise = 0.0) const {
        return has(code) ? real[static_cast<std::size_t>(code - 10)] : otherwise;
    }
    [[nodiscard]] std::int32_t flag(int code) const { return whole[static_cast<std::size_t>(code - 60)]; }
    [[nodiscard]] Point point(int code) const { return {at(code), at(code + 10)}; }
    void keep(int code, double value) {
        real[static_cast<std::size_t>(code - 10)] = value;
        given |= std::uint64_t{1} << (code - 10);
    }
    /// Where to look for it.
    [[nodiscard]] Point where() const { return vertices.empty() ? point(10) : vertices.front().at; }
    void begin(std::string_view kind, const DxfPairs::Place& where);
};

class DxfReader {
public:
    DxfReader(std::string_view text, const ReadSettings& settings, Sketch& sketch)
        : pairs_(text), size_(text.size()), settings_(settings), sketch_(sketch), pen_(sketch, settings.flatten_mm) {}

    [[nodiscard]] bool read();
    [[nodiscard]] const Fault& fault() const { return fault_; }

private:
    struct Block {
        std::string_view name{};
        Point base{};
        DxfPairs::Place begin{}, end{};
        bool open = false; // is being drawn: a loop if it comes again
    };

    // dxf_read.cpp
    bool refuse(const Text& what, std::size_t line);
    bool refuse_pair();   // what DxfPairs found
    bool need(Word what); // the next pair, or a fault that `what` ends early
    bool section();
    bool header();
    bool tables();
    bool layer();
    bool blocks();
    bool block();
    bool skip_section();
    void choose_unit();

    // dxf_entities.cpp
    bool entities(std::size_t end, const Affine& place, int depth);
    bool entity(const Affine& place, int depth);
    bool groups(DxfEntity& entity);
    bool group(DxfEntity& entity);
    bool listed(DxfEntity& entity, double value); // groups of which there are many
    bool old_polyline(DxfEntity& entity);
    [[nodiscard]] bool hidden(const DxfEntity& entity) const;
    void note(Found found, Point at) { report(sketch_.problems, found, at); }

    // dxf_draw.cpp
    bool draw(const DxfEntity& entity, const Affine& parent, int depth);
    bool needs(const DxfEntity& entity, std::initializer_list<int> codes);
    bool bad(const DxfEntity& entity, Word why);
    bool line(const DxfEntity& entity, const Affine& place);
    bool round(const DxfEntity& entity, const Affine& place); // CIRCLE, ARC
    bool ellipse(const DxfEntity& entity, const Affine& place);
    bool polyline(const DxfEntity& entity, const Affine& place);
    bool spline(const DxfEntity& entity, const Affine& place);
    bool insert(const DxfEntity& entity, const Affine& place, int depth);

    DxfPairs pairs_;
    std::size_t size_;
    const ReadSettings& settings_;
    Sketch& sketch_;
    Pen pen_;
    DxfEntity entity_{};
    DxfEntity vertex_{}; // of a POLYLINE
    Fault fault_{};
    int insert_units_ = 0; // $INSUNITS; 0: not said
    int measurement_ = -1; // $MEASUREMENT; -1: not said
    NameIndex hidden_layers_{true};
    NameIndex block_names_{true};
    std::vector<Block> blocks_{};
    std::size_t work_ = 0; // bytes of blocks drawn again, and a share for each insert
    std::size_t entities_ = 0;
    std::size_t top_ = 0; // offset in the section ENTITIES
    bool drawn_ = false;  // there was a section ENTITIES
};

} // namespace torchside::drawing
