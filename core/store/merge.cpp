#include "core/store/merge.hpp"

#include <algorithm>
#include <span>

#include "core/codec/json.hpp"
#include "core/schema/access.hpp"
#include "core/schema/outline_json.hpp"

namespace torchside::document {

namespace {

using Rows = std::vector<std::string>;

std::string text_of(const Field& field, const void* owner);

void write_row(Fields fields, const void* object, std::string& out) {
    for (const Field& field : fields) {
        out += text_of(field, object) + '\n';
    }
}

Rows rows_of(const Field& field, const void* owner) {
    const void* list = field.member(owner);
    Rows rows(field.list->size(list));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        write_row(*field.children, field.list->at(list, i), rows[i]);
    }
    return rows;
}

/// The value of a key as text: the same text, the same value.
std::string text_of(const Field& field, const void* owner) {
    std::string out;
    if (field.info.kind == FieldKind::object) {
        write_row(*field.children, field.member(owner), out);
    } else if (field.info.kind == FieldKind::list) {
        for (const std::string& row : rows_of(field, owner)) {
            out += row + '\n';
        }
    } else {
        codec::JsonWriter json;
        if (field.info.kind == FieldKind::outline) {
            write_outline(*static_cast<const SharedOutline*>(field.member(owner)), json);
        } else {
            write_scalar(fetch(field, owner), json);
        }
        out = json.take();
    }
    return out;
}

void copy_value(const Field& field, const void* from, void* to);

void copy_entry(const Field& field, const void* from, std::size_t i, void* to) {
    void* list = writable(field, to);
    field.list->grow(list);
    // Just grown through this same door, so it may be written to.
    void* fresh = const_cast<void*>( // NOLINT(cppcoreguidelines-pro-type-const-cast)
        field.list->at(list, field.list->size(list) - 1));
    const void* entry = field.list->at(field.member(from), i);
    for (const Field& child : *field.children) {
        copy_value(child, entry, fresh);
    }
}

void clear(const Field& field, void* owner) {
    void* list = writable(field, owner);
    while (field.list->size(list) > 0) {
        field.list->erase(list, field.list->size(list) - 1);
    }
}

void copy_value(const Field& field, const void* from, void* to) {
    if (field.info.kind == FieldKind::object) {
        for (const Field& child : *field.children) {
            copy_value(child, field.member(from), writable(field, to));
        }
    } else if (field.info.kind == FieldKind::list) {
        clear(field, to);
        for (std::size_t i = 0; i < field.list->size(field.member(from)); ++i) {
            copy_entry(field, from, i, to);
        }
    } else if (field.info.kind == FieldKind::outline) {
        *static_cast<SharedOutline*>(writable(field, to)) = *static_cast<const SharedOutline*>(field.member(from));
    } else {
        static_cast<void>(put(field, to, fetch(field, from))); // valid there, so valid here
    }
}

/// For each entry of `base`, where it stands in `other`, or `gone`: a longest common sequence.
constexpr std::size_t gone = static_cast<std::size_t>(-1);
std::vector<std::size_t> places(const Rows& base, const Rows& other) {
    const std::size_t w = other.size() + 1;
    std::vector<unsigned short> longest((base.size() + 1) * w); // lists have at most 500 entries
    for (std::size_t i = base.size(); i-- > 0;) {
        for (std::size_t j = other.size(); j-- > 0;) {
            longest[i * w + j] = base[i] == other[j] ? static_cast<unsigned short>(longest[(i + 1) * w + j + 1] + 1)
                                                     : std::max(longest[(i + 1) * w + j], longest[i * w + j + 1]);
        }
    }
    std::vector<std::size_t> out(base.size(), gone);
    for (std::size_t i = 0, j = 0; i < base.size() && j < other.size();) {
        if (base[i] == other[j]) {
            out[i++] = j++;
        } else if (longest[(i + 1) * w + j] >= longest[i * w + j + 1]) {
            ++i;
        } else {
            ++j;
        }
    }
    return out;
}

class Merger {
public:
    explicit Merger(Merged& out) : out_(out) {}

    void object(Fields fields, const void* base, const void* mine, const void* theirs, void* to_theirs, void* to_mine) {
        for (const Field& field : fields) {
            const PathScope scope(path_, field.key);
            if (field.info.kind == FieldKind::object) {
                object(*field.children, field.member(base), field.member(mine), field.member(theirs),
                       writable(field, to_theirs), writable(field, to_mine));
                continue;
            }
            const std::string was = text_of(field, base);
            const std::string here = text_of(field, mine);
            const std::string there = text_of(field, theirs);
            if (here == was || (here == there && field.info.kind != FieldKind::list)) {
                continue; // as they have it, which both results began with
            }
            if (there == was) {
                copy_value(field, mine, to_theirs);
                copy_value(field, mine, to_mine);
            } else if (field.info.kind == FieldKind::list) {
                list(field, base, mine, theirs, to_theirs, to_mine);
            } else {
                copy_value(field, mine, to_mine);
                out_.conflicts.push_back(path_);
            }
        }
    }

private:
    void list(const Field& field, const void* base, const void* mine, const void* theirs, void* to_theirs,
              void* to_mine) {
        const Rows b = rows_of(field, base), m = rows_of(field, mine), t = rows_of(field, theirs);
        const auto in_mine = places(b, m), in_theirs = places(b, t);
        clear(field, to_theirs);
        clear(field, to_mine);
        bool clash = false;
        std::size_t bi = 0, mi = 0, ti = 0;
        const auto at = [](std::size_t i) { return static_cast<std::ptrdiff_t>(i); };
        const auto take = [&](const void* from, std::size_t first, std::size_t last, void* to) {
            for (std::size_t i = first; i < last; ++i) {
                copy_entry(field, from, i, to);
            }
        };
        for (std::size_t i = 0; i <= b.size(); ++i) { // the next entry that both have, or the end
            if (i < b.size() && (in_mine[i] == gone || in_theirs[i] == gone)) {
                continue;
            }
            const std::size_t m_end = i < b.size() ? in_mine[i] : m.size();
            const std::size_t t_end = i < b.size() ? in_theirs[i] : t.size();
            const auto same = [&](const Rows& other, std::size_t from, std::size_t to) {
                return to - from == i - bi &&
                       std::equal(other.begin() + at(from), other.begin() + at(to), b.begin() + at(bi));
            };
            const bool left_mine = same(m, mi, m_end), left_theirs = same(t, ti, t_end);
            if (bi == i || left_mine || left_theirs) { // only new ones here, or one side alone changed something
                for (void* to : {to_theirs, to_mine}) {
                    if (!left_theirs || left_mine) {
                        take(theirs, ti, t_end, to);
                    }
                    if (!left_mine) {
                        take(mine, mi, m_end, to);
                    }
                }
            } else {
                clash = clash || Rows(m.begin() + at(mi), m.begin() + at(m_end)) !=
                                     Rows(t.begin() + at(ti), t.begin() + at(t_end));
                take(theirs, ti, t_end, to_theirs);
                take(mine, mi, m_end, to_mine);
            }
            if (i < b.size()) {
                copy_entry(field, base, i, to_theirs);
                copy_entry(field, base, i, to_mine);
            }
            bi = i + 1;
            mi = m_end + 1;
            ti = t_end + 1;
        }
        if (clash) {
            out_.conflicts.push_back(path_);
        }
    }

    Merged& out_;
    std::string path_;
};

} // namespace

Merged merge(const Workbook& base, const Workbook& mine, const Workbook& theirs) {
    Merged out{theirs, theirs, {}};
    Merger(out).object(workbook_fields(), &base, &mine, &theirs, &out.theirs, &out.mine);
    std::optional<Fault> broken = check(out.theirs);
    if (!broken) {
        broken = check(out.mine);
    }
    if (broken) {
        out.theirs = theirs;
        out.mine = mine;
        out.conflicts.push_back(broken->field);
    }
    return out;
}

} // namespace torchside::document
