#include "core/tune/diagnosis_rules.hpp"

#include "core/quantity/figure_rows.hpp"

namespace torchside::tune {
namespace {

constexpr FigureRow<Rules> rows[] = {
#include "generated/tune_rules.inc"
};
constexpr Rules table = figures_of(rows);

} // namespace

const Rules& reading_rules() {
    return table;
}

} // namespace torchside::tune
