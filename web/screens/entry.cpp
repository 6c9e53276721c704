#include "web/screens/entry.hpp"

#include <utility>

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
    std::optional<double> value{};
    bool nothing = false; // left empty where that is an answer
    std::string as{};     // how it was understood
    std::string wrong{};  // why it cannot be used
    std::string question{};
    std::vector<Answer<double>> answers{};
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

std::string range_of(std::string_view path) {
    auto info = document::field(path);
    if (!info) {
        return {};
    }
    const bool may_be_empty = std::exchange(info->nullable, false);
    return document::accepted(*info) + (may_be_empty ? ", or leave it empty" : "");
}

struct FieldText {
    std::string_view id;
    std::string_view label;
    std::string shown; // the stored value
    std::string idle;  // the quiet line when nobody types
    std::string takes; // what is accepted, said while the field is open
};

/// Draws the field at the top of `place`, reads what is typed with `read`, and hands every number that makes sense to
/// `take`, and nothing when the field is left empty where it may be.
template <class Read, class Take>
float typed_field(App& app, Rect place, const FieldText& f, Read read, Take take) {
    Ui& ui = app.ui();
    Heard h;
    const bool active = ui.editing(f.id);
    if (active && !ui.edit()->fresh && ui.edit()->text != "-") { // a sign alone is a number begun
        h = read(ui.edit()->text);
    }
    std::string below = f.idle;
    std::string error;
    if (active) {
        below = f.takes;
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
    const auto keyboard = app.system_keyboard ? FieldLook::Keyboard::number : FieldLook::Keyboard::own;
    if (const auto entry = field_row(ui, f.id, place, {f.label, f.shown, below, error, keyboard})) {
        const Heard now = read(entry->text);
        app.refuse("");
        if (now.value || (now.nothing && entry->final)) {
            take(now.value); // a refusal stays in app.refusal() and is shown while the field is open
        }
        const bool unused = !now.wrong.empty() || !now.question.empty() || !app.refusal().empty();
        if (entry->final && unused) {
            ui.keep_editing(f.id, entry->text); // its words stay, with what is wrong or asked below them
        } else if (entry->final) {
            app.system_keyboard = false;
        }
    }
    float used = place.h;
    if (active && !h.answers.empty()) {
        const Rect answers{place.x + 14, place.y + used + 8, place.w - 28, choices_height(ui, h.answers.size(), 2)};
        if (const auto picked = ask(app, answers, f.id, h)) {
            ui.stop_edit();
            take(picked);
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
    if (const auto entry =
            field_row(app.ui(), id, place, {label, value.text, info.meaning, error, FieldLook::Keyboard::text})) {
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
        place.h = toggle_height(ui, label, info->meaning, place.w);
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
    const std::string_view sign =
        info->unit.starts_with("money") ? currency_sign(app.book().shop.rates.currency) : std::string_view{};
    const FieldText field{id, label,
                          given ? std::string(sign) + show_field(value->number, info->unit, units) : "not given",
                          std::string(info->meaning), range_of(path)};
    const auto read = [&](const std::string& text) {
        if (info->nullable && text.empty()) {
            return Heard{.nothing = true};
        }
        return heard(read_field(text, info->unit, units), [](double v) { return v; });
    };
    return typed_field(app, place, field, read, [&](std::optional<double> v) {
        app.set(path, v ? document::Scalar(*v) : document::Scalar(nullptr));
    });
}

float scratch_entry(App& app, Rect place, std::string_view id, std::string_view label, std::string_view idle,
                    std::string_view unit, std::optional<double>& value) {
    const UnitSystem units = app.book().shop.display.units;
    const FieldText field{id, label, value ? show_field(*value, unit, units) : "—", std::string(idle),
                          std::string(idle)};
    const auto read = [&](const std::string& text) {
        return text.empty() ? Heard{.nothing = true} : heard(read_field(text, unit, units), [](double v) { return v; });
    };
    return typed_field(app, place, field, read, [&](std::optional<double> v) { value = v; });
}

float word_choice(App& app, Rect place, const char* path, const char* name, std::span<const char* const> words,
                  std::span<const char* const> labels) {
    Ui& ui = app.ui();
    const auto now = document::get(app.book(), path);
    std::vector<Choice> items;
    for (std::size_t i = 0; i < words.size(); ++i) {
        items.push_back({std::string("field/") + path + '/' + words[i], labels[i], now && now->text == words[i]});
    }
    const float x = place.x + 14;
    const float w = place.w - 28;
    float y = place.y + section(ui, std::string("title/") + path, {x, place.y}, w, name);
    const float h = choices_height(ui, items.size(), static_cast<int>(items.size()));
    if (const auto touched =
            choices(ui, std::string("choice/") + path, {x, y, w, h}, name, items, static_cast<int>(items.size()))) {
        app.set(path, *words[*touched] == '\0' ? document::Scalar(nullptr) : document::Scalar(words[*touched]));
    }
    y += h + 12;
    return y - place.y;
}

float number_choice(App& app, Rect place, const char* path, std::span<const double> numbers,
                    std::span<const char* const> labels, int columns) {
    Ui& ui = app.ui();
    const auto now = document::get(app.book(), path);
    std::vector<Choice> items;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        items.push_back({std::string("field/") + path + '/' + labels[i], labels[i], now && now->number == numbers[i]});
    }
    const float h = choices_height(ui, items.size(), columns);
    const Rect buttons{place.x + 14, place.y, place.w - 28, h};
    if (const auto touched = choices(ui, std::string("choice/") + path, buttons, labels[0], items, columns)) {
        ui.stop_edit();
        app.set(path, numbers[*touched]);
    }
    return h + 12;
}

float thickness_entry(App& app, Rect place) {
    const Job& job = app.book().job;
    const UnitSystem units = app.book().shop.display.units;
    const Shown plate = show_plate(job.thickness, job.material, units);
    std::string idle = print(job.thickness, units).text();
    if (const auto gauge = stock::nearest_gauge(job.material, job.thickness);
        units == UnitSystem::inch && gauge && std::abs(gauge->difference.in(mm)) < 0.03) {
        idle += " · " + std::to_string(gauge->gauge) + " ga";
    }
    const auto read = [&](const std::string& text) {
        Heard h = heard(stock::read_thickness(text, job.material, units), [](Length l) { return l.in(mm); });
        if (h.value) {
            h.as += " is " + print(Length{*h.value, mm}, units).text();
        }
        return h;
    };
    return typed_field(app, place, {"stock/thickness", "Thickness", plate.whole(), idle, range_of("job.thickness_mm")},
                       read, [&](std::optional<double> v) { app.set("job.thickness_mm", *v); });
}

float current_entry(App& app, Rect place) {
    const Shown amps = show(app.book().job.current);
    const auto read = [](const std::string& text) {
        return heard(read_current(text), [](Current c) { return c.in(ampere); });
    };
    return typed_field(app, place,
                       {"stock/current", "Current", amps.whole(), "Output of the machine", range_of("job.current_a")},
                       read, [&](std::optional<double> v) { app.set("job.current_a", *v); });
}

} // namespace torchside::web
