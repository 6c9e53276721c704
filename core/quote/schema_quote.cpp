// Every key of a quote but its outline: name, unit, range and meaning.
#include "core/quote/quote_fields.hpp"
#include "core/schema/words.hpp"

namespace torchside::document {

namespace {

constexpr Word unsaid{}; // nobody types into a quote

constexpr KeyUnit<LengthKind> in_mm{mm, FieldUnit::mm};

constexpr Field quote_table[] = {
    text<&Quote::shop_name>("shop_name", 0, 60, unsaid), // Name of the shop.
    text<&Quote::contact>("contact", 0, 120, unsaid),    // Telephone or address of the shop.
    text<&Quote::number>("number", 0, 20, unsaid),       // The shop's own number of the quote.
    whole<&Quote::revision>("revision", 0, 99, unsaid),  // Times it was changed after it was first handed out.
    whole<&Quote::issued_day>("issued_day", 0, 60000, unsaid, FieldUnit::days), // Day of issue, days since 1970-01-01.
    whole<&Quote::valid_days>("valid_days", 1, 365, unsaid,
                              FieldUnit::days),              // Days the quote is valid from the day it is issued.
    text<&Quote::part_name>("part_name", 0, 60, unsaid),     // What the customer calls the part.
    text<&Quote::note>("note", 0, 200, unsaid),              // A line to the customer.
    text<&Quote::language>("language", 0, 8, unsaid),        // Language of the customer's page, by its code.
    word<&Quote::units>("units", unit_words, unsaid),        // Units shown first.
    word<&Quote::material>("material", metal_words, unsaid), // Metal of the part.
    number<&Quote::thickness>("thickness_mm", in_mm, 0.3, 150, unsaid), // Thickness of the plate.
    number<&Quote::length>("length_mm", in_mm, 0, 20000, unsaid),       // Length of the part over all.
    number<&Quote::width>("width_mm", in_mm, 0, 20000, unsaid),         // Width of the part over all.
    whole<&Quote::quantity>("quantity", 1, 100000, unsaid),             // How many parts.
    text<&Quote::currency>("currency", 3, 3, unsaid),                   // Three-letter code of the currency (ISO 4217).
    plain<&Quote::price_each>("price_each", FieldUnit::money, 0, 1e12, unsaid),   // Price of one part, before tax.
    plain<&Quote::price_total>("price_total", FieldUnit::money, 0, 1e12, unsaid), // Price of all parts, before tax.
    plain<&Quote::tax>("tax", FieldUnit::share, 0, 0.5,
                       unsaid), // Share added to the price as tax; none for no tax line.
    plain<&Quote::tax_amount>("tax_amount", FieldUnit::money, 0, 1e12, unsaid), // The tax.
    plain<&Quote::to_pay>("to_pay", FieldUnit::money, 0, 2e12, unsaid),         // Price of all parts with tax.
    number<&Quote::tolerance>("tolerance_mm", in_mm, 0, 1000,
                              unsaid), // The outline shown is nowhere further from the part's.
};

} // namespace

Fields quote_fields() {
    return quote_table;
}

} // namespace torchside::document
