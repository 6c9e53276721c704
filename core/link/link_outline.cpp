#include "core/link/link_outline.hpp"

#include "generated/words/link_fault.hpp"

namespace torchside::document {

namespace {

constexpr std::string_view roles[] = {"outer", "inner", "open"};

codec::JsonValue text_of(std::string_view text) {
    codec::JsonValue out;
    out.type = codec::JsonValue::Type::text;
    out.text = text;
    return out;
}

bool take_points(codec::CborReader& in, std::uint64_t count, std::size_t& left, codec::JsonValue& out) {
    out.type = codec::JsonValue::Type::list;
    if (count > left) {
        return false;
    }
    left -= static_cast<std::size_t>(count);
    for (; count > 0; --count) {
        codec::JsonValue& point = out.items.emplace_back();
        point.type = codec::JsonValue::Type::list;
        for (int i = 0; i < 3; ++i) {
            codec::JsonValue& number = point.items.emplace_back();
            number.type = codec::JsonValue::Type::number;
            if (!in.number(number.number)) {
                return false;
            }
        }
    }
    return true;
}

// The drawing as it would stand in a file; false when the bytes are something else.
bool take_drawing(codec::CborReader& in, codec::JsonValue& out) {
    std::uint64_t contours = 0;
    std::size_t left = most_kept_points;
    out.type = codec::JsonValue::Type::list;
    if (!in.head(codec::Cbor::array, most_kept_points, contours)) {
        return false;
    }
    for (; contours > 0; --contours) {
        std::uint64_t size = 0;
        std::uint64_t role = 0;
        if (!in.head(codec::Cbor::array, 3 * most_kept_points + 1, size) || size % 3 != 1 ||
            !in.head(codec::Cbor::unsigned_int, 2, role)) {
            return false;
        }
        codec::JsonValue& contour = out.items.emplace_back();
        contour.type = codec::JsonValue::Type::object;
        contour.keys = {"role", "points"};
        contour.items.push_back(text_of(roles[static_cast<std::size_t>(role)]));
        if (!take_points(in, size / 3, left, contour.items.emplace_back())) {
            return false;
        }
    }
    return true;
}

} // namespace

std::string pack_drawing(const SharedOutline& outline) {
    std::string out;
    if (!outline || outline->contours.empty()) {
        return out;
    }
    codec::cbor_head(out, codec::Cbor::array, outline->contours.size());
    for (const part::Contour& c : outline->contours) {
        codec::cbor_head(out, codec::Cbor::array, 3 * c.points.size() + 1);
        codec::cbor_head(out, codec::Cbor::unsigned_int, static_cast<std::uint64_t>(c.role));
        for (const part::Vertex& v : c.points) {
            codec::cbor_number(out, v.at.x);
            codec::cbor_number(out, v.at.y);
            codec::cbor_number(out, v.bulge);
        }
        if (out.size() > most_drawing) {
            return {};
        }
    }
    return out;
}

std::optional<Fault> unpack_drawing(codec::CborReader& in, std::string& path, SharedOutline& out) {
    codec::JsonValue json;
    if (!take_drawing(in, json)) {
        return Fault{path, words::link_fault::drawing};
    }
    return read_outline(json, path, out);
}

} // namespace torchside::document
