#include "core/link/link_pack.hpp"

#include <algorithm>
#include <bitset>

#include "core/codec/utf8.hpp"
#include "core/link/link_numbers.hpp"
#include "core/link/link_outline.hpp"
#include "core/schema/access.hpp"
#include "generated/words/file.hpp"
#include "generated/words/link_fault.hpp"

namespace torchside::document {

namespace {

using Wrong = std::optional<Fault>;

constexpr unsigned most_numbers = 256;

void pack_scalar(const FieldInfo& info, const Scalar& value, std::string& out) {
    switch (value.type) {
    case Scalar::Type::none:
        return codec::cbor_null(out);
    case Scalar::Type::flag:
        return codec::cbor_flag(out, value.number != 0.0);
    case Scalar::Type::number:
        return codec::cbor_number(out, value.number);
    case Scalar::Type::text:
        break;
    }
    if (info.kind == FieldKind::text) {
        return codec::cbor_text(out, value.text);
    }
    const auto word = std::find(info.words.begin(), info.words.end(), value.text);
    codec::cbor_head(out, codec::Cbor::unsigned_int, static_cast<std::uint64_t>(word - info.words.begin()));
}

void pack_list(const Field& field, const void* owner, std::string& out) {
    const void* list = field.member(owner);
    const std::size_t size = field.list->size(list);
    codec::cbor_head(out, codec::Cbor::array, size);
    for (std::size_t i = 0; i < size; ++i) {
        pack_object(*field.children, field.list->at(list, i), field.list->fresh(), out);
    }
}

bool equal(Fields fields, const void* a, const void* b);

bool equal(const Field& field, const void* a, const void* b) {
    const void* in_a = field.member(a);
    const void* in_b = field.member(b);
    switch (field.info.kind) {
    case FieldKind::outline:
        return *static_cast<const SharedOutline*>(in_a) == *static_cast<const SharedOutline*>(in_b);
    case FieldKind::text:
        return *static_cast<const std::string*>(in_a) == *static_cast<const std::string*>(in_b);
    case FieldKind::object:
        return equal(*field.children, in_a, in_b);
    case FieldKind::list: {
        const std::size_t size = field.list->size(in_a);
        bool same = size == field.list->size(in_b);
        for (std::size_t i = 0; same && i < size; ++i) {
            same = equal(*field.children, field.list->at(in_a, i), field.list->at(in_b, i));
        }
        return same;
    }
    default:
        break;
    }
    double x = 0.0;
    double y = 0.0;
    return field.scalar->get(in_a, x) == field.scalar->get(in_b, y) && x == y;
}

bool equal(Fields fields, const void* a, const void* b) {
    for (const Field& field : fields) {
        if (!equal(field, a, b)) {
            return false;
        }
    }
    return true;
}

void pack_field(const Field& field, const void* owner, const void* fresh, std::string& out) {
    if (field.info.kind == FieldKind::list) {
        pack_list(field, owner, out);
    } else if (field.info.kind == FieldKind::object) {
        pack_object(*field.children, field.member(owner), field.member(fresh), out);
    } else if (field.info.kind == FieldKind::outline) {
        out += pack_drawing(*static_cast<const SharedOutline*>(field.member(owner)));
    } else {
        pack_scalar(field.info, fetch(field, owner), out);
    }
}

// What a scalar of this kind is in the bytes; false when it is something else.
bool take_scalar(const FieldInfo& info, codec::CborReader& in, Scalar& value, std::string& text) {
    if (info.nullable) {
        codec::CborReader ahead = in;
        if (ahead.null()) {
            in = ahead;
            value = nullptr;
            return true;
        }
    }
    std::uint64_t index = 0;
    double number = 0.0;
    bool flag = false;
    std::string_view view;
    switch (info.kind) {
    case FieldKind::flag:
        value = in.flag(flag) ? Scalar(flag) : Scalar();
        break;
    case FieldKind::word:
        if (in.head(codec::Cbor::unsigned_int, info.words.size() - 1, index)) {
            value = info.words[static_cast<std::size_t>(index)];
        }
        break;
    case FieldKind::text:
        // Four bytes a letter, and as much again for what is taken out.
        if (in.string(codec::Cbor::text, static_cast<std::size_t>(info.high) * 8, view) && codec::is_utf8(view)) {
            text = codec::without_hidden(view);
            value = std::string_view(text);
        }
        break;
    default:
        value = in.number(number) ? Scalar(number) : Scalar();
    }
    return value.type != Scalar::Type::none;
}

Wrong unpack_list(const Field& field, codec::CborReader& in, void* owner, std::string& path) {
    std::uint64_t count = 0;
    if (!in.head(codec::Cbor::array, static_cast<std::uint64_t>(field.info.high), count) ||
        static_cast<double>(count) < field.info.low) {
        return Fault{path, words::file::NoList{.accepted = accepted(field.info)}};
    }
    void* list = writable(field, owner);
    while (field.list->size(list) > 0) {
        field.list->erase(list, field.list->size(list) - 1);
    }
    for (std::size_t i = 0; i < count; ++i) {
        const PathScope entry(path, i);
        field.list->grow(list);
        // The list was just grown through this same door, so its entry may be written to.
        void* fresh = const_cast<void*>(field.list->at(list, i)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
        if (auto wrong = unpack_object(*field.children, in, fresh, path)) {
            return wrong;
        }
    }
    return {};
}

Wrong unpack_field(const Field& field, codec::CborReader& in, void* owner, std::string& path) {
    if (field.info.kind == FieldKind::object) {
        return unpack_object(*field.children, in, writable(field, owner), path);
    }
    if (field.info.kind == FieldKind::list) {
        return unpack_list(field, in, owner, path);
    }
    if (field.info.kind == FieldKind::outline) {
        return unpack_drawing(in, path, *static_cast<SharedOutline*>(writable(field, owner)));
    }
    Scalar value;
    std::string text;
    if (!take_scalar(field.info, in, value, text)) {
        return Fault{path, words::file::NoValue{.accepted = accepted(field.info)}};
    }
    if (auto wrong = put(field, owner, value)) {
        return Fault{path, std::move(*wrong)};
    }
    return {};
}

} // namespace

void pack_object(Fields fields, const void* object, const void* fresh, std::string& out) {
    std::string entries;
    unsigned count = 0;
    for (const Field& field : fields) {
        if (equal(field, object, fresh)) {
            continue;
        }
        std::string value;
        pack_field(field, object, fresh, value);
        const auto number = link_number(field.key);
        if (!number || value.empty() || (field.info.kind == FieldKind::object && value.size() == 1)) {
            continue; // what stays here (link_numbers.hpp), a drawing that is too long, and an object that differs in nothing else
        }
        codec::cbor_head(entries, codec::Cbor::unsigned_int, *number);
        entries += value;
        ++count;
    }
    codec::cbor_head(out, codec::Cbor::map, count);
    out += entries;
}

Wrong unpack_object(Fields fields, codec::CborReader& in, void* object, std::string& path) {
    std::bitset<most_numbers> seen;
    std::uint64_t count = 0;
    if (!in.head(codec::Cbor::map, fields.size(), count)) {
        return Fault{path.empty() ? "link" : path, words::link_fault::no_map, words::link_fault::damaged_do};
    }
    for (; count > 0; --count) {
        std::uint64_t read = 0;
        if (!in.head(codec::Cbor::unsigned_int, most_numbers - 1, read)) {
            return Fault{path.empty() ? "link" : path, words::link_fault::no_field, words::link_fault::damaged_do};
        }
        const auto number = static_cast<unsigned>(read);
        const auto field =
            std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return link_number(f.key) == number; });
        const bool known = field != fields.end();
        const PathScope scope(path, known ? std::string(field->key) : "number " + std::to_string(number));
        if (!known || seen[static_cast<std::size_t>(number)]) {
            return Fault{path, known ? words::link_fault::twice : words::link_fault::unknown};
        }
        seen.set(static_cast<std::size_t>(number));
        if (auto wrong = unpack_field(*field, in, object, path)) {
            return wrong;
        }
    }
    return {};
}

} // namespace torchside::document
