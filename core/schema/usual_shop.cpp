#include "core/schema/usual_shop.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "core/codec/decimal.hpp"
#include "core/schema/intent.hpp"

namespace torchside::document {
namespace {

// Text, and so in the later part of the page's program.
constexpr std::string_view region_rows =
#include "generated/regions.inc"
    ;

struct Region {
    std::string_view code, language, country, currency, units, line_v;
};

/// What stands before the next `end`; it and `end` are taken off.
std::string_view cell(std::string_view& text, char end) {
    const std::string_view found = text.substr(0, text.find(end));
    text.remove_prefix(std::min(found.size() + 1, text.size()));
    return found;
}

Region region_of(std::string_view tag) {
    const std::size_t dash = tag.rfind('-');
    const std::string_view code = dash == std::string_view::npos ? std::string_view() : tag.substr(dash + 1);
    Region region;
    for (std::string_view rows = region_rows; !rows.empty();) {
        std::string_view row = cell(rows, '\n');
        for (std::string_view* each :
             {&region.code, &region.language, &region.country, &region.currency, &region.units, &region.line_v}) {
            *each = cell(row, ';');
        }
        const bool here = code.empty() ? region.language == tag && !tag.empty() : region.code == code;
        if (here) {
            break;
        }
    }
    return region; // the last row is any other
}

} // namespace

Workbook usual_shop(const Workbook& workbook, std::string_view language) {
    const Workbook fresh;
    const Region region = region_of(language);
    Workbook next = workbook;
    const auto take = [&](Outcome<Workbook> changed) {
        if (changed.ok()) {
            next = std::move(changed.value());
        }
    };
    const Voltage line{codec::read_decimal(region.line_v), volt};
    take(use_supply(next, supply::usual_supplies(line).front()));
    take(set(next, "shop.country", region.country));
    if (next.shop.rates.currency == fresh.shop.rates.currency) {
        take(set(next, "shop.rates.currency", region.currency));
    }
    if (next.shop.display.units == fresh.shop.display.units) {
        take(set(next, "shop.display.units", region.units));
    }
    if (next.shop.display.units == UnitSystem::inch) {
        next.shop.air.compressor = Flow{usual_flows_cfm[0], cfm};
        next.shop.air.receiver = Volume{usual_tanks_gal[1], us_gallon};
        // Common practice, no source: a full sheet there is 4 by 8 feet.
        next.job.stock_sheet.width = Length{8, foot};
        next.job.stock_sheet.height = Length{4, foot};
    }
    return next;
}

} // namespace torchside::document
