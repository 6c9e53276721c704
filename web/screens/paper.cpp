#include "web/screens/paper.hpp"

#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/quote/html.hpp"
#include "core/stock/properties.hpp"
#include "core/supply/low_voltage.hpp"
#include "generated/words/chart.hpp"
#include "generated/words/common.hpp"
#include "generated/words/figure_about.hpp"
#include "generated/words/sheet.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/cut/chart_marks.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web::prints {
namespace {

using document::element;
using document::escaped;

void head(const App& app, const std::string& title, const std::string& about, std::string& out) {
    const std::string& shop = app.book().shop.name;
    element(out, "h1", "", title + (shop.empty() ? "" : " · " + shop));
    element(out, "p", "which", app.say(document::day_words(platform::today())) + " · " + about);
    element(out, "p", "stop", app.book().shop.example ? app.word(words::sheet::example) : std::string_view());
    element(out, "p", "stop", draft_words(app)); // what is taped to the table says so too
}

// --- the chart

constexpr const char* basis_marks[] = {"mark-physics", "mark-practice", "mark-cuts"};    // by DominantBasis
constexpr const char* tested_marks[] = {"", " mark-near", " mark-here"};                 // by Tested
constexpr Label reach_notes[] = {{}, words::sheet::edge_start, words::sheet::rough, {}}; // by Reach

void chart_cell(const App& app, const ChartCell& cell, std::string& out) {
    if (!cell.settings) {
        out += "<td>—</td>";
        return;
    }
    const Units units = app.units();
    const cut::Settings& s = *cell.settings;
    const bool clean = cell.reach == cut::Reach::clean;
    out += std::string("<td class=\"") + basis_marks[static_cast<int>(cell.basis.feed)] +
           tested_marks[static_cast<int>(cell.tested)] + (clean ? "" : " mark-unclean") + "\">";
    element(out, "b", "", show_feed(app, s.feed.value).number);
    element(out, "i", "", app.word(reach_notes[static_cast<std::size_t>(cell.reach)]));
    const std::string delay =
        s.pierce_delay ? show(s.pierce_delay->value, units).whole() : app.say(words::sheet::no_pierce);
    element(out, "span", "",
            show(s.arc.value, units).whole() + " · " + delay + " · " + show(s.kerf.value, units).number);
    out += "</td>";
}

void column_head(const App& app, const ChartColumn& column, std::string& out) {
    out += "<th scope=\"col\">" + escaped(show(column.current, app.units()).whole());
    const bool none = !column.nozzle || column.over_rating;
    element(out, "span", "",
            none ? app.say(words::sheet::no_nozzle) : app.say(words::common::Nozzle{.amps = *column.nozzle}));
    out += "</th>";
}

// --- the card

struct Row {
    Word name;
    std::string value;
};

void rows(const App& app, Word title, const std::vector<Row>& all, std::string& out) {
    out += "<table><caption>" + escaped(app.word(title)) + "</caption>";
    for (const auto& [name, value] : all) {
        if (!value.empty()) {
            out += "<tr><th scope=\"row\">" + escaped(app.word(name)) + "</th><td>" + escaped(value) + "</td></tr>";
        }
    }
    out += "</table>";
}

void dial_in(const App& app, const cut::Settings& s, std::string& out) {
    const Shop& shop = app.book().shop;
    const Job& job = app.book().job;
    std::vector<Row> all;
    for (const Figure& figure : figures()) {
        const bool volts = figure.measure == Measure::volts;
        all.push_back({volts ? words::sheet::volts_torch : figure.name, show(app, figure, s).whole()});
        if (volts && shop.height_control.divider_ratio > 1) {
            all.push_back({words::sheet::volts_controller, show(s.controller, app.units()).whole()});
        }
        if (figure.key == "pierce_delay" && s.dwell) {
            all.push_back({words::figure_about::dwell, show(*s.dwell, app.units()).whole()});
        }
        if (figure.key == "cut_height" && job.torch != TorchHold::table) {
            all.pop_back(); // the hand's own
        }
    }
    rows(app, words::sheet::dial_in, all, out);
}

void what_it_makes(const App& app, std::string& out) {
    const Worksheet& worksheet = app.worksheet();
    const Job& job = app.book().job;
    const Units units = app.units();
    std::string size;
    if (worksheet.part && !worksheet.part->outline.contours.empty()) {
        size = app.say(words::common::By{.across = Length{worksheet.part->high.x - worksheet.part->low.x, mm},
                                         .up = Length{worksheet.part->high.y - worksheet.part->low.y, mm}});
    }
    const auto& time = worksheet.time;
    rows(app, words::sheet::part,
         {{words::sheet::name, job.name},
          {words::sheet::size, size},
          {words::sheet::how_many, std::to_string(job.quantity)},
          {words::sheet::mass_each, worksheet.mass ? print(*worksheet.mass, units).text() : ""},
          {words::sheet::time_each, time ? print(time->total.value, units).text() : ""},
          {words::sheet::time_all, time ? print(time->batch, units).text() : ""},
          {words::sheet::starts_each, time ? std::to_string(time->starts) : ""}},
         out);
}

void mind(const App& app, std::string& out) {
    const safety::Report& safety = app.worksheet().safety;
    element(out, "h2", "", app.word(words::sheet::watch));
    out += "<ul>";
    element(out, "li", "", app.say(safety.shade_text));
    for (const auto& list : {verdicts(app), part_verdicts(app)}) {
        for (const Verdict& v : list) {
            if (v.sign != Sign::holds && v.code != "safety") {
                element(out, "li", v.sign == Sign::stop ? "stop" : "",
                        std::string(v.sign == Sign::stop ? "■ " : "▲ ") + v.sentence +
                            (v.remedy.empty() ? "" : ". " + v.remedy));
            }
        }
    }
    out += "</ul>";
}

} // namespace

std::string chart(App& app) {
    const Chart& chart = app.chart();
    const Shop& shop = app.book().shop;
    const Machine machine = supply::machine_on(shop.machine, shop.circuit.line);
    const bool metric = app.metric();
    std::string out = "<section class=\"chart\">";
    head(app, app.say(words::sheet::EveryPlate{.metal = stock::name(chart.metal)}),
         app.say(words::sheet::Machine{.least = show(machine.min_current, app.units()).number,
                                       .most = machine.max_current}),
         out);
    element(out, "p", "", app.word(metric ? words::sheet::cells_metric : words::sheet::cells_inch));
    out += "<table><thead><tr><th scope=\"col\">" + escaped(app.word(words::chart::plate)) + "</th>";
    for (const ChartColumn& column : chart.columns) {
        column_head(app, column, out);
    }
    out += "</tr></thead><tbody>";
    for (std::size_t r = 0; r < chart.rows.size(); ++r) {
        out +=
            "<tr><th scope=\"row\">" + escaped(show_plate(chart.rows[r], chart.metal, app.units()).whole()) + "</th>";
        for (std::size_t c = 0; c < chart.columns.size(); ++c) {
            chart_cell(app, chart.at(r, c), out);
        }
        out += "</tr>";
    }
    out += "</tbody></table>";
    element(out, "p", "", app.say(words::sheet::Key{.cuts = whose(app).cuts, .here = whose(app).here}));
    return out + "</section>";
}

std::string card(const App& app) {
    const Job& job = app.book().job;
    const Shop& shop = app.book().shop;
    const Worksheet& worksheet = app.worksheet();
    std::string out = "<section class=\"card\">";
    std::string plate = app.say(stock::name(job.material)) + ", " +
                        show_plate(job.thickness, job.material, app.units()).whole() + ", " +
                        show(job.current, app.units()).whole();
    if (const Nozzle* nozzle = cut::nozzle_for(shop.machine.nozzles, job.current)) {
        plate += ", " + app.say(words::common::Nozzle{.amps = nozzle->rated});
    }
    head(app, app.say(words::sheet::card), plate, out);
    if (worksheet.settings) {
        dial_in(app, *worksheet.settings, out);
    } else {
        element(out, "p", "stop", "■ " + app.say(words::sheet::NoSettings{.why = worksheet.capacity.reason}));
    }
    what_it_makes(app, out);
    if (worksheet.part && !worksheet.part->outline.contours.empty()) {
        const document::Simplified part = document::simplified(worksheet.part->outline);
        out += "<figure>" + document::outline_svg(part.outline, part.length, part.width, app.speech()) + "</figure>";
    }
    mind(app, out);
    element(out, "p", "", app.word(words::sheet::estimates));
    return out + "</section>";
}

} // namespace torchside::web::prints
