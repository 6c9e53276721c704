#include "core/tune/signs.hpp"

#include "generated/words/cut_sign.hpp"
#include "generated/words/refusal.hpp"

namespace torchside::tune {
namespace {

struct Row {
    Sign sign;
    double share[cause_count];
};

struct FlatRow {
    Sign sign;
    double right, too_fast, too_slow, too_high, too_low, leaning, worn, corners, near_limit;
};

constexpr FlatRow flat[] = {
#include "generated/tune_signs.inc"
};
static_assert(std::size(flat) == sign_count);

constexpr std::array<Row, sign_count> table = [] {
    std::array<Row, sign_count> rows{};
    for (const FlatRow& f : flat) {
        rows[static_cast<std::size_t>(f.sign)] = {
            f.sign,
            {f.right, f.too_fast, f.too_slow, f.too_high, f.too_low, f.leaning, f.worn, f.corners, f.near_limit}};
    }
    return rows;
}();

// How often each is the cause before anything is seen, in the order of Cause.
struct Before {
    Cause cause;
    double usually, near_limit;
};

constexpr Before before[] = {
#include "generated/tune_causes.inc"
};
static_assert(std::size(before) == cause_count);

constexpr Sign at(std::size_t i) {
    return static_cast<Sign>(i);
}

} // namespace

Word name(Sign sign) {
    using namespace words::cut_sign;
    constexpr std::array names{dross_none,        dross_easy,   dross_hard,      sparks_below,   sparks_level,
                               sparks_back,       square,       narrow_top_both, narrow_top_one, narrow_bottom_both,
                               narrow_bottom_one, lag_short,    lag_good,        lag_long,       top_spatter,
                               top_rounded,       corners_only, uneven_round};
    static_assert(names.size() == sign_count);
    return names[static_cast<std::size_t>(sign)];
}

int group_of(Sign sign) {
    if (sign <= Sign::dross_hard) {
        return 0;
    }
    if (sign <= Sign::sparks_back) {
        return 1;
    }
    if (sign <= Sign::narrow_bottom_one) {
        return 2;
    }
    return sign <= Sign::lag_long ? 3 : -1;
}

Signs touched(Signs signs, Sign sign) {
    if (signs.has(sign)) {
        return signs.clear(sign);
    }
    for (std::size_t i = 0; i < sign_count; ++i) {
        if (group_of(sign) >= 0 && group_of(at(i)) == group_of(sign)) {
            signs.clear(at(i));
        }
    }
    return signs.mark(sign);
}

Outcome<std::array<double, cause_count>> causes(const Signs& signs, bool near_limit) {
    for (std::size_t i = 0; i < sign_count; ++i) {
        for (std::size_t j = i + 1; j < sign_count; ++j) {
            if (signs.has(at(i)) && signs.has(at(j)) && group_of(at(i)) >= 0 && group_of(at(i)) == group_of(at(j))) {
                return Fault{"signs", words::refusal::TwoSigns{.first = name(at(i)), .second = name(at(j))}};
            }
        }
    }
    std::array<double, cause_count> chance{};
    for (const Before& b : before) {
        chance[static_cast<std::size_t>(b.cause)] = near_limit ? b.near_limit : b.usually;
    }
    for (std::size_t i = 0; i < sign_count; ++i) {
        if (signs.has(at(i))) {
            for (std::size_t c = 0; c < cause_count; ++c) {
                chance[c] *= table[i].share[c];
            }
        }
    }
    double sum = 0.0;
    for (const double c : chance) {
        sum += c;
    }
    for (double& c : chance) {
        c /= sum;
    }
    return chance;
}

} // namespace torchside::tune
