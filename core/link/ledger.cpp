#include "core/link/ledger.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "core/link/link.hpp"
#include "core/quote/date.hpp"
#include "generated/words/customer.hpp"

namespace torchside::document {

namespace {

constexpr std::size_t longest_number = 20;

std::string_view ending_of(std::string_view link) {
    const std::string_view body = link.substr(0, link.find('.'));
    return body.substr(body.size() - std::min(body.size(), ending_size));
}

bool is_used(std::string_view number, const Issued& issued) {
    return std::any_of(issued.begin(), issued.end(), [&](const IssuedQuote& row) { return row.number == number; });
}

// The number of `digits` counted up by one, as long as it was or one longer.
std::string counted_up(std::string digits) {
    for (std::size_t i = digits.size(); i-- > 0;) {
        if (digits[i] != '9') {
            ++digits[i];
            return digits;
        }
        digits[i] = '0';
    }
    return '1' + digits;
}

} // namespace

void keep_word(Shop& next, const Shop& now) {
    next.seal_key = now.seal_key;
    next.old_keys = now.old_keys;
    next.issued = now.issued;
    next.others = now.others;
}

void change_key(Shop& shop, std::string key) {
    if (!shop.seal_key.empty()) {
        if (shop.old_keys.size() >= most_old_keys) {
            shop.old_keys.erase(shop.old_keys.begin());
        }
        shop.old_keys.push_back({std::move(shop.seal_key)});
    }
    shop.seal_key = std::move(key);
}

NextQuote next_quote(Quote fresh, const Issued& issued) {
    NextQuote next{std::move(fresh), NextQuote::Number::unused, {}};
    Quote& quote = next.quote;
    for (const IssuedQuote& row : issued) {
        if (!quote.number.empty() && row.number == quote.number &&
            (!next.last || row.revision >= next.last->revision)) {
            next.last = row;
        }
    }
    if (!next.last) {
        return next;
    }
    const int today = quote.issued_day;
    quote.revision = next.last->revision;
    quote.issued_day = next.last->issued_day;
    if (today <= quote.issued_day + quote.valid_days && ending_of(quote_link(quote)) == next.last->ending) {
        next.number = NextQuote::Number::again;
        return next;
    }
    next.number = NextQuote::Number::revised;
    quote.revision = std::min(next.last->revision + 1, last_revision);
    quote.issued_day = today;
    return next;
}

IssuedQuote issued_row(const Quote& quote, std::string_view link) {
    const std::size_t dot = link.find('.');
    return {quote.number,
            quote.revision,
            quote.part_name,
            quote.to_pay,
            quote.currency,
            quote.issued_day,
            quote.valid_days,
            std::string(ending_of(link)),
            dot == std::string_view::npos ? std::string() : std::string(link.substr(dot + 1))};
}

bool note_issued(Issued& issued, const IssuedQuote& row) {
    const auto there = std::find_if(issued.begin(), issued.end(), [&](const IssuedQuote& r) {
        return r.number == row.number && r.revision == row.revision && r.ending == row.ending;
    });
    if (there != issued.end()) {
        const bool sealed = !row.seal.empty() && there->seal != row.seal;
        if (sealed) {
            there->seal = row.seal;
        }
        return sealed;
    }
    if (issued.size() >= most_issued) {
        issued.erase(issued.begin(), issued.begin() + static_cast<std::ptrdiff_t>(issued.size() - most_issued + 1));
    }
    issued.push_back(row);
    return true;
}

std::string next_free_number(const std::string& number, const Issued& issued) {
    const std::size_t at = number.find_last_not_of("0123456789");
    std::string head = number.substr(0, at + 1); // npos + 1: all digits
    std::string digits = number.substr(head.size());
    if (digits.empty()) {
        head += '-';
        digits = "1";
    }
    for (std::size_t tries = 0; tries <= issued.size(); ++tries) {
        digits = counted_up(digits);
        if (head.size() + digits.size() > longest_number) {
            return {};
        }
        if (!is_used(head + digits, issued)) {
            break;
        }
    }
    return head + digits;
}

std::pair<std::string_view, Text> standing(const Quote& quote, std::string_view body, const Issued& issued, int today) {
    using namespace words::customer;
    const std::string_view ending = ending_of(body);
    bool known = false;
    const IssuedQuote* twin = nullptr; // another quote under this number and revision
    const IssuedQuote* later = nullptr;
    for (const IssuedQuote& row : issued) {
        if (row.number != quote.number) {
            continue;
        }
        if (row.revision == quote.revision && row.ending == ending) {
            known = true;
        } else if (!quote.number.empty() && row.revision == quote.revision) {
            twin = &row;
        }
        if (!quote.number.empty() && row.revision > quote.revision && (!later || row.revision > later->revision)) {
            later = &row;
        }
    }
    const Word how = known ? words::customer::issued : sealed;
    if (twin) {
        const Text other = twin->part_name.empty() ? Text(another_quote) : words::verbatim(twin->part_name);
        return {"▲", UsedTwice{.day = day_words(twin->issued_day), .known = how, .other = other}};
    }
    if (later) {
        return {
            "▲",
            Replaced{.day = day_words(later->issued_day), .known = how, .letters = revision_letters(later->revision)}};
    }
    if (today > quote.issued_day + quote.valid_days) {
        return {"▲", KnownRanOut{.day = day_words(quote.issued_day + quote.valid_days), .known = how}};
    }
    return {"●", known || issued.empty() // a list that is empty is of a shop that sealed before there was one
                     ? unaltered
                     : unlisted};
}

Issued read_rows(std::string_view lines) {
    Issued rows;
    while (!lines.empty()) {
        std::string_view line = lines.substr(0, lines.find('\n'));
        lines.remove_prefix(std::min(lines.size(), line.size() + 1));
        std::array<std::string_view, 6> cells;
        std::size_t count = 0;
        for (; count < cells.size(); ++count) {
            cells[count] = line.substr(0, line.find('\t'));
            if (cells[count].size() == line.size()) {
                ++count;
                break;
            }
            line.remove_prefix(cells[count].size() + 1);
        }
        IssuedQuote row;
        bool good = count == cells.size();
        for (const auto& [cell, number] :
             {std::pair{1U, &row.revision}, {3U, &row.issued_day}, {4U, &row.valid_days}}) {
            const std::string_view text = cells[cell];
            good = good && std::from_chars(text.data(), text.data() + text.size(), *number).ec == std::errc();
        }
        if (good) {
            row.number = cells[0];
            row.part_name = cells[2];
            row.ending = cells[5];
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

} // namespace torchside::document
