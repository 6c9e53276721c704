#include "tools/cli/results/json.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace torchside::cli {

namespace {

constexpr double largest_whole = 1e15; // below it every whole double prints all its digits

std::string scalar(const Json& value) {
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// The entries of an object or a list, each as `make` writes its value, between brackets.
template <class Make>
std::string entries(const Json& value, std::string_view before, std::string_view between, std::string_view after,
                    Make make) {
    std::string out = value.is_object() ? "{" : "[";
    std::string_view gap = before;
    for (const auto& [key, entry] : value.items()) {
        out += gap;
        out += value.is_object() ? scalar(key) + ": " + make(entry) : make(entry);
        gap = between;
    }
    out += value.empty() ? std::string_view() : after;
    return out + (value.is_object() ? '}' : ']');
}

std::string on_one_line(const Json& value) {
    return value.is_structured() ? entries(value, "", ", ", "", on_one_line) : scalar(value);
}

bool holds_object(const Json& value) {
    return value.is_structured() &&
           std::any_of(value.begin(), value.end(), [](const Json& e) { return e.is_object() || holds_object(e); });
}

std::string laid_out(const Json& value, std::size_t indent) {
    if (indent > 0 && !holds_object(value)) {
        return on_one_line(value);
    }
    const std::string margin = '\n' + std::string(indent + 2, ' ');
    return entries(value, margin, ',' + margin, '\n' + std::string(indent, ' '),
                   [&](const Json& entry) { return laid_out(entry, indent + 2); });
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
    if (b.others > 0) {
        out.push_back("others:" + std::to_string(b.others));
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
    return laid_out(value, 0) + '\n';
}

} // namespace torchside::cli
