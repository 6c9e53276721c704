// From the signs on a cut to its likely cause.
//
// What       The user marks what is seen; every cause gets a chance.
// Formula    chance(cause) ~ prior(cause) x product over the marked signs of share(sign | cause)
//            share: assets/data/tune_signs.json, prior: tune_causes.json. Signs are taken as independent given the
//            cause; what is not marked says nothing.
// Source     which sign points to which cause: common practice, except dross easy and hard (Welding Journal, March
//            2024) and spatter with height (Azlan 2024). All shares and priors of causes are priors.
// Range      any set of signs. Dross, sparks, taper and lag hold one sign each.
// Edges      no sign: the priors of the causes. Two signs of one group: a Fault that names them.
// Example    dross that comes off easily, alone: too slow, about 45 %; with "at corners only": the table slowed down.
#pragma once

#include <array>
#include <cstdint>

#include "core/words/outcome.hpp"

namespace torchside::tune {

enum class Sign {
    dross_none,
    dross_easy, // under the plate, comes off by hand
    dross_hard, // under the plate, must be ground
    sparks_below,
    sparks_level, // trail nearly level with the plate
    sparks_back,  // thrown back up through the top
    square,
    narrow_top_both, // the part is narrower at the top, on both sides
    narrow_top_one,
    narrow_bottom_both,
    narrow_bottom_one,
    lag_short,
    lag_good,
    lag_long,
    top_spatter,
    top_rounded,
    corners_only, // what else is marked is seen at corners and tight curves only
    uneven_round  // differs all round the compass
};
inline constexpr std::size_t sign_count = 18;

enum class Cause { right, too_fast, too_slow, too_high, too_low, leaning, worn, corners, near_limit };
inline constexpr std::size_t cause_count = 9;

/// A set of signs.
class Signs {
public:
    constexpr Signs() = default;
    constexpr Signs& mark(Sign sign) {
        bits_ |= bit(sign);
        return *this;
    }
    constexpr Signs& clear(Sign sign) {
        bits_ &= ~bit(sign);
        return *this;
    }
    [[nodiscard]] constexpr bool has(Sign sign) const { return (bits_ & bit(sign)) != 0; }
    friend constexpr bool operator==(const Signs&, const Signs&) = default;
    [[nodiscard]] constexpr bool none() const { return bits_ == 0; }

private:
    static constexpr std::uint32_t bit(Sign sign) { return std::uint32_t{1} << static_cast<unsigned>(sign); }
    std::uint32_t bits_ = 0;
};

/// A few words for the button of a sign.
[[nodiscard]] Word name(Sign sign);

/// Signs of one group rule each other out: 0 dross, 1 sparks, 2 taper, 3 lag; -1: a sign that goes with any other.
[[nodiscard]] int group_of(Sign sign);

/// The signs after a touch on one of them: marked, with the others of its group cleared, or cleared when it was marked.
[[nodiscard]] Signs touched(Signs signs, Sign sign);

/// Chance of every cause, in the order of Cause; they add up to 1. `near_limit`: the plate is near the thickest that is
/// cut cleanly.
[[nodiscard]] Outcome<std::array<double, cause_count>> causes(const Signs& signs, bool near_limit);

} // namespace torchside::tune
