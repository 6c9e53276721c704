// At the table: the figures of the open job to be read from a meter away, in gloves. A swipe leads to the next plate, one touch
// logs the cut just made, and two countdowns beep. The screen is kept on while it is open.
#include <algorithm>
#include <string>
#include <string_view>

#include "generated/words/bench.hpp"
#include "generated/words/common.hpp"
#include "web/kit/controls.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/cut/bench_counts.hpp"
#include "web/screens/cut/bench_figures.hpp"
#include "web/screens/cut/bench_plates.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"

namespace torchside::web {
namespace {

constexpr float margin = 14;
constexpr float lowest = 300; // a window that can spare the height for a head that stays
constexpr float narrow = 200; // beside close and arrows there is room for the plate alone

/// Two columns: the feed and the cards, and beside them the other figures.
bool lying(Rect place) {
    return place.w > place.h && place.w >= 560;
}

float scale_in(Rect screen) {
    constexpr float largest = 1.75F;
    const float fits =
        lying(screen) ? std::min(screen.w / 740, screen.h / 360) : std::min(screen.w / 360, screen.h / 740);
    const int quarters = static_cast<int>(
        4 * std::clamp(fits, 1.0F, largest)); // a window that is drawn larger asks for no new fonts at each px
    return static_cast<float>(quarters) / 4;
}

/// Whether the screen stays on; empty while nobody has answered.
std::string_view awake_words(const App& app) {
    switch (app.scratch.bench.awake) {
    case Bench::Awake::asked:
        break;
    case Bench::Awake::on:
        return app.word(words::bench::stays_on);
    case Bench::Awake::refused:
        return app.word(words::bench::refused);
    case Bench::Awake::none:
        return app.word(words::bench::may_sleep);
    }
    return {};
}

/// All that scrolls where the window has not the height; gives back how high it is.
float body(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const auto& settings = app.worksheet().settings;
    if (!settings) {
        return refused(app, place);
    }
    const float feed = feed_height(ui);
    const float shows = cards_height(ui);
    if (lying(ui.screen())) {
        const float most = 1.3F * std::max(feed + shows, 2 * cell_height(ui)); // nothing is stretched
        const float high = std::max({feed + shows, 2 * cell_height(ui), std::min(place.h, most)});
        const Rect right{place.x + place.w / 2, place.y, place.w / 2, high};
        const float bottom = std::min(high - feed, 1.3F * shows);
        feed_zone(app, {place.x, place.y, place.w / 2, feed}, *settings);
        pen.hline(place.x, right.x, place.y + feed, ui.tokens().rule, 2);
        cells(app, right, *settings);
        cards(app, {place.x, place.y + feed, place.w / 2, bottom}, *settings);
        pen.vline(right.x, place.y, place.y + high, ui.tokens().rule, 2);
        pen.hline(place.x, place.right(), place.y + high, ui.tokens().rule, 2);
        return high;
    }
    Rect rest{place.x, place.y, place.w, std::max(feed + 2 * cell_height(ui) + shows, place.h)};
    const float high = rest.h;
    feed_zone(app, rest.take_top(feed), *settings);
    pen.hline(rest.x, rest.right(), rest.y, ui.tokens().rule, 2);
    const Rect bottom = rest.take_bottom(shows);
    cells(app, rest.take_top(std::min(rest.h, 2 * cell_height(ui) * 1.2F)), *settings);
    pen.hline(rest.x, rest.right(), rest.y, ui.tokens().rule, 2);
    cards(app, bottom, *settings);
    return high;
}

bool arrow(App& app, std::string_view id, Rect place, Word name, int by, Mark mark, const char* state) {
    Ui& ui = app.ui();
    const bool used = ui.node(id, Role::button, place, name, plate_words(app, by), state, words::bench::swipe);
    if (ui.pressed(id)) {
        ui.pen().fill(place, ui.tokens().hairline);
    }
    draw_mark(ui.pen(), mark, {by < 0 ? place.x + 20 : place.right() - 20, place.centre().y}, ui.tokens().ink, 1.2F);
    return used;
}

/// The plates before and after this one, and which of how many it is.
void plates_bar(App& app, Rect place, bool slim) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const std::size_t at = plate_of_job(app);
    const std::size_t count = app.scratch.bench.plates.size();
    ui.open_group("bench/plates", Role::group, place, words::bench::plates);
    if (count < 2) {
        if (!slim) {
            ui.node("bench/only", Role::text, place, words::bench::only);
            pen.words_in(place.inset(margin, 0), Type::label, t.quiet, ui.word(words::bench::only), Align::centre);
        }
        ui.close_group();
        return;
    }
    const float middle = slim ? 0 : 64;
    const float half = (place.w - middle) / 2;
    const Rect left{place.x, place.y, half, place.h};
    const Rect right{place.right() - half, place.y, half, place.h};
    int by = 0;
    if (arrow(app, "bench/previous", left, words::bench::previous, -1, Mark::back, "key-ArrowLeft")) {
        by = -1;
    }
    if (!slim) {
        const std::string place_words =
            app.say(words::bench::Place{.count = static_cast<int>(count), .number = static_cast<int>(at) + 1});
        const Rect box{left.right(), place.y, middle, place.h};
        ui.node("bench/place", Role::text, box, place_words);
        pen.words_in(box, Type::strong_label, t.ink, place_words, Align::centre);
        pen.words_in({left.x + 34, left.y, left.w - 36, left.h}, Type::label, t.quiet, plate_words(app, -1));
        pen.words_in({right.x + 2, right.y, right.w - 36, right.h}, Type::label, t.quiet, plate_words(app, 1),
                     Align::right);
    }
    if (arrow(app, "bench/next", right, words::bench::next, 1, Mark::chevron, "key-ArrowRight")) {
        by = 1;
    }
    ui.close_group();
    if (by != 0) {
        step_plate(app, by);
    }
}

/// The plate, whether the screen stays on, and the way out; in a low window the arrows too.
void head(App& app, Rect place) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.hline(place.x, place.right(), place.bottom() - 1, t.rule, 2);
    const float side = bench_target(ui);
    const Rect corner = place.take_right(side);
    if (ui.node("bench/close", Role::button, {corner.x, corner.y, corner.w, corner.h - 2}, words::common::close)) {
        app.close();
    }
    if (ui.pressed("bench/close")) {
        pen.fill(corner, t.hairline);
    }
    draw_mark(pen, Mark::close, corner.centre(), t.ink, ui.glove() ? 1.6F : 1.0F);
    const Rect arrows = place.take_right(ui.low() && app.scratch.bench.plates.size() > 1 ? 2 * side : 0);
    const Rect in = place.inset(margin, 0);
    const std::string plate = plate_words(app, 0);
    const std::string_view awake = in.w >= narrow ? awake_words(app) : "";
    const float second = pen.paragraph(Type::label, {}, {}, awake, in.w, false);
    const float first = awake.empty() ? in.h - 4 : pen.line_height(Type::title);
    const float top = in.centre().y - (first + second) / 2 - 1;
    ui.node("bench/title", Role::heading, {in.x, top, in.w, first}, words::bench::title, plate, "level2");
    pen.words_in({in.x, top, in.w, first}, Type::title, t.ink, plate);
    if (!awake.empty()) {
        ui.node("bench/awake", Role::text, {in.x, top + first, in.w, second}, awake);
        pen.paragraph(Type::label, {in.x, top + first}, t.quiet, awake, in.w);
    }
    if (arrows.w > 0) {
        plates_bar(app, arrows, true);
    }
}

} // namespace

void turn_bench(App& app, bool on) {
    Bench& bench = app.scratch.bench;
    bench.on = on;
    if (on) {
        bench.awake = Bench::Awake::asked;
        gather_plates(app);
    } else {
        drop_pierce(app);
        bench.spoken.clear();
        platform::wake(-1);
    }
    platform::keep_awake(on);
}

void bench_screen(App& app, Rect screen) {
    Ui& ui = app.ui();
    Bench& bench = app.scratch.bench;
    bench.scale = scale_in(screen);
    keep_counting(app);
    ui.open_group("bench", Role::dialog, screen, words::bench::title);
    ui.node("bench/said", Role::status, {0, 0, 1, 1}, bench.spoken, {}, "live");
    const bool moves = screen.h < lowest; // all of it
    Rect rest = screen;
    if (!moves) {
        head(app, rest.take_top(bench_target(ui) + 2));
        if (app.book().shop.example) {
            example_strip(app, rest.take_top(example_strip_height(ui, true)), true);
        }
        if (!ui.low()) {
            plates_bar(app, rest.take_bottom(bench_target(ui)), false);
            ui.pen().hline(rest.x, rest.right(), rest.bottom(), ui.tokens().hairline, 1);
        }
    }
    if (app.change() != nullptr) {
        change_bar(app, rest);
    } else if (!ui.low()) { // what comes there moves no card, and puts no Undo under the thumb
        rest.take_bottom(change_bar_height(ui));
    }
    if (!storage_alert(app).empty()) {
        storage_strip(app, rest);
    }
    const Point corner = ui.open_region_anew("bench", rest, app.word(words::bench::title));
    float top = 0;
    if (moves) {
        top = bench_target(ui) + 2;
        head(app, {corner.x, corner.y, rest.w, top});
    }
    if (ui.tree().find("bench/awake") == nullptr && !awake_words(app).empty()) {
        const float line = words(ui, "bench/awake", Type::label, {corner.x + margin, corner.y + top + 6},
                                 rest.w - 2 * margin, awake_words(app), ui.tokens().quiet);
        top += line + 8;
    }
    top += body(app, {corner.x, corner.y + top, rest.w, rest.h - top});
    ui.close_region({rest.w, top});
    ui.close_group();
}

} // namespace torchside::web
