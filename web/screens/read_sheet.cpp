// Read a cut: touch what you see, or measure it; below stands what to turn and by how much.
#include "core/quantity/print.hpp"
#include "core/tune/squareness.hpp"
#include "web/screens/entry.hpp"
#include "web/screens/sheet_frame.hpp"
#include "web/screens/show.hpp"
#include "web/screens/sign_picture.hpp"

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
constexpr float tile_height = 120;
constexpr float gap = 8;

// In the order of Cause.
constexpr const char* cause_names[] = {"Settings right", "Too fast", "Too slow",        "Too high",      "Too low",
                                       "Tilt or swirl",  "Worn",     "Slow at corners", "Near its limit"};

bool tile(Ui& ui, std::string_view id, Rect place, tune::Sign sign, bool marked) {
    const std::string_view name = tune::words(sign);
    const bool used = ui.node(id, Role::toggle, place, name, {}, marked ? "checked" : "");
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.fill(place, ui.pressed(id) ? t.hairline : t.ground);
    pen.frame(place, marked ? t.accent : t.ink, marked ? 3.0F : 1.0F);
    sign_picture(pen, t, sign, {place.centre().x, place.y + 33});
    pen.paragraph(Type::label, {place.x + 8, place.y + 62}, t.ink, name, place.w - 12);
    return used;
}

float sign_tiles(App& app, Point at, float w) {
    Ui& ui = app.ui();
    const int columns = std::clamp(static_cast<int>(w / 110), 3, 5);
    const float tile_w = (w - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
    tune::Signs& signs = app.scratch.cut.signs;
    float y = at.y;
    for (const SignGroup& group : groups) {
        y += section(ui, std::string(group.id) + "/title", {at.x, y}, w, group.title);
        ui.open_group(group.id, Role::group, {at.x, y, w, tile_height}, group.title);
        for (int i = 0; i < group.count; ++i) {
            const auto sign = static_cast<tune::Sign>(static_cast<int>(group.first) + i);
            const float x = at.x + (tile_w + gap) * static_cast<float>(i % columns);
            const Rect place{x, y + (tile_height + gap) * static_cast<float>(i / columns), tile_w, tile_height};
            if (tile(ui, std::string(group.id) + '/' + std::to_string(i), place, sign, signs.has(sign))) {
                signs = tune::touched(signs, sign);
            }
        }
        ui.close_group();
        y += (tile_height + gap) * static_cast<float>((group.count + columns - 1) / columns);
    }
    return y - at.y;
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

float squareness(App& app, Point at, float w, const tune::Squareness& s) {
    const UnitSystem units = app.book().shop.display.units;
    float y = at.y;
    y += line(app, "read/angle", {at.x, y}, w, "Face off square by", print_fixed(std::abs(s.angle_deg), 1) + "°");
    y += line(app, "read/u", {at.x, y}, w, "u of that face", show_text(s.u, units));
    y += line(app, "read/range", {at.x, y}, w, tune::squareness_edition,
              s.range ? "range " + std::to_string(*s.range) : std::string("past range 5"));
    std::string note = "u without the edge zones, " + show_text(s.zone, units) + " at the top and at the bottom.";
    if (s.limit) {
        note += " The range goes to " + show_text(*s.limit, units) + " at this thickness.";
    }
    y += 6 + words(app.ui(), "read/zone", Type::label, {at.x, y + 6}, w, note, app.ui().tokens().quiet);
    return y - at.y;
}

float reasons(App& app, Point at, float w, const tune::CutDiagnosis& r) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    float y = at.y + section(ui, "read/why/title", at, w, "Why");
    y += words(ui, "read/why", Type::text, {at.x, y}, w, app.say(r.advice.why), t.ink) + 8;
    for (std::size_t i = 0; i < r.causes.size(); ++i) {
        if (r.causes[i] >= 0.1) {
            y += line(app, "read/cause/" + std::to_string(i), {at.x, y}, w, cause_names[i],
                      print_percent(r.causes[i]).text());
        }
    }
    return y + (r.squareness ? squareness(app, {at.x, y}, w, *r.squareness) : 0) - at.y;
}

float entries(App& app, Rect body, float y0) {
    App::Scratch::Cut& s = app.scratch.cut;
    const float x = body.x + sheet_margin;
    const float w = body.w - 2 * sheet_margin;
    float y = y0;
    const auto field = [&](const char* id, const char* label, const char* idle, FieldUnit unit,
                           std::optional<double>& value) {
        y += scratch_entry(app, {body.x, y, body.w, 0}, id, label, idle, unit, value);
    };
    y += section(app.ui(), "read/measured", {x, y}, w, "Measured instead, if you can");
    field("field/scratch/kerf_top_mm", "Kerf, top", "Width of the slot at the top", FieldUnit::mm, s.kerf_top);
    field("field/scratch/kerf_bottom_mm", "Kerf, bottom", "Width of the slot at the bottom", FieldUnit::mm,
          s.kerf_bottom);
    field("field/scratch/left_deg", "Left face", "Off square, left of travel; minus: wider at the bottom",
          FieldUnit::degree, s.left_deg);
    field("field/scratch/right_deg", "Right face", "The same on the right; both tell tilt from height",
          FieldUnit::degree, s.right_deg);
    field("field/scratch/lag_mm", "Lag", "How far the drag lines trail at the bottom", FieldUnit::mm, s.lag);
    y += section(app.ui(), "read/cut", {x, y}, w, "How it was cut");
    field("field/scratch/height_mm", "Cut height", "The usual one if left alone", FieldUnit::mm, s.height);
    field("field/scratch/arc_v", "Arc volts", "At the torch: controller volts times the divider", FieldUnit::volt,
          s.arc);
    return y - y0;
}

/// What stays in sight: the cause, the knob, and one touch to keep it. Only measured when `draw` is false.
float answer(App& app, Rect place, bool draw) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const float x = place.x + sheet_margin;
    const float w = place.w - 2 * sheet_margin;
    float y = place.y + 10;
    const auto say = [&](const char* id, Type type, std::string_view text, Colour colour) {
        y += draw ? words(ui, id, type, {x, y}, w, text, colour) : ui.pen().paragraph(type, {}, {}, text, w, false);
    };
    const auto& reading = app.reading();
    if (!reading.ok()) {
        const bool nothing = app.seen() == SeenCut{};
        say("read/refused", Type::text,
            nothing ? "Touch what you see: what to turn stands here." : app.in_units(reading.fault().text),
            nothing ? t.quiet : t.stop);
        return y + 10 - place.y;
    }
    const tune::CutDiagnosis& r = reading.value();
    const std::string by = amount(app, r.advice);
    say("read/what", Type::title, app.say(r.advice.what), t.ink);
    say("read/turn", Type::text, by.empty() ? app.say(r.advice.turn) : by, t.accent);
    say("read/sure", Type::label, "How sure: " + print_percent(r.advice.chance).text() + ". One knob at a time.",
        t.quiet);
    y += 8;
    const bool lean = r.advice.knob == tune::Knob::direction || r.advice.knob == tune::Knob::tilt;
    const Rect left{x, y, lean ? (w - gap) / 2 : w, ui.reach()};
    if (draw) {
        if (button(ui, "read/log", left, "Put it into the log", r.worth_logging ? Look::main : Look::plain,
                   Role::button, r.worth_logging ? "" : "disabled") &&
            r.worth_logging && app.log(document::add(app.book(), r.row), "Cut logged")) {
            app.scratch.cut = {};
            app.scratch.cut_feed.reset();
            app.open("log");
        } else if (lean && button(ui, "read/swirl", {left.right() + gap, y, left.w, left.h}, "Cut the coupon")) {
            app.scratch.coupon = tune::CouponKind::swirl;
            app.open("coupon");
        }
    }
    return y + ui.reach() + 10 - place.y;
}

} // namespace

void read_sheet(App& app, Rect place, bool closable) {
    const bool typing = wants_keypad(app, "field/");
    const auto foot = [&](Rect at) {
        app.ui().pen().hline(at.x, at.right(), at.y, app.ui().tokens().rule, 1.5F);
        return answer(app, at, true);
    };
    const float foot_height = typing ? 0 : answer(app, place, false);
    const auto body_of = [&](Rect body) {
        const float x = body.x + sheet_margin;
        const float w = body.w - 2 * sheet_margin;
        float y = body.y;
        y += scratch_entry(app, {body.x, y, body.w, 0}, "field/scratch/read_feed", "It was cut at",
                           "Its feed; the next test's if left alone", FieldUnit::mm_min, app.scratch.cut_feed);
        y += sign_tiles(app, {x, y}, w);
        y += entries(app, body, y);
        if (const auto& reading = app.reading(); reading.ok()) {
            y += reasons(app, {x, y}, w, reading.value());
        }
        return y + 20 - body.y;
    };
    framed_sheet(app, place, {"read", "Read a cut", closable, foot_height, Drawer::of(foot)}, Drawer::of(body_of));
}

} // namespace torchside::web
