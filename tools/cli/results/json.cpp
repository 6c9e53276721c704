#include "tools/cli/results/json.hpp"

#include <cmath>
#include <cstdint>

namespace torchside::cli {

namespace {

constexpr std::size_t line_width = 110;
constexpr double largest_whole = 1e15; // below it every whole double prints all its digits

std::string flat(const Json& value) {
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

void print(const Json& value, std::size_t indent, std::string& out) {
    std::string line = flat(value);
    if (!value.is_structured() || line.size() + indent <= line_width) {
        out += line;
        return;
    }
    const std::string margin(indent + 2, ' ');
    const char* before = value.is_object() ? "{\n" : "[\n";
    for (const auto& [key, entry] : value.items()) {
        out += before + margin;
        if (value.is_object()) {
            out += flat(key) + ": ";
        }
        print(entry, indent + 2, out);
        before = ",\n";
    }
    out += '\n' + std::string(indent, ' ') + (value.is_object() ? '}' : ']');
}

} // namespace

Json number(double value) {
    if (value == std::floor(value) && std::abs(value) < largest_whole) {
        return static_cast<std::int64_t>(value);
    }
    return std::isfinite(value) ? Json(value) : Json();
}

Json or_null(std::optional<int> value) {
    return value ? Json(*value) : Json();
}

Json or_null(std::optional<double> value) {
    return value ? number(*value) : Json();
}

Json basis(const Basis& b) {
    Json out = Json::array();
    if (b.physics) {
        out.push_back("physics");
    }
    if (b.practice) {
        out.push_back("practice");
    }
    if (!b.published.empty()) {
        out.push_back("published:" + std::string(b.published));
    }
    if (b.tests > 0) {
        out.push_back("tests:" + std::to_string(b.tests));
    }
    if (b.entered) {
        out.push_back("entered");
    }
    return out;
}

Json figure(const Estimate<double>& e) {
    return {{"value", number(e.value)}, {"low", number(e.low)}, {"high", number(e.high)}, {"basis", basis(e.basis)}};
}

Json nulls(std::initializer_list<std::string_view> keys) {
    Json out = Json::object();
    for (const std::string_view key : keys) {
        out[std::string(key)] = nullptr;
    }
    return out;
}

std::string printed(const Json& value) {
    std::string out;
    print(value, 0, out);
    return out + '\n';
}

} // namespace torchside::cli
