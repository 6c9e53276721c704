#include "tools/cli/results/chart.hpp"

#include <iterator>

#include "core/codec/decimal.hpp"
#include "core/quantity/print.hpp"
#include "core/worksheet/figures.hpp"
#include "tools/cli/results/settings.hpp"
#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

// The units a chart is written in: names for the keys, decimals for the spreadsheet.
struct ChartUnits {
    Unit<LengthKind> length;
    std::string_view length_name;
    int plate_decimals; // gauges are told apart by a ten-thousandth of an inch
    UnitSystem system;
};

ChartUnits units_of(UnitSystem system) {
    return system == UnitSystem::inch ? ChartUnits{inch, "_in", 4, UnitSystem::inch}
                                      : ChartUnits{mm, "_mm", 2, UnitSystem::metric};
}

// A spreadsheet has the feed's band too: that is where shops differ most.
constexpr std::string_view band_ends[] = {"feed_low", "feed_high"};

std::string csv_header(const ChartUnits& u) {
    std::string out = "thickness" + std::string(u.length_name) + ",current_a,nozzle_a,verdict,tested,basis";
    for (const Figure& figure : figures()) {
        const std::string key = file_key(figure, u.system);
        out += ',' + key;
        if (figure.measure == Measure::feed) {
            for (const std::string_view end : band_ends) {
                out += ',' + std::string(end) + key.substr(figure.stem.size());
            }
        }
    }
    return out + ",controller_v,note\n";
}

// For who looks at a row's figures alone.
std::string_view note_of(cut::Reach reach) {
    constexpr std::string_view notes[] = {"", "no clean cut from a pierce: start at an edge",
                                          "no clean cut: severs rough", "out of reach"};
    return notes[static_cast<std::size_t>(reach)];
}

std::string csv_settings(const cut::Settings& s, Speed fastest, const ChartUnits& u) {
    std::string out;
    for (const Figure& figure : figures()) {
        const auto e = figure.of(s, u.system);
        const auto put = [&](double value) {
            out += ',' + print_fixed(value, file_decimals(figure.measure, u.system));
        };
        if (!e) {
            out += ',';
        } else if (figure.measure == Measure::feed) {
            const Speed dial = to_dial(s.feed.value, fastest, u.system);
            put(dial.in(u.system == UnitSystem::metric ? mm_min : in_min));
            put(e->low);
            put(e->high);
        } else {
            put(e->value);
        }
    }
    return out + ',' + print_fixed(s.controller.in(volt), 2);
}

Json settings_json(const cut::Settings& s, const ChartUnits& u) {
    Json out = figures_json(s, u.system);
    out["controller_v"] = amount(s.controller, volt);
    out["feed_capped"] = s.feed_capped;
    return out;
}

Json column_json(const ChartColumn& column, const ChartUnits& u) {
    const std::string length(u.length_name);
    return {{"current_a", amount(column.current, ampere)},
            {"nozzle_a", amount(column.nozzle, ampere)},
            {"over_rating", column.over_rating},
            {"recommended" + length, amount(column.limits.recommended, u.length)},
            {"clean" + length, amount(column.limits.clean, u.length)},
            {"pierce" + length, amount(column.limits.pierce, u.length)},
            {"sever" + length, amount(column.limits.sever, u.length)}};
}

Json cell_json(const Chart& chart, std::size_t row, std::size_t column, const ChartUnits& u) {
    const ChartCell& cell = chart.at(row, column);
    return {{"thickness" + std::string(u.length_name), amount(chart.rows[row], u.length)},
            {"current_a", amount(chart.columns[column].current, ampere)},
            {"verdict", word_of(reach_words, cell.reach)},
            {"tested", word_of(tested_words, cell.tested)},
            {"basis", cell.settings ? Json(word_of(footing_words, cell.basis.feed)) : Json()},
            {"settings", cell.settings ? settings_json(*cell.settings, u) : Json()}};
}

} // namespace

std::string chart_csv(const Chart& chart, UnitSystem units) {
    const ChartUnits u = units_of(units);
    std::string out = csv_header(u);
    for (std::size_t row = 0; row < chart.rows.size(); ++row) {
        for (std::size_t column = 0; column < chart.columns.size(); ++column) {
            const ChartColumn& head = chart.columns[column];
            const ChartCell& cell = chart.at(row, column);
            out += print_fixed(chart.rows[row].in(u.length), u.plate_decimals) + ',' +
                   codec::decimal_text(head.current.in(ampere)) + ',' +
                   (head.nozzle ? codec::decimal_text(head.nozzle->in(ampere)) : "") + ',';
            out += word_of(reach_words, cell.reach);
            out += ',';
            out += word_of(tested_words, cell.tested);
            out += ',';
            if (cell.settings) {
                out += word_of(footing_words, cell.basis.feed);
                out += csv_settings(*cell.settings, chart.fastest, u);
            } else {
                out += std::string(figures().size() + std::size(band_ends) + 1, ',');
            }
            out += ',';
            out += note_of(cell.reach);
            out += '\n';
        }
    }
    return out;
}

Json chart_json(const Chart& chart, UnitSystem units) {
    const ChartUnits u = units_of(units);
    Json cells = Json::array();
    for (std::size_t row = 0; row < chart.rows.size(); ++row) {
        for (std::size_t column = 0; column < chart.columns.size(); ++column) {
            cells.push_back(cell_json(chart, row, column, u));
        }
    }
    return {{"material", word_of(document::metal_words, chart.metal)},
            {"columns", list_of(chart.columns, [&](const ChartColumn& column) { return column_json(column, u); })},
            {"cells", std::move(cells)}};
}

} // namespace torchside::cli
