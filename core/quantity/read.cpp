#include "core/quantity/read.hpp"

#include <string>

#include "core/quantity/print.hpp"
#include "core/quantity/typed.hpp"

namespace torchside {

namespace {

Answer<Length> length_of(const Answer<double>& a) {
    return {Length{a.value, mm}, a.as};
}

} // namespace

Reading<Length> read_length_or_gauge(std::string_view text, UnitSystem bare) {
    typed::Wanted w;
    w.dimension = typed::Dimension::length;
    w.bare = *typed::find_unit(bare == UnitSystem::metric ? "mm" : "in", w.dimension);
    w.gauge = true;
    const typed::Plain plain = read_wanted(text, w);
    if (const auto* a = plain.answer()) {
        return length_of(*a);
    }
    if (const auto* q = plain.question()) {
        Question<Length> question{q->text, {}};
        for (const auto& a : q->answers) {
            question.answers.push_back(length_of(a));
        }
        return question;
    }
    if (const auto* g = plain.gauge()) {
        return *g;
    }
    return *plain.refusal();
}

std::optional<Fault> check_range(std::string_view field, double value, double low, double high, std::string_view unit) {
    if (value >= low && value <= high) {
        return {};
    }
    std::string text = value > high && value <= 1e308   ? print_trimmed(value, 4) + " is too large; "
                       : value < low && value >= -1e308 ? print_trimmed(value, 4) + " is too small; "
                                                        : std::string{"that is not a number; "};
    text += print_trimmed(low, 4) + " to " + print_trimmed(high, 4);
    if (!unit.empty()) {
        text += " ";
        text += unit;
    }
    return Fault{std::string{field}, text + " is accepted"};
}

} // namespace torchside
