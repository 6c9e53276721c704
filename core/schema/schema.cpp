#include "core/schema/schema.hpp"

#include "core/codec/decimal.hpp"
#include "core/schema/access.hpp"
#include "core/schema/entry.hpp"
#include "generated/words/file.hpp"

namespace torchside::document {

namespace {

/// "clean, too_fast or too_slow"
Text one_of(std::size_t count, auto name) {
    Text out = words::verbatim(name(0));
    for (std::size_t i = 1; i < count; ++i) {
        if (i + 1 == count) {
            out = words::file::Or{.first = out, .last = std::string(name(i))};
        } else {
            out = words::file::Then{.first = out, .next = std::string(name(i))};
        }
    }
    return out;
}

Text range(const FieldInfo& info, const std::string& unit) {
    return words::file::Range{.high = codec::decimal_text(info.high) + unit, .low = codec::decimal_text(info.low)};
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

Text letters(const FieldInfo& info) {
    const Text size = info.low == info.high ? words::verbatim(codec::decimal_text(info.low)) : range(info, {});
    if (info.plain) {
        return words::file::PlainLetters{.size = size};
    }
    return words::file::Letters{.size = size};
}

Text accepted_value(const FieldInfo& info) {
    const std::string unit = said_unit(info.unit);
    switch (info.kind) {
    case FieldKind::number:
        return range(info, unit);
    case FieldKind::integer:
        if (!info.choices.empty()) {
            return choices(info);
        }
        return words::file::Whole{.range = range(info, unit)};
    case FieldKind::flag:
    case FieldKind::word:
        return choices(info);
    case FieldKind::text:
        return letters(info);
    case FieldKind::list:
        return words::file::List{.range = range(info, {})};
    case FieldKind::outline:
        return words::file::contours;
    case FieldKind::object:
        break;
    }
    return words::file::object;
}

} // namespace

Text choices(const FieldInfo& info) {
    if (info.kind == FieldKind::flag) {
        return words::file::flag;
    }
    if (info.kind == FieldKind::word) {
        return one_of(info.words.size(), [&](std::size_t i) { return info.words[i]; });
    }
    const std::size_t last = info.choices.size() - 1;
    return one_of(info.choices.size(), [&](std::size_t i) {
        return std::to_string(info.choices[i]) + (i == last ? said_unit(info.unit) : std::string());
    });
}

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

Text accepted(const FieldInfo& info) {
    if (info.nullable) {
        return words::file::OrNull{.accepted = accepted_value(info)};
    }
    return accepted_value(info);
}

} // namespace torchside::document
