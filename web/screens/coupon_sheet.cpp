// Test coupons: which one, drawn to scale, its program to download, and what it showed.
#include "core/quantity/print.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/coupon_heights.hpp"
#include "web/screens/coupon_picture.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

using tune::CouponKind;

struct KindText {
    const char* name;
    const char* file;
    const char* what;
};
// In the order of CouponKind.
constexpr KindText kinds[] = {
    {"Feed ladder", "ladder", "Straight legs, each faster than the one below: which come out clean?"},
    {"Height ladder", "heights",
     "Straight legs at one feed, each higher than the one below: which has the squarest faces?"},
    {"Kerf", "kerf", "A square and a hole cut on the line: what is missing is the kerf."},
    {"Tilt or swirl", "swirl", "Two squares, one each way round: tilt spoils the same face of both, swirl does not."},
};

float kind_choice(App& app, Point at, float w) {
    std::vector<Choice> items;
    for (std::size_t i = 0; i < std::size(kinds); ++i) {
        items.push_back(
            {std::string("coupon/") + kinds[i].file, kinds[i].name, app.scratch.coupon == static_cast<CouponKind>(i)});
    }
    const float h = choices_height(app.ui(), items.size(), 2);
    if (const auto touched = choices(app.ui(), "coupon/kind", {at.x, at.y, w, h}, "Coupon", items, 2)) {
        app.ui().stop_edit();
        app.scratch.coupon = static_cast<CouponKind>(*touched);
    }
    return h;
}

/// The program in one touch, beside what to look after before it runs.
float save(App& app, Point at, float w, const tune::Coupon& coupon) {
    Ui& ui = app.ui();
    const Workbook& book = app.book();
    const float x = at.x;
    float y = at.y;
    y +=
        signed_words(app, "coupon/check", Sign::caution, {x, y}, w,
                     "Check before you run: units, origin, heights and torch words. Run it dry first, clamp the plate, "
                     "stay at the table.",
                     "");
    y += 8;
    if (button(ui, "coupon/save", {x, y, w, ui.reach()}, "Save the program", Look::main)) {
        const auto text = coupon_program(book, coupon);
        if (text.ok()) {
            const std::string name = std::string(kinds[static_cast<std::size_t>(coupon.kind)].file) + '-' +
                                     print_trimmed(book.job.thickness.in(mm), 2) + "mm-" +
                                     print_trimmed(book.job.current.in(ampere), 0) + "A.nc";
            platform::download(name, "text/plain", text.value());
            app.say("Saved as " + name + ". Look in your downloads.");
        }
        app.refuse(text.ok() ? "" : app.in_units(text.fault().text));
    }
    y += ui.reach() + 8;
    if (!app.refusal().empty() && !ui.edit()) {
        y += words(ui, "coupon/refused", Type::text, {x, y}, w, app.refusal(), ui.tokens().stop) + 8;
    }
    return y - at.y;
}

float controller_rows(App& app, Rect body, float y0) {
    Ui& ui = app.ui();
    const Workbook& book = app.book();
    const Controller& c = book.shop.controller;
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = y0 + section(ui, "coupon/program", {x, y0}, w, "The program");
    const std::string words_now = c.torch_on + " · " + c.torch_off + " · dwell in " +
                                  (c.dwell == DwellUnit::second ? "s" : "ms") +
                                  (program_units(book.shop) == UnitSystem::metric ? " · mm" : " · inch");
    if (link_row(ui, "coupon/words", {body.x, y, body.w, ui.reach()}, "Words of your controller", words_now,
                 Mark::keyboard)) {
        app.open("controller");
    }
    y += ui.reach();
    if (link_row(ui, "coupon/safety", {body.x, y, body.w, ui.reach()}, "Safety", app.say(app.sheet().safety.shade_text),
                 Mark::air)) {
        app.open("safety");
    }
    return y + ui.reach() - y0;
}

float ladder_showed(App& app, Rect body, float y0, const tune::Coupon& coupon) {
    Ui& ui = app.ui();
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    auto& clean = app.scratch.clean;
    float y = y0 + section(ui, "coupon/showed", {x, y0}, w, "Which legs came out clean?");
    ui.open_group("coupon/clean", Role::group, {x, y, w, 1}, "Clean legs");
    constexpr float gap = 8;
    const int columns = w < 400 ? 2 : 3;
    const float cell = (w - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    int place = 0;
    for (const std::size_t i : from_below(coupon)) {
        const Rect at{x + (cell + gap) * static_cast<float>(place % columns),
                      y + (ui.reach() + gap) * static_cast<float>(place / columns), cell, ui.reach()};
        if (button(ui, "coupon/leg/" + std::to_string(place), at, leg_words(app, coupon, coupon.legs[i]),
                   clean[i] ? Look::chosen : Look::plain, Role::toggle, clean[i] ? "checked" : "")) {
            clean[i] = !clean[i];
        }
        ++place;
    }
    ui.close_group();
    y += (ui.reach() + gap) * static_cast<float>((place + columns - 1) / columns);
    const auto read = read_ladder(app.book(), coupon, std::span(clean).first(coupon.legs.size()));
    if (!read) {
        return y - y0;
    }
    y += line(app, "coupon/go_on", {x, y}, w, "Go on with", show_feed(read->go_on, app.book().shop).whole());
    y += 12;
    const std::string count = std::to_string(read->rows.size()) + " cuts";
    if (button(ui, "coupon/log", {x, y, w, ui.reach()}, "Put " + count + " into the log", Look::main)) {
        Outcome<Workbook> next = app.book();
        for (const tune::TestCut& row : read->rows) {
            if (next.ok()) {
                next = document::add(next.value(), row);
            }
        }
        if (app.log(std::move(next), count + " logged")) {
            clean = {};
            app.open("log");
        }
    }
    return y + ui.reach() + 8 - y0;
}

float kerf_showed(App& app, Rect body, float y0, const tune::Coupon& coupon) {
    Ui& ui = app.ui();
    App::Scratch& s = app.scratch;
    const UnitSystem units = app.book().shop.display.units;
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = y0 + section(ui, "coupon/showed", {x, y0}, w, "What does it measure?");
    const auto field = [&](const char* id, const char* label, const tune::Leg& leg, std::optional<double>& value) {
        y += scratch_entry(app, {body.x, y, body.w, 0}, id, label,
                           "Cut as " + show_text(*leg.size, units) + "; mean of top and bottom edge", FieldUnit::mm,
                           value);
    };
    field("field/scratch/square_mm", "Square", coupon.legs.back(), s.square);
    field("field/scratch/hole_mm", "Hole", coupon.legs.front(), s.hole);
    const auto length = [](std::optional<double> v) { return v ? std::optional(Length{*v, mm}) : std::nullopt; };
    if (!s.square && !s.hole) {
        return y - y0;
    }
    const auto read = read_kerf(app.book(), coupon, length(s.square), length(s.hole));
    y += 8;
    if (!read.ok()) {
        return y + words(ui, "coupon/wrong", Type::text, {x, y}, w, app.in_units(read.fault().text), ui.tokens().stop) +
               8 - y0;
    }
    const auto kerf = [&](const char* id, const char* name, std::optional<Length> l) {
        y += l ? line(app, id, {x, y}, w, name, show_text(*l, units)) : 0;
    };
    kerf("coupon/kerf/square", "Kerf on straight sides", read.value().square);
    kerf("coupon/kerf/hole", "Kerf in the hole", read.value().hole);
    kerf("coupon/kerf/offset", "Offset, half of it", read.value().offset);
    y += 12;
    if (button(ui, "coupon/log", {x, y, w, ui.reach()}, "Put it into the log", Look::main) &&
        app.log(document::add(app.book(), read.value().row), "Kerf logged")) {
        s.square.reset();
        s.hole.reset();
        app.open("log");
    }
    return y + ui.reach() + 8 - y0;
}

float swirl_showed(App& app, Rect body, float y0) {
    Ui& ui = app.ui();
    auto& a = app.scratch.angle;
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = y0 + section(ui, "coupon/showed", {x, y0}, w, "How far off square are the faces?");
    constexpr const char* labels[] = {"Left, top", "Left, bottom", "Right, top", "Right, bottom"};
    for (std::size_t i = 0; i < a.size(); ++i) {
        y += scratch_entry(app, {body.x, y, body.w, 0}, "field/scratch/face/" + std::to_string(i) + "_deg", labels[i],
                           "Face of that square as drawn; minus: narrower at the bottom", FieldUnit::degree, a[i]);
    }
    if (!(a[0] && a[1] && a[2] && a[3])) {
        return y - y0;
    }
    const tune::TiltAndSwirl r = tune::read_swirl({*a[0], *a[1], *a[2], *a[3]});
    const auto degrees = [](double v) { return print_fixed(v, 1) + "°"; };
    y += line(app, "coupon/by_height", {x, y}, w, "Height and feed", degrees(r.alike_deg));
    y += line(app, "coupon/by_tilt", {x, y}, w, "Tilt, to the bottom face", degrees(r.tilt_deg));
    y += line(app, "coupon/by_swirl", {x, y}, w, "Swirl", degrees(r.swirl_deg));
    y += 8;
    y += words(ui, "coupon/way", Type::text, {x, y}, w,
               r.clockwise_better ? "Cut outsides clockwise, holes the other way round."
                                  : "Cut outsides counter-clockwise, holes clockwise.",
               ui.tokens().ink);
    return y + 8 - y0;
}

float legs_list(App& app, Point at, float w, const tune::Coupon& coupon) {
    const UnitSystem units = app.book().shop.display.units;
    float y = at.y;
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        const tune::Leg& leg = coupon.legs[i];
        y += line(app, "coupon/list/" + std::to_string(i), {at.x, y}, w,
                  std::string(leg.label) + ' ' + (leg.size ? show_text(*leg.size, units) : std::to_string(leg.number)),
                  show_text(leg.feed, units) + ", " + show_text(leg.cut_height, units) + " high");
    }
    return y - at.y;
}

} // namespace

void coupon_sheet(App& app, Rect place, bool closable) {
    sheet(app, place, "coupon", "Test coupons", closable, [&](Rect body) {
        Ui& ui = app.ui();
        const UnitSystem units = app.book().shop.display.units;
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y + 12;
        y += kind_choice(app, {x, y}, w) + 12;
        const KindText& text = kinds[static_cast<std::size_t>(app.scratch.coupon)];
        y += words(ui, "coupon/what", Type::text, {x, y}, w, text.what, ui.tokens().ink) + 10;
        const auto& made = app.coupon();
        if (!made.ok()) {
            return y +
                   words(ui, "coupon/refused", Type::text, {x, y}, w, app.in_units(made.fault().text),
                         ui.tokens().stop) +
                   20 - body.y;
        }
        const tune::Coupon& c = made.value();
        y += save(app, {x, y}, w, c) + 8;
        y += coupon_picture(app, {x, y}, w, c) + 4;
        y += line(app, "coupon/size", {x, y}, w, "Plate needed",
                  show_text(c.width, units) + " × " + show_text(c.height, units));
        y += line(app, "coupon/time", {x, y}, w, "Time on the table", show(c.time).whole());
        if (c.kind != CouponKind::ladder) { // whose feeds stand beside its legs, and below
            y += legs_list(app, {x, y}, w, c);
        }
        y += controller_rows(app, body, y);
        switch (c.kind) {
        case CouponKind::ladder:
            y += ladder_showed(app, body, y, c);
            break;
        case CouponKind::kerf:
            y += kerf_showed(app, body, y, c);
            break;
        case CouponKind::swirl:
            y += swirl_showed(app, body, y);
            break;
        case CouponKind::heights:
            y += heights_showed(app, body, y, c);
            break;
        }
        return y + 20 - body.y;
    });
}

} // namespace torchside::web
