#include "core/quantity/read.hpp"

#include "core/quantity/typed.hpp"

namespace torchside {

namespace {

Answer<Length> length_of(const Answer<double>& a) {
    return {Length{a.value, mm}, a.as, a.looks_like_share};
}

} // namespace

Reading<Length> read_length_or_gauge(std::string_view text, Units units) {
    typed::Wanted w;
    w.dimension = typed::Dimension::length;
    w.bare = *typed::find_unit(units.metric() ? "mm" : "in", w.dimension);
    w.gauge = true;
    w.units = units;
    const typed::Plain plain = read_wanted(text, w);
    if (const auto* a = plain.answer()) {
        return length_of(*a);
    }
    if (const auto* q = plain.question()) {
        Question<Length> question{q->doubt, {}};
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

} // namespace torchside
