#include "web/screens/shop/example.hpp"

#include "core/link/ledger.hpp"
#include "core/schema/usual_shop.hpp"
#include "core/store/workbook_file.hpp"
#include "generated/words/example.hpp"
#include "generated/words/shop_screen.hpp"
#include "web/kit/controls.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"

namespace torchside::web {
namespace {

constexpr char example_json[] = {
#include "generated/demo_workbook.inc"
};

/// What belongs to this device and its user rather than to a shop.
Workbook keep_own(Workbook next, const Workbook& now) {
    next.shop.display = now.shop.display;
    document::keep_word(next.shop, now.shop);
    return next;
}

/// Half of a row, pressed as a whole, on this ground.
bool half(Ui& ui, std::string_view id, Rect place, Word label, Type type, Colour ground) {
    const Tokens& t = ui.tokens();
    const bool used = ui.node(id, Role::button, place, label);
    const bool down = ui.pressed(id);
    ui.pen().fill(place, down ? t.hairline : ground);
    ui.pen().words_in({place.x + 14, place.y + 4, place.w - 20, place.h - 8}, type,
                      ground == t.ink && !down ? t.ground : t.ink, ui.word(label));
    return used;
}

} // namespace

bool untouched(const Workbook& book) {
    const Shop& s = book.shop;
    const Machine machine;
    const supply::Circuit circuit;
    const air::AirSystem air;
    return !s.example && !s.country && s.name.empty() && s.tests.empty() && s.wear.sets.empty() &&
           s.machine.max_current == machine.max_current && s.machine.duty_cycle == machine.duty_cycle &&
           s.circuit.line == circuit.line && s.circuit.breaker == circuit.breaker && s.circuit.run == circuit.run &&
           s.air.compressor == air.compressor && s.air.receiver == air.receiver;
}

void see_example(App& app) {
    auto read = document::read_workbook({example_json, sizeof example_json});
    if (read.ok()) {
        app.take(keep_own(std::move(read.value()), app.book()), words::shop_screen::example_open);
        app.go(Page::cut);
    }
}

void start_shop(App& app) {
    if (app.book().shop.example) {
        app.take(document::usual_shop(keep_own({}, app.book()), platform::locale()), words::shop_screen::own_open);
    } else if (untouched(app.book())) {
        app.add(document::usual_shop(app.book(), platform::locale()));
    }
    app.open("start");
    app.scratch.before_start = app.book();
}

float example_strip_height(const Ui& ui, bool slim) {
    return slim ? 24.0F : ui.touch_height();
}

void example_strip(App& app, Rect place, bool slim) {
    Ui& ui = app.ui();
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    ui.open_group("example", Role::group, place, words::example::title);
    pen.fill(place, t.fill);
    pen.hline(place.x, place.right(), place.bottom() - 0.5F, t.rule, 1);
    Rect left = place;
    const Rect right = left.take_right(place.w * 0.45F);
    ui.node("example/what", Role::text, left, words::example::title, {}, {}, words::example::about);
    if (slim) {
        pen.text(Type::strong_label, {place.x + 14, place.centre().y - Pen::line_height(Type::strong_label) / 2}, t.ink,
                 ui.word(words::example::title));
    } else {
        const float first = Pen::line_height(Type::title);
        const float second = Pen::line_height(Type::label);
        const float top = left.centre().y - (first + second) / 2;
        pen.words_in({left.x + 14, top, left.w - 20, first}, Type::title, t.ink, ui.word(words::example::title));
        pen.words_in({left.x + 14, top + first, left.w - 20, second}, Type::label, t.quiet,
                     ui.word(words::example::not_yours));
        pen.vline(right.x, place.y, place.bottom() - 1, t.rule, 1);
        if (half(ui, "example/start", {right.x, place.y, right.w, place.h - 1}, words::example::start, Type::title,
                 t.fill)) {
            start_shop(app);
        }
    }
    ui.close_group();
}

void first_steps(App& app, Rect& rest) {
    const Shop& shop = app.book().shop;
    if (app.page() != Page::cut || !app.open_panel().empty() || shop.example || !shop.tests.empty()) {
        return;
    }
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const Rect place = rest.take_bottom(ui.touch_height());
    // Not untouched(): the first answer has no room for it.
    if (app.store().found() != WorkbookStore::Found::nothing || shop.country || !shop.name.empty()) {
        ui.pen().hline(place.x, place.right(), place.y, t.rule, 1);
        if (link_row(ui, "first/log", place, ui.word(words::example::log), {}, Mark::tune)) {
            app.go(Page::tune);
        }
        return;
    }
    ui.open_group("first", Role::group, place, words::example::empty);
    ui.pen().hline(place.x, place.right(), place.y, t.hairline, 1);
    Rect left = place;
    const Rect right = left.take_right(place.w * 0.54F);
    if (half(ui, "first/start", left, words::example::start, Type::title, t.ink)) {
        start_shop(app);
    }
    ui.pen().vline(right.x, place.y, place.bottom(), t.hairline, 1);
    if (half(ui, "first/example", right, words::example::see, Type::text, t.ground)) {
        see_example(app);
    }
    ui.close_group();
}

void example_refusal(Body& body, std::string_view id) {
    body.sign(id, Sign::stop, words::shop_screen::example_refused);
    body.gap(14);
    if (body.button(std::string(id) + "/start", words::example::start, Look::main)) {
        start_shop(body.app);
    }
    body.gap(16);
}

} // namespace torchside::web
