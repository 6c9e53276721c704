// Random workbooks with every field somewhere in its range, made from the schema's own tables so that a new key is
// covered the day it is added. The same seed gives the same workbook on every platform.
#pragma once

#include <algorithm>
#include <cmath>

#include "core/part/measure.hpp"
#include "core/part/piece.hpp"
#include "core/schema/access.hpp"
#include "core/schema/outline_json.hpp"
#include "tests/property/rng.hpp"

namespace torchside::test {

namespace detail {

inline void fill(document::Fields fields, void* object, Rng& rng);

inline double random_number(const document::FieldInfo& info, Rng& rng) {
    if (rng.chance(0.04)) {
        return rng.chance(0.5) ? info.low : info.high;
    }
    const double x = info.low > 0.0 ? rng.by_factor(info.low, info.high) : rng.uniform(info.low, info.high);
    // People type round numbers; but every digit must survive too.
    const double rounded = std::floor(x * 10.0 + 0.5) / 10.0;
    return rng.chance(0.5) && rounded >= info.low && rounded <= info.high ? rounded : x;
}

inline document::Scalar random_scalar(const document::FieldInfo& info, Rng& rng) {
    using document::FieldKind;
    if (info.nullable && rng.chance(0.4)) {
        return nullptr;
    }
    switch (info.kind) {
    case FieldKind::integer:
        if (!info.choices.empty()) {
            return info.choices[rng.below(info.choices.size())];
        }
        return std::floor(random_number(info, rng));
    case FieldKind::flag:
        return rng.chance(0.5);
    case FieldKind::word:
        return info.words[rng.below(info.words.size())];
    case FieldKind::text: {
        constexpr std::string_view letters[] = {"A", "z", " ", "\"", "\\", "/", "ß", "é", "⅛", "鉄", "😀", "<", "&"};
        constexpr std::string_view plain[] = {"M", "6", " ", "\"", "\\", "~", "P", "-"};
        std::string out;
        if (info.plain) {
            for (auto n = info.low + static_cast<double>(rng.below(12)); n > 0; --n) {
                out += plain[rng.below(std::size(plain))];
            }
            return std::string_view(out);
        }
        const bool code = info.low == info.high;
        for (auto n = code ? 3 : rng.below(static_cast<std::size_t>(info.high) + 1); n > 0; --n) {
            out +=
                code ? std::string(1, static_cast<char>('A' + rng.below(26))) : letters[rng.below(std::size(letters))];
        }
        return std::string_view(out);
    }
    default:
        return random_number(info, rng);
    }
}

inline document::SharedOutline random_outline(Rng& rng) {
    if (rng.chance(0.7)) {
        return {};
    }
    auto outline = std::make_shared<part::Outline>();
    for (auto n = 1 + rng.below(3); n > 0; --n) {
        part::Contour c;
        c.role = static_cast<part::Role>(rng.below(3));
        for (auto points = 3 + rng.below(5); points > 0; --points) {
            c.points.push_back(
                {{rng.uniform(-500, 500), rng.uniform(-500, 500)}, rng.chance(0.5) ? rng.uniform(-1, 1) : 0.0});
        }
        if (c.role != part::Role::open && (part::area_mm2(c) > 0.0) != (c.role == part::Role::outer)) {
            c = part::reversed(c);
        }
        outline->contours.push_back(c);
    }
    return outline;
}

inline std::size_t random_count(const document::FieldInfo& info, Rng& rng) {
    const auto low = static_cast<std::size_t>(info.low);
    const auto high = static_cast<std::size_t>(info.high);
    return std::min(high, low + (rng.below(rng.chance(0.01) ? 60 : 6)));
}

inline void fill_field(const document::Field& field, void* owner, Rng& rng) {
    void* member = document::writable(field, owner);
    if (field.info.kind == document::FieldKind::object) {
        return fill(*field.children, member, rng);
    }
    if (field.info.kind == document::FieldKind::outline) {
        *static_cast<document::SharedOutline*>(member) = random_outline(rng);
        return;
    }
    if (field.info.kind != document::FieldKind::list) {
        static_cast<void>(document::put(field, owner, random_scalar(field.info, rng)));
        return;
    }
    while (field.list->size(member) > 0) {
        field.list->erase(member, 0);
    }
    for (auto n = random_count(field.info, rng); n > 0; --n) {
        field.list->grow(member);
        fill(*field.children, const_cast<void*>(field.list->at(member, field.list->size(member) - 1)), rng);
    }
}

// Keys that came later draw from a copy of the stream, so that they leave the workbooks of a seed otherwise as they were.
constexpr std::string_view later_keys[] = {"country",  "marked_75c", "ambient_c",   "plug",  "cord_mm2",
                                           "old_keys", "issued",     "low_voltage", "others"};

inline bool came_later(const document::Field& field) {
    return std::find(std::begin(later_keys), std::end(later_keys), field.key) != std::end(later_keys);
}

inline void fill(document::Fields fields, void* object, Rng& rng) {
    for (const document::Field& field : fields) {
        if (!came_later(field)) {
            fill_field(field, object, rng);
        }
    }
}

inline void fill_later(document::Fields fields, void* object, Rng& rng) {
    for (const document::Field& field : fields) {
        if (came_later(field)) {
            fill_field(field, object, rng);
        } else if (field.info.kind == document::FieldKind::object) {
            fill_later(*field.children, document::writable(field, object), rng);
        }
    }
}

} // namespace detail

inline Workbook random_workbook(Rng& rng) {
    Workbook w;
    detail::fill(document::workbook_fields(), &w, rng);
    air::AirSystem& air = w.shop.air;
    if (air.cut_in > air.cut_out) {
        std::swap(air.cut_in, air.cut_out);
    } else if (!(air.cut_out > air.cut_in)) {
        air.cut_in = Pressure{6, bar};
        air.cut_out = Pressure{8, bar};
    }
    Machine& m = w.shop.machine;
    if (m.min_current > m.max_current) {
        std::swap(m.min_current, m.max_current);
        m.max_current = std::max(m.max_current, Current{10, ampere});
    }
    if (m.plate_i1max && m.plate_i1eff && *m.plate_i1eff > *m.plate_i1max) {
        std::swap(m.plate_i1eff, m.plate_i1max);
    }
    for (wear::ConsumableSet& set : w.shop.wear.sets) {
        if (set.starts == 0 && !(set.arc > Duration{})) {
            set.ended = wear::Ended::pulled;
        }
    }
    // Half of the jobs are ones a small shop has, so that settings are compared and not only refusals.
    if (rng.chance(0.5)) {
        w.job.thickness = Length{rng.by_factor(1.0, 14.0), mm};
        w.job.current = Current{rng.uniform(30.0, 60.0), ampere};
        m.max_current = Current{rng.uniform(60.0, 90.0), ampere};
        m.min_current = std::min(m.min_current, m.max_current);
    }
    // And half have a part whose sizes go together.
    if (rng.chance(0.5)) {
        part::PartSpec& p = w.job.part;
        const auto share_of = [&](Length l, double low, double high) { return rng.uniform(low, high) * l; };
        p.length = Length{rng.by_factor(60.0, 600.0), mm};
        p.width = share_of(p.length, 0.6, 1.0);
        p.outside = Length{rng.by_factor(80.0, 400.0), mm};
        p.inside = share_of(p.outside, 0.1, 0.4);
        p.hole_circle = share_of(p.outside, 0.65, 0.8);
        p.hole = share_of(std::min(p.width, p.outside), 0.03, 0.1);
        p.holes = static_cast<int>(rng.below(7));
        p.hole_edge = share_of(p.width, 0.12, 0.2);
        p.corner = share_of(p.width, 0.0, 0.06);
        p.leg = share_of(p.width, 0.3, 0.4);
        p.inner_corner = share_of(p.width, 0.01, 0.05);
        p.slot_length = share_of(p.length, 0.3, 0.7);
        p.slot_width = share_of(p.width, 0.05, 0.2);
    }
    w.shop.public_url = rng.chance(0.5) ? "" : "https://shop" + std::to_string(rng.below(1000)) + ".example/";
    w.shop.seal_key.clear();
    for (auto n = rng.chance(0.5) ? 0 : 64; n > 0; --n) {
        w.shop.seal_key += "0123456789abcdef"[rng.below(16)];
    }
    for (tune::TestCut& cut : w.shop.tests) {
        if (cut.verdict && !cut.feed) {
            cut.verdict.reset();
        }
        if (rng.chance(0.6)) {
            cut.material = w.job.material;
        }
    }
    Rng later = rng;
    detail::fill_later(document::workbook_fields(), &w, later);
    LowVoltage& low = m.low_voltage;
    if (low.i1max && low.i1eff && *low.i1eff > *low.i1max) {
        std::swap(low.i1eff, low.i1max);
    }
    for (price::OldKey& old : w.shop.old_keys) {
        old.seal_key.clear();
        while (old.seal_key.size() < 64) {
            old.seal_key += "0123456789abcdef"[later.below(16)];
        }
    }
    return w;
}

/// Equal to the last bit in every field.
inline bool same(document::Fields fields, const void* a, const void* b) {
    using document::FieldKind;
    return std::all_of(fields.begin(), fields.end(), [&](const document::Field& field) {
        const void* in_a = field.member(a);
        const void* in_b = field.member(b);
        if (field.info.kind == FieldKind::object) {
            return same(*field.children, in_a, in_b);
        }
        if (field.info.kind == FieldKind::text) {
            return *static_cast<const std::string*>(in_a) == *static_cast<const std::string*>(in_b);
        }
        if (field.info.kind == FieldKind::outline) {
            const auto& outline_a = *static_cast<const document::SharedOutline*>(in_a);
            const auto& outline_b = *static_cast<const document::SharedOutline*>(in_b);
            return outline_a && outline_b ? *outline_a == *outline_b : outline_a == outline_b;
        }
        if (field.info.kind == FieldKind::list) {
            const std::size_t size = field.list->size(in_a);
            bool equal = size == field.list->size(in_b);
            for (std::size_t i = 0; equal && i < size; ++i) {
                equal = same(*field.children, field.list->at(in_a, i), field.list->at(in_b, i));
            }
            return equal;
        }
        double x = 0.0;
        double y = 0.0;
        const bool has_x = field.scalar->get(in_a, x);
        const bool has_y = field.scalar->get(in_b, y);
        return has_x == has_y && x == y;
    });
}

inline bool same(const Workbook& a, const Workbook& b) {
    return same(document::workbook_fields(), &a, &b);
}

/// Without what no link carries.
inline void forget_own(Shop& shop) {
    shop.seal_key.clear();
    shop.old_keys.clear();
    shop.issued.clear();
    shop.others.clear();
    shop.example = false;
}

} // namespace torchside::test
