#include "core/drawing/problems.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "generated/words/problem.hpp"

namespace torchside::drawing {

namespace {

constexpr struct {
    const char* code;
    Severity severity;
    Word title, detail;
} known[] = {
    // by Found
    {"unit_unknown", Severity::stop, words::problem::unit_unknown, words::problem::unit_unknown_do},
    {"not_read", Severity::note, words::problem::not_cut, Word{}},
    {"not_read", Severity::caution, words::problem::elsewhere, Word{}},
    {"hidden", Severity::note, words::problem::hidden, Word{}},
    {"not_flat", Severity::caution, words::problem::flattened, words::problem::flattened_why},
    {"not_flat", Severity::stop, words::problem::tilted, Word{}},
    {"open_contour", Severity::stop, words::problem::open_contour, Word{}},
    {"branch", Severity::caution, words::problem::branch, Word{}},
    {"duplicate", Severity::note, words::problem::duplicate, Word{}},
    {"short_piece", Severity::note, words::problem::short_piece, Word{}},
    {"crossing", Severity::stop, words::problem::crossing, Word{}},
    {"overlap", Severity::stop, words::problem::overlap, Word{}},
    {"no_area", Severity::caution, words::problem::no_area, Word{}},
    {"unchecked", Severity::caution, words::problem::unchecked, words::problem::unchecked_why},
    {"style_transform", Severity::stop, words::problem::style_transform, words::problem::style_transform_why},
    {"fit_points", Severity::note, words::problem::fit_points, words::problem::fit_points_why},
    {"inside_out", Severity::stop, words::problem::inside_out, Word{}},
    {"not_read", Severity::caution, words::problem::face, words::problem::face_do},
    {"cut_short", Severity::caution, words::problem::cut_short, words::problem::cut_short_why},
};
constexpr std::size_t kinds = static_cast<std::size_t>(Found::last) + 1;
static_assert(sizeof known / sizeof *known == kinds);

constexpr double farthest_mm = 1e6; // of what is not cut a place may lie anywhere

Length kept_place(double v) {
    const double within = v > -farthest_mm ? std::min(v, farthest_mm) : -farthest_mm;
    return Length{std::floor(within * 100.0 + 0.5) / 100.0, mm};
}

} // namespace

Problem problem(Found found, Point at, double size_mm) {
    const auto& k = known[static_cast<std::size_t>(found)];
    return {k.code, k.severity, k.title, k.detail, at, size_mm};
}

void report(std::vector<Problem>& problems, Found found, Point at, double size_mm) {
    const Word title = known[static_cast<std::size_t>(found)].title;
    const auto same = [title](const Problem& p) { return p.title == title; };
    if (static_cast<std::size_t>(std::count_if(problems.begin(), problems.end(), same)) < most_of_a_problem) {
        problems.push_back(problem(found, at, size_mm));
    }
}

Found found_of(const Problem& problem) {
    std::size_t i = 0;
    while (i < static_cast<std::size_t>(Found::last) && known[i].title != problem.title) {
        ++i;
    }
    return static_cast<Found>(i);
}

bool is_kept(Found found) {
    constexpr Found asked_or_seen[] = {Found::unit_unknown, Found::open_contour, Found::crossing,  Found::overlap,
                                       Found::no_area,      Found::unchecked,    Found::inside_out};
    return std::find(std::begin(asked_or_seen), std::end(asked_or_seen), found) == std::end(asked_or_seen);
}

bool hinders_cutting(const Problem& problem) {
    const Found found = found_of(problem);
    return found == Found::crossing || found == Found::overlap || found == Found::inside_out;
}

std::vector<part::Finding> kept(const std::vector<Problem>& problems) {
    std::array<std::size_t, kinds> count{};
    std::vector<part::Finding> out;
    for (const Problem& p : problems) {
        const Found found = found_of(p);
        if (is_kept(found) && count[static_cast<std::size_t>(found)]++ < most_kept) {
            out.push_back({found, kept_place(p.at.x), kept_place(p.at.y), kept_place(p.size_mm)});
        }
    }
    return out;
}

Problem problem(const part::Finding& finding) {
    return problem(finding.code, {finding.x.in(mm), finding.y.in(mm)}, finding.size.in(mm));
}

} // namespace torchside::drawing
