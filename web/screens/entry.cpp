#include "web/screens/entry.hpp"

#include <utility>

#include "core/quantity/print.hpp"
#include "core/quantity/read.hpp"
#include "core/schema/schema.hpp"
#include "core/stock/gauge.hpp"
#include "core/stock/thickness.hpp"
#include "web/kit/controls.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr const char* not_given = "not given";
constexpr std::size_t longest_name = 24; // of a value on a button
constexpr const char* no_reading = "—";

/// A text as it was read: a value in the key's unit, or a question with its answers, or what is wrong.
struct Heard {
    std::optional<document::Scalar> value{};
    std::string as{};    // how it was understood
    std::string wrong{}; // why it cannot be used, and what to enter
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

/// What the field of this path asks for, in the user's units; said only of one that is typed in or was refused.
std::string asks(App& app, std::string_view id, std::string_view path) {
    const auto info = document::field(path);
    const bool spoken = app.ui().editing(id) || app.drafts.find(id) != nullptr;
    return spoken && info ? document::enter(*info, app.book().shop.display.units) : std::string();
}

struct FieldText {
    std::string_view id;
    std::string_view path; // of the workbook; empty for a figure that scratch holds
    std::string_view label;
    std::string shown; // the stored value
    std::string idle;  // the quiet line when nobody types
    std::string takes; // what is accepted, said while the field is open
    FieldLook::Keyboard keyboard = FieldLook::Keyboard::own;
};

/// What was typed is not taken: it stays as a draft, and the value is what it was before.
void refuse(App& app, const FieldText& f, const Ui::Entry& entry) {
    app.put_back(f.path);
    app.refuse("");
    app.drafts.keep({std::string(f.id), std::string(f.label), entry.text, std::string(f.path),
                     document::get(app.book(), f.path).value_or(document::Scalar()), app.place(), sheet_on_show(app),
                     entry.final});
    if (entry.final && !entry.left) {
        app.ui().keep_editing(f.id, entry.text); // to be corrected here and now
    }
}

/// One touch drops the draft.
float way_back(App& app, Rect place, const FieldText& f) {
    Ui& ui = app.ui();
    const Rect key{place.x + 14, place.y + 6, place.w - 28, ui.reach()};
    const bool blank = f.shown.empty() || f.shown == not_given || f.shown == no_reading;
    if (button(ui, std::string(f.id) + "/back", key,
               blank                           ? "Leave it blank"
               : f.shown.size() > longest_name ? "Put back the old text"
                                               : "Put back " + f.shown)) {
        app.drop_draft(f.id);
    }
    return key.h + 14;
}

/// The words under the field, and whether they are an error.
struct Below {
    std::string text;
    bool error = false;
};
Below below_of(const App& app, const FieldText& f, const Heard& h, bool active) {
    if (!h.wrong.empty()) {
        return {h.wrong, true};
    }
    const std::string refused = h.value && !f.path.empty() ? app.would_refuse(f.path, *h.value) : std::string();
    if (!refused.empty()) {
        return {refused, true};
    }
    return {!h.question.empty() ? h.question : h.value && !h.as.empty() ? h.as : active ? f.takes : f.idle};
}

/// Draws the field at the top of `place`, reads what is typed with `read`, and hands every value that makes sense to
/// `take`, which says whether it was taken. What was not stays in the field.
template <class Read, class Take>
float typed_field(App& app, Rect place, const FieldText& f, Read read, Take take) {
    Ui& ui = app.ui();
    const Draft* draft = app.drafts.find(f.id);
    const bool active = ui.editing(f.id);
    const std::string kept = draft != nullptr ? draft->text : std::string();
    const bool fresh = active && ui.edit()->fresh;
    const std::string typed = active && !fresh ? ui.edit()->text : kept;
    Heard h;
    if ((draft != nullptr || (active && !fresh)) && !(active && typed == "-")) { // a sign alone is a number begun
        h = read(typed);
    }
    const bool offer = draft != nullptr && (!active || fresh || draft->insisted);
    Below below = below_of(app, f, h, active);
    if (draft != nullptr && !active && !below.error && h.answers.empty()) {
        below = {"Not taken: type it again.", true}; // what it was refused for is gone: the units have changed, say
    }
    place.h = field_height(ui, below.text, place.w);
    const std::string shown = draft != nullptr ? kept : f.shown;
    const std::string_view error = below.error ? std::string_view(below.text) : std::string_view();
    if (const auto entry = field_row(ui, f.id, place, {f.label, shown, below.text, error, f.keyboard})) {
        const Heard now = read(entry->text);
        if (now.value && take(*now.value)) {
            app.drafts.drop(f.id);
        } else {
            refuse(app, f, *entry);
        }
        app.system_keyboard = app.system_keyboard && ui.edit();
    }
    float used = place.h;
    if (!h.answers.empty()) {
        const Rect answers{place.x + 14, place.y + used + 8, place.w - 28, choices_height(ui, h.answers.size(), 2)};
        if (const auto picked = ask(app, answers, f.id, h)) {
            ui.stop_edit();
            take(*picked);
            app.drafts.drop(f.id);
        }
        used += answers.h + 16;
    }
    return used + (offer ? way_back(app, {place.x, place.y + used, place.w, 0}, f) : 0);
}

FieldLook::Keyboard keyboard_of(const App& app) {
    return app.own_keypad() ? FieldLook::Keyboard::own : FieldLook::Keyboard::number;
}

std::string shown_number(const App& app, const document::FieldInfo& info, const document::Scalar& value) {
    const bool given = value.type == document::Scalar::Type::number;
    return given ? show_field(value.number, info.unit, app.book().shop) : not_given;
}

auto setter(App& app, std::string_view path, std::string_view label) {
    return [&app, path, label](const document::Scalar& v) { return app.set(path, v, label, App::By::typing); };
}

float text_field(App& app, Rect place, std::string_view id, std::string_view path, std::string_view label,
                 const document::Scalar& value, const document::FieldInfo& info) {
    const FieldText field{
        id, path, label, value.text, std::string(info.meaning), asks(app, id, path), FieldLook::Keyboard::text};
    const auto read = [](const std::string& text) { return Heard{.value = document::Scalar(std::string_view(text))}; };
    return typed_field(app, place, field, read, setter(app, path, label));
}

} // namespace

float entry(App& app, Rect place, std::string_view path, std::string_view label,
            bool (*take)(App& app, double number)) {
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
            app.set(path, value->number == 0, label);
        }
        return place.h;
    }
    if (info->kind == document::FieldKind::text) {
        return text_field(app, place, id, path, label, *value, *info);
    }
    const UnitSystem units = app.book().shop.display.units;
    const std::string blank = document::blank_words(*info);
    const std::string idle = std::string(info->meaning) + (blank.empty() ? "" : ' ' + blank);
    const FieldText field{
        id, path, label, shown_number(app, *info, *value), idle, asks(app, id, path), keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        if (info->nullable && text.empty()) {
            return Heard{.value = document::Scalar()};
        }
        Heard h = heard(read_field(text, info->unit, units), [](double v) { return v; });
        if (!h.wrong.empty()) {
            h.wrong = field.takes;
        }
        return h;
    };
    return typed_field(app, place, field, read, [&](const document::Scalar& v) {
        if (take != nullptr && v.type == document::Scalar::Type::number) {
            return take(app, v.number);
        }
        return app.set(path, v, label, App::By::typing);
    });
}

void edit_entry(App& app, std::string_view path) {
    const auto info = document::field(path);
    const auto value = document::get(app.book(), path);
    if (info && value) {
        app.ui().start_edit("field/" + std::string(path), shown_number(app, *info, *value));
    }
}

float scratch_entry(App& app, Rect place, std::string_view id, std::string_view label, std::string_view idle,
                    std::string_view unit, std::optional<double>& value) {
    const UnitSystem units = app.book().shop.display.units;
    const FieldText field{id,
                          {},
                          label,
                          value ? show_field(*value, unit, units) : no_reading,
                          std::string(idle),
                          std::string(idle),
                          keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        if (text.empty()) {
            return Heard{.value = document::Scalar()};
        }
        Heard h = heard(read_field(text, unit, units), [](double v) { return v; });
        if (!h.value) {
            value.reset(); // what cannot be read is no reading
        }
        if (!h.wrong.empty()) {
            h.wrong = ask_for(unit, units);
        }
        return h;
    };
    return typed_field(app, place, field, read, [&](const document::Scalar& v) {
        value = v.type == document::Scalar::Type::number ? std::optional(v.number) : std::nullopt;
        return true;
    });
}

float word_choice(App& app, Rect place, const char* path, const char* name, std::span<const char* const> words,
                  std::span<const char* const> labels, int columns) {
    Ui& ui = app.ui();
    const auto now = document::get(app.book(), path);
    columns = columns > 0 ? columns : static_cast<int>(words.size());
    std::vector<Choice> items;
    for (std::size_t i = 0; i < words.size(); ++i) {
        items.push_back({std::string("field/") + path + '/' + words[i], labels[i], now && now->text == words[i]});
    }
    const float x = place.x + 14;
    const float w = place.w - 28;
    float y = place.y + section(ui, std::string("title/") + path, {x, place.y}, w, name);
    const float h = choices_height(ui, items.size(), columns);
    if (const auto touched = choices(ui, std::string("choice/") + path, {x, y, w, h}, name, items, columns)) {
        const char* word = words[*touched];
        app.take(document::set(app.book(), path, *word == '\0' ? document::Scalar(nullptr) : document::Scalar(word)),
                 std::string(name) + ": " + labels[*touched]);
    }
    y += h + 12;
    return y - place.y;
}

float number_choice(App& app, Rect place, const char* path, const char* name, std::span<const double> numbers,
                    std::span<const char* const> labels, int columns) {
    Ui& ui = app.ui();
    const auto now = document::get(app.book(), path);
    std::vector<Choice> items;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        items.push_back({std::string("field/") + path + '/' + labels[i], labels[i], now && now->number == numbers[i]});
    }
    const float h = choices_height(ui, items.size(), columns);
    const Rect buttons{place.x + 14, place.y, place.w - 28, h};
    if (const auto touched = choices(ui, std::string("choice/") + path, buttons, name, items, columns)) {
        ui.stop_edit();
        app.set(path, numbers[*touched], name);
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
    const FieldText field{"stock/thickness",
                          "job.thickness_mm",
                          "Thickness",
                          plate.whole(),
                          idle,
                          asks(app, "stock/thickness", "job.thickness_mm"),
                          keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        Heard h = heard(stock::read_thickness(text, job.material, units), [](Length l) { return l.in(mm); });
        if (h.value) {
            h.as += " is " + print(Length{h.value->number, mm}, units).text();
        } else if (!h.wrong.empty() && read_length_or_gauge(text, units).gauge() == nullptr) {
            h.wrong = field.takes; // of a gauge it says which there are
        }
        return h;
    };
    return typed_field(app, place, field, read, setter(app, "job.thickness_mm", "Thickness"));
}

float current_entry(App& app, Rect place) {
    const Shown amps = show(app.book().job.current);
    const FieldText field{"stock/current", "job.current_a",         "Current",
                          amps.whole(),    "Output of the machine", asks(app, "stock/current", "job.current_a"),
                          keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        Heard h = heard(read_current(text), [](Current c) { return c.in(ampere); });
        if (!h.wrong.empty()) {
            h.wrong = field.takes;
        }
        return h;
    };
    return typed_field(app, place, field, read, setter(app, "job.current_a", "Current"));
}

} // namespace torchside::web
