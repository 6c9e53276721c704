// Find: one list of all that can be opened or done by its name, made of what is there: places, panels, sections and fields of the shop,
// figures, checks, metals, usual plates, the job and the quotes that were handed out.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/kit/marks.hpp"
#include "web/screens/body.hpp"

namespace torchside::web {

struct Findable {
    enum class Kind {
        page,
        panel,
        field, // `target` is its path
        metal, // its word
        plate, // mm
        print_chart,
        print_card,
        copy,
        backup,
        table // which
    };
    Kind kind = Kind::page;
    std::string name;
    std::string where; // what it is, or where it lies
    Mark mark = Mark::chevron;
    Page page = Page::cut;
    std::string panel{};
    std::string target{};
    std::string also{}; // other words for it, not shown

    /// Of its row: "find/field/shop.air.hose_m".
    [[nodiscard]] std::string id() const;
};

/// All of it, in the order in which equals are shown. Nothing is drawn for it.
[[nodiscard]] std::vector<Findable> all_findable(App& app);
/// Those that have each word typed at the beginning of one of theirs, in small letters and without accents, best first: the name
/// begins so, the name has all of it, the rest. Nothing typed: what can be done, and the places.
[[nodiscard]] std::vector<Findable> find(App& app, std::string_view typed);
void open_found(App& app, const Findable& found);
/// The row that leads to Find.
void find_row(Body& body, const char* id);

/// The panel with its field open to be typed in.
void open_find(App& app);

} // namespace torchside::web
