#include "web/screens/cut/circuit_picture.hpp"

#include <algorithm>
#include <string>

#include "core/quantity/print.hpp"
#include "generated/words/wiring.hpp"
#include "web/kit/column.hpp"
#include "web/kit/marks.hpp"
#include "web/kit/plot.hpp"

namespace torchside::web {
namespace {

// By Stop.
constexpr const char* ids[] = {"circuit/chain/panel", "circuit/chain/breaker", "circuit/chain/run",
                               "circuit/chain/cord",  "circuit/chain/machine", "circuit/chain/torch"};
constexpr Word names[] = {words::wiring::panel, words::wiring::breaker, words::wiring::run,
                          words::wiring::cord,  words::wiring::machine, words::wiring::torch};

/// How much of what this point holds is used: a bar to scale, full at its limit.
void used_bar(const Pen& pen, const Tokens& t, Rect place, double used, bool weakest) {
    const auto share = static_cast<float>(std::clamp(used, 0.0, 1.25) / 1.25);
    const Colour colour = used > 1.0 ? t.stop : weakest ? t.accent : t.ink;
    pen.hline(place.x, place.right(), place.centre().y, t.hairline, 1);
    pen.fill({place.x, place.centre().y - 2, place.w * share, 4}, colour);
    const float limit = place.x + place.w / 1.25F;
    pen.vline(limit, place.y, place.bottom(), t.ink, 1.5F);
}

float row_height_of(const Ui& ui) {
    return ui.glove() ? 72.0F : 50.0F;
}

std::string node_words(const supply::Node& node, const Speech& speech, bool weakest) {
    std::string out = say(node.figure, speech);
    if (!node.detail.empty()) {
        out += ", " + say(node.detail, speech);
    }
    if (node.used > 0) {
        out += ", " + say(words::wiring::Used{.share = words::percent(node.used)}, speech);
    }
    return weakest ? out + ", " + say(words::wiring::weakest, speech) : out;
}

} // namespace

void circuit_symbol(const Pen& pen, const Tokens& t, supply::Stop stop, Point c, Colour ink, float by) {
    const Rect box{c.x - 9 * by, c.y - 9 * by, 18 * by, 18 * by};
    switch (stop) {
    case supply::Stop::panel:
    case supply::Stop::machine:
        pen.fill(box, t.ground);
        pen.frame(box, ink, 2);
        break;
    case supply::Stop::breaker:
        pen.fill(box, t.ground);
        pen.frame(box, ink, 1.5F);
        pen.line({c.x - 5 * by, c.y + 5 * by}, {c.x + 5 * by, c.y - 5 * by}, ink, 2.5F);
        break;
    case supply::Stop::run:
    case supply::Stop::cord:
        pen.fill({c.x - 2, c.y - 13 * by, 4, 26 * by}, ink);
        break;
    case supply::Stop::torch: {
        const Point tip[] = {{c.x - 7 * by, c.y - 9 * by},
                             {c.x + 7 * by, c.y - 9 * by},
                             {c.x + 7 * by, c.y + 2 * by},
                             {c.x, c.y + 10 * by},
                             {c.x - 7 * by, c.y + 2 * by}};
        pen.polygon(tip, 5, t.ground);
        pen.polyline(tip, 5, ink, 2, true);
        break;
    }
    }
}

float chain_picture_height(const Ui& ui, const supply::Chain& chain) {
    const auto shown =
        std::count_if(chain.nodes.begin(), chain.nodes.end(), [](const supply::Node& node) { return node.present; });
    return row_height_of(ui) * static_cast<float>(shown);
}

std::optional<supply::Stop> chain_picture(Ui& ui, Rect place, const supply::Chain& chain, const Speech& speech) {
    const float row_height = row_height_of(ui);
    const Point at{place.x, place.y};
    const float w = place.w;
    std::optional<supply::Stop> touched;
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const float height = chain_picture_height(ui, chain);
    const float spine = at.x + 12;
    pen.vline(spine, at.y + row_height / 2, at.y + height - row_height / 2, t.ink, 2);
    ui.open_group("circuit/chain", Role::list, {at.x, at.y, w, height}, words::wiring::chain);
    Column rows(ui, place);
    for (std::size_t i = 0; i < chain.nodes.size(); ++i) {
        const supply::Node& node = chain.nodes[i];
        if (!node.present) {
            continue;
        }
        const bool weakest = static_cast<int>(i) == chain.weakest;
        const bool over = node.used > 1.0;
        const Colour ink = over ? t.stop : t.ink;
        const std::string_view name = ui.word(names[static_cast<std::size_t>(node.stop)]);
        const std::string_view id = ids[static_cast<std::size_t>(node.stop)];
        const Rect row = rows.strip(row_height);
        if (ui.node(id, Role::button, row, name, node_words(node, speech, weakest), {}, words::wiring::change)) {
            touched = node.stop;
        }
        if (ui.pressed(id)) {
            pen.fill({row.x + 28, row.y, row.w - 28, row.h}, t.hairline);
        }
        circuit_symbol(pen, t, node.stop, {spine, row.centre().y}, ink);
        const float text = at.x + 36;
        const float second = Pen::line_height(Type::label);
        const float first = Pen::line_height(Type::title);
        const float top = row.centre().y - (second + first) / 2;
        const float right = at.x + w - 18;                                   // before the chevron
        const float bar = node.used > 0 ? (weakest ? 146.0F : 84.0F) : 0.0F; // and its word
        const float detail = text + std::max(76.0F, pen.width(Type::label, name) + 10);
        pen.text(Type::label, {text, top}, t.quiet, name);
        pen.words_in({text, top + second, right - text - bar, first}, Type::title, ink, say(node.figure, speech));
        pen.words_in({detail, top, right - detail, second}, Type::label, t.quiet, say(node.detail, speech));
        if (node.used > 0) {
            used_bar(pen, t, {right - 76, top + second + 3, 76, 14}, node.used, weakest);
            if (weakest) {
                pen.text(Type::strong_label, {right - 84, top + second + 1}, ink, ui.word(words::wiring::weakest_mark),
                         Align::right);
            }
        }
        draw_mark(pen, Mark::chevron, {at.x + w - 6, row.centre().y}, t.quiet);
    }
    ui.close_group();
    return touched;
}

float band_picture_height() {
    return 158;
}

void band_picture(Ui& ui, Rect place, const supply::Band& band, bool holds, const Speech& speech) {
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    const Rect plot{place.x + 34, place.y + 8, place.w - 42, place.h - 34};
    const double most = std::max(3.0, static_cast<double>(static_cast<int>(band.load_multiple + 1.4)));
    const auto x_at = [&](double multiple) { return plot.x + plot.w * linear_share(multiple, 0.5, most); };
    const auto y_at = [&](double seconds) { return plot.bottom() - plot.h * log_share(seconds, 1, 7200); };
    // What may happen lies below the upper line: filled. Between "holds" and "trips" nothing is promised: hatched.
    const float holds_to = x_at(band.holds_to);
    const float trips = x_at(band.trips_from);
    for (float x = holds_to + 4; x < trips; x += 6) {
        pen.dashes({x, plot.y}, {x, plot.bottom()}, t.hairline, 1, 3, 3);
    }
    for (std::size_t i = 0; i < band.upper.size(); ++i) {
        const float from = x_at(band.upper[i].multiple);
        const float to = i + 1 < band.upper.size() ? x_at(band.upper[i + 1].multiple) : plot.right();
        const float top = y_at(band.upper[i].within.in(second));
        pen.fill({from, top, to - from, plot.bottom() - top}, t.fill);
        pen.hline(from, to, top, t.ink, 2);
        const float before = i > 0 ? y_at(band.upper[i - 1].within.in(second)) : plot.y;
        pen.vline(from, before, top, t.ink, 2);
    }
    pen.hline(plot.x, plot.right(), plot.bottom(), t.ink, 1);
    pen.vline(plot.x, plot.y, plot.bottom(), t.ink, 1);
    struct Tick {
        double seconds;
        Word text;
    };
    for (const Tick tick : {Tick{3600, words::wiring::hour}, Tick{120, words::wiring::two_minutes},
                            Tick{10, words::wiring::ten_seconds}}) {
        const float y = y_at(tick.seconds);
        pen.hline(plot.x - 4, plot.x, y, t.ink, 1);
        pen.text(Type::label, {plot.x - 6, y - 8.5F}, t.quiet, ui.word(tick.text), Align::right);
    }
    const double step = 1 + static_cast<int>(34.0 * (most - 0.5) / static_cast<double>(plot.w)); // room for "12×"
    for (double m = 1; m <= most; m += step) {
        pen.vline(x_at(m), plot.bottom(), plot.bottom() + 4, t.ink, 1);
        pen.text(Type::label, {x_at(m), plot.bottom() + 5}, t.quiet, print_trimmed(m, 0) + "×", Align::centre);
    }
    pen.text(Type::label, {plot.x + 6, plot.bottom() - 22}, t.quiet, ui.word(words::wiring::holds));
    if (plot.right() - trips > 90) {
        pen.text(Type::label, {(trips + plot.right()) / 2, plot.bottom() - 22}, t.quiet, ui.word(words::wiring::trips),
                 Align::centre);
    }
    const float x = x_at(band.load_multiple);
    const Colour mark = holds ? t.accent : t.stop;
    pen.vline(x, plot.y + 6, plot.bottom(), mark, 2);
    holds ? pen.disc({x, plot.y + 10}, 6, mark) : pen.fill({x - 6, plot.y + 4, 12, 12}, mark);
    const std::string load = say(words::wiring::ThisLoad{.times = words::number(band.load_multiple, 2)}, speech);
    const float wide = pen.width(Type::strong_label, load);
    const float from = x + 10 + wide > plot.right() ? x - 10 - wide : x + 10;
    const float line_top = plot.y + plot.h * 0.5F;
    pen.fill({from - 3, line_top, wide + 6, 18}, t.ground, 0.9F);
    pen.text(Type::strong_label, {from, line_top}, mark, load);
    ui.node("circuit/band", Role::img, place,
            say(words::wiring::BandPicture{.times = words::number(band.load_multiple, 2)}, speech));
}

} // namespace torchside::web
