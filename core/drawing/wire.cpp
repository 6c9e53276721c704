#include "core/drawing/wire.hpp"

#include "core/drawing/problems.hpp"

namespace torchside::drawing {

namespace {

constexpr double mark = 4711.0; // of this layout

constexpr std::size_t DrawingCounts::*counts[] = {&DrawingCounts::pieces,     &DrawingCounts::gaps_joined,
                                                  &DrawingCounts::duplicates, &DrawingCounts::short_pieces,
                                                  &DrawingCounts::not_read,   &DrawingCounts::hidden};

class Row {
public:
    explicit Row(std::span<const double> row) : row_(row) {}
    double number() {
        good_ = good_ && at_ < row_.size();
        return good_ ? row_[at_++] : 0.0;
    }
    // A whole number below `most`.
    std::size_t whole(double most) {
        const double n = number();
        good_ = good_ && n >= 0.0 && n < most;
        return good_ ? static_cast<std::size_t>(n) : 0;
    }
    // How many entries follow, of so many numbers each at least.
    std::size_t entries(std::size_t size) {
        const std::size_t n = whole(1e9);
        good_ = good_ && n <= (row_.size() - at_) / size;
        return good_ ? n : 0;
    }
    [[nodiscard]] bool whole_row() const { return good_ && at_ == row_.size(); }

private:
    std::span<const double> row_;
    std::size_t at_ = 0;
    bool good_ = true;
};

} // namespace

std::vector<double> pack(const Drawing& drawing) {
    std::vector<double> out{mark, static_cast<double>(drawing.unit), drawing.unit_known ? 1.0 : 0.0,
                            drawing.counts.largest_gap_mm};
    for (const auto count : counts) {
        out.push_back(static_cast<double>(drawing.counts.*count));
    }
    out.push_back(static_cast<double>(drawing.problems.size()));
    for (const Problem& p : drawing.problems) {
        out.insert(out.end(), {static_cast<double>(found_of(p)), p.at.x, p.at.y, p.size_mm});
    }
    out.push_back(static_cast<double>(drawing.outline.contours.size()));
    for (const Contour& c : drawing.outline.contours) {
        out.insert(out.end(), {static_cast<double>(c.role), static_cast<double>(c.points.size())});
        for (const Vertex& v : c.points) {
            out.insert(out.end(), {v.at.x, v.at.y, v.bulge});
        }
    }
    return out;
}

std::optional<Drawing> unpack(std::span<const double> numbers) {
    Row row(numbers);
    Drawing out;
    if (row.number() != mark) {
        return {};
    }
    out.unit = static_cast<DrawingUnit>(row.whole(static_cast<double>(DrawingUnit::px) + 1));
    out.unit_known = row.whole(2) == 1;
    out.counts.largest_gap_mm = row.number();
    for (const auto count : counts) {
        out.counts.*count = row.whole(1e9);
    }
    for (std::size_t i = row.entries(4); i > 0; --i) {
        const auto found = static_cast<Found>(row.whole(static_cast<double>(Found::last) + 1));
        const double x = row.number(), y = row.number();
        out.problems.push_back(problem(found, {x, y}, row.number()));
    }
    for (std::size_t i = row.entries(2); i > 0; --i) {
        Contour& c = out.outline.contours.emplace_back();
        c.role = static_cast<Role>(row.whole(3));
        const std::size_t points = row.entries(3);
        c.points.reserve(points);
        for (std::size_t k = 0; k < points; ++k) {
            const double x = row.number(), y = row.number();
            c.points.push_back({{x, y}, row.number()});
        }
    }
    return row.whole_row() ? std::optional(std::move(out)) : std::nullopt;
}

} // namespace torchside::drawing
