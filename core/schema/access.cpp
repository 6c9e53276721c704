#include "core/schema/access.hpp"

#include <algorithm>
#include <cmath>

#include "core/codec/decimal.hpp"
#include "core/codec/utf8.hpp"
#include "core/schema/entry.hpp"
#include "core/schema/public_address.hpp"
#include "generated/words/file.hpp"
#include "generated/words/rule.hpp"

namespace torchside::document {

namespace {

// The number that stands for a base amount in the key's unit: of the doubles beside amount / scale that read back as
// this very amount, the one with the fewest digits. 15 m is kept as 15000 mm and must be written as 15 again.
double in_key_unit(double amount, double scale) {
    const double near = amount / scale;
    if (scale == 1.0) {
        return amount;
    }
    double best = near;
    std::size_t best_size = near * scale == amount ? codec::decimal_text(near).size() : std::string::npos;
    for (const double candidate : {std::nextafter(near, -HUGE_VAL), std::nextafter(near, HUGE_VAL)}) {
        if (candidate * scale != amount) {
            continue;
        }
        if (const std::size_t size = codec::decimal_text(candidate).size(); size < best_size) {
            best = candidate;
            best_size = size;
        }
    }
    return best;
}

std::string shown(const Scalar& value) {
    switch (value.type) {
    case Scalar::Type::none:
        return "null";
    case Scalar::Type::flag:
        return value.number != 0.0 ? "true" : "false";
    case Scalar::Type::number:
        return codec::decimal_text(value.number);
    case Scalar::Type::text:
        break;
    }
    return '"' + codec::one_line(value.text) + '"';
}

bool is_plain(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~' && c != '(' && c != ')'; });
}

bool number_fits(const FieldInfo& info, double v) {
    if (!std::isfinite(v) || v < info.low || v > info.high) {
        return false;
    }
    if (info.kind != FieldKind::integer) {
        return true;
    }
    return v == std::floor(v) && (info.choices.empty() || std::find(info.choices.begin(), info.choices.end(),
                                                                    static_cast<int>(v)) != info.choices.end());
}

bool fits(const FieldInfo& info, const Scalar& value) {
    using Type = Scalar::Type;
    if (value.type == Type::none) {
        return info.nullable;
    }
    switch (info.kind) {
    case FieldKind::number:
    case FieldKind::integer:
        return value.type == Type::number && number_fits(info, value.number);
    case FieldKind::flag:
        return value.type == Type::flag;
    case FieldKind::word:
        return value.type == Type::text &&
               std::find(info.words.begin(), info.words.end(), value.text) != info.words.end();
    case FieldKind::text: {
        const auto size = static_cast<double>(codec::letters(value.text));
        return value.type == Type::text && codec::is_utf8(value.text) && !codec::has_hidden(value.text) &&
               (!info.plain || is_plain(value.text)) && size >= info.low && size <= info.high;
    }
    case FieldKind::object:
    case FieldKind::list:
    case FieldKind::outline:
        break;
    }
    return false;
}

const Field* find_key(Fields fields, std::string_view key) {
    const auto it = std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return f.key == key; });
    return it == fields.end() ? nullptr : &*it;
}

// Splits "tests[3]" off the front of a path. False when the brackets are malformed.
bool take_step(std::string_view& path, std::string_view& key, bool& indexed, std::size_t& index) {
    const std::string_view step = path.substr(0, path.find('.'));
    if (step.size() + 1 == path.size()) {
        return false; // ends in a dot
    }
    path.remove_prefix(std::min(path.size(), step.size() + 1));
    key = step.substr(0, step.find('['));
    indexed = key.size() < step.size();
    index = 0;
    if (!indexed) {
        return true;
    }
    const std::string_view digits = step.substr(key.size() + 1);
    if (digits.empty() || digits.back() != ']' || digits.size() > 7) {
        return false;
    }
    for (const char c : digits.substr(0, digits.size() - 1)) {
        if (c < '0' || c > '9') {
            return false;
        }
        index = index * 10 + static_cast<std::size_t>(c - '0');
    }
    return true;
}

// The object or the entry that a place holds, to look further into.
const void* inside(const FieldRef& place, Entries entries) {
    if (!place.owner) {
        return nullptr;
    }
    if (!place.entry) {
        return place.field->member(place.owner);
    }
    return entries == Entries::fresh ? place.field->list->fresh()
                                     : place.field->list->at(place.field->member(place.owner), *place.entry);
}

} // namespace

std::optional<FieldRef> find(std::string_view path, const Workbook* workbook, Entries entries) {
    Fields fields = workbook_fields();
    FieldRef place{nullptr, workbook, {}};
    while (!path.empty()) {
        std::string_view key;
        bool indexed = false;
        std::size_t index = 0;
        if (place.field) {
            const bool leaf = !place.field->children || (place.field->list && !place.entry);
            if (leaf) {
                return {};
            }
            fields = *place.field->children;
            place.owner = inside(place, entries);
        }
        if (!take_step(path, key, indexed, index)) {
            return {};
        }
        place.field = find_key(fields, key);
        place.entry.reset();
        if (!place.field || (indexed && !place.field->list)) {
            return {};
        }
        if (indexed) {
            const bool held = entries == Entries::held && place.owner;
            if (held && index >= place.field->list->size(place.field->member(place.owner))) {
                return {};
            }
            place.entry = index;
        }
    }
    return place.field ? std::optional(place) : std::nullopt;
}

Scalar fetch(const Field& field, const void* owner) {
    const void* member = field.member(owner);
    if (field.info.kind == FieldKind::text) {
        return std::string_view(*static_cast<const std::string*>(member));
    }
    double amount = 0.0;
    if (!field.scalar->get(member, amount)) {
        return nullptr;
    }
    if (field.info.kind == FieldKind::flag) {
        return amount != 0.0;
    }
    if (field.info.kind == FieldKind::word) {
        const bool known = amount >= 0.0 && amount < static_cast<double>(field.info.words.size());
        return known ? field.info.words[static_cast<std::size_t>(amount)] : std::string_view("?");
    }
    return field.scale == 1.0 ? amount : in_key_unit(amount, field.scale);
}

std::optional<Text> judge(const FieldInfo& info, const Scalar& value) {
    if (fits(info, value)) {
        return {};
    }
    const bool hidden = info.kind == FieldKind::text && value.type == Scalar::Type::text &&
                        (!codec::is_utf8(value.text) || codec::has_hidden(value.text));
    if (hidden) {
        return words::file::Hidden{.accepted = accepted(info), .value = shown(value)};
    }
    return words::file::NotAccepted{.accepted = accepted(info), .value = shown(value)};
}

std::optional<Text> put(const Field& field, void* owner, const Scalar& value) {
    if (auto wrong = judge(field.info, value)) {
        return wrong;
    }
    void* member = writable(field, owner);
    if (value.type == Scalar::Type::none) {
        field.scalar->set(member, nullptr);
        return {};
    }
    if (field.info.kind == FieldKind::text) {
        *static_cast<std::string*>(member) = value.text;
        return {};
    }
    double amount = value.number * field.scale;
    if (field.info.kind == FieldKind::word) {
        const auto& words = field.info.words;
        amount = static_cast<double>(std::find(words.begin(), words.end(), value.text) - words.begin());
    }
    field.scalar->set(member, &amount);
    return {};
}

std::optional<Fault> check_object(Fields fields, const void* object, std::string& path) {
    for (const Field& field : fields) {
        const PathScope scope(path, field.key);
        const void* member = field.member(object);
        if (field.info.kind == FieldKind::object) {
            if (auto fault = check_object(*field.children, member, path)) {
                return fault;
            }
            continue;
        }
        if (field.info.kind == FieldKind::outline) {
            continue; // made by reading alone, which judges it
        }
        if (field.info.kind != FieldKind::list) {
            if (auto wrong = judge(field.info, fetch(field, object))) {
                return Fault{path, *wrong, enter(field.info)};
            }
            continue;
        }
        const std::size_t size = field.list->size(member);
        if (static_cast<double>(size) < field.info.low || static_cast<double>(size) > field.info.high) {
            return Fault{path, words::file::Entries{.accepted = accepted(field.info), .count = static_cast<int>(size)},
                         enter(field.info)};
        }
        for (std::size_t i = 0; i < size; ++i) {
            const PathScope entry(path, i);
            if (auto fault = check_object(*field.children, field.list->at(member, i), path)) {
                return fault;
            }
        }
    }
    return {};
}

namespace {

std::string digits(Current current) {
    return codec::decimal_text(current.in(ampere));
}

std::optional<Fault> broken_machine(const Machine& m) {
    if (m.min_current > m.max_current) {
        return Fault{"shop.machine.max_current_a",
                     words::rule::LargestCurrent{.largest = digits(m.max_current), .smallest = digits(m.min_current)},
                     words::rule::LargestCurrentDo{.largest = m.max_current, .smallest = m.min_current}};
    }
    if (m.plate_i1max && m.plate_i1eff && *m.plate_i1eff > *m.plate_i1max) {
        return Fault{"shop.machine.plate_i1eff_a",
                     words::rule::I1eff{.i1eff = digits(*m.plate_i1eff), .i1max = digits(*m.plate_i1max)},
                     words::rule::I1effDo{.i1eff = *m.plate_i1eff, .i1max = *m.plate_i1max}};
    }
    const LowVoltage& low = m.low_voltage;
    if (low.i1max && low.i1eff && *low.i1eff > *low.i1max) {
        return Fault{"shop.machine.low_voltage.i1eff_a",
                     words::rule::I1eff{.i1eff = digits(*low.i1eff), .i1max = digits(*low.i1max)},
                     words::rule::I1effDo{.i1eff = *low.i1eff, .i1max = *low.i1max}};
    }
    return {};
}

std::optional<Fault> broken_air(const air::AirSystem& air) {
    if (air.cut_out > air.cut_in) {
        return {};
    }
    return Fault{"shop.air.cut_out_bar",
                 words::rule::CutOut{.cut_in = codec::decimal_text(air.cut_in.in(bar)),
                                     .cut_out = codec::decimal_text(air.cut_out.in(bar))},
                 words::rule::CutOutDo{.cut_in = air.cut_in, .cut_out = air.cut_out}};
}

std::optional<Fault> broken_log(const Shop& shop) {
    for (std::size_t i = 0; i < shop.tests.size(); ++i) {
        const tune::TestCut& cut = shop.tests[i];
        if (cut.verdict && !cut.feed) {
            return Fault{"shop.tests[" + std::to_string(i) + "].feed_mm_min", words::rule::verdict_feed,
                         words::rule::verdict_feed_do};
        }
    }
    for (std::size_t i = 0; i < shop.wear.sets.size(); ++i) {
        const wear::ConsumableSet& set = shop.wear.sets[i];
        if (set.ended == wear::Ended::worn && set.starts == 0 && !(set.arc > Duration{})) {
            return Fault{"shop.wear.sets[" + std::to_string(i) + "].starts", words::rule::worn_set,
                         words::rule::worn_set_do};
        }
    }
    return {};
}

std::optional<Fault> broken_key(const Shop& shop) {
    const auto is_key = [](const std::string& key) {
        return key.size() == 64 && key.find_first_not_of("0123456789abcdef") == std::string::npos;
    };
    if (!shop.seal_key.empty() && !is_key(shop.seal_key)) {
        return Fault{"shop.seal_key", words::rule::seal_key, words::rule::key_do};
    }
    for (std::size_t i = 0; i < shop.old_keys.size(); ++i) {
        if (!is_key(shop.old_keys[i].seal_key)) {
            return Fault{"shop.old_keys[" + std::to_string(i) + "].seal_key", words::rule::old_key,
                         words::rule::key_do};
        }
    }
    return {};
}

} // namespace

std::optional<Fault> broken_rule(const Workbook& workbook) {
    const Shop& shop = workbook.shop;
    if (auto fault = broken_machine(shop.machine)) {
        return fault;
    }
    if (auto fault = broken_air(shop.air)) {
        return fault;
    }
    const std::string& currency = shop.rates.currency;
    if (!std::all_of(currency.begin(), currency.end(), [](char c) { return c >= 'A' && c <= 'Z'; })) {
        return Fault{"shop.rates.currency", words::rule::Currency{.typed = codec::one_line(currency)},
                     words::rule::currency_do};
    }
    if (auto fault = broken_key(shop)) {
        return fault;
    }
    if (!is_public_address(shop.public_url)) {
        return Fault{"shop.public_url", words::rule::address, words::rule::address_do};
    }
    return broken_log(shop);
}

} // namespace torchside::document
