// Figures of a result as JSON members. Internal to core/document.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/document/json.hpp"
#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::document {

void write_basis(const Basis& basis, JsonWriter& out);
void write_figure(std::string_view key, const Estimate<double>& e, JsonWriter& out);
void write_texts(std::string_view key, const std::vector<std::string>& lines, JsonWriter& out);

template <class K>
void write_estimate(std::string_view key, const Estimate<Quantity<K>>& e, Unit<K> unit, JsonWriter& out) {
    write_figure(key, {e.value.in(unit), e.low.in(unit), e.high.in(unit), e.basis}, out);
}

template <class K>
void write_estimate(std::string_view key, const std::optional<Estimate<Quantity<K>>>& e, Unit<K> unit,
                    JsonWriter& out) {
    if (e)
        write_estimate(key, *e, unit, out);
    else
        out.key(key).null();
}

template <class K>
void write_amount(std::string_view key, Quantity<K> q, Unit<K> unit, JsonWriter& out) {
    out.key(key).number(q.in(unit));
}

template <class K>
void write_amount(std::string_view key, const std::optional<Quantity<K>>& q, Unit<K> unit, JsonWriter& out) {
    out.key(key);
    q ? out.number(q->in(unit)) : out.null();
}

template <class Number>
void write_plain(std::string_view key, const std::optional<Number>& n, JsonWriter& out) {
    out.key(key);
    n ? out.number(*n) : out.null();
}

} // namespace torchside::document
