// What stands at the table: the feed, four figures of which two count, and the cards.
#include "web/screens/cut/bench_figures.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/print.hpp"
#include "core/supply/load.hpp"
#include "generated/words/bench.hpp"
#include "generated/words/common.hpp"
#include "generated/words/feed_test.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/settings.hpp"
#include "web/kit/controls.hpp"
#include "web/kit/grid.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/cut/bench_counts.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/verdict_cards.hpp"

namespace torchside::web {
namespace {

constexpr float margin = 14;
constexpr float card = 96;

/// What of a figure's size lies above its digits in the line box, and how high they are: B612's own measures.
constexpr float above_digits = 0.26F;
constexpr float digits_high = 0.84F;

std::string key(const App& app, int number) {
    return app.book().shop.display.number_keys ? "key-" + std::to_string(number) : std::string();
}

std::string with_unit(const App& app, Label what, const std::string& unit) {
    return app.say(words::bench::WithUnit{.unit = unit, .what = std::string(app.word(what))});
}

/// One of the two large types, whichever goes into the width; its digits begin at the top of `place`.
void far_figure_in(Ui& ui, Rect place, Type largest, std::string_view number) {
    const Pen& pen = ui.pen();
    const Type type = pen.figure_type(largest, number, "", place.w);
    const float down = (size_of(largest) - size_of(type)) * digits_high / 2;
    pen.text(type, {place.x, place.y + down - above_digits * size_of(type)}, ui.tokens().ink, number);
}

/// A figure of the second rank, and below it a quiet line. One that counts can be touched, and shows how.
struct Cell {
    std::string id, name, label, number, quiet;
    std::optional<std::string> value{}; // of the control, which stays the same while it counts; none: the number
    std::string state{};
    bool counts = false;          // it can be touched
    bool runs = false;            // and was
    std::optional<float> share{}; // that is left, drawn as a bar
    std::optional<Sign> sign{};
};

bool draw_cell(App& app, Rect place, const Cell& cell) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const bool used = ui.node(cell.id, cell.counts ? Role::button : Role::text, place, cell.name,
                              cell.value ? *cell.value : cell.number, cell.state, cell.quiet);
    if (ui.pressed(cell.id)) {
        pen.fill(place, t.hairline);
    } else if (cell.runs) {
        pen.fill(place, t.fill);
        pen.fill({place.x, place.y, place.w, 4}, t.accent);
    }
    const Rect in = place.inset(margin, 0);
    const float line = pen.line_height(Type::label);
    pen.text_fit(Type::label, {in.x, in.y + 8}, t.quiet, cell.label, in.w);
    far_figure_in(ui, {in.x, in.y + 8 + line + 6, in.w, 0}, Type::second, cell.number);
    const float foot = in.bottom() - 2 * line - 8;
    float x = in.x;
    if (cell.sign) {
        draw_sign(pen, t, *cell.sign, {x + 9, foot + line});
        x += 24;
    } else if (cell.counts) { // a triangle starts, a square stops
        const Point c{x + 7, foot + line};
        if (cell.runs) {
            pen.fill({c.x - 6, c.y - 6, 12, 12}, t.accent);
        } else {
            pen.triangle({c.x - 6, c.y - 7}, {c.x + 7, c.y}, {c.x - 6, c.y + 7}, t.accent);
        }
        x += 22;
    }
    pen.words_in({x, foot, in.right() - x, 2 * line}, Type::label, cell.runs ? t.ink : t.quiet, cell.quiet);
    if (cell.share && !platform::reduced_motion()) {
        const Rect bar{place.x, place.bottom() - 6, place.w, 5};
        pen.fill(bar, t.hairline);
        pen.fill({bar.x, bar.y, bar.w * *cell.share, bar.h}, t.accent);
    }
    return used;
}

void volts_cell(App& app, Rect place, const cut::Settings& s) {
    const Shown controller = show(s.controller, app.units());
    const std::string torch = show(s.arc.value, app.units()).whole();
    draw_cell(app, place,
              {"bench/volts", std::string(app.word(words::common::at_controller)),
               std::string(app.word(words::bench::controller)), controller.number,
               app.say(words::bench::AtTorch{.volts = torch}), controller.whole()});
}

void height_cell(App& app, Rect place, const cut::Settings& s) {
    const Shown height = show(s.cut_height.value, app.units());
    const std::string pierce = show(s.pierce_height.value, app.units()).whole();
    draw_cell(app, place,
              {"bench/height", std::string(app.word(words::figure::cut_height)),
               with_unit(app, words::figure::cut_height, height.unit), height.number,
               app.say(words::bench::PierceAt{.height = pierce}), height.whole()});
}

void pierce_cell(App& app, Rect place, const cut::Settings& s) {
    const std::string label(app.word(words::bench::pierce));
    if (!s.pierce_delay) {
        draw_cell(app, place,
                  {.id = "bench/pierce",
                   .name = label,
                   .label = label,
                   .number = "−",
                   .quiet = std::string(app.word(words::bench::edge))});
        return;
    }
    const Duration delay = s.pierce_delay->value;
    const auto left = pierce_left(app);
    const bool over = app.scratch.bench.pierced;
    Cell cell{.id = "bench/pierce",
              .name = std::string(app.word(left ? words::bench::stop_count : words::bench::count_pierce)),
              .label = label,
              .number = left ? std::to_string(*left) : show(delay, app.units()).number,
              .quiet = std::string(app.word(left   ? words::bench::move_at_beep
                                            : over ? words::bench::pierced
                                                   : words::bench::touch_to_count)),
              .value = show(delay, app.units()).whole(),
              .state = key(app, 4),
              .counts = true,
              .runs = left.has_value()};
    if (over) {
        cell.sign = Sign::holds;
    }
    if (draw_cell(app, place, cell)) {
        count_pierce(app, delay);
    }
}

void arc_cell(App& app, Rect place) {
    const Bench& bench = app.scratch.bench;
    const Duration allowed = app.worksheet().circuit.arc_per_10_min;
    if (allowed.in(second) >= supply::duty_period_s) {
        draw_cell(app, place,
                  {.id = "bench/arc",
                   .name = std::string(app.word(words::bench::allowed)),
                   .label = std::string(app.word(words::bench::allowed)),
                   .number = clock_text(static_cast<int>(supply::duty_period_s)),
                   .quiet = std::string(app.word(words::bench::no_rest))});
        return;
    }
    const bool burns = bench.arc.on();
    const bool rests = bench.counts == Bench::Counts::rest;
    const int left = count_left(app).value_or(burns ? 0 : arc_left(app));
    const bool spent = burns && bench.counts == Bench::Counts::nothing;
    const double whole = rests ? supply::duty_period_s - allowed.in(second) : allowed.in(second);
    Cell cell{.id = "bench/arc",
              .name = std::string(app.word(burns ? words::bench::arc_off : words::bench::arc_on)),
              .label = std::string(app.word(rests ? words::bench::rest : words::bench::arc_left)),
              .number = clock_text(left),
              .quiet = std::string(app.word(spent   ? words::bench::used_up
                                            : burns ? words::bench::arc_stops
                                                    : words::bench::arc_starts)),
              .value = "",
              .state = key(app, 5),
              .counts = true,
              .runs = burns};
    if (rests && arc_left(app) > 0) {
        cell.quiet = app.say(words::bench::UseNow{.arc = clock_text(arc_left(app))});
    }
    if (burns || rests) {
        cell.share = std::clamp(static_cast<float>(left / whole), 0.0F, 1.0F);
    }
    if (spent) {
        cell.sign = Sign::stop;
    }
    if (draw_cell(app, place, cell)) {
        count_arc(app);
    }
    // What changes each second is a text of its own, which nobody reads out by itself.
    app.ui().node("bench/left", Role::text, {place.x, place.y, place.w, 1}, cell.label, cell.number);
}

} // namespace

float bench_target(const Ui& ui) {
    return ui.low() && ui.glove() ? 76.0F : ui.touch_height();
}

float feed_height(const Ui& ui) {
    return 16 + ui.pen().line_height(Type::label) + size_of(Type::figure) * digits_high + 12;
}

void feed_zone(App& app, Rect place, const cut::Settings& settings) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Shown feed = show_feed(app, settings.feed.value);
    ui.node("bench/feed", Role::figure, place, words::figure::feed, feed.whole());
    const Rect in = place.inset(margin, 0);
    pen.text(Type::label, {in.x, in.y + 8}, t.quiet, with_unit(app, words::figure::feed, feed.unit));
    pen.text(Type::label, {in.right(), in.y + 8}, t.quiet, feed.other, Align::right);
    const float top = 16 + pen.line_height(Type::label);
    far_figure_in(ui, {in.x, in.y + top, in.w, in.h - top}, Type::figure, feed.number);
}

float cell_height(const Ui& ui) {
    const float high = 8 + ui.pen().line_height(Type::label) + 6 + size_of(Type::second) * digits_high +
                       2 * ui.pen().line_height(Type::label) + 10;
    return std::max(high, bench_target(ui));
}

float cards_height(const Ui& ui) {
    return 6 + ui.pen().line_height(Type::label) + 4 + std::max(card, bench_target(ui)) + 10;
}

void cards(App& app, Rect place, const cut::Settings& settings) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Speed feed = to_dial(settings.feed.value, app.book().shop.table.max_feed, app.units());
    const std::string question = app.say(words::feed_test::CameOut{.feed = feed});
    const Rect in = place.inset(margin, 0);
    ui.node("bench/shows", Role::text, {in.x, in.y + 6, in.w, pen.line_height(Type::label)}, question);
    pen.text_fit(Type::label, {in.x, in.y + 6}, ui.tokens().quiet, question, in.w);
    const float top = 6 + pen.line_height(Type::label) + 4;
    const Grid grid{{in.x, in.y + top, in.w, 0}, all_shows().size(), in.h - top - 10};
    for (std::size_t i = 0; i < all_shows().size(); ++i) {
        if (verdict_card(ui, grid.cell(i), all_shows()[i], "bench/", key(app, static_cast<int>(i) + 1))) {
            log_verdict(app, feed, all_shows()[i]);
            drop_pierce(app);
        }
    }
}

/// The plate is past reach: the reason, in place of figures.
float refused(App& app, Rect place) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const Rect in = place.inset(margin, 20);
    draw_sign(ui.pen(), t, Sign::stop, {in.x + 10, in.y + 12});
    float y = in.y + words(ui, "bench/refused", Type::title, {in.x + 32, in.y}, in.w - 40,
                           ui.word(words::settings::none), t.stop);
    y += 12;
    y += words(ui, "bench/refused/why", Type::text, {in.x, y}, in.w, app.say(app.worksheet().capacity.reason), t.ink);
    return y + 16 - place.y;
}

/// Four figures in two rows, between rules.
void cells(App& app, Rect place, const cut::Settings& s) {
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.ui().tokens();
    Rect below = place;
    Rect above = below.take_top(place.h / 2);
    const Rect volts = above.take_left(above.w / 2);
    const Rect pierce = below.take_left(below.w / 2);
    volts_cell(app, volts, s);
    height_cell(app, above, s);
    pierce_cell(app, pierce, s);
    arc_cell(app, below);
    pen.vline(above.x, place.y, place.bottom(), t.hairline, 1);
    pen.hline(place.x, place.right(), below.y, t.hairline, 1);
}

} // namespace torchside::web
