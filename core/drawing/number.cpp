#include "core/drawing/number.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/codec/decimal.hpp"

namespace torchside::drawing {

namespace {

bool digit(char c) {
    return c >= '0' && c <= '9';
}
bool blank(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f';
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// Order of letters with capitals as small ones.
int compare(std::string_view a, std::string_view b) {
    for (std::size_t i = 0; i < a.size() && i < b.size(); ++i) {
        if (lower(a[i]) != lower(b[i])) {
            return lower(a[i]) < lower(b[i]) ? -1 : 1;
        }
    }
    return a.size() == b.size() ? 0 : (a.size() < b.size() ? -1 : 1);
}

} // namespace

bool take_decimal(std::string_view text, std::size_t& at, double& value) {
    const std::size_t size = text.size();
    std::size_t i = at < size && (text[at] == '-' || text[at] == '+') ? at + 1 : at;
    bool any = false, point = false;
    for (; i < size && (digit(text[i]) || (text[i] == '.' && !point)); ++i) {
        any = any || text[i] != '.';
        point = point || text[i] == '.';
    }
    if (!any) {
        return false;
    }
    if (i < size && lower(text[i]) == 'e') {
        std::size_t j = i + 1;
        j += j < size && (text[j] == '-' || text[j] == '+') ? 1 : 0;
        while (j < size && digit(text[j])) {
            i = ++j; // else the letter is not ours: "2em"
        }
    }
    const double read = codec::read_decimal(text.substr(at, i - at));
    if (!std::isfinite(read)) {
        return false;
    }
    value = read;
    at = i;
    return true;
}

std::string_view without_blanks(std::string_view text) {
    while (!text.empty() && blank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && blank(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

bool whole_decimal(std::string_view text, double& value) {
    const std::string_view bare = without_blanks(text);
    std::size_t at = 0;
    return take_decimal(bare, at, value) && at == bare.size();
}

bool whole_integer(std::string_view text, std::int32_t& value) {
    const std::string_view bare = without_blanks(text);
    std::size_t i = !bare.empty() && (bare[0] == '-' || bare[0] == '+') ? 1 : 0;
    std::int64_t n = 0;
    if (i == bare.size() || bare.size() > 12) {
        return false;
    }
    for (; i < bare.size(); ++i) {
        if (!digit(bare[i])) {
            return false;
        }
        n = n * 10 + (bare[i] - '0');
    }
    n = bare[0] == '-' ? -n : n;
    if (n < std::numeric_limits<std::int32_t>::min() || n > std::numeric_limits<std::int32_t>::max()) {
        return false;
    }
    value = static_cast<std::int32_t>(n);
    return true;
}

bool alike(std::string_view a, std::string_view b) {
    return a.size() == b.size() && compare(a, b) == 0;
}

std::string quotable(std::string_view text) {
    constexpr std::size_t longest = 32;
    std::string out = "\"";
    for (const char c : text.substr(0, longest)) {
        out += c >= ' ' && c <= '~' && c != '"' && c != '<' && c != '>' ? c : '?';
    }
    return out + (text.size() > longest ? "...\"" : "\"");
}

bool NameIndex::before(std::string_view a, std::string_view b) const {
    return letters_alike_ ? compare(a, b) < 0 : a < b;
}

void NameIndex::sort() {
    std::stable_sort(entries_.begin(), entries_.end(),
                     [this](const Entry& a, const Entry& b) { return before(a.name, b.name); });
}

const std::uint32_t* NameIndex::find(std::string_view name) const {
    const auto found =
        std::lower_bound(entries_.begin(), entries_.end(), name,
                         [this](const Entry& entry, std::string_view n) { return before(entry.name, n); });
    return found != entries_.end() && !before(name, found->name) ? &found->number : nullptr;
}

} // namespace torchside::drawing
