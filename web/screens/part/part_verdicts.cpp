// What stands in the way of the part, and what of it is good: equal places are one row.
#include <algorithm>

#include "core/quantity/print.hpp"
#include "core/worksheet/hindrance.hpp"
#include "core/worksheet/holes.hpp"
#include "generated/words/part_check.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

using part::Problem;

std::string size_of(const App& app, const Problem& problem) {
    return problem.size_mm > 0 ? show_text(Length{problem.size_mm, mm}, app.units()) : std::string();
}

/// Where it is: "2 places of 3 mm · show where".
Text show_where(int count, const std::string& size) {
    if (count > 1) {
        return size.empty() ? Text(words::part_check::ShowPlaces{.count = count})
                            : words::part_check::ShowPlacesSize{.count = count, .size = size};
    }
    return size.empty() ? Text(words::part_check::show) : words::part_check::ShowSize{.size = size};
}

Text small_holes(int count, const std::string& size, const std::string& least) {
    return count == 1 ? Text(words::part_check::SmallHole{.least = least, .size = size})
                      : words::part_check::SmallHoles{.count = count, .least = least, .size = size};
}

/// All problems that say and measure the same as number `first`; the row shows where that one is.
Verdict of_problems(const App& app, std::size_t first, int count) {
    const Problem& problem = app.worksheet().part->problems[first];
    Text below = problem.detail;
    below += show_where(count, size_of(app, problem));
    return {std::string(problem.code) + '/' + std::to_string(first),
            sign_of(problem.severity),
            app.say(problem.title),
            app.say(below),
            "",
            first};
}

void add_problems(const App& app, std::vector<Verdict>& rows) {
    struct Group {
        std::size_t first;
        int count;
    };
    const auto& all = app.worksheet().part->problems;
    const auto alike = [](const Problem& a, const Problem& b) {
        return a.title == b.title && a.size_mm - b.size_mm < 0.005 && b.size_mm - a.size_mm < 0.005;
    };
    std::vector<Group> groups;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto known =
            std::find_if(groups.begin(), groups.end(), [&](const Group& g) { return alike(all[g.first], all[i]); });
        if (known == groups.end()) {
            groups.push_back({i, 1});
        } else {
            ++known->count;
        }
    }
    for (const Group& g : groups) {
        rows.push_back(of_problems(app, g.first, g.count));
    }
}

/// "Holes 14 mm: good (smallest 9.5 mm)": what is right is said too, and small ones once a size.
void add_holes(const App& app, std::vector<Verdict>& rows) {
    const Worksheet& worksheet = app.worksheet();
    if (!worksheet.settings || worksheet.part->path.runs.empty()) {
        return;
    }
    const Units units = app.units();
    const std::string least = show_least_hole(*worksheet.settings, units).whole();
    const Holes* first = nullptr;
    const Holes* last = nullptr;
    const auto holes = holes_of(worksheet, app.book().job.thickness);
    for (const Holes& h : holes) {
        const std::string size = show_text(h.size, units);
        if (h.state == HoleState::small) {
            rows.push_back({"hole_below_least/" + std::to_string(rows.size()), Sign::holds,
                            app.say(small_holes(h.count, size, least)), app.say(words::part_check::try_first),
                            "figure/min_hole"});
        } else if (h.state == HoleState::good) {
            first = first != nullptr ? first : &h;
            last = &h;
        }
    }
    if (first != nullptr && worksheet.capacity.verdict == cut::Reach::clean) {
        const Printed low = print(first->size, units);
        const Printed high = print(last->size, units);
        const std::string sizes =
            low.text() == high.text()
                ? low.text()
                : app.say(words::part_check::Range{.high = high.text(),
                                                   .low = low.unit == high.unit ? low.number : low.text()});
        rows.push_back({"holes_good", Sign::holds, app.say(words::part_check::Good{.least = least, .sizes = sizes}),
                        app.say(words::part_check::good_basis), "figure/min_hole"});
    }
}

bool speaks_of_part(const App& app, const Message& w) {
    const auto& all = app.worksheet().part->problems;
    const bool told = w.code == "hole_below_least" || w.code == "part_not_possible";
    return is_of_part(w.topic) && !told &&
           std::none_of(all.begin(), all.end(), [&](const Problem& p) { return w.code == p.code; });
}

} // namespace

std::vector<Verdict> part_verdicts(const App& app) {
    constexpr std::size_t most = 40;
    std::vector<Verdict> rows;
    if (const auto in_the_way = hindrance(app.book(), app.worksheet())) {
        rows.push_back({"hindrance", Sign::stop, app.say(in_the_way->reason), app.say(in_the_way->detail),
                        app.worksheet().settings ? "shape" : "reach"});
    } else if (app.worksheet().capacity.verdict != cut::Reach::clean) {
        rows.push_back(plate_verdict(app));
    }
    add_problems(app, rows);
    for (const Message& w : app.worksheet().warnings) {
        if (speaks_of_part(app, w)) {
            rows.push_back(of_message(app, w));
        }
    }
    if (rows.empty()) {
        rows.push_back(
            {"part", Sign::holds, app.say(words::part_check::fine), app.say(words::part_check::fine_about), "shape"});
    }
    add_holes(app, rows);
    worst_first(rows);
    if (rows.size() > most) {
        const Verdict more{"more", rows[most].sign,
                           app.say(words::part_check::More{.count = static_cast<int>(rows.size() - most)}),
                           app.say(words::part_check::more_about), "shape"};
        rows.resize(most);
        rows.push_back(more);
    }
    return rows;
}

} // namespace torchside::web
