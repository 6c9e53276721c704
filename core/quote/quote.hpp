// What a customer sees, and nothing else: the one thing that a quote link carries.
//
// Costs, margin, rates, times, settings and the log have no place here, so no link can give them away. Ranges:
// schema_quote.cpp; the rules between fields: check_quote().
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/part/outline.hpp"
#include "core/price/report.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/unit_system.hpp"
#include "core/quote/quote_outline.hpp"
#include "core/stock/metal.hpp"
#include "core/words/outcome.hpp"
#include "core/words/say.hpp"
#include "core/words/text.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

struct Quote {
    std::string shop_name{};
    std::string contact{};
    std::string number{};
    int revision = 0;   // 0: as first handed out; the list of issued quotes tells it (ledger.hpp)
    int issued_day = 0; // days since 1970-01-01
    int valid_days = 30;
    std::string part_name{};
    std::string note{};
    std::string language{};                // of the customer's page, by its code; empty: English as in the US
    UnitSystem units = UnitSystem::metric; // shown first
    Metal material = Metal::mild_steel;
    Length thickness{6, mm};
    Length length{}; // over all
    Length width{};
    int quantity = 1;
    std::string currency = "USD";
    double price_each = 0.0; // money: whole minor units of the currency
    double price_total = 0.0;
    std::optional<double> tax{};        // share
    std::optional<double> tax_amount{}; // money
    double to_pay = 0.0;                // with tax
    Length tolerance{};                 // the outline is nowhere further from the part's than this
    QuoteOutline outline{};
};

/// The quote of a job: its part as drawn, its price, and the day it is issued. Its page speaks the job's language for the
/// customer, else the shop's, else `spoken`.
[[nodiscard]] Quote make_quote(const Workbook& workbook, const part::Outline& outline, const price::Report& price,
                               int issued_day, std::string_view spoken = {});

/// The price as a customer reads it, line by line; the last is what there is to pay.
struct PriceLine {
    Text name;
    std::string amount; // "1,135.14", in the quote's currency
};
[[nodiscard]] std::vector<PriceLine> price_lines(const Quote& quote, const Speech& speech);

/// "A", "B" ... "Z", "AA": what people call a revision.
[[nodiscard]] std::string revision_letters(int revision);
/// "Q-118", "Q-118 revision B".
[[nodiscard]] Text number_words(std::string_view number, int revision);

/// "Quote", "Quote Q-118", "Quote Q-118 revision B".
[[nodiscard]] Text quote_words(const Quote& quote);

/// What is out of range or does not fit together; none when all is as the schema says.
[[nodiscard]] std::optional<Fault> check_quote(const Quote& quote);

[[nodiscard]] std::string write_quote(const Quote& quote); // JSON

} // namespace torchside::document
