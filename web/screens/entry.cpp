#include "web/screens/body.hpp"

#include <utility>

#include "core/quantity/print.hpp"
#include "core/quantity/read.hpp"
#include "core/schema/entry.hpp"
#include "core/stock/gauge.hpp"
#include "core/stock/thickness.hpp"
#include "generated/words/ask.hpp"
#include "generated/words/change.hpp"
#include "generated/words/entry.hpp"
#include "generated/words/title.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr std::size_t longest_name = 24; // of a value on a button
constexpr const char* no_reading = "—";

/// A text as it was read: a value in the key's unit, or a question with its answers, or what is wrong.
struct ParsedEntry {
    std::optional<document::Scalar> value{};
    std::string as{}; // how it was understood
    std::optional<Unread> refused{};
    std::string wrong{}; // what to enter instead
    std::string question{};
    std::vector<Answer<double>> answers{};
};

template <class Q, class Get>
ParsedEntry parse_entry(const App& app, const Reading<Q>& reading, Get get) {
    ParsedEntry out;
    if (const auto* answer = reading.answer()) {
        out.value = get(answer->value);
        out.as = answer->as;
        if (answer->looks_like_share) {
            out.as = app.say(
                words::ask::Share{.as = answer->as, .percent = words::number(out.value->number * 100 * 100, 6)});
        }
    } else if (const auto* question = reading.question()) {
        out.question = app.say(document::question(question->doubt));
        for (const Answer<Q>& a : question->answers) {
            out.answers.push_back({get(a.value), a.as});
        }
    } else if (const auto* refusal = reading.refusal()) {
        out.refused = refusal->why;
    }
    return out;
}

/// The answers of a question as buttons below the field; the number that was touched.
std::optional<double> ask(Body& body, std::string_view id, const ParsedEntry& parsed) {
    std::vector<Choice> items;
    for (std::size_t i = 0; i < parsed.answers.size(); ++i) {
        items.push_back({std::string(id) + "/answer/" + std::to_string(i), parsed.answers[i].as});
    }
    body.gap(8);
    const auto touched = body.choices(std::string(id) + "/answers", parsed.question, items, 2);
    body.gap(8);
    return touched ? std::optional(parsed.answers[*touched].value) : std::nullopt;
}

/// What the field of this path asks for, in the user's units; said only of one that is typed in or was refused.
std::string asks(App& app, std::string_view id, std::string_view path) {
    const auto info = document::field(path);
    const bool spoken = app.ui().editing(id) || app.drafts.find(id) != nullptr;
    return spoken && info ? app.say(document::enter(*info)) : std::string();
}

struct FieldText {
    std::string_view id;
    std::string_view path; // of the workbook; empty for a figure that scratch holds
    Label label;
    std::string shown;  // the stored value
    bool blank = false; // there is none
    std::string idle;   // the quiet line when nobody types
    std::string takes;  // what is accepted, said while the field is open
    FieldLook::Keyboard keyboard = FieldLook::Keyboard::own;
};

/// What was typed is not taken: it stays as a draft, and the value is what it was before.
void refuse(App& app, const FieldText& f, const Ui::Entry& entry) {
    app.put_back(f.path);
    app.refuse({});
    app.drafts.keep({std::string(f.id), std::string(app.word(f.label)), entry.text, std::string(f.path),
                     document::get(app.book(), f.path).value_or(document::Scalar()), app.page(), panel_on_show(app),
                     entry.final});
    if (entry.final && !entry.left) {
        app.ui().keep_editing(f.id, entry.text); // to be corrected here and now
    }
}

/// One touch drops the draft.
void way_back(Body& body, const FieldText& f) {
    const App& app = body.app;
    const bool long_text = f.shown.size() > longest_name;
    body.gap(6);
    if (body.button(std::string(f.id) + "/back", f.blank || f.shown.empty() ? app.say(words::entry::leave_blank)
                                                 : long_text                ? app.say(words::entry::put_back_text)
                                                             : app.say(words::entry::PutBack{.value = f.shown}))) {
        body.app.drop_draft(f.id);
    }
    body.gap(8);
}

/// The words under the field, and whether they are an error.
struct Below {
    std::string text;
    bool error = false;
};
Below below_of(const App& app, const FieldText& f, const ParsedEntry& h, bool active) {
    if (!h.wrong.empty()) {
        return {h.wrong, true};
    }
    const std::string refused = h.value && !f.path.empty() ? app.would_refuse(f.path, *h.value) : std::string();
    if (!refused.empty()) {
        return {refused, true};
    }
    return {!h.question.empty() ? h.question : h.value && !h.as.empty() ? h.as : active ? f.takes : f.idle};
}

/// Draws the field, reads what is typed with `read`, and hands every value that makes sense to `take`, which says whether
/// it was taken. What was not stays in the field.
template <class Read, class Take>
void typed_field(Body& body, const FieldText& f, Read read, Take take) {
    App& app = body.app;
    Ui& ui = app.ui();
    const Draft* draft = app.drafts.find(f.id);
    const bool active = ui.editing(f.id);
    const std::string kept = draft != nullptr ? draft->text : std::string();
    const bool fresh = active && ui.edit()->fresh;
    const std::string typed = active && !fresh ? ui.edit()->text : kept;
    const bool reads = (draft != nullptr || (active && !fresh)) && !(active && typed == "-"); // a sign begins a number
    ParsedEntry parsed = reads ? read(typed) : ParsedEntry{};
    const bool offer = draft != nullptr && (!active || fresh || draft->insisted);
    Below below = below_of(app, f, parsed, active);
    if (draft != nullptr && !active && !below.error && parsed.answers.empty()) {
        below = {app.say(words::entry::type_again),
                 true}; // what it was refused for is gone: the units have changed, say
    }
    const std::string shown = draft != nullptr ? kept : f.shown;
    const std::string_view error = below.error ? std::string_view(below.text) : std::string_view();
    const Rect row = body.strip(field_height(ui, below.text, body.width()));
    if (const auto entry = field_row(ui, f.id, row, {app.word(f.label), shown, below.text, error, f.keyboard})) {
        const ParsedEntry other = reads && entry->text == typed ? ParsedEntry{} : read(entry->text);
        const auto& value = reads && entry->text == typed ? parsed.value : other.value;
        if (value && take(*value)) {
            app.drafts.drop(f.id);
        } else {
            refuse(app, f, *entry);
        }
        app.scratch.system_keyboard = app.scratch.system_keyboard && ui.edit();
    }
    if (!parsed.answers.empty()) {
        if (const auto picked = ask(body, f.id, parsed)) {
            ui.stop_edit();
            take(*picked);
            app.drafts.drop(f.id);
        }
    }
    if (offer) {
        way_back(body, f);
    }
}

FieldLook::Keyboard keyboard_of(const App& app) {
    return app.own_keypad() ? FieldLook::Keyboard::own : FieldLook::Keyboard::number;
}

std::string shown_number(const App& app, const document::FieldInfo& info, const document::Scalar& value) {
    const bool given = value.type == document::Scalar::Type::number;
    return given ? show_field(value.number, info.unit, app.book().shop.rates.currency, app.units())
                 : app.say(words::entry::not_set);
}

auto setter(App& app, std::string_view path, Label label) {
    return [&app, path, label](const document::Scalar& v) { return app.set(path, v, label, App::By::typing); };
}

void text_field(Body& body, std::string_view id, std::string_view path, Label label, const document::Scalar& value,
                const document::FieldInfo& info) {
    const FieldText field{id,
                          path,
                          label,
                          value.text,
                          value.text.empty(),
                          body.app.say(info.meaning),
                          asks(body.app, id, path),
                          FieldLook::Keyboard::text};
    const auto read = [](const std::string& text) {
        return ParsedEntry{.value = document::Scalar(std::string_view(text))};
    };
    typed_field(body, field, read, setter(body.app, path, label));
}

} // namespace

void Body::field(std::string_view path, Label label, bool (*take)(App& app, double number)) {
    const auto info = document::field(path);
    const auto value = document::get(app.book(), path);
    if (!info || !value) {
        return;
    }
    const std::string id = "field/" + std::string(path);
    if (info->kind == document::FieldKind::flag) {
        if (toggle(id, label, value->number != 0, app.word(info->meaning))) {
            app.set(path, value->number == 0, label);
        }
        return;
    }
    if (info->kind == document::FieldKind::text) {
        text_field(*this, id, path, label, *value, *info);
        return;
    }
    const Units units = app.units();
    Text meaning = info->meaning;
    meaning += document::blank_words(*info);
    const FieldText field{id,
                          path,
                          label,
                          shown_number(app, *info, *value),
                          value->type == document::Scalar::Type::none,
                          app.say(meaning),
                          asks(app, id, path),
                          keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        if (info->nullable && text.empty()) {
            return ParsedEntry{.value = document::Scalar()};
        }
        ParsedEntry entry = parse_entry(app, read_field(text, info->unit, units), [](double v) { return v; });
        if (entry.refused) {
            entry.wrong = field.takes;
        }
        return entry;
    };
    typed_field(*this, field, read, [&](const document::Scalar& v) {
        if (take != nullptr && v.type == document::Scalar::Type::number) {
            return take(app, v.number);
        }
        return app.set(path, v, label, App::By::typing);
    });
}

void Body::fields(std::span<const PathLabel> all) {
    for (const PathLabel& f : all) {
        field(f.path, f.label);
    }
}

void edit_entry(App& app, std::string_view path) {
    const auto info = document::field(path);
    const auto value = document::get(app.book(), path);
    if (info && value) {
        app.ui().start_edit("field/" + std::string(path), shown_number(app, *info, *value));
    }
}

void Body::reading(std::string_view id, Label label, Label idle, FieldUnit unit, std::optional<double>& value) {
    const Units units = app.units();
    const FieldText field{id,
                          {},
                          label,
                          value ? print_field(*value, unit, units) : no_reading,
                          !value,
                          std::string(app.word(idle)),
                          std::string(app.word(idle)),
                          keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        if (text.empty()) {
            return ParsedEntry{.value = document::Scalar()};
        }
        ParsedEntry entry = parse_entry(app, read_field(text, unit, units), [](double v) { return v; });
        if (!entry.value) {
            value.reset(); // what cannot be read is no reading
        }
        if (entry.refused) {
            entry.wrong = app.say(document::ask_for(unit, units));
        }
        return entry;
    };
    typed_field(*this, field, read, [&](const document::Scalar& v) {
        value = v.type == document::Scalar::Type::number ? std::optional(v.number) : std::nullopt;
        return true;
    });
}

void Body::word_choice(const char* path, Label name, std::span<const char* const> words, std::span<const Label> labels,
                       int columns) {
    const auto now = document::get(app.book(), path);
    columns = columns > 0 ? columns : static_cast<int>(words.size());
    std::vector<Choice> items;
    for (std::size_t i = 0; i < words.size(); ++i) {
        items.push_back({std::string("field/") + path + '/' + words[i], std::string(app.word(labels[i])),
                         now && now->text == words[i]});
    }
    heading(std::string("title/") + path, name);
    if (const auto touched = choices(std::string("choice/") + path, name, items, columns)) {
        const char* word = words[*touched];
        const bool none = *word == '\0' && document::field(path)->nullable;
        app.take(document::set(app.book(), path, none ? document::Scalar(nullptr) : document::Scalar(word)),
                 app.say(words::change::Choice{.to = app.word(labels[*touched]), .what = app.word(name)}));
    }
    gap(12);
}

void Body::number_choice(const char* path, Label name, std::span<const double> numbers, std::span<const Label> labels,
                         int columns) {
    const auto now = document::get(app.book(), path);
    std::vector<Choice> items;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        items.push_back({std::string("field/") + path + '/' + print_trimmed(numbers[i], 3),
                         std::string(app.word(labels[i])), now && now->number == numbers[i]});
    }
    if (const auto touched = choices(std::string("choice/") + path, name, items, columns)) {
        ui().stop_edit();
        app.set(path, numbers[*touched], name);
    }
    gap(12);
}

void Body::thickness() {
    const Job& job = app.book().job;
    const Units units = app.units();
    const Shown plate = show_plate(job.thickness, job.material, units);
    std::string idle = print(job.thickness, units).text();
    if (const auto gauge = stock::nearest_gauge(job.material, job.thickness);
        !units.metric() && gauge && std::abs(gauge->difference.in(mm)) < 0.03) {
        idle += " · " + std::to_string(gauge->gauge) + " ga";
    }
    const FieldText field{"stock/thickness",
                          "job.thickness_mm",
                          words::title::thickness,
                          plate.whole(),
                          false,
                          idle,
                          asks(app, "stock/thickness", "job.thickness_mm"),
                          keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        ParsedEntry entry =
            parse_entry(app, stock::read_thickness(text, job.material, units), [](Length l) { return l.in(mm); });
        if (entry.value) {
            const std::string size = print(Length{entry.value->number, mm}, units).text();
            entry.as = app.say(words::entry::ReadAs{.size = size, .typed = entry.as});
        } else if (entry.refused) {
            const Text gauge = document::refused_gauge(*entry.refused, job.material);
            entry.wrong = gauge.empty() ? field.takes : app.say(gauge);
        }
        return entry;
    };
    typed_field(*this, field, read, setter(app, "job.thickness_mm", words::title::thickness));
}

void Body::current() {
    const FieldText field{"stock/current",
                          "job.current_a",
                          words::title::current,
                          show(app.book().job.current, app.units()).whole(),
                          false,
                          app.say(words::entry::output),
                          asks(app, "stock/current", "job.current_a"),
                          keyboard_of(app)};
    const auto read = [&](const std::string& text) {
        ParsedEntry entry =
            parse_entry(app, read_field(text, FieldUnit::ampere, app.units()), [](double v) { return v; });
        if (entry.refused) {
            entry.wrong = field.takes;
        }
        return entry;
    };
    typed_field(*this, field, read, setter(app, "job.current_a", words::title::current));
}

} // namespace torchside::web
