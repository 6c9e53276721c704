// What was typed into a field and could not be taken. It stays in the field, marked, with what to enter, wherever the
// user goes in the meantime, until it is corrected or expressly dropped; whatever leaves the shop says so.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/schema/intent.hpp"
#include "web/screens/pages.hpp"

namespace torchside::web {

struct Draft {
    std::string id;    // of the field
    std::string label; // what the field is called
    std::string text;
    std::string path;          // of the workbook; empty for a figure that only scratch holds
    document::Scalar stands{}; // what the workbook holds instead
    Page page = Page::cut;     // where the field is
    std::string panel{};
    bool insisted = false; // the user was done with it, or left it: time to offer the way back
};

class Drafts {
public:
    [[nodiscard]] const Draft* find(std::string_view id) const;
    void keep(Draft draft);
    void drop(std::string_view id);
    /// Those of a path ("shop.tests" with all below it), or of scratch alone for "".
    void drop_path(std::string_view path);
    /// Drops those whose value has been changed some other way since.
    void settle(const Workbook& book);
    /// The first that the workbook waits for; nullptr when all of it is as it was typed.
    [[nodiscard]] const Draft* first() const;
    [[nodiscard]] const std::vector<Draft>& all() const { return all_; }
    /// Those that the workbook waits for, as a text that a reload brings back.
    [[nodiscard]] std::string packed() const;
    void unpack(std::string_view packed, const Workbook& book);

private:
    std::vector<Draft> all_;
};

} // namespace torchside::web
