// Read a cut: touch what you see, or measure it; below stands what to turn and by how much.
#include "core/quantity/print.hpp"
#include "core/tune/squareness.hpp"
#include "generated/words/common.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/read_cut.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/sign_picture.hpp"

namespace torchside::web {
namespace {

struct SignGroup {
    const char* id;
    Word title;
    tune::Sign first;
    int count;
};
constexpr SignGroup groups[] = {
    {"read/dross", words::read_cut::under, tune::Sign::dross_none, 3},
    {"read/faces", words::read_cut::faces, tune::Sign::square, 5},
    {"read/sparks", words::read_cut::sparks, tune::Sign::sparks_below, 3},
    {"read/lag", words::read_cut::lag_lines, tune::Sign::lag_short, 3},
    {"read/besides", words::read_cut::besides, tune::Sign::top_spatter, 4},
};

// In the order of Cause.
constexpr Word cause_names[] = {words::read_cut::right, words::common::too_fast,  words::common::too_slow,
                                words::read_cut::high,  words::read_cut::low,     words::common::tilt_or_swirl,
                                words::read_cut::worn,  words::read_cut::corners, words::read_cut::limit};

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
    tune::Signs& signs = body.app.scratch.inputs.cut.signs;
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

/// "Lower the torch 0.3 mm: 1.4 V less, 0.03 V at the controller".
std::string amount(const App& app, const tune::Advice& a) {
    if (a.feed_to) {
        return app.say(words::read_cut::FeedTo{.feed = show_feed(app, *a.feed_to).whole()});
    }
    if (a.tilt_by_deg) {
        const double degrees = std::abs(*a.tilt_by_deg);
        return *a.tilt_by_deg < 0 ? app.say(words::read_cut::TiltRight{.degrees = words::fixed(degrees, 1)})
                                  : app.say(words::read_cut::TiltLeft{.degrees = words::fixed(degrees, 1)});
    }
    if (!a.height_by) {
        return {};
    }
    const bool lower = a.height_by->in(mm) < 0;
    const double sign = lower ? -1.0 : 1.0;
    const Length by = sign * *a.height_by;
    const Text height =
        lower ? Text(words::read_cut::Lower{.height = by}) : Text(words::read_cut::Higher{.height = by});
    if (!a.arc_by) {
        return app.say(height);
    }
    const std::string volts = show(sign * *a.arc_by, app.units()).whole();
    const std::string out = lower ? app.say(words::read_cut::Less{.height = height, .volts = volts})
                                  : app.say(words::read_cut::More{.height = height, .volts = volts});
    return app.book().shop.height_control.divider_ratio > 1
               ? app.say(words::read_cut::Controller{.read = show(sign * *a.controller_by, app.units()).whole(),
                                                     .volts = out})
               : out;
}

void squareness(Body& body, const tune::Squareness& s) {
    const App& app = body.app;
    body.line("read/angle", words::read_cut::angle, print_fixed(std::abs(s.angle_deg), 1, body.app.units()) + "°");
    body.line("read/u", words::read_cut::u, show_text(s.u, app.speech().units));
    body.line("read/range", tune::squareness_edition,
              s.range ? app.say(words::read_cut::Range{.number = *s.range}) : app.say(words::read_cut::past_range));
    Text note = words::read_cut::Zone{.zone = s.zone};
    if (s.limit) {
        note += words::read_cut::ZoneLimit{.limit = *s.limit};
    }
    body.gap(6);
    body.note("read/zone", app.say(note));
}

void reasons(Body& body, const tune::CutDiagnosis& r) {
    body.heading("read/why/title", words::read_cut::why);
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
    ToolInputs::Cut& s = body.app.scratch.inputs.cut;
    body.heading("read/measured", words::read_cut::measured);
    body.reading("field/scratch/kerf_top_mm", words::common::kerf_top, words::common::slot_top, FieldUnit::mm,
                 s.kerf_top);
    body.reading("field/scratch/kerf_bottom_mm", words::common::kerf_bottom, words::common::slot_bottom, FieldUnit::mm,
                 s.kerf_bottom);
    body.reading("field/scratch/left_deg", words::read_cut::left_face, words::read_cut::left_about, FieldUnit::degree,
                 s.left_deg);
    body.reading("field/scratch/right_deg", words::read_cut::right_face, words::read_cut::right_about,
                 FieldUnit::degree, s.right_deg);
    body.reading("field/scratch/lag_mm", words::read_cut::lag, words::read_cut::lag_about, FieldUnit::mm, s.lag);
    body.heading("read/cut", words::read_cut::how_cut);
    body.reading("field/scratch/height_mm", words::figure::cut_height, words::read_cut::height_about, FieldUnit::mm,
                 s.height);
    body.reading("field/scratch/arc_v", words::figure::arc, words::common::volts_at_torch, FieldUnit::volt, s.arc);
}

/// What stays in sight: the cause, the knob, and one touch to keep it.
void answer(Body& foot) {
    App& app = foot.app;
    const Tokens& t = foot.ui().tokens();
    const auto& reading = app.diagnosis();
    foot.rule();
    foot.gap(10);
    if (!reading.ok()) {
        const bool nothing = seen_cut(app.scratch.inputs) == SeenCut{};
        foot.words("read/refused", Type::text,
                   nothing ? app.say(words::read_cut::touch) : app.say(reading.fault().told()),
                   nothing ? t.quiet : t.stop);
        foot.gap(10);
        return;
    }
    const tune::CutDiagnosis& r = reading.value();
    const std::string by = amount(app, r.advice);
    foot.words("read/what", Type::title, app.say(r.advice.what), t.ink);
    foot.words("read/turn", Type::text, by.empty() ? app.say(r.advice.turn) : by, t.accent);
    foot.note("read/sure", app.say(words::read_cut::Sure{.share = words::percent(r.advice.chance)}));
    foot.gap(8);
    const Column::Side log{"read/log", words::read_cut::log, r.worth_logging ? Look::main : Look::plain,
                           r.worth_logging ? "" : "disabled"};
    const bool lean = r.advice.knob == tune::Knob::direction || r.advice.knob == tune::Knob::tilt;
    const auto used =
        lean ? foot.buttons(log, Column::Side{"read/swirl", words::read_cut::cut_coupon}) : foot.buttons(log);
    foot.gap(10);
    if (used && *used == 1) {
        app.scratch.inputs.coupon = tune::CouponKind::swirl;
        app.open("coupon");
    } else if (used && app.log(document::add(app.book(), r.row), words::read_cut::logged)) {
        app.scratch.inputs.cut = {};
        app.scratch.inputs.cut_feed.reset();
        app.open("log");
    }
}

} // namespace

void read_panel(App& app, PanelAt at) {
    const auto body_of = [&](Body& body) {
        body.reading("field/scratch/read_feed", words::read_cut::feed, words::read_cut::feed_about, FieldUnit::mm_min,
                     app.scratch.inputs.cut_feed);
        sign_tiles(body);
        entries(body);
        if (const auto& reading = app.diagnosis(); reading.ok()) {
            reasons(body, reading.value());
        }
        body.gap(20);
    };
    const auto foot = [](Body& body) { answer(body); };
    PanelFrame frame{"read", words::read_cut::title};
    if (!wants_keypad(app, "field/")) { // which needs the room
        frame.foot = Drawer::of(foot);
    }
    framed_panel(app, at, frame, Drawer::of(body_of));
}

} // namespace torchside::web
