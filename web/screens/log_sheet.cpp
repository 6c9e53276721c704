// The log: every test cut, newest first, what the learning makes of it, and a way to take it out.
#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune_picture.hpp"

namespace torchside::web {
namespace {

const char* verdict_words(tune::Verdict verdict) {
    return verdict == tune::Verdict::clean ? "clean" : verdict == tune::Verdict::too_fast ? "too fast" : "too slow";
}

std::string cut_words(const App& app, const tune::TestCut& cut) {
    const UnitSystem units = app.book().shop.display.units;
    std::string out = cut.feed ? print(*cut.feed, units).text() : std::string("no feed noted");
    if (cut.verdict) {
        out += ", ";
        out += verdict_words(*cut.verdict);
    }
    return out;
}

std::string stock_words(const App& app, const tune::TestCut& cut) {
    const UnitSystem units = app.book().shop.display.units;
    std::string out(stock::name(cut.material));
    out += ", " + show_plate(cut.thickness, cut.material, units).whole() + ", " + show(cut.current).whole();
    if (cut.kerf_top) {
        out += ", kerf " + show(*cut.kerf_top, units).whole();
    }
    if (cut.arc) {
        out += ", " + show(*cut.arc).whole();
    }
    return out;
}

/// Which row it is, for who does not see where a button stands.
std::string row_name(const App& app, std::size_t index) {
    return "cut " + std::to_string(index + 1) + ", " + stock_words(app, app.book().shop.tests[index]);
}

/// True when the row was deleted: the list is another one now.
bool row(App& app, std::size_t index, Point at, float w, const tune::RowNote& remark, float& height) {
    const std::string note = app.say(remark.text);
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const tune::TestCut& cut = app.book().shop.tests[index];
    const std::string id = "log/" + std::to_string(index);
    const float words_w = w - 32 - 96;
    const std::string what = cut_words(app, cut);
    const std::string where = stock_words(app, cut);
    const float where_height = pen.paragraph(Type::label, {}, {}, where, words_w, false);
    const float note_height = note.empty() ? 0 : pen.paragraph(Type::label, {}, {}, note, words_w, false);
    const float what_height = pen.paragraph(Type::title, {}, {}, what, words_w, false);
    height = std::max(ui.reach() + 4, 14 + what_height + where_height + note_height);
    const Rect words_place{at.x, at.y, w - 96, height};
    if (ui.node(id, Role::button, words_place, where, what, "", note)) {
        app.open(id);
    }
    if (ui.pressed(id)) {
        pen.fill(words_place, t.hairline);
    }
    if (remark.measure_again) {
        draw_sign(pen, t, Sign::caution, {at.x + 10, at.y + height / 2});
    } else if (cut.verdict) {
        verdict_mark(pen, t, *cut.verdict, {at.x + 10, at.y + height / 2});
    }
    const float under = 6 + pen.paragraph(Type::title, {at.x + 32, at.y + 6},
                                          is_job_stock(app.book(), cut) ? t.ink : t.quiet, what, words_w);
    pen.paragraph(Type::label, {at.x + 32, at.y + under}, t.quiet, where, words_w);
    pen.paragraph(Type::label, {at.x + 32, at.y + under + where_height}, t.caution, note, words_w);
    const bool out = button(ui, id + "/out", {at.x + w - 88, at.y + (height - 48) / 2, 88, 48}, "Delete", Look::plain,
                            Role::button, {}, row_name(app, index));
    pen.hline(at.x, at.x + w, at.y + height, t.hairline, 1);
    return out;
}

} // namespace

void log_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "log", "The log", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y;
        const std::size_t count = app.book().shop.tests.size();
        const auto& tuning = app.tuning();
        for (std::size_t i = count; i-- > 0;) {
            const tune::RowNote note =
                tuning.ok() && i < tuning.value().notes.size() ? tuning.value().notes[i] : tune::RowNote{};
            float height = 0;
            if (row(app, i, {x, y}, w, note, height)) {
                app.remove("shop.tests[" + std::to_string(i) + "]", "Cut deleted from the log");
                break;
            }
            y += height + 1;
        }
        if (count == 0) {
            y += 14 + words(ui, "log/empty", Type::text, {x, y + 14}, w,
                            "No cuts yet. Make one, and say on Tune what it showed.", ui.tokens().ink);
        }
        return y + 20 - body.y;
    });
}

void cut_row_sheet(App& app, Rect place, std::size_t index, bool closable) {
    if (index >= app.book().shop.tests.size()) {
        log_sheet(app, place, closable);
        return;
    }
    sheet(app, place, "log/row", "A cut", closable, [&](Rect body) {
        constexpr const char* verdicts[] = {"too_slow", "clean", "too_fast", ""};
        constexpr const char* verdict_names[] = {"Too slow", "Clean", "Too fast", "—"};
        constexpr const char* pierces[] = {"short", "good", "long", ""};
        constexpr const char* pierce_names[] = {"Short", "Good", "Long", "—"};
        constexpr const char* metals[] = {"mild_steel", "stainless", "aluminium", "galvanised", "copper"};
        constexpr const char* metal_names[] = {"Mild steel", "Stainless", "Aluminum", "Galvanized", "Copper"};
        constexpr const char* stock[][2] = {{"thickness_mm", "Thickness"}, {"current_a", "Current"}};
        constexpr const char* fields[][2] = {{"feed_mm_min", "Feed"},
                                             {"kerf_top_mm", "Kerf, top"},
                                             {"kerf_bottom_mm", "Kerf, bottom"},
                                             {"arc_v", "Arc volts"},
                                             {"cut_height_mm", "Cut height"},
                                             {"pierce_delay_s", "Pierce delay"},
                                             {"nozzle_a", "Nozzle"},
                                             {"worn", "Worn"}};
        Ui& ui = app.ui();
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        const std::string at = "shop.tests[" + std::to_string(index) + "]";
        float y = body.y + 10;
        y += words(ui, "log/row/stock", Type::text, {x, y}, w, stock_words(app, app.book().shop.tests[index]),
                   ui.tokens().ink);
        const auto& tuning = app.tuning();
        if (tuning.ok() && tuning.value().notes[index].text != Word{}) {
            y += 4 + words(ui, "log/row/note", Type::label, {x, y + 4}, w, app.say(tuning.value().notes[index].text),
                           ui.tokens().caution);
        }
        if (!app.refusal().empty() && !ui.edit()) {
            y += 4 + words(ui, "log/row/refused", Type::text, {x, y + 4}, w, app.refusal(), ui.tokens().stop);
        }
        y +=
            word_choice(app, {body.x, y, body.w, 0}, (at + ".verdict").c_str(), "The cut was", verdicts, verdict_names);
        for (const auto& [key, label] : stock) {
            y += entry(app, {body.x, y, body.w, 0}, at + '.' + key, label);
        }
        y += word_choice(app, {body.x, y, body.w, 0}, (at + ".material").c_str(), "Metal", metals, metal_names, 3);
        for (const auto& [key, label] : fields) {
            y += entry(app, {body.x, y, body.w, 0}, at + '.' + key, label);
        }
        y +=
            word_choice(app, {body.x, y, body.w, 0}, (at + ".pierce").c_str(), "The pierce was", pierces, pierce_names);
        const float half = (w - 8) / 2;
        if (button(ui, "log/row/done", {x, y, half, ui.reach()}, "To the log", Look::main)) {
            app.open("log");
        }
        if (button(ui, "log/row/out", {x + half + 8, y, half, ui.reach()}, "Delete", Look::plain, Role::button, {},
                   row_name(app, index)) &&
            app.remove(at, "Cut deleted from the log")) {
            app.open("log");
        }
        return y + ui.reach() + 20 - body.y;
    });
}

} // namespace torchside::web
