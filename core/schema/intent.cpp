#include "core/schema/intent.hpp"

#include <cmath>

#include "core/codec/utf8.hpp"
#include "core/schema/access.hpp"
#include "core/schema/entry.hpp"
#include "core/worksheet/country.hpp"
#include "core/worksheet/job_stages.hpp"
#include "generated/words/rule.hpp"

namespace torchside::document {

namespace {

// A path comes from the program, not from a user: still answered with a Fault, never with a crash.
Fault no_such(std::string_view path) {
    return {std::string(path), words::rule::no_such_key, words::rule::no_such_key_do};
}

bool is_single(const Field& field) {
    return field.info.kind != FieldKind::object && field.info.kind != FieldKind::list &&
           field.info.kind != FieldKind::outline;
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
        return Fault{std::string(wanted.path), std::move(*wrong), enter(place->field->info)};
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

Outcome<Workbook> set_drawing(const Workbook& workbook, std::string_view name,
                              std::shared_ptr<const part::Outline> outline, std::vector<part::Finding> findings) {
    constexpr std::size_t longest = 60;
    Workbook next = workbook;
    next.job.part.shape = part::Shape::drawing;
    next.job.part.drawing_name = codec::one_line(name, longest);
    next.job.part.drawing = std::move(outline);
    next.job.part.findings = std::move(findings);
    return checked(std::move(next));
}

Outcome<Workbook> choose_shape(const Workbook& workbook, std::string_view shape) {
    auto next = set(workbook, "job.part.shape", shape);
    if (next.ok() && next.value().job.part.shape != part::Shape::drawing) {
        part::PartSpec& part = next.value().job.part;
        part.drawing_name.clear();
        part.drawing.reset();
        part.findings.clear();
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

Outcome<Workbook> log_change(const Workbook& workbook, wear::Ended ended) {
    const wear::InUse& now = workbook.shop.wear.now;
    if (now.starts == 0 && !(now.arc > Duration{})) {
        return Fault{"shop.wear.now.starts", words::rule::new_set, words::rule::new_set_do};
    }
    Workbook next = workbook;
    next.shop.wear.sets.push_back({now.starts, now.arc, ended});
    next.shop.wear.now = {};
    return checked(std::move(next));
}

Outcome<Workbook> log_cut(const Workbook& workbook, const Worksheet& worksheet, int parts) {
    if (parts < 1 || parts > workbook.job.quantity) {
        const int most = workbook.job.quantity;
        return Fault{"job.quantity", words::rule::Parts{.most = most, .parts = parts},
                     words::rule::PartsDo{.most = most}};
    }
    if (!worksheet.time) {
        return Fault{"job.part.shape", words::rule::no_path, words::rule::no_path_do};
    }
    const wear::Load load = part_load(workbook.job, worksheet);
    Workbook next = workbook;
    wear::InUse& now = next.shop.wear.now;
    // As doubles: a batch may be more than an int holds, and more than the key accepts.
    const double starts = std::floor(parts * wear::counted_starts(load) + 0.5) + now.starts;
    if (auto wrong = judge(*field("shop.wear.now.starts"), starts)) {
        return Fault{"shop.wear.now.starts", std::move(*wrong), words::rule::many_starts_do};
    }
    now.starts = static_cast<int>(starts);
    now.arc = now.arc + static_cast<double>(parts) * load.arc.value;
    return checked(std::move(next));
}

Outcome<Workbook> use_supply(const Workbook& workbook, const supply::UsualSupply& supply) {
    Workbook next = workbook;
    supply::Circuit& circuit = next.shop.circuit;
    circuit.line = Voltage{supply.line_v, volt};
    circuit.breaker = Current{supply.breaker_a, ampere};
    circuit.breaker_rule = supply.rule;
    circuit.run_awg = supply.run_awg.value_or(circuit.run_awg);
    circuit.run_mm2 = supply.run_mm2;
    circuit.dedicated = false;
    circuit.plug.reset(); // another outlet
    next.shop.machine.phases = supply.phases;
    if (next.shop.country && is_foreign(*next.shop.country, supply.rule)) {
        next.shop.country.reset(); // the rules go with the supply
    }
    return checked(std::move(next));
}

Outcome<Workbook> use_plug(const Workbook& workbook, std::optional<supply::Plug> plug) {
    Workbook next = workbook;
    next.shop.circuit.plug = plug;
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
        return Fault{std::string(path), words::rule::LastEntry{.accepted = accepted(place->field->info)},
                     words::rule::last_entry_do};
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
