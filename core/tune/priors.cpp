#include "core/tune/priors.hpp"

#include "core/quantity/figure_rows.hpp"

namespace torchside::tune {
namespace {

constexpr FigureRow<Priors> rows[] = {
#include "generated/tune_priors.inc"
};
constexpr Priors table = figures_of(rows);

} // namespace

const Priors& priors() {
    return table;
}

} // namespace torchside::tune
