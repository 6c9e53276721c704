#include "core/document/schema.hpp"

#include "core/document/access.hpp"
#include "core/document/json.hpp"

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
    return number_text(info.low) + " to " + number_text(info.high);
}

std::string accepted_value(const FieldInfo& info) {
    const std::string unit = info.unit.empty() || info.unit.starts_with("money") ? ""
                             : info.unit == "1/m"                                ? " per m"
                                                                                 : ' ' + std::string(info.unit);
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
        return "a text of " + (info.low == info.high ? number_text(info.low) : range(info)) +
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

std::string accepted(const FieldInfo& info) {
    return accepted_value(info) + (info.nullable ? ", or null" : "");
}

} // namespace torchside::document
