#include "core/document/chart_file.hpp"

#include "core/document/figures.hpp"
#include "core/document/words.hpp"
#include "core/quantity/print.hpp"

namespace torchside::document {

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

void json_settings(const cut::Settings& s, const ChartUnits& u, JsonWriter& out) {
    const std::string length(u.length_name);
    out.key("settings").open('{');
    write_estimate("feed" + std::string(u.speed_name), s.feed, u.speed, out);
    write_estimate("arc_v", s.arc, volt, out);
    write_amount("controller_v", s.controller, volt, out);
    write_estimate("cut_height" + length, s.cut_height, u.length, out);
    write_estimate("pierce_height" + length, s.pierce_height, u.length, out);
    write_estimate("pierce_delay_s", s.pierce_delay, second, out);
    write_estimate("kerf" + length, s.kerf, u.length, out);
    write_estimate("lead_in" + length, s.lead_in, u.length, out);
    write_estimate("min_hole" + length, s.min_hole, u.length, out);
    out.key("feed_capped").flag(s.feed_capped);
    out.close();
}

void json_columns(const Chart& chart, const ChartUnits& u, JsonWriter& out) {
    const std::string length(u.length_name);
    out.key("columns").open('[');
    for (const ChartColumn& column : chart.columns) {
        out.open_line('{');
        write_amount("current_a", column.current, ampere, out);
        write_amount("nozzle_a", column.nozzle, ampere, out);
        out.key("over_rating").flag(column.over_rating);
        write_amount("clean" + length, column.limits.clean, u.length, out);
        write_amount("pierce" + length, column.limits.pierce, u.length, out);
        write_amount("sever" + length, column.limits.sever, u.length, out);
        out.close();
    }
    out.close();
}

void json_cell(const Chart& chart, std::size_t row, std::size_t column, const ChartUnits& u, JsonWriter& out) {
    const ChartCell& cell = chart.at(row, column);
    out.open('{');
    write_amount("thickness" + std::string(u.length_name), chart.rows[row], u.length, out);
    write_amount("current_a", chart.columns[column].current, ampere, out);
    out.key("verdict").text(word_of(reach_words, cell.reach));
    out.key("tested").text(word_of(tested_words, cell.tested));
    if (cell.settings) {
        out.key("basis").text(word_of(footing_words, cell.basis.feed));
        json_settings(*cell.settings, u, out);
    } else {
        out.key("basis").null();
        out.key("settings").null();
    }
    out.close();
}

} // namespace

std::string write_chart_csv(const Chart& chart, UnitSystem units) {
    const ChartUnits u = units_of(units);
    std::string out = csv_header(u);
    for (std::size_t row = 0; row < chart.rows.size(); ++row) {
        for (std::size_t column = 0; column < chart.columns.size(); ++column) {
            const ChartColumn& head = chart.columns[column];
            const ChartCell& cell = chart.at(row, column);
            out += print_fixed(chart.rows[row].in(u.length), u.plate_decimals) + ',' +
                   number_text(head.current.in(ampere)) + ',' +
                   (head.nozzle ? number_text(head.nozzle->in(ampere)) : "") + ',';
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

std::string write_chart_json(const Chart& chart, UnitSystem units) {
    const ChartUnits u = units_of(units);
    JsonWriter out;
    out.open('{');
    out.key("material").text(word_of(metal_words, chart.metal));
    json_columns(chart, u, out);
    out.key("cells").open('[');
    for (std::size_t row = 0; row < chart.rows.size(); ++row) {
        for (std::size_t column = 0; column < chart.columns.size(); ++column) {
            json_cell(chart, row, column, u, out);
        }
    }
    out.close();
    out.close();
    return out.take();
}

} // namespace torchside::document
