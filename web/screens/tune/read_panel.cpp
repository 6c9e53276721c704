// Read a cut: touch what you see, or measure it; below stands what to turn and by how much.
#include "core/quantity/print.hpp"
#include "core/tune/squareness.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/sign_picture.hpp"

namespace torchside::web {
namespace {

struct SignGroup {
    const char* id;
    const char* title;
    tune::Sign first;
    int count;
};
constexpr SignGroup groups[] = {
    {"read/dross", "Under the plate", tune::Sign::dross_none, 3},
    {"read/faces", "Faces of the part", tune::Sign::square, 5},
    {"read/sparks", "Sparks, torch moving right", tune::Sign::sparks_below, 3},
    {"read/lag", "Drag lines on the face, torch moved right", tune::Sign::lag_short, 3},
    {"read/besides", "Besides", tune::Sign::top_spatter, 4},
};

// In the order of Cause.
constexpr const char* cause_names[] = {"Settings right", "Too fast", "Too slow",        "Too high",      "Too low",
                                       "Tilt or swirl",  "Worn",     "Slow at corners", "Near its limit"};

bool tile(Ui& ui, const Language& language, std::string_view id, Rect place, tune::Sign sign, bool marked) {
    const std::string_view name = phrase(tune::name(sign), language);
    const bool used = ui.node(id, Role::toggle, place, name, {}, marked ? "checked" : "");
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.fill(place, ui.pressed(id) ? t.hairline : t.ground);
    pen.frame(place, marked ? t.accent : t.ink, marked ? 3.0F : 1.0F);
    sign_picture(pen, t, sign, {place.centre().x, place.y + 33});
    pen.paragraph(Type::label, {place.x + 8, place.y + 62}, t.ink, name, place.w - 12);
    return used;
}

void sign_tiles(Body& body) {
    constexpr float tile_height = 120;
    Ui& ui = body.ui();
    const auto columns = static_cast<std::size_t>(std::clamp(static_cast<int>(body.room() / 110), 3, 5));
    tune::Signs& signs = body.app.scratch.cut.signs;
    for (const SignGroup& group : groups) {
        body.heading(std::string(group.id) + "/title", group.title);
        const auto count = static_cast<std::size_t>(group.count);
        const Grid tiles = body.grid(count, columns, tile_height);
        ui.open_group(group.id, Role::group, {tiles.place.x, tiles.place.y, tiles.place.w, tile_height}, group.title);
        for (std::size_t i = 0; i < count; ++i) {
            const auto sign = static_cast<tune::Sign>(static_cast<std::size_t>(group.first) + i);
            if (tile(ui, body.app.speech().language, std::string(group.id) + '/' + std::to_string(i), tiles.cell(i),
                     sign, signs.has(sign))) {
                signs = tune::touched(signs, sign);
            }
        }
        ui.close_group();
        body.gap(tiles.apart.y);
    }
}

/// "0.3 mm lower: 1.4 V less, 0.03 V at the controller".
std::string amount(const App& app, const tune::Advice& a) {
    const UnitSystem units = app.book().shop.display.units;
    if (a.feed_to) {
        return "Feed to " + show_feed(*a.feed_to, app.book().shop).whole();
    }
    if (a.tilt_by_deg) {
        return "Top of the torch " + print_fixed(std::abs(*a.tilt_by_deg), 1) + "° to the " +
               (*a.tilt_by_deg < 0 ? "right" : "left") + " of travel; if it is square already, cut the coupon";
    }
    if (!a.height_by) {
        return {};
    }
    const bool lower = a.height_by->in(mm) < 0;
    const double sign = lower ? -1.0 : 1.0;
    std::string out = "Height " + show_text(sign * *a.height_by, units) + (lower ? " lower" : " higher");
    if (a.arc_by) {
        out += ": " + show(sign * *a.arc_by).whole() + (lower ? " less" : " more");
        if (app.book().shop.height_control.divider_ratio > 1) {
            out += ", " + show(sign * *a.controller_by).whole() + " at the controller";
        }
    }
    return out;
}

void squareness(Body& body, const tune::Squareness& s) {
    const UnitSystem units = body.app.book().shop.display.units;
    body.line("read/angle", "Face off square by", print_fixed(std::abs(s.angle_deg), 1) + "°");
    body.line("read/u", "u of that face", show_text(s.u, units));
    body.line("read/range", tune::squareness_edition,
              s.range ? "range " + std::to_string(*s.range) : std::string("past range 5"));
    std::string note = "u without the edge zones, " + show_text(s.zone, units) + " at the top and at the bottom.";
    if (s.limit) {
        note += " The range goes to " + show_text(*s.limit, units) + " at this thickness.";
    }
    body.gap(6);
    body.note("read/zone", note);
}

void reasons(Body& body, const tune::CutDiagnosis& r) {
    body.heading("read/why/title", "Why");
    body.text("read/why", body.app.say(r.advice.why));
    body.gap(8);
    for (std::size_t i = 0; i < r.causes.size(); ++i) {
        if (r.causes[i] >= 0.1) {
            body.line("read/cause/" + std::to_string(i), cause_names[i], print_percent(r.causes[i]).text());
        }
    }
    if (r.squareness) {
        squareness(body, *r.squareness);
    }
}

void entries(Body& body) {
    App::Scratch::Cut& s = body.app.scratch.cut;
    body.heading("read/measured", "Measured instead, if you can");
    body.reading("field/scratch/kerf_top_mm", "Kerf, top", "Width of the slot at the top", FieldUnit::mm, s.kerf_top);
    body.reading("field/scratch/kerf_bottom_mm", "Kerf, bottom", "Width of the slot at the bottom", FieldUnit::mm,
                 s.kerf_bottom);
    body.reading("field/scratch/left_deg", "Left face", "Off square, left of travel; minus: wider at the bottom",
                 FieldUnit::degree, s.left_deg);
    body.reading("field/scratch/right_deg", "Right face", "The same on the right; both tell tilt from height",
                 FieldUnit::degree, s.right_deg);
    body.reading("field/scratch/lag_mm", "Lag", "How far the drag lines trail at the bottom", FieldUnit::mm, s.lag);
    body.heading("read/cut", "How it was cut");
    body.reading("field/scratch/height_mm", "Cut height", "The usual one if left alone", FieldUnit::mm, s.height);
    body.reading("field/scratch/arc_v", "Arc volts", "At the torch: controller volts times the divider",
                 FieldUnit::volt, s.arc);
}

/// What stays in sight: the cause, the knob, and one touch to keep it.
void answer(Body& foot) {
    App& app = foot.app;
    const Tokens& t = foot.ui().tokens();
    const auto& reading = app.reading();
    foot.rule();
    foot.gap(10);
    if (!reading.ok()) {
        const bool nothing = app.seen() == SeenCut{};
        foot.words("read/refused", Type::text,
                   nothing ? "Touch what you see: what to turn stands here." : app.say(reading.fault().told()),
                   nothing ? t.quiet : t.stop);
        foot.gap(10);
        return;
    }
    const tune::CutDiagnosis& r = reading.value();
    const std::string by = amount(app, r.advice);
    foot.words("read/what", Type::title, app.say(r.advice.what), t.ink);
    foot.words("read/turn", Type::text, by.empty() ? app.say(r.advice.turn) : by, t.accent);
    foot.note("read/sure", "How sure: " + print_percent(r.advice.chance).text() + ". One knob at a time.");
    foot.gap(8);
    const Column::Side log{"read/log", "Put it into the log", r.worth_logging ? Look::main : Look::plain,
                           r.worth_logging ? "" : "disabled"};
    const bool lean = r.advice.knob == tune::Knob::direction || r.advice.knob == tune::Knob::tilt;
    const auto used = lean ? foot.buttons(log, Column::Side{"read/swirl", "Cut the coupon"}) : foot.buttons(log);
    foot.gap(10);
    if (used && *used == 1) {
        app.scratch.coupon = tune::CouponKind::swirl;
        app.open("coupon");
    } else if (used && app.log(document::add(app.book(), r.row), "Cut logged")) {
        app.scratch.cut = {};
        app.scratch.cut_feed.reset();
        app.open("log");
    }
}

} // namespace

void read_panel(App& app, PanelAt at) {
    const auto body_of = [&](Body& body) {
        body.reading("field/scratch/read_feed", "It was cut at", "Its feed; the next test's if left alone",
                     FieldUnit::mm_min, app.scratch.cut_feed);
        sign_tiles(body);
        entries(body);
        if (const auto& reading = app.reading(); reading.ok()) {
            reasons(body, reading.value());
        }
        body.gap(20);
    };
    const auto foot = [](Body& body) { answer(body); };
    PanelFrame frame{"read", "Read a cut"};
    if (!wants_keypad(app, "field/")) { // which needs the room
        frame.foot = Drawer::of(foot);
    }
    framed_panel(app, at, frame, Drawer::of(body_of));
}

} // namespace torchside::web
