// One thumb on a phone, counted as the tasks count it: every touch is one, every key of the keypad, every letter on the
// phone's own keyboard, every drag that brings something into view. Only what is in view can be touched.
#pragma once

#include <string_view>

#include "tests/screens/person.hpp"

namespace torchside::web {

class Thumb {
public:
    explicit Thumb(Person& person) : person_(person) {}

    [[nodiscard]] int touches() const { return touches_; }

    /// Touches a control by its name or its id; drags the page first when it is out of view.
    void tap(std::string_view name);
    void tap_id(std::string_view id);
    /// A number on the app's keypad: digits, ".", "/", "\"".
    void keys(std::string_view text);
    /// A text on the phone's own keyboard, into the field that is open.
    void letters(std::string_view text);
    /// Drags until a text is in view that says this; throws when there is none.
    void read(std::string_view text);

private:
    void bring_into_view(std::string_view id);

    Person& person_;
    int touches_ = 0;
};

} // namespace torchside::web
