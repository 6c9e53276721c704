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
#include "generated/metals.inc"
};

struct Coat {
    double density_kg_m3;
    double heat_j_kg_k;
    double boiling_k;
    double fusion_j_kg;
    double vaporisation_j_kg;
};
constexpr Coat zinc[] = {
#include "generated/zinc_coat.inc"
};

constexpr std::size_t metal_count = std::size(all_metals);

constexpr std::array<Properties, metal_count> assemble() {
    std::array<Properties, metal_count> table{};
    for (const PropertyRow& row : rows) {
        table[static_cast<std::size_t>(row.metal)].*row.field = row.value;
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

struct Names {
    std::string_view name;
    std::string_view key;
    std::string_view grade;
};
constexpr Names names[metal_count] = {
    {"Mild steel", "mild_steel", "low-carbon"},
    {"Stainless", "stainless", "304, 316"},
    {"Aluminum", "aluminium", "5052, 6061"},
    {"Galvanized", "galvanised", "zinc-coated low-carbon"},
    {"Copper", "copper", "pure"},
};

struct Word {
    std::string_view word; // lower case
    Metal metal;
};
constexpr Word words[] = {
    {"steel", Metal::mild_steel},
    {"ms", Metal::mild_steel},
    {"carbon steel", Metal::mild_steel},
    {"iron", Metal::mild_steel},
    {"stainless steel", Metal::stainless},
    {"ss", Metal::stainless},
    {"inox", Metal::stainless},
    {"304", Metal::stainless},
    {"316", Metal::stainless},
    {"aluminium", Metal::aluminium},
    {"alu", Metal::aluminium},
    {"al", Metal::aluminium},
    {"5052", Metal::aluminium},
    {"6061", Metal::aluminium},
    {"galvanised", Metal::galvanised},
    {"galv", Metal::galvanised},
    {"galvanised steel", Metal::galvanised},
    {"galvanized steel", Metal::galvanised},
    {"zinc", Metal::galvanised},
    {"cu", Metal::copper},
};

constexpr std::size_t index(Metal metal) {
    return static_cast<std::size_t>(metal);
}

/// `lower` is lower case already.
constexpr bool same_word(std::string_view typed, std::string_view lower) {
    if (typed.size() != lower.size()) {
        return false;
    }
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const char c = typed[i];
        if ((c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c) != lower[i]) {
            return false;
        }
    }
    return true;
}

} // namespace

const Properties& properties(Metal metal) {
    return table[index(metal)];
}

double melt_heat_j_kg(const Properties& p) {
    return p.heat_j_kg_k * (p.melting_k - room_k) + p.fusion_j_kg;
}

double diffusivity_m2_s(const Properties& p) {
    return p.conductivity_w_m_k / (p.density_kg_m3 * p.heat_j_kg_k);
}

double zinc_heat_share(Length coat, Length thickness) {
    const Properties& steel = properties(Metal::galvanised);
    const Coat& z = zinc[0];
    const double zinc_j_kg = z.heat_j_kg_k * (z.boiling_k - room_k) + z.fusion_j_kg + z.vaporisation_j_kg;
    return 2.0 * coat.in(metre)*z.density_kg_m3 * zinc_j_kg /
           (thickness.in(metre)*steel.density_kg_m3 * melt_heat_j_kg(steel));
}

Metal cuts_as(Metal metal) {
    return metal == Metal::galvanised ? Metal::mild_steel : metal;
}

std::string_view name(Metal metal) {
    return names[index(metal)].name;
}

std::string_view key(Metal metal) {
    return names[index(metal)].key;
}

std::string_view common_grade(Metal metal) {
    return names[index(metal)].grade;
}

std::optional<Metal> metal_from_key(std::string_view key) {
    for (const Metal metal : all_metals) {
        if (names[index(metal)].key == key) {
            return metal;
        }
    }
    return {};
}

std::optional<Metal> metal_from_name(std::string_view name) {
    for (const Metal metal : all_metals) {
        const Names& n = names[index(metal)];
        // A name is its own lower case but for the first letter.
        if (same_word(name, n.key) || (!name.empty() && same_word(name.substr(0, 1), n.key.substr(0, 1)) &&
                                       same_word(name.substr(1), n.name.substr(1)))) {
            return metal;
        }
    }
    for (const Word& w : words) {
        if (same_word(name, w.word)) {
            return w.metal;
        }
    }
    return {};
}

} // namespace torchside::stock
