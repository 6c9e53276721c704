#include "core/cut/terms.hpp"

#include <array>
#include <optional>

namespace torchside::cut {
namespace {

enum class Set { small_air_torch, handbook };

struct Row {
    std::optional<Set> set; // none: both
    std::optional<Metal> metal;
    Term Terms::*field;
    double value;
    double sd;
    std::string_view source;
};

constexpr Row rows[] = {
#include "generated/cut_terms.inc"
#include "generated/metal_terms.inc"
};

using Table = std::array<Terms, stock::metal_count>;

constexpr Table table_of(Set set) {
    Table table{};
    for (const Row& row : rows) {
        if (row.set && *row.set != set) {
            continue;
        }
        for (const stock::MetalInfo& metal : stock::metals) {
            if (!row.metal || *row.metal == metal.cuts_as) {
                table[static_cast<std::size_t>(metal.metal)].*row.field = {row.value, row.sd, row.source};
            }
        }
    }
    return table;
}

constexpr bool complete(const Table& table) {
    for (const Row& row : rows) {
        for (const Terms& terms : table) {
            if ((terms.*row.field).source.empty()) {
                return false;
            }
        }
    }
    return true;
}

constexpr Table small_air_table = table_of(Set::small_air_torch);
constexpr Table handbook_table = table_of(Set::handbook);
static_assert(complete(small_air_table) && complete(handbook_table),
              "assets/data: cut_terms.json and metals.json leave out a term of a metal");

} // namespace

const Terms& small_air_torch(Metal metal) {
    return small_air_table[static_cast<std::size_t>(metal)];
}

const Terms& handbook(Metal metal) {
    return handbook_table[static_cast<std::size_t>(metal)];
}

} // namespace torchside::cut
