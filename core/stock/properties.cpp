#include "core/stock/properties.hpp"

#include <array>
#include <cstddef>

namespace torchside::stock {

namespace {

struct PropertyRow {
    Metal metal;
    double Properties::*field;
    double value;
};
constexpr PropertyRow rows[] = {
#include "generated/metal_properties.inc"
};

constexpr std::array<Properties, metal_count> assemble() {
    std::array<Properties, metal_count> table{};
    for (const PropertyRow& row : rows) {
        for (const MetalInfo& metal : metals) {
            if (metal.cuts_as == row.metal) {
                table[static_cast<std::size_t>(metal.metal)].*row.field = row.value;
            }
        }
    }
    return table;
}
constexpr std::array<Properties, metal_count> table = assemble();

constexpr bool complete() {
    for (const Properties& p : table) {
        if (!(p.density_kg_m3 > 0 && p.heat_j_kg_k > 0 && p.conductivity_w_m_k > 0 && p.melting_k > room_k &&
              p.fusion_j_kg > 0 && p.vaporisation_j_kg > 0)) {
            return false;
        }
    }
    return true;
}
static_assert(complete(), "assets/data/metals.json leaves out a property of a metal");

} // namespace

const Properties& properties(Metal metal) {
    return table[static_cast<std::size_t>(metal)];
}

double melt_heat_j_kg(const Properties& p) {
    return p.heat_j_kg_k * (p.melting_k - room_k) + p.fusion_j_kg;
}

double diffusivity_m2_s(const Properties& p) {
    return p.conductivity_w_m_k / (p.density_kg_m3 * p.heat_j_kg_k);
}

Metal cuts_as(Metal metal) {
    return metal_info(metal).cuts_as;
}

Word name(Metal metal) {
    return metal_info(metal).name;
}

std::string_view key(Metal metal) {
    return metal_info(metal).key;
}

} // namespace torchside::stock
