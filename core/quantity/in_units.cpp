#include "core/quantity/in_units.hpp"

#include "core/quantity/print.hpp"

namespace torchside {
namespace {

struct Pair {
    std::string_view metric, inch;
    double size; // metric units in one inch unit
    double zero; // where the inch unit begins
};
constexpr Pair pairs[] = {
    {"mm/min", "in/min", 25.4, 0}, {"mm²", "kcmil", mm2_per_kcmil, 0}, {"mm", "in", 25.4, 0},
    {"m", "ft", 0.3048, 0},        {"bar", "psi", psi.per_base, 0},    {"°C", "°F", 1 / 1.8, 32},
};
constexpr std::string_view gap = "\u2009"; // between groups of three digits

bool digit(char c) {
    return c >= '0' && c <= '9';
}

bool goes_on(std::string_view rest) { // a letter or a sign that makes another unit of it
    return !rest.empty() && ((rest[0] >= 'a' && rest[0] <= 'z') || (rest[0] >= 'A' && rest[0] <= 'Z') ||
                             rest[0] == '/' || rest.starts_with("²") || rest.starts_with("³"));
}

/// Where the number begins that ends with `text`; its size when there is none.
std::size_t number_start(std::string_view text) {
    std::size_t at = text.size();
    while (at > 0) {
        if (digit(text[at - 1]) || (text[at - 1] == '.' && at < text.size())) {
            --at;
        } else if (at < text.size() && text.substr(0, at).ends_with(gap)) {
            at -= gap.size();
        } else {
            break;
        }
    }
    return at;
}

/// A printed number has few digits: reading it needs none of what the C library's strtod would bring into the page.
double value_of(std::string_view number) {
    double value = 0;
    double scale = 1;
    bool after_point = false;
    for (const char c : number) {
        after_point = after_point || c == '.';
        if (digit(c)) {
            value = value * 10 + (c - '0');
            scale *= after_point ? 10 : 1;
        }
    }
    return value / scale;
}

std::string turned(std::string_view number, const Pair& pair) {
    std::string out = print_significant(value_of(number) / pair.size + pair.zero, 3);
    while (out.find('.') != std::string::npos && (out.back() == '0' || out.back() == '.')) {
        const bool point = out.back() == '.';
        out.pop_back();
        if (point) {
            break;
        }
    }
    return out;
}

/// "(1/4 in)" at the start of `rest`: what stands in it; empty for anything else.
std::string_view said_beside(std::string_view rest, const Pair& pair) {
    const std::size_t end = rest.find(')');
    if (!rest.starts_with(" (") || end == std::string_view::npos) {
        return {};
    }
    const std::string_view inside = rest.substr(2, end - 2);
    const std::size_t unit = inside.rfind(' ');
    if (inside.empty() || !digit(inside[0]) || unit == std::string_view::npos ||
        inside.find_first_not_of("0123456789./ \u2009") < unit) {
        return {};
    }
    const std::string_view word = inside.substr(unit + 1);
    return word == pair.inch || (word == "ga" && pair.metric == "mm") ? inside : std::string_view{};
}

/// Turns a number that shares the unit with the one behind it: "0 to", "between 5 and", "120 ×".
void turn_the_one_before(std::string& out, const Pair& pair) {
    for (const std::string_view joint : {" to ", " and ", " × "}) {
        if (!out.ends_with(joint)) {
            continue;
        }
        const std::string_view before = std::string_view(out).substr(0, out.size() - joint.size());
        const std::size_t at = number_start(before);
        if (at < before.size()) {
            out = out.substr(0, at) + turned(before.substr(at), pair) + std::string(joint);
        }
        return;
    }
}

const Pair* unit_at(std::string_view rest) {
    for (const Pair& pair : pairs) {
        if (rest.starts_with(pair.metric) && !goes_on(rest.substr(pair.metric.size()))) {
            return &pair;
        }
    }
    return nullptr;
}

} // namespace

std::string in_units(std::string_view text, UnitSystem units) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t number = number_start(out);
        const Pair* pair = text[at] == ' ' && number < out.size() ? unit_at(text.substr(at + 1)) : nullptr;
        if (pair == nullptr) {
            out += text[at++];
            continue;
        }
        const std::size_t unit = at;
        at += 1 + pair->metric.size();
        const std::string_view beside = said_beside(text.substr(at), *pair);
        const std::string_view rest = text.substr(at);
        if (!beside.empty()) {
            at += beside.size() + 3; // " (" and ")"
        }
        if (units == UnitSystem::metric || rest.starts_with(" mark") || rest.starts_with(" column")) {
            out += text.substr(unit, 1 + pair->metric.size());
            continue;
        }
        const std::string said{std::string_view(out).substr(number)};
        out.resize(number);
        if (!beside.empty()) {
            out += beside;
            continue;
        }
        turn_the_one_before(out, *pair);
        out += turned(said, *pair) + ' ' + std::string(pair->inch);
    }
    return out;
}

} // namespace torchside
