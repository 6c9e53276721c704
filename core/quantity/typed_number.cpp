#include <cstdint>
#include <utility>

#include "core/quantity/typed.hpp"

namespace torchside::typed {

namespace {

constexpr std::size_t most_digits = 15; // every such integer is a double exactly

bool digit(char c) {
    return c >= '0' && c <= '9';
}
bool gap(char c) {
    return c == ' ' || c == '_';
}

std::size_t digits_at(std::string_view s, std::size_t at) {
    std::size_t n = 0;
    while (at + n < s.size() && digit(s[at + n])) {
        ++n;
    }
    return n;
}

std::size_t past_gaps(std::string_view s, std::size_t at) {
    while (at < s.size() && gap(s[at])) {
        ++at;
    }
    return at;
}

std::string_view without_zeros(std::string_view digits) {
    while (digits.size() > 1 && digits[0] == '0') {
        digits.remove_prefix(1);
    }
    return digits;
}

/// At most 15 digits.
std::int64_t integer(std::string_view digits) {
    std::int64_t n = 0;
    for (const char c : digits) {
        n = n * 10 + (c - '0');
    }
    return n;
}

/// Digits and the marks between them, as typed: "1,234.5" has the marks ",." and three runs.
struct Decimal {
    std::string before{}; // digits before the decimal mark, groups joined
    std::string after{};
    bool marked = false;   // there is a decimal mark
    bool doubtful = false; // one mark, not the reader's decimal sign, then exactly three digits
    std::size_t used = 0;
    std::optional<Unread> problem{};
};

/// Whether s[at] parts two groups of three: "12_000" but not "1_1/2".
bool parts_groups(std::string_view s, std::size_t at) {
    return s[at] == '_' && digits_at(s, at + 1) == 3 && !(at + 4 < s.size() && s[at + 4] == '/');
}

Decimal scan_decimal(std::string_view s, char decimal) {
    Decimal d;
    constexpr std::size_t most_runs = 8;
    std::string_view runs[most_runs];
    char marks[most_runs] = {};
    std::size_t count = 0, at = 0;
    for (;; ++at) {
        if (count == most_runs) {
            d.problem = Unread::many_digits;
            return d;
        }
        const std::size_t n = digits_at(s, at);
        runs[count] = s.substr(at, n);
        at += n;
        const bool more = at < s.size() && (s[at] == '.' || s[at] == ',' || parts_groups(s, at));
        // "6 mm." and "6." end in a mark that says nothing.
        if (!more || (count > 0 && n == 0)) {
            break;
        }
        marks[count++] = s[at];
    }
    d.used = at;
    if (count == 0) {
        d.before = runs[0];
        return d;
    }
    // The last mark is the decimal one, unless it is like those before it; the ones before it part groups of three.
    const char last = marks[count - 1];
    const bool grouped = last == '_' || (count > 1 && marks[count - 2] == last);
    for (std::size_t i = 0; i <= count; ++i) {
        const bool in_group = i < count || grouped;
        const bool has_groups = count > 1 || grouped;
        if (in_group && has_groups &&
            ((i < count && i + 1 < count && marks[i] != marks[0]) ||
             (i == 0 ? runs[i].empty() || runs[i].size() > 3 : runs[i].size() != 3))) {
            d.problem = Unread::marks_clash;
            return d;
        }
        (in_group ? d.before : d.after) += runs[i];
    }
    d.marked = !grouped;
    d.doubtful = count == 1 && (last == ',' || last == '.') && last != decimal && runs[1].size() == 3 &&
                 !runs[0].empty() && runs[0].size() <= 3 && runs[0][0] != '0';
    return d;
}

Number decimal_number(const Decimal& d, char decimal) {
    static constexpr double tens[] = {1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                      1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};
    Number n;
    n.over = static_cast<double>(integer(d.before + d.after));
    n.under = tens[d.after.size()];
    n.as = d.before.empty() ? "0" : std::string{without_zeros(d.before)};
    if (!d.after.empty()) {
        n.as += decimal;
        n.as += d.after;
    }
    n.whole = !d.marked;
    return n;
}

struct Line {
    std::string_view over{};
    std::string_view under{};
    std::size_t used = 0; // 0: no fraction here
};

/// "3/16", "3 / 16", "|3/16"
Line scan_line(std::string_view s, std::size_t start) {
    std::size_t at = start;
    if (at < s.size() && s[at] == '|') {
        ++at;
    }
    const std::size_t n = digits_at(s, at);
    const std::size_t slash = past_gaps(s, at + n);
    if (n == 0 || slash >= s.size() || s[slash] != '/') {
        return {};
    }
    const std::size_t below = past_gaps(s, slash + 1);
    const std::size_t m = digits_at(s, below);
    return m == 0 ? Line{} : Line{s.substr(at, n), s.substr(below, m), below + m - start};
}

Number fraction(std::string_view whole, std::string_view over, std::string_view under) {
    Number n;
    const double w = static_cast<double>(integer(whole)), a = static_cast<double>(integer(over)),
                 b = static_cast<double>(integer(under));
    n.over = w * b + a;
    n.under = b;
    if (!whole.empty()) {
        n.as = std::string{without_zeros(whole)} + " ";
    }
    n.as += std::string{without_zeros(over)} + "/" + std::string{without_zeros(under)};
    n.fraction = true;
    return n;
}

Scan refuse(Unread problem) {
    Scan s;
    s.problem = problem;
    return s;
}

/// An improper fraction is often a slip: 11/4 for 1 1/4, or the two numbers the wrong way round.
Scan improper(const Line& line) {
    Scan s;
    s.candidates.push_back(fraction({}, line.over, line.under));
    s.used = line.used;
    const std::int64_t under = integer(line.under);
    if (integer(line.over) == under) {
        return s;
    }
    for (std::size_t cut = line.over.size() - 1; cut > 0 && s.candidates.size() < 3; --cut) {
        const std::string_view over = line.over.substr(cut);
        if (over[0] != '0' && line.over[0] != '0' && integer(over) < under) {
            s.candidates.push_back(fraction(line.over.substr(0, cut), over, line.under));
        }
    }
    if (s.candidates.size() == 1) {
        s.candidates.push_back(fraction({}, line.under, line.over));
    }
    s.doubt = Doubt::fraction;
    return s;
}

constexpr std::size_t most_in_line = 6;

Scan one(Number n, std::size_t used) {
    Scan s;
    s.candidates.push_back(std::move(n));
    s.used = used;
    return s;
}

Scan scan_fraction(const Line& line) {
    if (line.over.size() > most_in_line || line.under.size() > most_in_line) {
        return refuse(Unread::long_fraction);
    }
    if (integer(line.under) == 0) {
        return refuse(Unread::zero_below);
    }
    if (integer(line.over) >= integer(line.under)) {
        return improper(line);
    }
    return one(fraction({}, line.over, line.under), line.used);
}

/// A whole number and a fraction: "1 1/2", "1-1/2", "1½". `end` is where the fraction ends.
Scan scan_mixed(const Decimal& d, const Line& line, std::size_t end) {
    if (d.marked || d.before.size() > most_in_line || line.over.size() > most_in_line ||
        line.under.size() > most_in_line) {
        return refuse(Unread::mark_before_fraction);
    }
    if (integer(line.over) >= integer(line.under)) {
        return refuse(Unread::large_fraction);
    }
    return one(fraction(d.before, line.over, line.under), end);
}

} // namespace

Scan scan_number(std::string_view s, char decimal) {
    if (const Line line = scan_line(s, 0); line.used > 0) {
        return scan_fraction(line);
    }
    Decimal d = scan_decimal(s, decimal);
    if (d.problem) {
        return refuse(*d.problem);
    }
    if (d.before.empty() && d.after.empty()) {
        return {};
    }
    if (without_zeros(d.before).size() + d.after.size() > most_digits) {
        return refuse(Unread::many_digits);
    }
    d.before = std::string{without_zeros(d.before)};
    std::size_t at = past_gaps(s, d.used);
    if (at < s.size() && s[at] == '-') {
        at = past_gaps(s, at + 1);
    }
    if (at > d.used || (at < s.size() && s[at] == '|')) {
        if (const Line line = scan_line(s, at); line.used > 0) {
            return scan_mixed(d, line, at + line.used);
        }
    }
    Scan out = one(decimal_number(d, decimal), d.used);
    if (d.doubtful) {
        Decimal thousands = d;
        thousands.before += d.after;
        thousands.after.clear();
        thousands.marked = false;
        out.candidates.insert(out.candidates.begin(), decimal_number(thousands, decimal));
        out.doubt = Doubt::comma;
    }
    return out;
}

} // namespace torchside::typed
