#include "core/tune/priors.hpp"

namespace torchside::tune {
namespace {

struct Row {
    double Priors::*field;
    double value;
};

constexpr Row rows[] = {
#include "generated/tune_priors.inc"
};

constexpr Priors table = [] {
    Priors p{};
    for (const Row& row : rows)
        p.*row.field = row.value;
    return p;
}();

} // namespace

const Priors& priors() {
    return table;
}

} // namespace torchside::tune
