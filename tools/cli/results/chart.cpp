#include "tools/cli/results/chart.hpp"

#include "core/codec/decimal.hpp"
#include "core/quantity/print.hpp"
#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

// The units a chart is written in: names for the keys, decimals for the spreadsheet.
struct ChartUnits {
    Unit<LengthKind> length;
    std::string_view length_name;
    int length_decimals;
    int plate_decimals; // gauges are told apart by a ten-thousandth of an inch
    Unit<SpeedKind> speed;
    std::string_view speed_name;
    UnitSystem system;
};

ChartUnits units_of(UnitSystem system) {
    return system == UnitSystem::inch ? ChartUnits{inch, "_in", 3, 4, in_min, "_in_min", UnitSystem::inch}
                                      : ChartUnits{mm, "_mm", 2, 2, mm_min, "_mm_min", UnitSystem::metric};
}

std::string csv_header(const ChartUnits& u) {
    const std::string length(u.length_name);
    const std::string speed(u.speed_name);
    return "thickness" + length + ",current_a,nozzle_a,verdict,tested,basis,feed" + speed + ",feed_low" + speed +
           ",feed_high" + speed + ",arc_v,controller_v,cut_height" + length + ",pierce_height" + length +
           ",pierce_delay_s,kerf" + length + ",lead_in" + length + ",min_hole" + length + ",note\n";
}

// For who looks at a row's figures alone.
std::string_view note_of(cut::Reach reach) {
    constexpr std::string_view notes[] = {"", "no clean cut from a pierce: start at an edge",
                                          "no clean cut: severs rough", "out of reach"};
    return notes[static_cast<std::size_t>(reach)];
}

std::string csv_settings(const cut::Settings& s, Speed fastest, const ChartUnits& u) {
    const int decimals = u.system == UnitSystem::inch ? 1 : 0;
    const auto speed = [&](Speed v) { return ',' + print_fixed(v.in(u.speed), decimals); };
    const auto length = [&](Length l) { return ',' + print_fixed(l.in(u.length), u.length_decimals); };
    return speed(to_dial(s.feed.value, fastest, u.system)) + speed(s.feed.low) + speed(s.feed.high) + ',' +
           print_fixed(s.arc.value.in(volt), 0) + ',' + print_fixed(s.controller.in(volt), 2) +
           length(s.cut_height.value) + length(s.pierce_height.value) + ',' +
           (s.pierce_delay ? print_fixed(s.pierce_delay->value.in(second), 2) : "") + length(s.kerf.value) +
           length(s.lead_in.value) + length(s.min_hole.value);
}

Json settings_json(const cut::Settings& s, const ChartUnits& u) {
    const std::string length(u.length_name);
    return {{"feed" + std::string(u.speed_name), figure(s.feed, u.speed)},
            {"arc_v", figure(s.arc, volt)},
            {"controller_v", amount(s.controller, volt)},
            {"cut_height" + length, figure(s.cut_height, u.length)},
            {"pierce_height" + length, figure(s.pierce_height, u.length)},
            {"pierce_delay_s", figure(s.pierce_delay, second)},
            {"kerf" + length, figure(s.kerf, u.length)},
            {"lead_in" + length, figure(s.lead_in, u.length)},
            {"min_hole" + length, figure(s.min_hole, u.length)},
            {"feed_capped", s.feed_capped}};
}

Json column_json(const ChartColumn& column, const ChartUnits& u) {
    const std::string length(u.length_name);
    return {{"current_a", amount(column.current, ampere)},
            {"nozzle_a", amount(column.nozzle, ampere)},
            {"over_rating", column.over_rating},
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
                out += std::string(11, ',');
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
