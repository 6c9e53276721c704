// The app's controls. Each registers itself for finger, keyboard and screen reader, draws itself, and says whether it
// was used.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "web/kit/marks.hpp"
#include "web/kit/ui.hpp"

namespace torchside::web {

enum class Look { plain, chosen, main, quiet }; // quiet: no frame, and small words

/// A square-cornered button with its label centred. `of` is what it acts on, said where the eye sees it by the row it stands in.
bool button(Ui& ui, std::string_view id, Rect place, std::string_view label, Look look = Look::plain,
            Role role = Role::button, std::string_view state = {}, std::string_view of = {});

/// Buttons of one choice, laid out in rows of equal cells; returns the index that was touched.
struct Choice {
    std::string id;
    std::string label;
    bool chosen = false;
};
[[nodiscard]] float choices_height(const Ui& ui, std::size_t count, int columns);
std::optional<std::size_t> choices(Ui& ui, std::string_view group_id, Rect place, std::string_view name,
                                   std::span<const Choice> items, int columns);

/// Sign, one plain sentence, one quiet line with the way out. The whole row is the target.
/// 56 px, and as many more lines as the words need.
[[nodiscard]] float verdict_height(const Ui& ui, std::string_view sentence, std::string_view remedy, float width);
bool verdict_row(Ui& ui, std::string_view id, Rect place, Sign sign, std::string_view sentence, std::string_view remedy,
                 bool chosen = false);

/// A row that opens something: title, quiet line, chevron.
/// 56 px high, and as many more lines as the words need.
[[nodiscard]] float link_height(const Ui& ui, std::string_view title, std::string_view quiet, float width);
bool link_row(Ui& ui, std::string_view id, Rect place, std::string_view title, std::string_view quiet, Mark mark,
              bool chosen = false);

/// A switch: a word on the left, on or off on the right.
[[nodiscard]] float toggle_height(const Ui& ui, std::string_view label, std::string_view quiet, float width);
bool toggle_row(Ui& ui, std::string_view id, Rect place, std::string_view label, bool on, std::string_view quiet = {});

/// A line of text entry. `shown` is the stored value as it reads when nobody edits; `below` is the read-back or the
/// range.
struct FieldLook {
    std::string_view label;
    std::string_view shown;
    std::string_view below{};
    std::string_view error{};                  // replaces `below`, with a sign
    enum class Keyboard { own, number, text }; // the app's keypad, or which of the device's
    Keyboard keyboard = Keyboard::own;
};
/// Grows by a line when what stands below does not fit one.
[[nodiscard]] float field_height(const Ui& ui, std::string_view below, float room);
std::optional<Ui::Entry> field_row(Ui& ui, std::string_view id, Rect place, const FieldLook& look);

/// Words on the page that are also words in the mirror; returns the height used.
float words(Ui& ui, std::string_view id, Type type, Point at, float room, std::string_view text, Colour colour);

/// Title and close button of a panel; true when closed. `closable` is false where the panel is a column of its own.
[[nodiscard]] float panel_head_height(const Ui& ui);
bool panel_head(Ui& ui, std::string_view id, Rect place, std::string_view title, bool closable);

} // namespace torchside::web
