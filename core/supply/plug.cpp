#include "core/supply/plug.hpp"

namespace torchside::supply {
namespace {

constexpr PlugRow rows[] = {
// in the order of Plug
#include "generated/plugs.inc"
};

} // namespace

const PlugRow& row_of(Plug plug) {
    return rows[static_cast<std::size_t>(plug)];
}

std::span<const PlugRow> all_plugs() {
    return rows;
}

bool is_used_in(const PlugRow& plug, Country country) {
    switch (plug.where) {
    case PlugWhere::us:
        return country == Country::us || country == Country::other;
    case PlugWhere::uk:
        return country == Country::uk || country == Country::other;
    case PlugWhere::eu:
        return country == Country::eu || country == Country::other;
    case PlugWhere::iec:
        break;
    }
    return country != Country::us;
}

} // namespace torchside::supply
