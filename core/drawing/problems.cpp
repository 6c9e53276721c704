#include "core/drawing/problems.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

namespace torchside::drawing {

namespace {

using Severity = Problem::Severity;

constexpr struct {
    const char* code;
    Severity severity;
    const char* text;
} known[] = {
    {"unit_unknown", Severity::stop, "The drawing does not say its unit; choose it, then check a size."},
    {"not_read", Severity::note, "A text, dimension, hatch or another thing that is not cut was left out."},
    {"not_read", Severity::caution, "Something is kept outside the file; it was not fetched."},
    {"hidden", Severity::note, "What is switched off, frozen, hidden or on paper was left out."},
    {"not_flat", Severity::caution, "Something is not flat in the drawing's plane; it is drawn as seen from above."},
    {"not_flat", Severity::stop, "A piece stands out of the drawing's plane; it was left out."},
    {"open_contour", Severity::stop, "A line does not close here."},
    {"branch", Severity::caution, "More than two pieces meet here."},
    {"duplicate", Severity::note, "A piece lies on the same piece again; one was left out."},
    {"short_piece", Severity::note, "A piece is too short to be cut; it was left out."},
    {"crossing", Severity::stop, "Lines cross or touch here."},
    {"overlap", Severity::stop, "Two lines run over each other here."},
    {"no_area", Severity::caution, "A closed line has no area; it is shown as open."},
    {"unchecked", Severity::caution, "So many lines run over each other that not all crossings are listed."},
    {"style_transform", Severity::stop,
     "A style that moves or hides something is not read: it may be in the wrong place."},
    {"fit_points", Severity::note, "A curve is given by points on it alone; between them it may differ a little."},
    {"inside_out", Severity::stop, "What is marked as a hole lies in no part, or a part lies in another's metal."},
    {"not_read", Severity::caution, "A region, solid or face is not read; explode it to lines."},
    {"cut_short", Severity::caution, "The points or the path of a shape have an error; it is drawn up to there."},
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
    return {k.code, k.severity, k.text, at, size_mm};
}

void report(std::vector<Problem>& problems, Found found, Point at, double size_mm) {
    const char* text = known[static_cast<std::size_t>(found)].text;
    const auto same = [text](const Problem& p) { return p.text == text; };
    if (static_cast<std::size_t>(std::count_if(problems.begin(), problems.end(), same)) < most_of_a_problem) {
        problems.push_back(problem(found, at, size_mm));
    }
}

Found found_of(const Problem& problem) {
    std::size_t i = 0;
    while (i < static_cast<std::size_t>(Found::last) && known[i].text != problem.text) {
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
