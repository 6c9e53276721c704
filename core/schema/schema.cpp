#include "core/schema/schema.hpp"

#include "core/codec/decimal.hpp"
#include "core/schema/access.hpp"

namespace torchside::document {

namespace {

std::string one_of(std::size_t count, auto name) {
    std::string out;
    for (std::size_t i = 0; i < count; ++i) {
        out += i == 0 ? "" : i + 1 == count ? " or " : ", ";
        out += name(i);
    }
    return out;
}

std::string range(const FieldInfo& info) {
    return codec::decimal_text(info.low) + " to " + codec::decimal_text(info.high);
}

std::string said_unit(FieldUnit unit) {
    switch (unit) {
    case FieldUnit::none:
    case FieldUnit::share:
    case FieldUnit::money:
    case FieldUnit::money_per_kg:
        return {};
    case FieldUnit::per_metre:
        return " per m";
    default:
        return ' ' + std::string(unit_name(unit));
    }
}

std::string accepted_value(const FieldInfo& info) {
    const std::string unit = said_unit(info.unit);
    switch (info.kind) {
    case FieldKind::number:
        return range(info) + unit;
    case FieldKind::integer:
        return info.choices.empty()
                   ? "a whole number " + range(info) + unit
                   : one_of(info.choices.size(), [&](std::size_t i) { return std::to_string(info.choices[i]); }) + unit;
    case FieldKind::flag:
        return "true or false";
    case FieldKind::word:
        return one_of(info.words.size(), [&](std::size_t i) { return info.words[i]; });
    case FieldKind::text:
        return "a text of " + (info.low == info.high ? codec::decimal_text(info.low) : range(info)) +
               (info.plain ? " plain letters, no brackets" : " letters");
    case FieldKind::list:
        return "a list of " + range(info) + " entries";
    case FieldKind::outline:
        return "a list of contours";
    case FieldKind::object:
        break;
    }
    return "an object";
}

} // namespace

std::optional<FieldInfo> field(std::string_view path) {
    const auto place = find(path, nullptr, Entries::fresh);
    if (!place) {
        return {};
    }
    FieldInfo info = place->field->info;
    if (place->entry) {
        info.kind = FieldKind::object;
    }
    return info;
}

std::string blank_words(const FieldInfo& info) {
    if (!info.nullable) {
        return {};
    }
    return "Leave blank " +
           (info.blank.empty() ? std::string("if you don't know it") : "to " + std::string(info.blank)) + '.';
}

namespace {

std::string enter_letters(const FieldInfo& info) {
    const std::string most = codec::decimal_text(info.high) + " letters";
    return (info.low == info.high ? most
            : info.low > 0        ? codec::decimal_text(info.low) + " to " + most
                                  : "up to " + most) +
           (info.plain ? ", no accents or brackets" : "");
}

} // namespace

std::string enter(const FieldInfo& info, UnitSystem units) {
    std::string what;
    if (info.kind == FieldKind::text) {
        what = enter_letters(info);
    } else if (info.kind == FieldKind::list) {
        return "Keep it to " + codec::decimal_text(info.high) + " rows: delete one first.";
    } else if (info.kind == FieldKind::number) {
        what = print_range(info.low, info.high, info.unit, units);
    } else if (info.kind == FieldKind::integer && info.choices.empty()) {
        what = "a whole number, " + print_range(info.low, info.high, info.unit, units);
    } else {
        what = accepted_value(info);
    }
    const std::string blank = blank_words(info);
    return "Enter " + what + (blank.empty() ? "." : ". " + blank);
}

std::string accepted(const FieldInfo& info) {
    return accepted_value(info) + (info.nullable ? ", or null" : "");
}

} // namespace torchside::document
