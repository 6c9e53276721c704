#include "web/screens/tables.hpp"

#include "core/codec/csv.hpp"
#include "core/codec/decimal.hpp"
#include "core/price/money.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/print_cell.hpp"
#include "core/quote/date.hpp"
#include "core/stock/properties.hpp"
#include "core/store/log_table.hpp"
#include "generated/words/change.hpp"
#include "generated/words/common.hpp"
#include "generated/words/cost.hpp"
#include "generated/words/done.hpp"
#include "generated/words/log.hpp"
#include "generated/words/place.hpp"
#include "generated/words/quote_screen.hpp"
#include "generated/words/rows.hpp"
#include "generated/words/sheet.hpp"
#include "generated/words/terms.hpp"
#include "generated/words/title.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF"; // tells a spreadsheet that this is UTF-8

constexpr Word reaches[] = {words::rows::clean, words::rows::edge, words::rows::rough, words::rows::none}; // by Reach

struct TableKind {
    const char* id;
    const char* file;
    Word name;
};
constexpr TableKind kinds[] = {{"table/log", "torchside-log.csv", words::rows::save_log},
                               {"table/chart", "torchside-chart.csv", words::rows::save_chart},
                               {"table/jobs", "torchside-jobs.csv", words::rows::save_jobs}};

std::string_view unit_of(Measure measure, const App& app) {
    switch (measure) {
    case Measure::feed:
        return app.metric() ? "mm/min" : "in/min";
    case Measure::volts:
        return "V";
    case Measure::duration:
        return "s";
    case Measure::pressure:
        return app.metric() ? "bar" : "psi";
    case Measure::length:
    case Measure::least_hole:
        break;
    }
    return app.metric() ? "mm" : "in";
}

std::string figure(double value, int decimals) {
    return print_plain(value, decimals);
}

void chart_heads(const App& app, codec::CsvWriter& out) {
    const auto head = [&](Word name, std::string_view unit) { out.text(document::column_head(app.word(name), unit)); };
    head(words::title::metal, "");
    head(words::rows::plate, app.metric() ? "mm" : "in");
    head(words::title::current, "A");
    head(words::log::nozzle, "A");
    head(words::rows::reach, "");
    for (const Figure& f : figures()) {
        head(f.name, unit_of(f.measure, app));
        if (f.measure == Measure::feed) {
            head(words::rows::feed_low, unit_of(f.measure, app));
            head(words::rows::feed_high, unit_of(f.measure, app));
        }
    }
    head(words::rows::controller, "V");
    out.end_row();
}

void chart_figures(const App& app, const Chart& chart, const cut::Settings& s, codec::CsvWriter& out) {
    const UnitSystem system = app.units().system;
    for (const Figure& f : figures()) {
        const auto e = f.of(s, system);
        const int decimals = file_decimals(f.measure, system);
        if (f.measure == Measure::feed && e) {
            const Speed dial = to_dial(s.feed.value, chart.fastest, app.units());
            out.figure(figure(dial.in(app.metric() ? mm_min : in_min), decimals));
            out.figure(figure(e->low, decimals));
            out.figure(figure(e->high, decimals));
        } else {
            out.figure(e ? figure(e->value, decimals) : std::string());
        }
    }
    out.figure(figure(s.controller.in(volt), 1));
}

/// One row of the jobs' table; a job that is open and a quote that went out have some cells each.
struct JobRow {
    std::string part{}, metal{}, thickness{}, current{}, pieces{}, minutes{}, each{}, total{}, currency{}, number{},
        revision{}, issued{}, valid{}, sealed{};
};

void job_row(const JobRow& row, codec::CsvWriter& out) {
    out.text(row.part);
    out.text(row.metal);
    for (const std::string* digits : {&row.thickness, &row.current, &row.pieces, &row.minutes, &row.each, &row.total}) {
        out.figure(*digits);
    }
    for (const std::string* words : {&row.currency, &row.number, &row.revision, &row.issued, &row.valid, &row.sealed}) {
        out.text(*words);
    }
    out.end_row();
}

void job_heads(const App& app, codec::CsvWriter& out) {
    const std::string_view length = app.metric() ? "mm" : "in";
    const struct {
        Word name;
        std::string_view unit;
    } heads[] = {{words::terms::part, ""},         {words::title::metal, ""},    {words::title::thickness, length},
                 {words::title::current, "A"},     {words::sheet::how_many, ""}, {words::sheet::time_each, "min"},
                 {words::quote_screen::price, ""}, {words::cost::to_pay, ""},    {words::rows::currency, ""},
                 {words::terms::number, ""},       {words::rows::revision, ""},  {words::rows::issued, ""},
                 {words::rows::valid, ""},         {words::rows::sealed, ""}};
    for (const auto& head : heads) {
        out.text(document::column_head(app.word(head.name), head.unit));
    }
    out.end_row();
}

JobRow open_job(const App& app) {
    const Job& job = app.book().job;
    JobRow row;
    row.part = job.name;
    row.metal = app.say(stock::name(job.material));
    row.thickness = print_cell(job.thickness.in(mm), FieldUnit::mm, app.units());
    row.current = print_cell(job.current.in(ampere), FieldUnit::ampere, app.units());
    row.pieces = std::to_string(job.quantity);
    if (const auto& time = app.worksheet().time) {
        row.minutes = figure(time->total.value.in(minute), 2);
    }
    if (const auto& price = app.worksheet().price) {
        row.each = figure(price->price_each.value, price->decimals);
        row.total = price::print(price->to_pay, price->decimals);
        row.currency = app.book().shop.rates.currency;
    }
    row.number = job.quote.number;
    return row;
}

JobRow handed_out(const App& app, const price::IssuedQuote& quote) {
    JobRow row;
    const int places = price::decimals(quote.currency);
    row.part = quote.part_name;
    row.total = price::print(price::money(quote.to_pay, places), places);
    row.currency = quote.currency;
    row.number = quote.number;
    row.revision = document::revision_letters(quote.revision);
    row.issued = document::iso_day(quote.issued_day);
    row.valid = document::iso_day(quote.issued_day + quote.valid_days);
    row.sealed = app.word(quote.seal.empty() ? words::rows::no : words::rows::yes);
    return row;
}

} // namespace

std::string chart_table(App& app) {
    const Chart& chart = app.chart();
    codec::CsvWriter out;
    chart_heads(app, out);
    for (std::size_t r = 0; r < chart.rows.size(); ++r) {
        for (std::size_t c = 0; c < chart.columns.size(); ++c) {
            const ChartColumn& column = chart.columns[c];
            const ChartCell& cell = chart.at(r, c);
            out.text(app.say(stock::name(chart.metal)));
            out.figure(print_cell(chart.rows[r].in(mm), FieldUnit::mm, app.units()));
            out.figure(codec::decimal_text(column.current.in(ampere)));
            out.figure(column.nozzle ? codec::decimal_text(column.nozzle->in(ampere)) : "");
            out.text(app.word(reaches[static_cast<std::size_t>(cell.reach)]));
            if (cell.settings) {
                chart_figures(app, chart, *cell.settings, out);
            } else {
                for (std::size_t i = 0; i < figures().size() + 3; ++i) { // the feed's two ends, and the controller
                    out.figure("");
                }
            }
            out.end_row();
        }
    }
    return out.table();
}

std::string jobs_table(App& app) {
    codec::CsvWriter out;
    job_heads(app, out);
    job_row(open_job(app), out);
    const auto& issued = app.book().shop.issued;
    for (auto quote = issued.rbegin(); quote != issued.rend(); ++quote) {
        job_row(handed_out(app, *quote), out);
    }
    return out.table();
}

Word table_name(Table table) {
    return kinds[static_cast<int>(table)].name;
}

void save_table(App& app, Table table) {
    const TableKind& kind = kinds[static_cast<int>(table)];
    std::string text(byte_order_mark);
    text += table == Table::log     ? document::log_csv(app.book(), app.speech())
            : table == Table::chart ? chart_table(app)
                                    : jobs_table(app);
    platform::download(kind.file, "text/csv;charset=utf-8", text);
    app.say(app.say(words::done::Saved{.file = std::string_view(kind.file)}));
}

void table_row(Body& body, Table table) {
    const TableKind& kind = kinds[static_cast<int>(table)];
    if (body.row(kind.id, kind.name, words::rows::csv_about, Mark::chart)) {
        save_table(body.app, table);
    }
}

std::string cut_line(const App& app, const tune::TestCut& cut) {
    const Units units = app.units();
    std::string out = show_plate(cut.thickness, cut.material, units).whole() + ", " + show(cut.current, units).whole();
    if (cut.feed) {
        out += ", " + print(*cut.feed, units).text();
    }
    if (cut.verdict) {
        constexpr Word names[] = {words::log::clean, words::log::too_fast, words::log::too_slow}; // by Verdict
        out += ", ";
        out += app.word(names[static_cast<std::size_t>(*cut.verdict)]);
    }
    return out;
}

void paste_into_log(App& app, std::string_view text) {
    if (app.page() != Page::tune || panel_on_show(app) != "log") {
        if (app.open_panel() != "log") {
            app.say(app.word(words::rows::paste_there), Sign::caution);
            return;
        }
    }
    auto pasted = document::paste_cuts(app.book(), text, app.speech());
    if (!pasted.ok()) {
        app.say(app.say(pasted.fault().told()), Sign::caution);
        return;
    }
    const int cuts = pasted.value().cuts;
    const std::string last = cut_line(app, pasted.value().book.shop.tests.back());
    if (app.log(std::move(pasted.value().book),
                app.say(words::common::Logged{.what = Text(words::common::Cuts{.count = cuts})}))) {
        app.say(app.say(words::rows::Took{.count = cuts, .last = std::string_view(last)}));
    }
}

} // namespace torchside::web
