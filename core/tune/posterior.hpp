// What a shop's test cuts teach: every number of a cut, from physics, common practice and the shop's own log.
//
// What       Feed, kerf, arc volts and pierce delay of any plate, each with its 80 % band and what it rests on.
// Formula    feed    ln v = ln v_1 + b0 + b1 ln(t/6 mm) + b2 ln(I/45 A) + c_metal + b3 ln(t/6 mm)^2 + d u + e_stock
//            kerf    ln w = ln w_1 + k0 + k1 ln(t/6) + k2 ln(I/45) + noise
//            arc     U = U_1 + a0 + a1 (t - 6) + a2 (I - 45) + a3 (h - 1.5 mm) + noise
//            pierce  ln d = ln d_1 + p0 + p1 ln(t/6) + p2 ln(I/45) + e_stock
//            level 1 is core/cut: v_1, w_1, U_1, and d_1 with the pierce limit of the learnt feed. Priors:
//            assets/data/tune_priors.json and the voltage terms of core/cut.
//            Level 2: the rows of assets/data/practice.json read b0, b1, b2, c of the typical shop with log-sd 0.20;
//            the shop's own part of b0 (sd 0.22 of 0.35) and b1 (sd 0.11 of 0.20) they leave open, so that shops
//            spread about the chart by 0.25 and 0.15, the chart's own error counted in.
//            Level 3: the log, through response_fit.hpp. value is the median, low..high the 10 % and 90 % points of e_stock
//            and all coefficients (of the next cut, noise included, for kerf and arc).
//            Kinds of shop: b3, d (u: share of the set of consumables that is used, where rows count starts), twice the
//            spreads, another window or misreading come in as kinds beside the usual shop, assets/data/tune_shops.json.
//            Without a verdict in the log, the usual shop alone speaks. Pooled logs: pool.hpp. What is asked of a feed is
//            asked for the set in use (Posterior::used).
// Rows       feed with a verdict: window likelihood. A feed with neither verdict nor any other finding: the feed this
//            shop runs, a clean one, log-sd 0.08. Kerf: mean of both faces; one face alone with more noise. Arc volts:
//            at the row's cut height (1.5 mm when absent). Pierce delay with a verdict: window likelihood. Worn rows
//            and rows outside the model do not teach; note() says so. A row without a count of starts was cut with the
//            set of the row before it, and those before the first count with that one's.
// Range      0..500 rows, any plate that core/cut accepts. Without own cuts expect +-30 % (1 sd) of a feed.
// Edges      a plate the balance refuses: an Estimate of zeros. A plate at or past the pierce limit: pierce delay of
//            zeros. Galvanised learns with mild steel. Rows in any order give the same bits, where all or none count
//            starts.
// Example    no rows, mild steel 6 mm 45 A: see tests/core/tune_posterior.cpp.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/cut/feed_model.hpp"
#include "core/gear/machine.hpp"
#include "core/quantity/estimate.hpp"
#include "core/tune/priors.hpp"
#include "core/tune/response_fit.hpp"
#include "core/tune/test_cut.hpp"
#include "core/words/text.hpp"

namespace torchside::tune {

/// What became of one row of the log.
struct RowNote {
    enum class Why { taught, worn, says_nothing, outside_model };
    Why why = Why::says_nothing;
    bool measure_again = false; // some finding of it is more than 3 sd from what all else says
    double weight = 1.0;        // of its least trusted finding
    double sd_off = 0.0;        // of its furthest finding
    Word text{};                // none when there is nothing to say
};

/// How many findings of other shops' cuts bear on a response.
struct OthersTaught {
    int feed = 0;
    int kerf = 0;
    int arc = 0;
    int pierce = 0;
};

/// What is known of a shop before its own log speaks (others.hpp): coefficients of each response.
struct Start {
    Gaussian feed{};
    Gaussian kerf{};
    Gaussian arc{}; // without a gradient that the shop measured
    Gaussian pierce{};
    OthersTaught others{};
};

struct Posterior {
    ResponseFit feed{};
    ResponseFit kerf{};
    ResponseFit arc{};
    ResponseFit pierce{};
    Gaussian feed_physics{};  // coefficients of the feed after level 1
    Gaussian feed_practice{}; // after level 2
    Gaussian feed_others{};   // after the cuts of other shops; without any the same
    OthersTaught others{};
    std::vector<Nozzle> nozzles{};
    std::vector<RowNote> notes{}; // one a row of the log
    Duration program_lag{};       // start lag with which its pierce delays were read
    double used = 0.0;            // share of the set of consumables that is used now: set_used(). Asked of any feed
};

/// Share of a set of consumables that so many starts have used, at most 2: past two usual sets' starts nothing is known.
[[nodiscard]] double set_used(double starts, const Priors& priors);

/// The start lag that a program had to wait when the log's pierce delays were tried: the machine's, or, where nobody timed
/// it, what the log leaves of the usual one (core/gear/start.hpp).
[[nodiscard]] Duration lag_of(std::span<const TestCut> cuts, const Machine& machine);

/// `gradient`: arc volts per height that the user measured on this machine.
[[nodiscard]] Posterior learn(std::span<const TestCut> cuts, const Machine& machine,
                              std::optional<Gradient> gradient = std::nullopt);

/// The same with other spreads: for simulations and tests.
[[nodiscard]] Posterior learn(std::span<const TestCut> cuts, const Machine& machine, std::optional<Gradient> gradient,
                              const Priors& priors);

/// From another start: with what other shops' cuts say (others.hpp).
[[nodiscard]] Posterior learn(std::span<const TestCut> cuts, const Machine& machine, std::optional<Gradient> gradient,
                              const Start& start, const Priors& priors);

[[nodiscard]] Estimate<Speed> feed(const Posterior& posterior, const cut::CutSetup& plate);
[[nodiscard]] Estimate<Length> kerf(const Posterior& posterior, const cut::CutSetup& plate);
[[nodiscard]] Estimate<Voltage> arc(const Posterior& posterior, const cut::CutSetup& plate);
[[nodiscard]] Estimate<Duration> pierce_delay(const Posterior& posterior, const cut::CutSetup& plate);

/// Volts that a millimetre of height makes, anywhere.
[[nodiscard]] Estimate<Gradient> arc_gradient(const Posterior& posterior);

/// What moved the feed: physics alone, with practice, with other shops' cuts, with the shop's own.
struct Trail {
    Estimate<Speed> physics{};
    Estimate<Speed> practice{};
    Estimate<Speed> others{};  // without any: practice once more
    Estimate<Speed> own{};     // of the set as it is worn now
    Estimate<Speed> new_set{}; // the same with a new set

    /// How much the feed differs from a new set's, as a share of it; 0 where that is less than 1.5 %.
    [[nodiscard]] double for_wear() const;
};
[[nodiscard]] Trail trail(const Posterior& posterior, const cut::CutSetup& plate);

/// The smooth middle of the learnt feed, without any one stock's own part: for the searches of core/cut over thickness.
/// Refers to the posterior, which must outlive it.
class LearntFeed final : public cut::FeedModel {
public:
    explicit LearntFeed(const Posterior& posterior) : posterior_(&posterior) {}
    [[nodiscard]] Speed feed(const cut::CutSetup& plate) const override;

private:
    const Posterior* posterior_;
};

/// The thickest plate of this metal that the log says was cut cleanly at this current or less; 0 for none.
[[nodiscard]] Length proven(std::span<const TestCut> cuts, Metal metal, Current current);

} // namespace torchside::tune
