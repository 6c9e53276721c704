#include "web/screens/sheet_frame.hpp"

#include <algorithm>

#include "core/schema/schema.hpp"

namespace torchside::web {

float line(App& app, std::string_view id, Point at, float w, std::string_view name, std::string_view value) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    const Pen& pen = ui.pen();
    const float name_w = pen.width(Type::text, name);
    const float value_w = pen.width(Type::title, value);
    const bool beside = name_w + value_w + 10 <= w;
    // A long name wraps beside a short value; two long ones stand one under the other.
    const float room = beside || value_w <= w / 2 ? w - value_w - 10 : w;
    const float name_h = pen.paragraph(Type::text, {at.x, at.y + 8}, t.ink, name, room);
    const float value_y = room < w || beside ? at.y + 8 : at.y + 8 + name_h;
    const float value_h = pen.paragraph(Type::title, {at.x, value_y}, t.ink, value, w, true, Align::right);
    const float height = std::max(at.y + 8 + name_h, value_y + value_h) + 8 - at.y;
    ui.node(id, Role::text, {at.x, at.y, w, height}, name, value);
    pen.hline(at.x, at.x + w, at.y + height, t.hairline, 1);
    return height + 1;
}

float signed_words(App& app, std::string_view id, Sign sign, Point at, float w, std::string_view text,
                   std::string_view source) {
    Ui& ui = app.ui();
    const Tokens& t = ui.tokens();
    draw_sign(ui.pen(), t, sign, {at.x + 10, at.y + 20});
    float y = at.y + 10;
    y += words(ui, id, Type::text, {at.x + 32, y}, w - 32, text, colour_of(t, sign));
    if (!source.empty()) {
        y += 2 + words(ui, std::string(id) + "/source", Type::label, {at.x + 32, y + 2}, w - 32, source, t.quiet);
    }
    ui.pen().hline(at.x, at.x + w, y + 10, t.hairline, 1);
    return y + 11 - at.y;
}

float signed_words_height(const Ui& ui, float w, std::string_view text, std::string_view source) {
    const auto height = [&](Type type, std::string_view of) {
        return ui.pen().paragraph(type, {}, {}, of, w - 32, false);
    };
    return 21 + height(Type::text, text) + (source.empty() ? 0 : 2 + height(Type::label, source));
}

void SheetTop::draw(Rect place) {
    if (sheet_head(app.ui(), id, place, title, closable)) {
        app.close();
    }
}

void SheetTop::put(Rect& place, bool typing) {
    constexpr float lowest = 300; // a window that can spare the height for a head that stays
    Ui& ui = app.ui();
    const float height = sheet_head_height(ui);
    if (ui.low() && (typing || ui.screen().h < lowest)) {
        ui.lead_with({this, height, [](void* top, Rect at) { static_cast<SheetTop*>(top)->draw(at); }});
    } else {
        draw(place.take_top(height));
    }
}

void framed_sheet(App& app, Rect place, SheetFrame frame, Drawer body) {
    constexpr float least_body = 84; // a field and what is said below it
    Ui& ui = app.ui();
    ui.open_group(frame.id, sheet_role(frame.closable), place, frame.title);
    const bool pad = frame.has_fields && wants_keypad(app, "field/");
    SheetTop top{app, frame.id, frame.title, frame.closable};
    top.put(place, pad);
    const bool foot_stays = frame.foot_height < place.h / 2;
    const Rect foot_place = place.take_bottom(foot_stays ? frame.foot_height : 0);
    const Rect pad_place = pad ? place.take_bottom(keypad_height(ui)) : Rect{};
    const bool verdict_stays = place.h - frame.verdict_height >= least_body;
    if (verdict_stays && frame.verdict_height > 0) {
        frame.verdict.draw_at(place.take_top(frame.verdict_height));
    }
    const Point at = ui.open_region_anew(frame.id, place, frame.title);
    float y = at.y;
    if (!verdict_stays) {
        y += frame.verdict.draw_at({at.x, y, place.w, frame.verdict_height});
    }
    y += body.draw_at({at.x, y, place.w, 1e6F});
    if (!foot_stays) {
        y += frame.foot.draw_at({at.x, y, place.w, frame.foot_height});
    }
    ui.close_region({place.w, y - at.y});
    if (pad) {
        number_keypad(app, pad_place);
    }
    if (!foot_place.empty()) {
        frame.foot.draw_at(foot_place);
    }
    ui.close_group();
}

bool wants_keypad(const App& app, std::string_view prefix) {
    constexpr std::string_view of_tune =
        "field/scratch/cut_feed"; // stands beside a sheet in a wide window: one keypad, its own
    const auto& edit = app.ui().edit();
    if (!edit || !app.own_keypad() || !std::string_view(edit->id).starts_with(prefix) ||
        (edit->id == of_tune && prefix != of_tune)) {
        return false;
    }
    const auto info = edit->id.starts_with("field/") ? document::field(edit->id.substr(6)) : std::nullopt;
    return !info || info->kind != document::FieldKind::text;
}

void number_keypad(App& app, Rect place) {
    if (!app.ui().edit()) {
        return; // the field was left while this screen was built
    }
    const std::string& id = app.ui().edit()->id;
    const auto info = id.starts_with("field/") ? document::field(id.substr(6)) : std::nullopt;
    const bool length = id.ends_with("_mm") || id == "stock/thickness";
    const bool below_nought = id.ends_with("_deg") || (info && info->low < 0);
    const Keys& keys = length ? length_keys : below_nought ? signed_keys : plain_keys;
    if (keypad(app.ui(), place, keys) == KeypadAnswer::system_keyboard) {
        app.system_keyboard = true;
    }
}

} // namespace torchside::web
