// Test coupons: which one, drawn to scale, its program to download, and what it showed.
#include "core/quantity/print.hpp"
#include "generated/words/common.hpp"
#include "generated/words/coupon.hpp"
#include "generated/words/done.hpp"
#include "generated/words/hazards.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/coupon_heights.hpp"
#include "web/screens/tune/coupon_picture.hpp"

namespace torchside::web {
namespace {

using tune::CouponKind;

struct KindText {
    Word name;
    const char* file;
    Word what;
};
// In the order of CouponKind.
constexpr KindText kinds[] = {
    {words::coupon::ladder, "ladder", words::coupon::ladder_what},
    {words::coupon::heights, "heights", words::coupon::heights_what},
    {words::coupon::kerf, "kerf", words::coupon::kerf_what},
    {words::common::tilt_or_swirl, "swirl", words::coupon::swirl_what},
};

void kind_choice(Body& body) {
    App& app = body.app;
    std::vector<Choice> items;
    for (std::size_t i = 0; i < std::size(kinds); ++i) {
        items.push_back({std::string("coupon/") + kinds[i].file, app.say(kinds[i].name),
                         app.scratch.inputs.coupon == static_cast<CouponKind>(i)});
    }
    if (const auto touched = body.choices("coupon/kind", words::coupon::kind, items, 2)) {
        app.ui().stop_edit();
        app.scratch.inputs.coupon = static_cast<CouponKind>(*touched);
    }
}

/// The program in one touch, beside what to look after before it runs.
void save(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    const Workbook& book = app.book();
    body.sign("coupon/check", Sign::caution, words::coupon::check);
    body.gap(8);
    if (body.button("coupon/save", words::coupon::save, Look::main)) {
        const auto text = coupon_program(book, coupon, app.speech().language);
        if (text.ok()) {
            const std::string name = std::string(kinds[static_cast<std::size_t>(coupon.kind)].file) + '-' +
                                     print_trimmed(book.job.thickness.in(mm), 2) + "mm-" +
                                     print_trimmed(book.job.current.in(ampere), 0) + "A.nc";
            platform::download(name, "text/plain", text.value());
            app.say(app.say(words::done::Saved{.file = name}));
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
    body.heading("coupon/program", words::coupon::program);
    const std::string_view dwell = c.dwell == DwellUnit::second ? "s" : "ms";
    const std::string codes =
        metric ? app.say(words::coupon::CodesMetric{.dwell = dwell, .off = c.torch_off, .on = c.torch_on})
               : app.say(words::coupon::CodesInch{.dwell = dwell, .off = c.torch_off, .on = c.torch_on});
    if (body.row("coupon/words", words::coupon::codes, codes, Mark::keyboard)) {
        app.open("controller");
    }
    if (body.row("coupon/safety", words::hazards::title, app.say(app.worksheet().safety.shade_text), Mark::air)) {
        app.open("safety");
    }
}

void ladder_showed(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    Ui& ui = app.ui();
    auto& clean = app.scratch.inputs.clean;
    body.heading("coupon/showed", words::coupon::clean_which);
    const std::vector<std::size_t> order = from_below(coupon);
    const Grid cells = body.grid(order.size(), body.room() < 400 ? 2 : 3, ui.touch_height());
    ui.open_group("coupon/clean", Role::group, {cells.place.x, cells.place.y, cells.place.w, 1},
                  words::coupon::clean_legs);
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
    body.line("coupon/go_on", words::coupon::go_on, show_feed(app, read->go_on).whole());
    body.gap(12);
    const Text count = words::common::Cuts{.count = static_cast<int>(read->rows.size())};
    if (body.button("coupon/log", app.say(words::common::Log{.what = count}), Look::main)) {
        Outcome<Workbook> next = app.book();
        for (const tune::TestCut& row : read->rows) {
            if (next.ok()) {
                next = document::add(next.value(), row);
            }
        }
        if (app.log(std::move(next), app.say(words::common::Logged{.what = count}))) {
            clean = {};
            app.open("log");
        }
    }
    body.gap(8);
}

void kerf_showed(Body& body, const tune::Coupon& coupon) {
    App& app = body.app;
    ToolInputs& s = app.scratch.inputs;
    const Units units = app.units();
    body.heading("coupon/showed", words::coupon::measures);
    const auto field = [&](const char* id, Word label, const tune::Leg& leg, std::optional<double>& value) {
        body.reading(id, label, app.say(words::coupon::MeasuresAbout{.size = *leg.size}), FieldUnit::mm, value);
    };
    field("field/scratch/square_mm", words::coupon::square, coupon.legs.back(), s.square);
    field("field/scratch/hole_mm", words::coupon::hole, coupon.legs.front(), s.hole);
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
    const auto kerf = [&](const char* id, Word name, std::optional<Length> l) {
        if (l) {
            body.line(id, name, show_text(*l, units));
        }
    };
    kerf("coupon/kerf/square", words::coupon::kerf_straight, read.value().square);
    kerf("coupon/kerf/hole", words::coupon::kerf_hole, read.value().hole);
    kerf("coupon/kerf/offset", words::coupon::offset, read.value().offset);
    body.gap(12);
    if (body.button("coupon/log", words::coupon::log_kerf, Look::main) &&
        app.log(document::add(app.book(), read.value().row), words::common::kerf_logged)) {
        s.square.reset();
        s.hole.reset();
        app.open("log");
    }
    body.gap(8);
}

void swirl_showed(Body& body) {
    auto& a = body.app.scratch.inputs.angle;
    constexpr Word labels[] = {words::coupon::left_top, words::coupon::left_bottom, words::coupon::right_top,
                               words::coupon::right_bottom};
    body.heading("coupon/showed", words::coupon::off_square);
    for (std::size_t i = 0; i < a.size(); ++i) {
        body.reading("field/scratch/face/" + std::to_string(i) + "_deg", labels[i], words::coupon::face_about,
                     FieldUnit::degree, a[i]);
    }
    if (!(a[0] && a[1] && a[2] && a[3])) {
        return;
    }
    const tune::TiltAndSwirl r = tune::read_swirl({*a[0], *a[1], *a[2], *a[3]});
    const Units units = body.app.units();
    const auto degrees = [units](double v) { return print_fixed(v, 1, units) + "°"; };
    body.line("coupon/by_height", words::coupon::by_height, degrees(r.alike_deg));
    body.line("coupon/by_tilt", words::coupon::by_tilt, degrees(r.tilt_deg));
    body.line("coupon/by_swirl", words::coupon::by_swirl, degrees(r.swirl_deg));
    body.gap(8);
    body.text("coupon/way", r.clockwise_better ? words::coupon::clockwise : words::coupon::counterclockwise);
    body.gap(8);
}

Text name_of(const tune::Coupon& coupon, const tune::Leg& leg) {
    if (!leg.size) {
        return words::coupon::Leg{.number = leg.number};
    }
    const bool first = &leg == &coupon.legs.front();
    if (coupon.kind == CouponKind::swirl) {
        return first ? Text(words::coupon::SquareClockwise{.size = *leg.size})
                     : Text(words::coupon::SquareCounter{.size = *leg.size});
    }
    return coupon.kind == CouponKind::kerf && first ? Text(words::coupon::HoleOf{.size = *leg.size})
                                                    : Text(words::coupon::SquareOf{.size = *leg.size});
}

void legs_list(Body& body, const tune::Coupon& coupon) {
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        const tune::Leg& leg = coupon.legs[i];
        body.line("coupon/list/" + std::to_string(i), body.app.say(name_of(coupon, leg)),
                  body.app.say(words::coupon::LegAt{.feed = leg.feed, .height = leg.cut_height}));
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
    panel(app, at, "coupon", words::coupon::title, [&](Body& body) {
        body.gap(12);
        kind_choice(body);
        body.gap(12);
        body.text("coupon/what", kinds[static_cast<std::size_t>(app.scratch.inputs.coupon)].what);
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
        if (c.kind == CouponKind::heights) {
            heights_picture(body, c);
        }
        body.gap(4);
        body.line("coupon/size", words::coupon::plate, app.say(words::common::By{.across = c.width, .up = c.height}));
        body.line("coupon/time", words::coupon::time, show(c.time, app.units()).whole());
        if (c.kind != CouponKind::ladder) { // whose feeds stand beside its legs, and below
            legs_list(body, c);
        }
        controller_rows(body);
        showed(body, c);
        body.gap(20);
    });
}

} // namespace torchside::web
