// Workbooks to look at every screen with, and the names of all there is to look at.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "tests/screens/person.hpp"

namespace torchside::web {

struct NamedBook {
    std::string name;
    Workbook book;
};

/// The example shop, an empty one, and `random` others.
[[nodiscard]] std::vector<NamedBook> many_books(int random);

/// The file of a language's words, as the page fetches it.
[[nodiscard]] std::string word_file(std::string_view code);

/// Shows the person every place and every sheet with this workbook; `look` is called at each, with where it is.
void look_everywhere(Person& person, const Workbook& book, const std::function<void(const std::string& where)>& look);

} // namespace torchside::web
