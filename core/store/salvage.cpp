#include "core/store/salvage.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "core/codec/json.hpp"
#include "core/schema/access.hpp"
#include "core/schema/intent.hpp"
#include "core/store/workbook_file.hpp"
#include "core/store/workbook_read.hpp"

namespace torchside::document {

namespace {

class Salvage {
public:
    explicit Salvage(Salvaged& out) : out_(out) {}

    void object(Fields fields, const codec::JsonValue& json, void* to) {
        std::size_t expected = 0; // the schema's order is the writer's
        for (std::size_t i = 0; i < json.keys.size(); ++i) {
            const Field* field = named(fields, json.keys[i]);
            if (field == nullptr && json.keys[i] == "torchside") {
                continue;
            }
            if (field == nullptr) {
                ++out_.lost;
                const bool holds =
                    json.items[i].type >= codec::JsonValue::Type::list && expected < fields.size() &&
                    fields[expected].info.kind >= FieldKind::object &&
                    std::find(json.keys.begin(), json.keys.end(), fields[expected].key) == json.keys.end();
                field = holds ? &fields[expected] : nullptr; // the key is damaged, what it holds need not be
            }
            if (field != nullptr) {
                expected = static_cast<std::size_t>(field - fields.data());
                value(*field, json.items[i], to);
            }
            ++expected;
        }
    }

    void lines(std::string_view text) {
        while (!text.empty()) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            lines_.push_back(text.substr(0, end));
            text.remove_prefix(std::min(end + 1, text.size()));
        }
        block(workbook_fields(), &out_.workbook, 1);
    }

private:
    static const Field* named(Fields fields, std::string_view key) {
        const auto found = std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return f.key == key; });
        return found == fields.end() ? nullptr : &*found;
    }

    void value(const Field& field, const codec::JsonValue& json, void* to) {
        if (field.info.kind == FieldKind::object && json.type == codec::JsonValue::Type::object) {
            object(*field.children, json, writable(field, to));
        } else if (field.info.kind == FieldKind::list && json.type == codec::JsonValue::Type::list) {
            fresh_list(field, to);
            for (const codec::JsonValue& entry : json.items) {
                row(field, entry, to);
            }
        } else {
            std::string path;
            count(!read_value(field, json, to, path));
        }
    }

    void count(bool good) { ++(good ? out_.read : out_.lost); }

    static void fresh_list(const Field& field, void* to) {
        void* list = writable(field, to);
        while (field.list->size(list) > 0) {
            field.list->erase(list, field.list->size(list) - 1);
        }
    }

    /// All of an entry or nothing: half a test cut would say something else.
    void row(const Field& field, const codec::JsonValue& json, void* to) {
        void* list = writable(field, to);
        const std::size_t last = field.list->size(list);
        if (static_cast<double>(last) >= field.info.high) {
            return count(false);
        }
        field.list->grow(list);
        // Just grown through this same door, so it may be written to.
        void* fresh = const_cast<void*>(field.list->at(list, last)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
        std::string path;
        const bool good = !read_members(*field.children, json, fresh, path);
        if (!good) {
            field.list->erase(list, last);
        }
        count(good);
    }

    // --- line by line

    /// How deep a line stands, and what is on it; -1 when it cannot be one of ours.
    static int depth_of(std::string_view& line) {
        const std::size_t spaces = line.find_first_not_of(' ');
        if (spaces == std::string_view::npos || spaces % 2 != 0 ||
            std::string_view("\"{}[]").find(line[spaces]) == std::string_view::npos) {
            return -1;
        }
        line.remove_prefix(spaces);
        return static_cast<int>(spaces / 2);
    }

    /// A bracket, or the key of an object further out; a damaged line is neither.
    static bool ends_block(std::string_view line, std::size_t colon) {
        return line[0] == '}' || line[0] == ']' ||
               (line[0] == '"' && colon != std::string_view::npos && line.find_first_of("\" ", 1) == colon);
    }

    [[nodiscard]] bool opens(std::size_t at, int depth) const {
        for (std::size_t i = at + 1; i < lines_.size() && i < at + 3; ++i) {
            std::string_view next = lines_[i];
            const int d = depth_of(next);
            if (d >= 0) {
                return d > depth;
            }
        }
        return false;
    }

    static std::string_view without_comma(std::string_view text) {
        return text.ends_with(',') ? text.substr(0, text.size() - 1) : text;
    }

    /// The lines that stand `depth` deep are keys of this object; deeper ones belong to the key above them.
    void block(Fields fields, void* to, int depth) {
        std::size_t expected = 0; // the schema's order is the writer's
        while (at_ < lines_.size()) {
            std::string_view line = lines_[at_];
            const int d = depth_of(line);
            const std::size_t colon = line.find("\": ");
            if (d >= 0 && d < depth && at_ > 0 && ends_block(line, colon)) {
                return; // the object's end, and what comes after it
            }
            const Field* field =
                d == depth && colon != std::string_view::npos ? named(fields, line.substr(1, colon - 1)) : nullptr;
            const bool whole = field != nullptr;
            if (!whole && opens(at_, depth) && expected < fields.size() &&
                fields[expected].info.kind >= FieldKind::object) {
                field = &fields[expected]; // the line is damaged, what it opens need not be
                ++out_.lost;
            }
            ++at_;
            if (field == nullptr) {
                const bool value = d < 0 || (line[0] == '"' && !line.starts_with("\"torchside\""));
                out_.lost += value ? 1 : 0;
                expected += value ? 1 : 0;
                continue;
            }
            expected = static_cast<std::size_t>(field - fields.data()) + 1;
            const std::string_view rest = whole ? line.substr(colon + 3) : std::string_view();
            const bool object = field->info.kind == FieldKind::object;
            const bool opened = rest == (object ? "{" : "[") || !opens(at_ - 1, depth);
            key(*field, rest, whole && opened, to, depth);
        }
    }

    void key(const Field& field, std::string_view rest, bool whole, void* to, int depth) {
        if (field.info.kind == FieldKind::object && (!whole || rest == "{")) {
            return block(*field.children, writable(field, to), depth + 1);
        }
        if (field.info.kind == FieldKind::list && (!whole || rest == "[")) {
            return entries(field, to, depth + 1);
        }
        std::string text(without_comma(rest));
        if (field.info.kind == FieldKind::outline && (!whole || rest == "[")) {
            text = "[";
            for (; at_ < lines_.size(); ++at_) {
                std::string_view line = lines_[at_];
                if (const int d = depth_of(line); d >= 0 && d <= depth) {
                    break;
                }
                text += line;
            }
            text += ']';
        }
        const auto json = codec::parse_json(text);
        json.ok() ? value(field, json.value(), to) : count(false);
    }

    void entries(const Field& field, void* to, int depth) {
        fresh_list(field, to);
        for (; at_ < lines_.size(); ++at_) {
            std::string_view line = lines_[at_];
            if (const int d = depth_of(line); d >= 0 && d < depth) {
                return;
            }
            const auto json = codec::parse_json(without_comma(line));
            json.ok() ? row(field, json.value(), to) : count(false);
        }
    }

    Salvaged& out_;
    std::vector<std::string_view> lines_{};
    std::size_t at_ = 0;
};

/// The rules between two keys: an entry that breaks one goes, a key gets its default, and then the object it is in.
bool mended(Workbook& book, int& lost) {
    std::string before;
    for (int turns = 0; turns < 1000; ++turns) { // no list holds more
        const auto fault = check(book);
        if (!fault) {
            return true;
        }
        std::string path = fault->field;
        const std::size_t entry = path.find(']');
        if (entry != std::string::npos) {
            path.resize(entry + 1);
        } else if (path == before) {
            path.resize(path.rfind('.'));
        }
        const auto place = find(path, &book, Entries::held);
        if (!place) {
            return false;
        }
        // Found in our own workbook, so it may be written to.
        void* owner = const_cast<void*>(place->owner); // NOLINT(cppcoreguidelines-pro-type-const-cast)
        if (place->entry) {
            place->field->list->erase(writable(*place->field, owner), *place->entry);
        } else if (place->field->reset != nullptr) {
            place->field->reset(writable(*place->field, owner));
        } else if (put(*place->field, owner, *default_of(path))) {
            return false;
        }
        before = fault->field;
        ++lost;
    }
    return false;
}

} // namespace

Salvaged salvage(std::string_view bytes) {
    Salvaged out;
    bytes = bytes.substr(0, largest_file);
    const std::size_t head = bytes.starts_with("torchside-record") ? bytes.find('\n') + 1 : 0; // npos + 1 is 0
    const std::string_view json = bytes.substr(head);
    if (const auto parsed = codec::parse_json(json); parsed.ok()) {
        Salvage(out).object(workbook_fields(), parsed.value(), &out.workbook);
    } else {
        Salvage(out).lines(json);
    }
    if (out.workbook.shop.machine.nozzles.empty()) {
        out.workbook.shop.machine.nozzles = Machine{}.nozzles;
    }
    if (!mended(out.workbook, out.lost)) {
        out.read = 0;
    }
    return out;
}

} // namespace torchside::document
