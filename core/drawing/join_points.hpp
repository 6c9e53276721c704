// Points within a tolerance of each other get one number. Internal to joining.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/drawing/part_words.hpp"

namespace torchside::drawing {

constexpr std::uint32_t no_one = 0xffffffffU;

/// A table of 64-bit keys, each with one number; open addressing.
class KeyTable {
public:
    explicit KeyTable(std::size_t most); // entries
    /// The number kept with the key: `no_one` at first, to be changed by the caller.
    std::uint32_t& at(std::uint64_t key);
    [[nodiscard]] const std::uint32_t* find(std::uint64_t key) const;

private:
    struct Slot {
        std::uint64_t key = 0;
        std::uint32_t number = no_one;
        bool used = false;
    };
    [[nodiscard]] std::size_t slot(std::uint64_t key) const;
    std::vector<Slot> slots_{};
};

class PointIndex {
public:
    PointIndex(double tolerance, std::size_t most);
    /// The number of the nearest known point within the tolerance; a new one when there is none.
    std::uint32_t number(Point p);
    [[nodiscard]] std::size_t size() const { return points_.size(); }
    [[nodiscard]] Point at(std::uint32_t number) const { return points_[number]; }

private:
    [[nodiscard]] std::uint64_t key(double column, double row) const;
    double tolerance_;
    double cell_;
    KeyTable cells_; // the last point of each
    std::vector<Point> points_{};
    std::vector<std::uint32_t> before_{}; // the point before in the same cell
};

} // namespace torchside::drawing
