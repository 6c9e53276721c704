// Test coupons: which one, drawn to scale, its program to download, and what it showed.
#include "core/quantity/print.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/coupon_heights.hpp"
#include "web/screens/tune/coupon_picture.hpp"

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

void kind_choice(Body& body) {
    App& app = body.app;
    std::vector<Choice> items;
    for (std::size_t i = 0; i < std::size(kinds); ++i) {
        items.push_back(
            {std::string("coupon/") + kinds[i].file, kinds[i].name, app.scratch.coupon == static_cast<CouponKind>(i)});
    }
    if (const auto touched = body.choices("coupon/kind", "Coupon", items, 2)) {
        app.ui().stop_edit();
        app.scratch.coupon = static_cast<CouponKind>(*touched);
    }
}

/// The program in one touch, beside what to look after before it runs.
void save(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    const Workbook& book = app.book();
    body.sign("coupon/check", Sign::caution,
              "Check before you run: units, origin, heights and torch words. Run it dry first, clamp the plate, "
              "stay at the table.");
    body.gap(8);
    if (body.button("coupon/save", "Save the program", Look::main)) {
        const auto text = coupon_program(book, coupon, app.speech().language);
        if (text.ok()) {
            const std::string name = std::string(kinds[static_cast<std::size_t>(coupon.kind)].file) + '-' +
                                     print_trimmed(book.job.thickness.in(mm), 2) + "mm-" +
                                     print_trimmed(book.job.current.in(ampere), 0) + "A.nc";
            platform::download(name, "text/plain", text.value());
            app.say("Saved as " + name + ". Look in your downloads.");
        }
        app.refuse(text.ok() ? "" : app.say(text.fault().told()));
    }
    body.gap(8);
    if (!app.refusal().empty() && !app.ui().edit()) {
        body.refusal("coupon/refused", app.refusal());
        body.gap(8);
    }
}

void controller_rows(Body& body) {
    App& app = body.app;
    const Controller& c = app.book().shop.controller;
    const bool metric = program_units(app.book().shop) == UnitSystem::metric;
    body.heading("coupon/program", "The program");
    if (body.row("coupon/words", "Words of your controller",
                 c.torch_on + " · " + c.torch_off + " · dwell in " + (c.dwell == DwellUnit::second ? "s" : "ms") +
                     (metric ? " · mm" : " · inch"),
                 Mark::keyboard)) {
        app.open("controller");
    }
    if (body.row("coupon/safety", "Safety", app.say(app.worksheet().safety.shade_text), Mark::air)) {
        app.open("safety");
    }
}

void ladder_showed(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    Ui& ui = app.ui();
    auto& clean = app.scratch.clean;
    body.heading("coupon/showed", "Which legs came out clean?");
    const std::vector<std::size_t> order = from_below(coupon);
    const Grid cells = body.grid(order.size(), body.room() < 400 ? 2 : 3, ui.touch_height());
    ui.open_group("coupon/clean", Role::group, {cells.place.x, cells.place.y, cells.place.w, 1}, "Clean legs");
    for (std::size_t i = 0; i < order.size(); ++i) {
        bool& is_clean = clean[order[i]];
        if (button(ui, "coupon/leg/" + std::to_string(i), cells.cell(i), leg_words(app, coupon, coupon.legs[order[i]]),
                   is_clean ? Look::chosen : Look::plain, Role::toggle, is_clean ? "checked" : "")) {
            is_clean = !is_clean;
        }
    }
    ui.close_group();
    body.gap(cells.apart.y);
    const auto read = read_ladder(app.book(), coupon, std::span(clean).first(coupon.legs.size()));
    if (!read) {
        return;
    }
    body.line("coupon/go_on", "Go on with", show_feed(read->go_on, app.book().shop).whole());
    body.gap(12);
    const std::string count = std::to_string(read->rows.size()) + " cuts";
    if (body.button("coupon/log", "Put " + count + " into the log", Look::main)) {
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
    body.gap(8);
}

void kerf_showed(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    App::Scratch& s = app.scratch;
    const UnitSystem units = app.book().shop.display.units;
    body.heading("coupon/showed", "What does it measure?");
    const auto field = [&](const char* id, const char* label, const tune::Leg& leg, std::optional<double>& value) {
        body.reading(id, label, "Cut as " + show_text(*leg.size, units) + "; mean of top and bottom edge",
                     FieldUnit::mm, value);
    };
    field("field/scratch/square_mm", "Square", coupon.legs.back(), s.square);
    field("field/scratch/hole_mm", "Hole", coupon.legs.front(), s.hole);
    const auto length = [](std::optional<double> v) { return v ? std::optional(Length{*v, mm}) : std::nullopt; };
    if (!s.square && !s.hole) {
        return;
    }
    const auto read = read_kerf(app.book(), coupon, length(s.square), length(s.hole));
    body.gap(8);
    if (!read.ok()) {
        body.refusal("coupon/wrong", app.say(read.fault().told()));
        body.gap(8);
        return;
    }
    const auto kerf = [&](const char* id, const char* name, std::optional<Length> l) {
        if (l) {
            body.line(id, name, show_text(*l, units));
        }
    };
    kerf("coupon/kerf/square", "Kerf on straight sides", read.value().square);
    kerf("coupon/kerf/hole", "Kerf in the hole", read.value().hole);
    kerf("coupon/kerf/offset", "Offset, half of it", read.value().offset);
    body.gap(12);
    if (body.button("coupon/log", "Put it into the log", Look::main) &&
        app.log(document::add(app.book(), read.value().row), "Kerf logged")) {
        s.square.reset();
        s.hole.reset();
        app.open("log");
    }
    body.gap(8);
}

void swirl_showed(Body& body) {
    auto& a = body.app.scratch.angle;
    constexpr const char* labels[] = {"Left, top", "Left, bottom", "Right, top", "Right, bottom"};
    body.heading("coupon/showed", "How far off square are the faces?");
    for (std::size_t i = 0; i < a.size(); ++i) {
        body.reading("field/scratch/face/" + std::to_string(i) + "_deg", labels[i],
                     "Face of that square as drawn; minus: narrower at the bottom", FieldUnit::degree, a[i]);
    }
    if (!(a[0] && a[1] && a[2] && a[3])) {
        return;
    }
    const tune::TiltAndSwirl r = tune::read_swirl({*a[0], *a[1], *a[2], *a[3]});
    const auto degrees = [](double v) { return print_fixed(v, 1) + "°"; };
    body.line("coupon/by_height", "Height and feed", degrees(r.alike_deg));
    body.line("coupon/by_tilt", "Tilt, to the bottom face", degrees(r.tilt_deg));
    body.line("coupon/by_swirl", "Swirl", degrees(r.swirl_deg));
    body.gap(8);
    body.text("coupon/way", r.clockwise_better ? "Cut outsides clockwise, holes the other way round."
                                               : "Cut outsides counter-clockwise, holes clockwise.");
    body.gap(8);
}

void legs_list(Body& body, const tune::Coupon& coupon) {
    const UnitSystem units = body.app.book().shop.display.units;
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        const tune::Leg& leg = coupon.legs[i];
        body.line("coupon/list/" + std::to_string(i),
                  body.app.say(leg.label) + ' ' + (leg.size ? show_text(*leg.size, units) : std::to_string(leg.number)),
                  show_text(leg.feed, units) + ", " + show_text(leg.cut_height, units) + " high");
    }
}

void showed(Body& body, const tune::Coupon& coupon) {
    switch (coupon.kind) {
    case CouponKind::ladder:
        return ladder_showed(body, coupon);
    case CouponKind::kerf:
        return kerf_showed(body, coupon);
    case CouponKind::swirl:
        return swirl_showed(body);
    case CouponKind::heights:
        return heights_showed(body, coupon);
    }
}

} // namespace

void coupon_panel(App& app, PanelAt at) {
    panel(app, at, "coupon", "Test coupons", [&](Body& body) {
        const UnitSystem units = app.book().shop.display.units;
        body.gap(12);
        kind_choice(body);
        body.gap(12);
        body.text("coupon/what", kinds[static_cast<std::size_t>(app.scratch.coupon)].what);
        body.gap(10);
        const auto& made = app.coupon();
        if (!made.ok()) {
            body.refusal("coupon/refused", app.say(made.fault().told()));
            body.gap(20);
            return;
        }
        const tune::Coupon& c = made.value();
        save(body, c);
        body.gap(8);
        coupon_picture(body, c);
        body.gap(4);
        body.line("coupon/size", "Plate needed", show_text(c.width, units) + " × " + show_text(c.height, units));
        body.line("coupon/time", "Time on the table", show(c.time).whole());
        if (c.kind != CouponKind::ladder) { // whose feeds stand beside its legs, and below
            legs_list(body, c);
        }
        controller_rows(body);
        showed(body, c);
        body.gap(20);
    });
}

} // namespace torchside::web
