#include "web/screens/paper.hpp"

#include "core/quantity/print.hpp"
#include "core/quote/date.hpp"
#include "core/quote/html.hpp"
#include "core/stock/properties.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/cut/chart_marks.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web::prints {
namespace {

using document::element;
using document::escaped;

void head(const App& app, std::string_view title, std::string_view about, std::string& out) {
    const std::string& shop = app.book().shop.name;
    element(out, "h1", "", std::string(title) + (shop.empty() ? "" : " · " + shop));
    element(out, "p", "which", document::print_day(platform::today()) + " · " + std::string(about));
    element(out, "p", "stop", app.book().shop.example ? "Example shop: its figures are not yours." : "");
    element(out, "p", "stop", draft_words(app)); // what is taped to the table says so too
}

// --- the chart

constexpr const char* basis_marks[] = {"mark-physics", "mark-practice", "mark-cuts"}; // by DominantBasis
constexpr const char* tested_marks[] = {"", " mark-near", " mark-here"};              // by Tested
constexpr const char* reach_notes[] = {"", "edge start", "rough, no clean cut", ""};  // by Reach

void chart_cell(const App& app, const ChartCell& cell, std::string& out) {
    if (!cell.settings) {
        out += "<td>—</td>";
        return;
    }
    const UnitSystem units = app.book().shop.display.units;
    const cut::Settings& s = *cell.settings;
    const bool clean = cell.reach == cut::Reach::clean;
    out += std::string("<td class=\"") + basis_marks[static_cast<int>(cell.basis.feed)] +
           tested_marks[static_cast<int>(cell.tested)] + (clean ? "" : " mark-unclean") + "\">";
    element(out, "b", "", show_feed(s.feed.value, app.book().shop).number);
    const std::string delay = s.pierce_delay ? show(s.pierce_delay->value).whole() : "no pierce";
    element(out, "span", "", show(s.arc.value).whole() + " · " + delay + " · " + show(s.kerf.value, units).number);
    element(out, "i", "", reach_notes[static_cast<std::size_t>(cell.reach)]);
    out += "</td>";
}

void column_head(const ChartColumn& column, std::string& out) {
    out += "<th scope=\"col\">" + escaped(show(column.current).whole());
    const bool none = !column.nozzle || column.over_rating;
    element(out, "span", "", none ? "no nozzle rated for it" : show(*column.nozzle).whole() + " nozzle");
    out += "</th>";
}

// --- the card

void rows(std::string_view title, const std::vector<std::pair<std::string, std::string>>& all, std::string& out) {
    out += "<table><caption>" + escaped(title) + "</caption>";
    for (const auto& [name, value] : all) {
        if (!value.empty()) {
            out += "<tr><th scope=\"row\">" + escaped(name) + "</th><td>" + escaped(value) + "</td></tr>";
        }
    }
    out += "</table>";
}

void dial_in(const App& app, const cut::Settings& s, std::string& out) {
    const Shop& shop = app.book().shop;
    const Job& job = app.book().job;
    std::vector<std::pair<std::string, std::string>> all;
    for (const Figure& figure : figures()) {
        const bool volts = figure.measure == Measure::volts;
        all.emplace_back(volts ? "Arc volts at the torch" : app.say(figure.name), show(figure, s, shop).whole());
        if (volts && shop.height_control.divider_ratio > 1) {
            all.emplace_back("Arc volts at the controller", show(s.controller).whole());
        }
        if (figure.key == "cut_height" && job.torch != TorchHold::table) {
            all.pop_back(); // the hand's own
        }
    }
    rows("Dial in", all, out);
}

void what_it_makes(const App& app, std::string& out) {
    const Worksheet& sheet = app.worksheet();
    const Job& job = app.book().job;
    const UnitSystem units = app.book().shop.display.units;
    std::string size;
    if (sheet.part && !sheet.part->outline.contours.empty()) {
        size = show_text(Length{sheet.part->high.x - sheet.part->low.x, mm}, units) + " × " +
               show_text(Length{sheet.part->high.y - sheet.part->low.y, mm}, units);
    }
    const auto& time = sheet.time;
    rows("The part",
         {{"Called", job.name},
          {"Size", size},
          {"How many", std::to_string(job.quantity)},
          {"Mass, each", sheet.mass ? print(*sheet.mass, units).text() : ""},
          {"Time, each", time ? print(time->total.value).text() : ""},
          {"Time, all", time ? print(time->batch).text() : ""},
          {"Arc starts, each", time ? std::to_string(time->starts) : ""}},
         out);
}

void mind(const App& app, std::string& out) {
    const safety::Report& safety = app.worksheet().safety;
    element(out, "h2", "", "Mind");
    out += "<ul>";
    element(out, "li", "", app.say(safety.shade_text));
    for (const auto& list : {verdicts(app), part_verdicts(app)}) {
        for (const Verdict& v : list) {
            if (v.sign != Sign::holds && v.code != "safety") {
                element(out, "li", v.sign == Sign::stop ? "stop" : "",
                        std::string(v.sign == Sign::stop ? "■ " : "▲ ") + v.sentence +
                            (v.way_out.empty() ? "" : ". " + v.way_out));
            }
        }
    }
    out += "</ul>";
}

} // namespace

std::string chart(App& app) {
    const Chart& chart = app.chart();
    const Shop& shop = app.book().shop;
    const bool metric = app.metric();
    std::string out = "<section class=\"chart\">";
    head(app, app.say(stock::name(chart.metal)) + ", every plate",
         "machine " + show(shop.machine.min_current).number + " to " + show(shop.machine.max_current).whole(), out);
    element(out, "p", "",
            std::string("In each cell the feed in ") + (metric ? "mm/min" : "in/min") +
                ", below it arc volts at the torch · pierce delay · kerf in " + (metric ? "mm." : "in."));
    out += "<table><thead><tr><th scope=\"col\">Plate</th>";
    for (const ChartColumn& column : chart.columns) {
        column_head(column, out);
    }
    out += "</tr></thead><tbody>";
    for (std::size_t r = 0; r < chart.rows.size(); ++r) {
        out += "<tr><th scope=\"row\">" + escaped(show_plate(chart.rows[r], chart.metal, shop.display.units).whole()) +
               "</th>";
        for (std::size_t c = 0; c < chart.columns.size(); ++c) {
            chart_cell(app, chart.at(r, c), out);
        }
        out += "</tr>";
    }
    out += "</tbody></table>";
    element(out, "p", "",
            std::string("Double line, with its reason: no clean cut from a pierce. Dash: out of reach. Square, what "
                        "the feed rests on. ") +
                "Empty: physics. Half full: shop practice. Full: " + std::string(whose(app).cuts) +
                ". Circle: " + whose(app).here +
                ". Dot: near one of them. "
                "The machine's manual comes first.");
    return out + "</section>";
}

std::string card(const App& app) {
    const Job& job = app.book().job;
    const Shop& shop = app.book().shop;
    const Worksheet& sheet = app.worksheet();
    std::string out = "<section class=\"card\">";
    std::string plate = app.say(stock::name(job.material)) + ", " +
                        show_plate(job.thickness, job.material, shop.display.units).whole() + ", " +
                        show(job.current).whole();
    if (const Nozzle* nozzle = cut::nozzle_for(shop.machine.nozzles, job.current)) {
        plate += ", " + show(nozzle->rated).whole() + " nozzle";
    }
    head(app, "Job card", plate, out);
    if (sheet.settings) {
        dial_in(app, *sheet.settings, out);
    } else {
        element(out, "p", "stop", "■ No settings for this plate. " + app.say(sheet.capacity.reason));
    }
    what_it_makes(app, out);
    if (sheet.part && !sheet.part->outline.contours.empty()) {
        const document::Simplified part = document::simplified(sheet.part->outline);
        out +=
            "<figure>" + document::outline_svg(part.outline, part.length, part.width, shop.display.units) + "</figure>";
    }
    mind(app, out);
    element(out, "p", "", "Estimates: a test cut and the machine's manual come first.");
    return out + "</section>";
}

} // namespace torchside::web::prints
