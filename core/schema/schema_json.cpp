// The JSON Schema, printed from the same tables that reading goes by.
#include "core/codec/json.hpp"
#include "core/schema/access.hpp"
#include "core/schema/outline_json.hpp"
#include "core/words/say.hpp"

namespace torchside::document {

namespace {

void object_schema(Fields fields, const void* fresh, codec::JsonWriter& out, bool nullable = false);

void type(std::string_view name, bool nullable, codec::JsonWriter& out) {
    out.key("type");
    if (!nullable) {
        return out.text(name);
    }
    out.open_line('[');
    out.text(name);
    out.text("null");
    out.close();
}

void choices(const FieldInfo& info, codec::JsonWriter& out) {
    out.key("enum").open_line('[');
    for (const std::string_view word : info.words) {
        out.text(word);
    }
    for (const int choice : info.choices) {
        out.number(choice);
    }
    if (info.nullable) {
        out.null();
    }
    out.close();
}

void scalar_schema(const Field& field, codec::JsonWriter& out) {
    const FieldInfo& info = field.info;
    const bool is_text = info.kind == FieldKind::text;
    if (info.kind == FieldKind::word || !info.choices.empty()) {
        choices(info, out);
    } else if (info.kind == FieldKind::flag) {
        type("boolean", info.nullable, out);
    } else {
        type(is_text ? "string" : info.kind == FieldKind::integer ? "integer" : "number", info.nullable, out);
        out.key(is_text ? "minLength" : "minimum").number(info.low);
        out.key(is_text ? "maxLength" : "maximum").number(info.high);
        if (info.plain) {
            out.key("pattern").text("^[ -'*-~]*$");
        }
    }
}

void list_schema(const Field& field, const void* owner, codec::JsonWriter& out) {
    type("array", false, out);
    out.key("minItems").number(field.info.low);
    out.key("maxItems").number(field.info.high);
    out.key("items").open('{');
    object_schema(*field.children, field.list->fresh(), out);
    out.close();
    out.key("default").open('[');
    const void* list = field.member(owner);
    for (std::size_t i = 0; i < field.list->size(list); ++i) {
        out.open_line('{');
        for (const Field& child : *field.children) {
            out.key(child.key);
            write_scalar(fetch(child, field.list->at(list, i)), out);
        }
        out.close();
    }
    out.close();
}

void field_schema(const Field& field, const void* owner, codec::JsonWriter& out) {
    out.key(field.key).open('{');
    Text about = field.info.meaning;
    about += field.info.blank;
    out.key("description").text(say(about, UnitSystem::metric));
    if (field.info.unit != FieldUnit::none) {
        out.key("unit").text(unit_name(field.info.unit));
    }
    if (field.info.kind == FieldKind::object) {
        object_schema(*field.children, field.member(owner), out, field.info.nullable);
    } else if (field.info.kind == FieldKind::outline) {
        outline_schema(out);
    } else if (field.info.kind == FieldKind::list) {
        list_schema(field, owner, out);
    } else {
        scalar_schema(field, out);
        if (!field.info.required) {
            out.key("default");
            write_scalar(fetch(field, owner), out);
        }
    }
    out.close();
}

void object_schema(Fields fields, const void* fresh, codec::JsonWriter& out, bool nullable) {
    type("object", nullable, out);
    out.key("additionalProperties").flag(false);
    bool any = false;
    for (const Field& field : fields) {
        if (field.info.required) {
            if (!any) {
                out.key("required").open_line('[');
                any = true;
            }
            out.text(field.key);
        }
    }
    if (any) {
        out.close();
    }
    out.key("properties").open('{');
    for (const Field& field : fields) {
        field_schema(field, fresh, out);
    }
    out.close();
}

} // namespace

std::string schema_json() {
    const Workbook fresh;
    codec::JsonWriter out;
    out.open('{');
    out.key("$schema").text("https://json-schema.org/draft/2020-12/schema");
    out.key("title").text("Torchside workbook");
    out.key("description")
        .text("A shop and a job. A key that is left out takes its default; any other key is refused. "
              "Printed by `torchside schema`: do not edit.");
    type("object", false, out);
    out.key("additionalProperties").flag(false);
    out.key("required").open_line('[');
    out.text("torchside");
    out.close();
    out.key("properties").open('{');
    out.key("torchside").open('{');
    out.key("description").text("Version of this format.");
    out.key("const").number(workbook_version);
    out.close();
    for (const Field& field : workbook_fields()) {
        field_schema(field, &fresh, out);
    }
    out.close();
    out.close();
    return out.take();
}

} // namespace torchside::document
