// Results as JSON: what the commands print. Keys stay in the order they are written in.
//
// The general library serves the command line and the tests alone; the page has its own small reader and writer, see
// core/codec/json.hpp.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::cli {

using Json = nlohmann::ordered_json;

/// A whole number without ".0"; null when not finite.
[[nodiscard]] Json number(double value);

[[nodiscard]] Json or_null(std::optional<int> value);
[[nodiscard]] Json or_null(std::optional<double> value);

template <class K>
[[nodiscard]] Json amount(Quantity<K> q, Unit<K> unit) {
    return number(q.in(unit));
}

template <class K>
[[nodiscard]] Json amount(const std::optional<Quantity<K>>& q, Unit<K> unit) {
    return q ? amount(*q, unit) : Json();
}

/// ["physics", "practice", "published:<key>", "tests:<n>", "entered"], those that hold.
[[nodiscard]] Json basis(const Basis& basis);

/// {"value", "low", "high", "basis"}: a figure with its band of 80 %.
[[nodiscard]] Json figure(const Estimate<double>& e);

template <class K>
[[nodiscard]] Json figure(const Estimate<Quantity<K>>& e, Unit<K> unit) {
    return figure({e.value.in(unit), e.low.in(unit), e.high.in(unit), e.basis});
}

template <class K>
[[nodiscard]] Json figure(const std::optional<Estimate<Quantity<K>>>& e, Unit<K> unit) {
    return e ? figure(*e, unit) : Json();
}

/// A list with one entry for each entry of `all`.
template <class List, class Make>
[[nodiscard]] Json list_of(const List& all, Make make) {
    Json out = Json::array();
    for (const auto& entry : all) {
        out.push_back(make(entry));
    }
    return out;
}

/// An object whose keys are there and have no values.
[[nodiscard]] Json nulls(std::initializer_list<std::string_view> keys);

/// As text: what holds no object stands on one line, the rest is broken by level. Ends in a line end.
[[nodiscard]] std::string printed(const Json& value);

} // namespace torchside::cli
