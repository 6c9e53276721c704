#include "web/screens/entry.hpp"

#include "core/document/schema.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/read.hpp"
#include "core/stock/gauge.hpp"
#include "core/stock/thickness.hpp"
#include "web/kit/controls.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

/// A text as it was read: a number in the key's unit, or a question with its answers, or what is wrong.
struct Heard {
    std::optional<double> value;
    std::string as;    // how it was understood
    std::string wrong; // why it cannot be used
    std::string question;
    std::vector<Answer<double>> answers;
};

template <class Q, class Get>
Heard heard(const Reading<Q>& reading, Get get) {
    Heard out;
    if (const auto* answer = reading.answer()) {
        out.value = get(answer->value);
        out.as = answer->as;
    } else if (const auto* question = reading.question()) {
        out.question = question->text;
        for (const Answer<Q>& a : question->answers) {
            out.answers.push_back({get(a.value), a.as});
        }
    } else if (const auto* refusal = reading.refusal()) {
        out.wrong = refusal->text;
    }
    return out;
}

/// The answers of a question as buttons below the field; the number that was touched.
std::optional<double> ask(App& app, Rect place, std::string_view id, const Heard& h) {
    std::vector<Choice> items;
    for (std::size_t i = 0; i < h.answers.size(); ++i) {
        items.push_back({std::string(id) + "/answer/" + std::to_string(i), h.answers[i].as});
    }
    const auto touched = choices(app.ui(), std::string(id) + "/answers", place, h.question, items, 2);
    return touched ? std::optional(h.answers[*touched].value) : std::nullopt;
}

struct FieldText {
    std::string_view id;
    std::string_view path;
    std::string_view label;
    std::string shown; // the stored value
    std::string idle;  // the quiet line when nobody types
};

/// Draws the field at the top of `place`, reads what is typed with `read`, and sets the path once the user is done (or on every key that makes sense).
template <class Read>
float typed_field(App& app, Rect place, const FieldText& f, Read read) {
    Ui& ui = app.ui();
    Heard h;
    const bool active = ui.editing(f.id);
    if (active && !ui.edit()->fresh) {
        h = read(ui.edit()->text);
    }
    std::string below = f.idle;
    std::string error;
    if (active) {
        const auto info = document::field(f.path);
        below = info ? document::accepted(*info) : "";
        if (!h.wrong.empty()) {
            error = h.wrong;
        } else if (h.value && !app.refusal().empty()) {
            error = app.refusal();
        } else if (h.value) {
            below = h.as;
        } else if (!h.question.empty()) {
            below = h.question;
        }
    }
    place.h = field_height(ui, error.empty() ? below : error, place.w);
    if (const auto entry = field_row(ui, f.id, place, {f.label, f.shown, below, error})) {
        const Heard now = read(entry->text);
        if (now.value) {
            app.set(f.path, *now.value); // a refusal stays in app.refusal() and is shown while the field is open
        } else {
            app.refuse("");
        }
        if (entry->final) {
            app.refuse("");
            app.system_keyboard = false;
        }
    }
    float used = place.h;
    if (active && !h.answers.empty()) {
        const Rect answers{place.x + 14, place.y + used + 8, place.w - 28, choices_height(ui, h.answers.size(), 2)};
        if (const auto picked = ask(app, answers, f.id, h)) {
            ui.stop_edit();
            app.set(f.path, *picked);
        }
        used += answers.h + 16;
    }
    return used;
}

float text_field(App& app, Rect place, std::string_view id, std::string_view path, std::string_view label,
                 const document::Scalar& value, const document::FieldInfo& info) {
    const bool active = app.ui().editing(id);
    const std::string error = active ? app.refusal() : std::string();
    place.h = field_height(app.ui(), error.empty() ? info.meaning : std::string_view(error), place.w);
    if (const auto entry = field_row(app.ui(), id, place, {label, value.text, info.meaning, error, true})) {
        app.set(path, std::string_view(entry->text));
    }
    return place.h;
}

} // namespace

float entry(App& app, Rect place, std::string_view path, std::string_view label) {
    Ui& ui = app.ui();
    const auto info = document::field(path);
    const auto value = document::get(app.book(), path);
    if (!info || !value) {
        return 0;
    }
    const std::string id = "field/" + std::string(path);
    if (info->kind == document::FieldKind::flag) {
        place.h = std::max(ui.reach(), 64.0F);
        if (toggle_row(ui, id, place, label, value->number != 0, info->meaning)) {
            app.set(path, value->number == 0);
        }
        return place.h;
    }
    if (info->kind == document::FieldKind::text) {
        return text_field(app, place, id, path, label, *value, *info);
    }
    const UnitSystem units = app.book().shop.display.units;
    const bool given = value->type == document::Scalar::Type::number;
    FieldText field{id, path, label, given ? show_field(value->number, info->unit, units) : "not given", std::string(info->meaning)};
    return typed_field(app, place, field, [&](const std::string& text) {
        if (info->nullable && text.empty()) {
            return Heard{};
        }
        return heard(read_field(text, info->unit, units), [](double v) { return v; });
    });
}

float thickness_entry(App& app, Rect place) {
    const Job& job = app.book().job;
    const UnitSystem units = app.book().shop.display.units;
    const Shown plate = show_plate(job.thickness, units);
    std::string idle = read_back(job.thickness);
    if (const auto gauge = stock::nearest_gauge(job.material, job.thickness); gauge && std::abs(gauge->difference.in(mm)) < 0.03) {
        idle += " · " + std::to_string(gauge->gauge) + " ga";
    }
    return typed_field(app, place, {"stock/thickness", "job.thickness_mm", "Thickness", plate.whole(), idle},
                       [&](const std::string& text) {
                           Heard h = heard(stock::read_thickness(text, job.material, units), [](Length l) { return l.in(mm); });
                           if (h.value) {
                               h.as += " is " + read_back(Length{*h.value, mm});
                           }
                           return h;
                       });
}

float current_entry(App& app, Rect place) {
    const Shown amps = show(app.book().job.current);
    return typed_field(app, place, {"stock/current", "job.current_a", "Current", amps.whole(), "Output of the machine"},
                       [](const std::string& text) {
                           return heard(read_current(text), [](Current c) { return c.in(ampere); });
                       });
}

} // namespace torchside::web
