#include "core/document/intent.hpp"

#include "core/document/access.hpp"
#include "core/document/json.hpp"

namespace torchside::document {

namespace {

// A path comes from the program, not from a user: still answered with a Fault, never with a crash.
Fault no_such(std::string_view path) {
    return {std::string(path), "the workbook has no such key or entry, accepted is a path of the schema"};
}

bool is_single(const Field& field) {
    return field.info.kind != FieldKind::object && field.info.kind != FieldKind::list;
}

// Places found in our own copy of a workbook may be written to.
void* own(const void* owner) {
    return const_cast<void*>(owner); // NOLINT(cppcoreguidelines-pro-type-const-cast)
}

std::optional<Fault> change(Workbook& workbook, const Change& wanted) {
    const auto place = find(wanted.path, &workbook, Entries::held);
    if (!place || !is_single(*place->field)) {
        return no_such(wanted.path);
    }
    if (auto wrong = put(*place->field, own(place->owner), wanted.value)) {
        return Fault{std::string(wanted.path), std::move(*wrong)};
    }
    return {};
}

Outcome<Workbook> checked(Workbook workbook) {
    if (auto fault = check(workbook)) {
        return *fault;
    }
    return workbook;
}

} // namespace

std::optional<Scalar> get(const Workbook& workbook, std::string_view path) {
    const auto place = find(path, &workbook, Entries::held);
    if (!place || !is_single(*place->field)) {
        return {};
    }
    return fetch(*place->field, place->owner);
}

std::optional<Scalar> default_of(std::string_view path) {
    const Workbook fresh;
    const auto place = find(path, &fresh, Entries::fresh);
    if (!place || !is_single(*place->field)) {
        return {};
    }
    return fetch(*place->field, place->owner);
}

Outcome<Workbook> set(const Workbook& workbook, std::string_view path, const Scalar& value) {
    return apply(workbook, {{path, value}});
}

Outcome<Workbook> apply(const Workbook& workbook, std::initializer_list<Change> changes) {
    Workbook next = workbook;
    for (const Change& wanted : changes) {
        if (auto fault = change(next, wanted)) {
            return *fault;
        }
    }
    if (auto fault = broken_rule(next)) {
        return *fault;
    }
    return next;
}

Outcome<Workbook> add(const Workbook& workbook, const tune::TestCut& cut) {
    Workbook next = workbook;
    next.shop.tests.push_back(cut);
    return checked(std::move(next));
}

Outcome<Workbook> add(const Workbook& workbook, const wear::ConsumableSet& set) {
    Workbook next = workbook;
    next.shop.wear.sets.push_back(set);
    return checked(std::move(next));
}

Outcome<Workbook> add(const Workbook& workbook, const Nozzle& nozzle) {
    Workbook next = workbook;
    next.shop.machine.nozzles.push_back(nozzle);
    return checked(std::move(next));
}

Outcome<Workbook> remove(const Workbook& workbook, std::string_view path) {
    Workbook next = workbook;
    const auto place = find(path, &next, Entries::held);
    if (!place || !place->entry) {
        return no_such(path);
    }
    void* list = writable(*place->field, own(place->owner));
    if (static_cast<double>(place->field->list->size(list)) <= place->field->info.low) {
        return Fault{std::string(path), "the last entry stays, accepted is " + accepted(place->field->info)};
    }
    place->field->list->erase(list, *place->entry);
    return next;
}

Outcome<Workbook> reset(const Workbook& workbook, std::string_view path) {
    const auto place = find(path, &workbook, Entries::held);
    if (!place || place->entry) {
        return no_such(path);
    }
    if (is_single(*place->field)) {
        return set(workbook, path, *default_of(path));
    }
    if (!place->field->reset) {
        return no_such(path);
    }
    Workbook next = workbook;
    const auto target = find(path, &next, Entries::held);
    target->field->reset(writable(*target->field, own(target->owner)));
    return checked(std::move(next));
}

std::optional<Fault> check(const Workbook& workbook) {
    std::string path;
    if (auto fault = check_object(workbook_fields(), &workbook, path)) {
        return fault;
    }
    return broken_rule(workbook);
}

} // namespace torchside::document
