// The column of a screen or a panel: what kit's has, and fields of the workbook besides. A field shows label and value in the
// user's units, reads back what is typed, and says in words what it cannot take.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/quantity/field_unit.hpp"
#include "web/kit/column.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

/// A path of the workbook, and what its field is called.
struct PathLabel {
    const char* path;
    Label label;
};

class Body : public Column {
public:
    App& app;

    Body(App& of, Rect place, Only only = Only::drawn) : Column(of.ui(), place, only), app(of) {}

    /// A number, text or switch for any path the schema knows; nothing for another.
    /// `take`, when given, gets the number instead of the workbook: it may ask before it sets it, and says whether it took it.
    void field(std::string_view path, Label label, bool (*take)(App& app, double number) = nullptr);
    void fields(std::span<const PathLabel> all);

    /// A number that belongs to no workbook: something read off an instrument, to work a setting out from.
    void reading(std::string_view id, Label label, Label idle, FieldUnit unit, std::optional<double>& value);

    /// The words of a path as buttons under a heading, "" for not given, in one row or in rows of so many.
    void word_choice(const char* path, Label name, std::span<const char* const> words, std::span<const Label> labels,
                     int columns = 0);
    void word_choice(const char* path, Label name, std::span<const char* const> words,
                     std::span<const char* const> labels, int columns = 0) {
        word_choice(path, name, words, std::vector<Label>(labels.begin(), labels.end()), columns);
    }
    /// The usual numbers of a path as buttons under the question `name`; anything else is typed in the field.
    void number_choice(const char* path, Label name, std::span<const double> numbers, std::span<const Label> labels,
                       int columns);

    /// Thickness and current of the job, as the stock panel shows them. A question ("11/4") is asked back with its answers.
    void thickness();
    void current();
};

/// Begin to type in the field of that path, as a touch on it would.
void edit_entry(App& app, std::string_view path);

} // namespace torchside::web
