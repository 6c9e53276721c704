// How a key is tied to its member: the records of the schema's tables, and what reading, writing and
// checking do with them. Screens do not see this; they use schema.hpp and intent.hpp.
//
// Everything that walks a workbook (reading, writing, checking, paths, the JSON Schema) is one loop over these records
// at run time. The only code made for each key is the three-line member<M>(), for each type the two small functions of
// scalar_ops: that keeps the page small.
#pragma once

#include <concepts>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "core/quantity/quantity.hpp"
#include "core/schema/schema.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::document {

struct Field;

/// The keys of one object, in the order they are written.
using Fields = std::span<const Field>;

/// Reads and writes a scalar member as a double: a Quantity in its base unit, an enum as its index, a flag as 0 or 1.
/// get() is false, and set() takes null, for an optional member without a value.
struct ScalarOps {
    bool (*get)(const void* member, double& out);
    void (*set)(void* member, const double* value);
};

struct ListOps {
    std::size_t (*size)(const void* list);
    const void* (*at)(const void* list, std::size_t index);
    void (*grow)(void* list); // one default entry more
    void (*erase)(void* list, std::size_t index);
    const void* (*fresh)(); // a default entry
};

struct Field {
    std::string_view key;
    FieldInfo info;
    const void* (*member)(const void* object);
    double scale = 1.0;                // base units per unit of the key
    const ScalarOps* scalar = nullptr; // number, integer, flag, word
    const Fields* children = nullptr;  // object, list
    const ListOps* list = nullptr;
    void (*reset)(void* object) = nullptr; // object: back to its defaults
};

/// The two top objects, "shop" and "job".
[[nodiscard]] Fields workbook_fields();

extern const Fields shop_fields;
extern const Fields job_fields;
extern const Fields shared_cut_fields; // of a cut that shops give each other

/// Mutable access to a member, through Field::member, of an object that is not const.
[[nodiscard]] inline void* writable(const Field& field, void* object) {
    return const_cast<void*>(field.member(object)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
}

// ---- what a table is written with ----

template <auto M>
struct MemberOf;
template <class Owner, class T, T Owner::*M>
struct MemberOf<M> {
    using Object = Owner;
    using Type = T;
    static const void* at(const void* object) { return &(static_cast<const Owner*>(object)->*M); }
};

template <class T>
struct Plain {
    using Type = T;
    static constexpr bool optional = false;
};
template <class T>
struct Plain<std::optional<T>> {
    using Type = T;
    static constexpr bool optional = true;
};

template <class T>
inline constexpr bool is_quantity = false;
template <class K>
inline constexpr bool is_quantity<Quantity<K>> = true;

template <class K>
constexpr double to_double(Quantity<K> q) {
    return q.in(Unit<K>{1.0});
}
template <class T>
requires std::is_arithmetic_v<T> || std::is_enum_v<T>
constexpr double to_double(T v) {
    return static_cast<double>(static_cast<int>(v));
}
constexpr double to_double(double v) {
    return v;
}

template <class T>
constexpr T from_double(double v) {
    if constexpr (std::is_same_v<T, double>) {
        return v;
    } else if constexpr (is_quantity<T>) {
        return T{v, {1.0}};
    } else {
        return static_cast<T>(static_cast<int>(v));
    }
}

template <class T>
inline constexpr ScalarOps scalar_ops = {[](const void* member, double& out) {
                                             const T& held = *static_cast<const T*>(member);
                                             if constexpr (Plain<T>::optional) {
                                                 if (!held) {
                                                     return false;
                                                 }
                                                 out = to_double(*held);
                                             } else {
                                                 out = to_double(held);
                                             }
                                             return true;
                                         },
                                         [](void* member, const double* value) {
                                             T& held = *static_cast<T*>(member);
                                             if (value) {
                                                 held = from_double<typename Plain<T>::Type>(*value);
                                             } else if constexpr (Plain<T>::optional) {
                                                 held.reset();
                                             }
                                         }};

template <class T>
inline const T fresh_entry{};

template <class T>
inline constexpr ListOps list_ops = {
    [](const void* list) { return static_cast<const std::vector<T>*>(list)->size(); },
    [](const void* list, std::size_t i) -> const void* { return &(*static_cast<const std::vector<T>*>(list))[i]; },
    [](void* list) { static_cast<std::vector<T>*>(list)->emplace_back(); },
    [](void* list, std::size_t i) {
        auto& entries = *static_cast<std::vector<T>*>(list);
        entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(i));
    },
    []() -> const void* { return &fresh_entry<T>; }};

template <class K>
struct KeyUnit {
    Unit<K> unit;
    FieldUnit name;
};

template <auto M>
constexpr Field scalar(std::string_view key, FieldKind kind, FieldUnit unit, double low, double high, Word meaning) {
    using T = typename MemberOf<M>::Type;
    return {key,
            {kind, Plain<T>::optional, false, low, high, unit, meaning, {}, {}},
            &MemberOf<M>::at,
            1.0,
            &scalar_ops<T>};
}

/// A quantity in the unit its key names.
template <auto M, class K>
constexpr Field number(std::string_view key, KeyUnit<K> unit, double low, double high, Word meaning) {
    static_assert(std::is_same_v<typename Plain<typename MemberOf<M>::Type>::Type, Quantity<K>>);
    Field f = scalar<M>(key, FieldKind::number, unit.name, low, high, meaning);
    f.scale = unit.unit.per_base;
    return f;
}

/// A double: a share, a ratio, money, or a figure whose unit has no type (`unit` is then only shown).
template <auto M>
constexpr Field plain(std::string_view key, FieldUnit unit, double low, double high, Word meaning) {
    static_assert(std::is_same_v<typename Plain<typename MemberOf<M>::Type>::Type, double>);
    return scalar<M>(key, FieldKind::number, unit, low, high, meaning);
}

template <auto M>
constexpr Field whole(std::string_view key, int low, int high, Word meaning, FieldUnit unit = FieldUnit::none) {
    static_assert(std::is_same_v<typename Plain<typename MemberOf<M>::Type>::Type, int>);
    return scalar<M>(key, FieldKind::integer, unit, low, high, meaning);
}

/// One of a few whole numbers, smallest first.
template <auto M>
constexpr Field choice(std::string_view key, std::span<const int> choices, Word meaning,
                       FieldUnit unit = FieldUnit::none) {
    Field f = whole<M>(key, choices.front(), choices.back(), meaning, unit);
    f.info.choices = choices;
    return f;
}

template <auto M>
constexpr Field flag(std::string_view key, Word meaning) {
    static_assert(std::is_same_v<typename MemberOf<M>::Type, bool>);
    return scalar<M>(key, FieldKind::flag, FieldUnit::none, 0, 1, meaning);
}

/// An enum by its words, in the order of the enum.
template <auto M>
constexpr Field word(std::string_view key, std::span<const std::string_view> words, Word meaning) {
    static_assert(std::is_enum_v<typename Plain<typename MemberOf<M>::Type>::Type>);
    Field f = scalar<M>(key, FieldKind::word, FieldUnit::none, 0, static_cast<double>(words.size()) - 1, meaning);
    f.info.words = words;
    return f;
}

template <auto M>
constexpr Field text(std::string_view key, int low, int high, Word meaning) {
    static_assert(std::is_same_v<typename MemberOf<M>::Type, std::string>);
    return {key,
            {FieldKind::text, false, false, double(low), double(high), FieldUnit::none, meaning, {}, {}},
            &MemberOf<M>::at};
}

/// A text that goes into a program for a controller.
template <auto M>
constexpr Field program_word(std::string_view key, int low, Word meaning) {
    Field f = text<M>(key, low, 40, meaning);
    f.info.plain = true;
    return f;
}

template <auto M>
constexpr Field object(std::string_view key, const Fields* children, Word meaning) {
    Field f{key, {FieldKind::object, false, false, 0, 0, FieldUnit::none, meaning, {}, {}}, &MemberOf<M>::at};
    f.children = children;
    f.reset = [](void* member) {
        using T = typename MemberOf<M>::Type;
        *static_cast<T*>(member) = T{};
    };
    return f;
}

/// An object that may be null in a file: then it is as it begins, and it is written as an object.
constexpr Field or_null(Field object) {
    object.info.nullable = true;
    return object;
}

/// The drawn part.
template <auto M>
constexpr Field outline(std::string_view key, Word meaning) {
    return {key, {FieldKind::outline, true, false, 0, 0, FieldUnit::none, meaning, {}, {}}, &MemberOf<M>::at};
}

template <auto M>
constexpr Field list(std::string_view key, const Fields* children, int low, int high, Word meaning) {
    using T = typename MemberOf<M>::Type::value_type;
    Field f{key,
            {FieldKind::list, false, false, double(low), double(high), FieldUnit::none, meaning, {}, {}},
            &MemberOf<M>::at};
    f.children = children;
    f.list = &list_ops<T>;
    return f;
}

/// What leaving an optional key blank does.
constexpr Field blank(Word what, Field f) {
    f.info.blank = what;
    return f;
}

constexpr Field required(Field f) {
    f.info.required = true;
    return f;
}

} // namespace torchside::document
