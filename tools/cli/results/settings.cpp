#include "tools/cli/results/settings.hpp"

namespace torchside::cli {

Json figures_json(const std::optional<cut::Settings>& settings, UnitSystem units) {
    Json out = Json::object();
    for (const Figure& row : figures()) {
        const auto e = settings ? row.of(*settings, units) : std::nullopt;
        out[file_key(row, units)] = e ? figure(*e) : Json();
    }
    return out;
}

} // namespace torchside::cli
