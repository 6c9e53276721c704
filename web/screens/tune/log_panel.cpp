// The log: every test cut, newest first, what the learning makes of it, and a way to take it out.
#include <vector>

#include "core/quantity/print.hpp"
#include "core/stock/properties.hpp"
#include "generated/words/common.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/log.hpp"
#include "generated/words/title.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/tune_picture.hpp"

namespace torchside::web {
namespace {

Word verdict_words(tune::Verdict verdict) {
    return verdict == tune::Verdict::clean      ? words::log::clean
           : verdict == tune::Verdict::too_fast ? words::log::too_fast
                                                : words::log::too_slow;
}

std::string cut_words(const App& app, const tune::TestCut& cut) {
    const UnitSystem units = app.book().shop.display.units;
    std::string out = cut.feed ? print(*cut.feed, units).text() : app.say(words::log::no_feed);
    if (cut.verdict) {
        out += ", ";
        out += app.word(verdict_words(*cut.verdict));
    }
    return out;
}

std::string stock_words(const App& app, const tune::TestCut& cut) {
    const UnitSystem units = app.book().shop.display.units;
    std::string out = app.say(stock::name(cut.material));
    out += ", " + show_plate(cut.thickness, cut.material, units).whole() + ", " + show(cut.current).whole();
    if (cut.kerf_top) {
        out += ", " + app.say(words::log::Kerf{.kerf = show(*cut.kerf_top, units).whole()});
    }
    if (cut.arc) {
        out += ", " + show(*cut.arc).whole();
    }
    return out;
}

/// Which row it is, for who does not see where a button stands.
std::string row_name(const App& app, std::size_t index) {
    return app.say(words::log::Row{.number = static_cast<int>(index) + 1,
                                   .stock = stock_words(app, app.book().shop.tests[index])});
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
    const std::string where = stock_words(app, cut);
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
        constexpr Label verdict_names[] = {words::common::too_slow, words::common::clean, words::common::too_fast, "—"};
        constexpr const char* pierces[] = {"short", "good", "long", ""};
        constexpr Label pierce_names[] = {words::log::too_short, words::log::good, words::log::too_long, "—"};
        constexpr PathLabel stock[] = {{"thickness_mm", words::title::thickness}, {"current_a", words::title::current}};
        constexpr PathLabel fields[] = {{"feed_mm_min", words::figure::feed},
                                        {"kerf_top_mm", words::common::kerf_top},
                                        {"kerf_bottom_mm", words::common::kerf_bottom},
                                        {"arc_v", words::figure::arc},
                                        {"cut_height_mm", words::figure::cut_height},
                                        {"pierce_delay_s", words::figure::pierce_delay},
                                        {"nozzle_a", words::log::nozzle},
                                        {"worn", words::log::worn}};
        const std::string at = "shop.tests[" + std::to_string(index) + "]";
        body.gap(10);
        body.text("log/row/stock", stock_words(app, app.book().shop.tests[index]));
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
        for (const PathLabel& f : stock) {
            body.field(at + '.' + f.path, f.label);
        }
        metal_choice(body, at + ".material");
        for (const PathLabel& f : fields) {
            body.field(at + '.' + f.path, f.label);
        }
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
