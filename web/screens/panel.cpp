#include "web/screens/panel.hpp"

#include "core/schema/schema.hpp"

namespace torchside::web {

void PanelHead::draw(Rect place) {
    if (panel_head(app.ui(), id, place, app.word(title), closable)) {
        app.close();
    }
}

void PanelHead::put(Rect& place, bool typing) {
    constexpr float lowest = 300; // a window that can spare the height for a head that stays
    Ui& ui = app.ui();
    const float height = panel_head_height(ui);
    if (ui.low() && (typing || ui.screen().h < lowest)) {
        ui.lead_with({this, height, [](void* top, Rect at) { static_cast<PanelHead*>(top)->draw(at); }});
    } else {
        draw(place.take_top(height));
    }
}

void framed_panel(App& app, PanelAt at, const PanelFrame& frame, Drawer body) {
    constexpr float least_body = 84; // a field and what is said below it
    Ui& ui = app.ui();
    Rect place = at.place;
    const std::string own(frame.id);
    ui.open_group(frame.id, role_of(at), place, frame.title);
    const bool pad = frame.has_fields && (wants_keypad(app, "field/") || wants_keypad(app, own + '/'));
    PanelHead head{app, frame.id, frame.title, at.closable};
    head.put(place, pad);
    const float foot_height = frame.foot.height_in(app, place.w);
    const bool foot_stays = foot_height < place.h / 2;
    Body foot(app, place.take_bottom(foot_stays ? foot_height : 0));
    const Rect pad_place = pad ? place.take_bottom(keypad_height(ui)) : Rect{};
    const float verdict_height = frame.verdict.height_in(app, place.w);
    const bool verdict_stays = place.h - verdict_height >= least_body;
    if (verdict_stays) {
        Body verdict(app, place.take_top(verdict_height));
        frame.verdict.draw_in(verdict);
    }
    const Point corner = ui.open_region_anew(frame.id, place, app.word(frame.title));
    Body column(app, {corner.x, corner.y, place.w, place.h});
    if (!verdict_stays) {
        frame.verdict.draw_in(column);
    }
    body.draw_in(column);
    if (!foot_stays) {
        frame.foot.draw_in(column);
    }
    ui.close_region({place.w, column.height()});
    if (pad) {
        number_keypad(app, pad_place);
    }
    if (foot_stays) {
        frame.foot.draw_in(foot);
    }
    ui.close_group();
}

void framed_screen(App& app, Rect place, std::string_view id, Label name, Drawer body, std::string_view typed_in) {
    Ui& ui = app.ui();
    ui.open_group(id, Role::main, place, name);
    const bool pad = !typed_in.empty() && wants_keypad(app, typed_in);
    const Rect pad_place = pad ? place.take_bottom(keypad_height(ui)) : Rect{};
    const Point corner = ui.open_region(id, place);
    Body column(app, {corner.x, corner.y, place.w, place.h});
    body.draw_in(column);
    ui.close_region({place.w, column.height()});
    if (pad) {
        number_keypad(app, pad_place);
    }
    ui.close_group();
}

bool wants_keypad(const App& app, std::string_view prefix) {
    constexpr std::string_view of_tune =
        "field/scratch/cut_feed"; // stands beside a panel in a wide window: one keypad, its own
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
