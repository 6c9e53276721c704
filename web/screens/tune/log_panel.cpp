// The log: every test cut, newest first, what the learning makes of it, and a way to take it out.
#include <vector>

#include "core/quantity/print.hpp"
#include "core/schema/schema.hpp"
#include "core/stock/properties.hpp"
#include "core/store/log_table.hpp"
#include "generated/words/common.hpp"
#include "generated/words/log.hpp"
#include "generated/words/rows.hpp"
#include "generated/words/title.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tables.hpp"
#include "web/screens/tune/cut_words.hpp"
#include "web/screens/tune/tune_picture.hpp"

namespace torchside::web {
namespace {

std::string cut_words(const App& app, const tune::TestCut& cut) {
    const Units units = app.units();
    std::string out = cut.feed ? print(*cut.feed, units).text() : app.say(words::log::no_feed);
    if (cut.verdict) {
        out += ", ";
        out += app.word(verdict_words(*cut.verdict));
    }
    return out;
}

/// With what was measured.
std::string stock_and_sizes(const App& app, const tune::TestCut& cut) {
    const Units units = app.units();
    std::string out = stock_words(app, cut);
    if (cut.kerf_top) {
        out += ", " + app.say(words::log::Kerf{.kerf = show(*cut.kerf_top, units).whole()});
    }
    if (cut.arc) {
        out += ", " + show(*cut.arc, units).whole();
    }
    return out;
}

/// Which row it is, for who does not see where a button stands.
std::string row_name(const App& app, std::size_t index) {
    return app.say(words::log::Row{.number = static_cast<int>(index) + 1,
                                   .stock = stock_and_sizes(app, app.book().shop.tests[index])});
}

/// What the row says, and below it what the learning makes of it. True when it was deleted: the list is another one now.
bool row(Body& body, std::size_t index, const tune::RowNote& remark) {
    constexpr float words_from = 32;
    constexpr float delete_width = 88;
    App& app = body.app;
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const tune::TestCut& cut = app.book().shop.tests[index];
    const std::string id = "log/" + std::to_string(index);
    const std::string what = cut_words(app, cut);
    const std::string where = stock_and_sizes(app, cut);
    const std::string note = app.say(remark.text);
    const float room = body.room() - words_from - delete_width - 8;
    const auto height_of = [&](Type type, std::string_view text) {
        return text.empty() ? 0 : pen.paragraph(type, {}, {}, text, room, false);
    };
    const float lines = height_of(Type::title, what) + height_of(Type::label, where) + height_of(Type::label, note);
    const Rect place = body.inside(std::max(ui.touch_height() + 4, 14 + lines));
    const Rect said{place.x, place.y, place.w - delete_width - 8, place.h};
    if (ui.node(id, Role::button, said, where, what, "", note)) {
        app.open(id);
    }
    if (ui.pressed(id)) {
        pen.fill(said, t.hairline);
    }
    const Point mark{place.x + 10, place.centre().y};
    if (remark.measure_again) {
        draw_sign(pen, t, Sign::caution, mark);
    } else if (cut.verdict) {
        verdict_mark(pen, t, *cut.verdict, mark);
    }
    const Colour ink = is_job_stock(app.book(), cut) ? t.ink : t.quiet;
    Point at{place.x + words_from, place.y + 6};
    at.y += pen.paragraph(Type::title, at, ink, what, room);
    at.y += pen.paragraph(Type::label, at, t.quiet, where, room);
    pen.paragraph(Type::label, at, t.caution, note, room);
    const float high = ui.glove() ? 76.0F : 48.0F;
    const Rect key{place.right() - delete_width, place.centre().y - high / 2, delete_width, high};
    pen.hline(place.x, place.right(), place.bottom(), t.hairline, 1);
    body.gap(1);
    return button(ui, id + "/out", key, ui.word(words::common::delete_row), Look::plain, Role::button, {},
                  row_name(app, index));
}

void metal_choice(Body& body, const std::string& path) {
    std::vector<const char*> keys;
    std::vector<Label> names;
    for (const Metal metal : all_metals) {
        keys.push_back(stock::key(metal).data()); // literals, and so they end
        names.emplace_back(stock::name(metal));
    }
    body.word_choice(path.c_str(), words::title::metal, keys, names, 3);
}

/// The numbers and switches of a row: those of its stock, or what was measured.
void number_fields(Body& body, const std::string& at, bool stock) {
    for (const document::LogColumn& column : document::log_columns()) {
        const std::string path = at + '.' + std::string(column.key);
        const bool of_stock = column.key == "thickness_mm" || column.key == "current_a";
        if (of_stock == stock && document::field(path)->kind != document::FieldKind::word) {
            body.field(path, column.name);
        }
    }
}

/// The ways in and out by a spreadsheet.
void spreadsheet(Body& body) {
    body.gap(10);
    if (body.row("log/paste", words::rows::paste, words::rows::order, Mark::quote)) {
        platform::paste();
    }
    if (!body.app.book().shop.tests.empty()) {
        table_row(body, Table::log);
    }
}

} // namespace

void log_panel(App& app, PanelAt at) {
    panel(app, at, "log", words::log::title, [&](Body& body) {
        const std::size_t count = app.book().shop.tests.size();
        const auto& tuning = app.tuning();
        for (std::size_t i = count; i-- > 0;) {
            const tune::RowNote note =
                tuning.ok() && i < tuning.value().notes.size() ? tuning.value().notes[i] : tune::RowNote{};
            if (row(body, i, note)) {
                app.remove("shop.tests[" + std::to_string(i) + "]", words::log::deleted);
                break;
            }
        }
        if (count == 0) {
            body.gap(14);
            body.text("log/empty", words::log::empty);
        }
        spreadsheet(body);
        others_rows(body);
        body.gap(20);
    });
}

void cut_row_panel(App& app, PanelAt of) {
    const std::size_t index = of.index();
    if (index >= app.book().shop.tests.size()) {
        log_panel(app, of);
        return;
    }
    panel(app, of, "log/row", words::log::cut, [&](Body& body) {
        constexpr const char* verdicts[] = {"too_slow", "clean", "too_fast", ""};
        constexpr Label verdict_names[] = {words::common::too_slow, words::common::clean, words::common::too_fast,
                                           Label::sign("—")};
        constexpr const char* pierces[] = {"short", "good", "long", ""};
        constexpr Label pierce_names[] = {words::log::too_short, words::log::good, words::log::too_long,
                                          Label::sign("—")};
        const std::string at = "shop.tests[" + std::to_string(index) + "]";
        body.gap(10);
        body.text("log/row/stock", stock_and_sizes(app, app.book().shop.tests[index]));
        const auto& tuning = app.tuning();
        if (tuning.ok() && tuning.value().notes[index].text != Word{}) {
            body.gap(4);
            body.words("log/row/note", Type::label, app.say(tuning.value().notes[index].text),
                       body.ui().tokens().caution);
        }
        if (!app.refusal().empty() && !app.ui().edit()) {
            body.gap(4);
            body.refusal("log/row/refused", app.refusal());
        }
        body.word_choice((at + ".verdict").c_str(), words::log::verdict, verdicts, verdict_names);
        number_fields(body, at, true);
        metal_choice(body, at + ".material");
        number_fields(body, at, false);
        body.word_choice((at + ".pierce").c_str(), words::log::pierce, pierces, pierce_names);
        const std::string name = row_name(app, index);
        const auto used = body.buttons({"log/row/done", words::log::back, Look::main},
                                       Column::Side{"log/row/out", words::common::delete_row, Look::plain, {}, name});
        if (used && (*used == 0 || app.remove(at, words::log::deleted))) {
            app.open("log");
        }
        body.gap(20);
    });
}

} // namespace torchside::web
