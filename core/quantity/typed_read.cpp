#include <algorithm>
#include <cmath>
#include <utility>

#include "core/quantity/print.hpp"
#include "core/quantity/typed.hpp"

namespace torchside::typed {

namespace {

struct Amount {
    Number number{};
    FoundUnit unit{};
};

double worth(const Amount& a, const Wanted& w) {
    const double over = w.sign * a.number.over - a.unit.shift * a.number.under;
    if (a.unit.up == w.target.up && a.unit.down == w.target.down) {
        return over / a.number.under;
    }
    return over * (a.unit.up * w.target.down) / (a.number.under * (a.unit.down * w.target.up));
}

std::string shown(const Amount& a, const Wanted& w) {
    std::string text = w.sign < 0 ? "−" + a.number.as : a.number.as;
    const std::string_view gap = a.unit.symbol.empty() || a.unit.dimension == Dimension::angle ? "" : " ";
    return text + std::string(gap) + a.unit.symbol;
}

/// The unit as it is looked up: no spaces, no full stop or hyphen at its ends.
std::string unit_word(std::string_view rest) {
    std::string word;
    for (const char c : rest) {
        if (c != ' ' && c != '_' && !(word.empty() && c == '-')) {
            word += c;
        }
    }
    while (!word.empty() && (word.back() == '.' || word.back() == '-')) {
        word.pop_back();
    }
    return word;
}

bool digit(char c) {
    return c >= '0' && c <= '9';
}

/// Where a second number begins: 4'|6", 3min|20s; npos when there is none, or when a point before it may be a full
/// stop.
std::size_t second_number(std::string_view rest) {
    const std::size_t at = rest.find_first_of("0123456789|");
    if (at == std::string_view::npos || at == 0 || rest[at - 1] != '.') {
        return at;
    }
    const char before = at > 1 ? rest[at - 2] : ' ';
    return before >= 'a' && before <= 'z' ? std::string_view::npos : at - 1;
}

Refusal unknown_unit(std::string_view word) {
    if (word.starts_with('/')) {
        return {Unread::unfinished_fraction};
    }
    if (const std::optional<FoundUnit> other = find_unit(word)) {
        return {other->dimension == Dimension::gauge ? Unread::gauge : Unread::other_quantity};
    }
    if (word.find_first_of("0123456789|") != std::string_view::npos) {
        return {Unread::many_numbers};
    }
    const bool letters = std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
    return {letters ? Unread::unknown_unit : Unread::not_understood};
}

Plain gauge_of(const Number& n, const Wanted& w) {
    if (!w.gauge) {
        return Refusal{Unread::gauge};
    }
    if (!n.whole || n.fraction || n.value() > 999) {
        return Refusal{Unread::broken_gauge};
    }
    return Gauge{static_cast<int>(n.value())};
}

/// "#16", "gauge 16", "ga. 16": the letters before the number, 0 when there are none.
std::size_t gauge_prefix(std::string_view text) {
    for (const std::string_view word : {"#", "gauge", "gage", "ga."}) {
        if (text.starts_with(word)) {
            return word.size();
        }
    }
    return text.starts_with("ga ") || (text.starts_with("ga") && text.size() > 2 && digit(text[2])) ? 2 : 0;
}

Plain prefixed_gauge(std::string_view text, const Wanted& w) {
    const Scan scan = scan_number(text, w.units.decimal);
    if (scan.candidates.empty()) {
        return Refusal{Unread::broken_gauge};
    }
    const std::string word = unit_word(text.substr(scan.used));
    if (!word.empty() && !find_unit(word, Dimension::gauge)) {
        return unknown_unit(word);
    }
    return gauge_of(scan.candidates[0], w);
}

/// A larger unit, then a smaller one: 4' 6", 3 min 20 s.
std::optional<Answer<double>> in_two_units(const Amount& large, std::string_view rest, const Wanted& w) {
    const Scan scan = scan_number(rest, w.units.decimal);
    if (scan.candidates.size() != 1 || !large.number.whole) {
        return {};
    }
    const std::optional<FoundUnit> unit = find_unit(unit_word(rest.substr(scan.used)), w.dimension);
    const Number& n = scan.candidates[0];
    if (!unit || unit->size() >= large.unit.size() || n.value() * unit->size() >= large.unit.size()) {
        return {};
    }
    const Amount small{n, *unit};
    std::string as = shown(large, w) + " " + shown(small, w);
    const double times = std::round(large.unit.size() / unit->size());
    if (std::abs(times * unit->size() - large.unit.size()) > 1e-9 * large.unit.size()) {
        return Answer<double>{worth(large, w) + worth(small, w), std::move(as)};
    }
    // 4' 6" is 54 in: one rounding, as for any other length.
    Amount sum = small;
    sum.number.over += large.number.over * times * sum.number.under;
    return Answer<double>{worth(sum, w), std::move(as)};
}

/// The question of scan_number, with the unit known.
Plain ask(const Scan& scan, const FoundUnit& unit, const Wanted& w) {
    Question<double> q{scan.doubt, {}};
    for (const Number& n : scan.candidates) {
        const Amount a{n, unit};
        std::string as = shown(a, w);
        if (n.fraction) {
            as += " = " + print_trimmed(n.value(), 4, w.units) + (unit.symbol.empty() ? "" : " " + unit.symbol);
        }
        q.answers.push_back({worth(a, w), std::move(as)});
    }
    return q;
}

/// Slang: a "mil" is a thousandth of an inch in print and a millimetre in many a shop.
constexpr double mil_is_doubtful_below = 40.0;

Plain settle(const Scan& scan, const FoundUnit& unit, bool bare, const Wanted& w) {
    if (scan.candidates.size() > 1) {
        return ask(scan, unit, w);
    }
    const Amount a{scan.candidates[0], unit};
    if (unit.symbol == "mil" && a.number.value() < mil_is_doubtful_below) {
        const Amount other{a.number, *find_unit("mm", Dimension::length)};
        return Question<double>{
            Doubt::mil,
            {{worth(a, w), shown(a, w) + " = " + print_trimmed(a.number.value() / 1000, 6, w.units) + " in"},
             {worth(other, w), shown(other, w)}}};
    }
    const bool as_share = w.dimension == Dimension::share && bare && a.number.value() > 0 && a.number.value() <= 1;
    return Answer<double>{worth(a, w), shown(a, w), as_share};
}

/// Signs and words that are no number, before scan_number sees them.
std::optional<Refusal> no_number(std::string_view text) {
    if (text.empty()) {
        return Refusal{Unread::nothing};
    }
    if (text[0] == '-') {
        return Refusal{Unread::negative};
    }
    if (text[0] == '+') {
        return Refusal{Unread::plus_sign};
    }
    for (const std::string_view word : {"nan", "inf"}) {
        if (text.starts_with(word)) {
            return Refusal{Unread::no_number};
        }
    }
    return {};
}

Plain read_folded(std::string_view text, const Wanted& w) {
    if (const std::optional<Refusal> r = no_number(text)) {
        return *r;
    }
    const std::size_t prefix = gauge_prefix(text);
    if (prefix > 0 && w.dimension == Dimension::length) {
        text.remove_prefix(prefix);
        text.remove_prefix(std::min(text.find_first_not_of(" _."), text.size()));
        return prefixed_gauge(text, w);
    }
    const Scan scan = scan_number(text, w.units.decimal);
    if (scan.candidates.empty()) {
        return Refusal{scan.problem};
    }
    const std::string_view rest = text.substr(scan.used);
    if (rest.size() > 1 && rest[0] == 'e' && (digit(rest[1]) || rest[1] == '-' || rest[1] == '+')) {
        return Refusal{Unread::power_of_ten};
    }
    const std::string word = unit_word(rest);
    if (word.empty()) {
        const bool inches = w.dimension == Dimension::length && scan.candidates[0].fraction;
        return settle(scan, inches ? *find_unit("in", Dimension::length) : w.bare, true, w);
    }
    if (const std::optional<FoundUnit> unit = find_unit(word, w.dimension)) {
        return settle(scan, *unit, false, w);
    }
    if (w.dimension == Dimension::length && find_unit(word, Dimension::gauge)) {
        return gauge_of(scan.candidates[0], w);
    }
    const std::size_t second = second_number(rest);
    if (second != std::string_view::npos && scan.candidates.size() == 1) {
        const std::optional<FoundUnit> unit = find_unit(unit_word(rest.substr(0, second)), w.dimension);
        if (unit) {
            const auto both = in_two_units({scan.candidates[0], *unit}, rest.substr(second), w);
            if (both) {
                return *both;
            }
        }
    }
    return unknown_unit(word);
}

} // namespace

Plain read_wanted(std::string_view text, Wanted w) {
    const Folded folded = fold(text);
    if (folded.problem == Folded::Problem::too_long) {
        return Refusal{Unread::too_long};
    }
    if (folded.problem == Folded::Problem::not_text) {
        return Refusal{Unread::not_text};
    }
    std::string_view line = folded.text();
    if (w.dimension == Dimension::money && line.starts_with('$')) {
        line.remove_prefix(1);
        line.remove_prefix(std::min(line.find_first_not_of(" _"), line.size()));
    }
    const bool signed_number = w.dimension == Dimension::temperature || w.dimension == Dimension::angle;
    if (signed_number && line.starts_with('-')) {
        w.sign = -1.0;
        line.remove_prefix(1);
    }
    return read_folded(line, w);
}

} // namespace torchside::typed
