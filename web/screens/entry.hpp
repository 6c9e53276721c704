// A field of the workbook on the screen: label, value in the user's units, read-back while typing, and the error in
// words.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/quantity/field_unit.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {

/// A number or text field for any path the schema knows, at the top of `place`; returns the height used.
/// `take`, when given, gets the number instead of the workbook: it may ask before it sets it, and says whether it took it.
float entry(App& app, Rect place, std::string_view path, std::string_view label,
            bool (*take)(App& app, double number) = nullptr);

/// Begin to type in the field of that path, as a touch on it would.
void edit_entry(App& app, std::string_view path);

/// A number that belongs to no workbook: something read off an instrument, to work a setting out from.
float scratch_entry(App& app, Rect place, std::string_view id, std::string_view label, std::string_view idle,
                    FieldUnit unit, std::optional<double>& value);
/// The words of a path as buttons under a heading, "" for not given, in one row or in rows of so many; returns the height
/// used.
float word_choice(App& app, Rect place, const char* path, const char* name, std::span<const char* const> words,
                  std::span<const char* const> labels, int columns = 0);
/// The usual numbers of a path as buttons under the question `name`; anything else is typed in the field.
float number_choice(App& app, Rect place, const char* path, const char* name, std::span<const double> numbers,
                    std::span<const char* const> labels, int columns);

/// Thickness and current of the job, as the stock sheet shows them. A question ("11/4") is asked back with its answers.
float thickness_entry(App& app, Rect place);
float current_entry(App& app, Rect place);

} // namespace torchside::web
