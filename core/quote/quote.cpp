#include "core/quote/quote.hpp"

#include <algorithm>
#include <cmath>

#include "core/codec/decimal.hpp"
#include "core/codec/json.hpp"
#include "core/price/money.hpp"
#include "core/quote/date.hpp"
#include "core/quote/quote_fields.hpp"
#include "core/schema/access.hpp"
#include "generated/words/customer.hpp"
#include "generated/words/language.hpp"
#include "generated/words/link_fault.hpp"

namespace torchside::document {

namespace {

using Wrong = std::optional<Fault>;

Wrong odd_money(const Quote& q) {
    const int places = price::decimals(q.currency);
    const std::pair<std::string_view, double> amounts[] = {{"price_each", q.price_each},
                                                           {"price_total", q.price_total},
                                                           {"tax_amount", q.tax_amount.value_or(0.0)},
                                                           {"to_pay", q.to_pay}};
    for (const auto& [key, value] : amounts) {
        if (price::amount(price::money(value, places), places) != value) {
            return Fault{std::string(key),
                         words::link_fault::Amount{.places = places, .value = codec::decimal_text(value)}};
        }
    }
    const price::Money total = price::money(q.price_total, places);
    const price::Money tax = price::money(q.tax_amount.value_or(0.0), places);
    if (total + tax != price::money(q.to_pay, places) || q.tax.has_value() != q.tax_amount.has_value()) {
        return Fault{"to_pay", words::link_fault::to_pay};
    }
    return {};
}

void write_outline(const QuoteOutline& outline, codec::JsonWriter& out) {
    out.key("outline_partly").flag(outline.partly);
    out.key("outline").open('[');
    for (const QuoteContour& c : outline.contours) {
        out.open_line('{');
        if (c.circle_mm > 0.0) {
            out.key("circle_mm").number(std::round(c.circle_mm * 1000.0) / 1000.0);
        } else {
            out.key("open").flag(c.open);
        }
        out.key("points_mm").open('[');
        for (const part::Point p : c.points) {
            out.open('[');
            // The grid's steps, which a product of doubles misses by its last digits.
            out.number(std::round(p.x * 1000.0) / 1000.0);
            out.number(std::round(p.y * 1000.0) / 1000.0);
            out.close();
        }
        out.close();
        out.close();
    }
    out.close();
}

} // namespace

Quote make_quote(const Workbook& workbook, const part::Outline& outline, const price::Report& price, int issued_day,
                 std::string_view spoken) {
    const Shop& shop = workbook.shop;
    const Job& job = workbook.job;
    const auto plain = [&](price::Money money) { return price::amount(money, price.decimals); };
    Quote q;
    q.shop_name = shop.name;
    q.contact = shop.contact;
    q.number = job.quote.number;
    q.issued_day = issued_day;
    q.valid_days = job.quote.valid_days;
    q.part_name = job.name;
    q.note = job.quote.note;
    const std::string& chosen = job.quote.language.empty() ? shop.display.language : job.quote.language;
    const std::string_view language = chosen.empty() ? spoken : std::string_view(chosen);
    q.language = language == english().code ? std::string_view() : language;
    q.units = shop.display.units;
    q.material = job.material;
    q.thickness = job.thickness;
    q.quantity = job.quantity;
    q.currency = shop.rates.currency;
    q.price_each = plain(price.each);
    q.price_total = plain(price.total);
    if (price.tax) {
        q.tax = job.quote.tax;
        q.tax_amount = plain(*price.tax);
    }
    q.to_pay = plain(price.to_pay);
    Simplified shown = simplified(outline);
    q.length = shown.length;
    q.width = shown.width;
    q.tolerance = shown.tolerance;
    q.outline = std::move(shown.outline);
    return q;
}

std::vector<PriceLine> price_lines(const Quote& q, const Speech& speech) {
    const int places = price::decimals(q.currency);
    const std::string_view gap = phrase(words::language::group_sign, speech.language);
    const auto shown = [&](double amount) {
        return price::print_grouped(price::money(amount, places), places, speech.units, gap);
    };
    const bool even = price::money(q.quantity * q.price_each, places) == price::money(q.price_total, places);
    std::vector<PriceLine> lines{{even ? words::customer::each : words::customer::each_rounded, shown(q.price_each)},
                                 {words::customer::Pieces{.count = q.quantity}, shown(q.price_total)}};
    if (q.tax) {
        lines.push_back({words::customer::Tax{.rate = words::percent(*q.tax, 2)}, shown(*q.tax_amount)});
        lines.push_back({words::customer::total, shown(q.to_pay)});
    }
    return lines;
}

std::string revision_letters(int revision) {
    const auto letter = [](int i) { return std::string(1, static_cast<char>('A' + i)); };
    return revision < 26 ? letter(std::max(revision, 0)) : letter(revision / 26 - 1) + letter(revision % 26);
}

Text number_words(std::string_view number, int revision) {
    if (revision > 0) {
        return words::customer::Revision{.letters = revision_letters(revision), .number = number};
    }
    return words::verbatim(number);
}

Text quote_words(const Quote& quote) {
    if (quote.number.empty()) {
        return words::customer::quote;
    }
    return words::customer::QuoteNumber{.number = number_words(quote.number, quote.revision)};
}

std::optional<Fault> check_quote(const Quote& quote) {
    std::string path;
    if (auto wrong = check_object(quote_fields(), &quote, path)) {
        return wrong;
    }
    for (const char c : quote.currency) {
        if (c < 'A' || c > 'Z') {
            return Fault{"currency", words::link_fault::currency};
        }
    }
    return odd_money(quote);
}

std::string write_quote(const Quote& quote) {
    codec::JsonWriter out;
    out.open('{');
    for (const Field& field : quote_fields()) {
        out.key(field.key);
        write_scalar(fetch(field, &quote), out);
    }
    out.key("issued").text(iso_day(quote.issued_day));
    out.key("valid_until").text(iso_day(quote.issued_day + quote.valid_days));
    write_outline(quote.outline, out);
    out.close();
    return out.take();
}

} // namespace torchside::document
