#include <algorithm>
#include <cmath>
#include <vector>

#include "core/cut/capacity.hpp"
#include "core/quantity/sort_rows.hpp"
#include "generated/words/choice.hpp"

namespace torchside::cut {
namespace {

struct Question {
    const CutSetup& plate;
    const Machine& machine;
    const Table& table;
    const FeedModel& model;
    const Terms& terms;
    Length proven;
};

// How good a cut is, best first.
struct Rank {
    Reach reach = Reach::refused;
    bool slow = true; // slower than good production

    friend auto operator<=>(const Rank&, const Rank&) = default;
};

struct Setting {
    int amperes = 0;
    Rank rank{};
    bool held_back = false; // below the nozzle's and the machine's top for the table's sake
    bool too_fast = false;  // for the table even so
};

CutSetup with(const Question& q, const Nozzle& nozzle, int amperes) {
    CutSetup p = q.plate;
    p.current = Current{static_cast<double>(amperes), ampere};
    p.bore = bore(nozzle, q.terms);
    p.arc.reset();
    return p;
}

Reach reach_of(const Question& q, const Nozzle& nozzle, int amperes) {
    return reach(with(q, nozzle, amperes), q.model, q.terms, q.proven);
}

Rank rank_of(const Question& q, const Nozzle& nozzle, int amperes) {
    const CutSetup plate = with(q, nozzle, amperes);
    return {reach_of(q, nozzle, amperes), q.model.feed(plate) < recommended_feed(plate.current, q.terms)};
}

// Largest value in [low, high] for which `holds`, which is true at low and changes once.
template <class Holds>
int last_true(int low, int high, const Holds& holds) {
    while (low < high) {
        const int middle = low + (high - low + 1) / 2;
        if (holds(middle)) {
            low = middle;
        } else {
            high = middle - 1;
        }
    }
    return low;
}

std::optional<Setting> best_setting(const Question& q, const Nozzle& nozzle) {
    const double top_a = std::min(q.machine.max_current, nozzle.rated).in(ampere);
    const int low = static_cast<int>(std::ceil(q.machine.min_current.in(ampere)));
    const int high = static_cast<int>(std::floor(top_a));
    if (low > high) {
        return std::nullopt;
    }
    Setting s;
    s.rank = rank_of(q, nozzle, high);
    const auto held = [&](int a) { return q.model.feed(with(q, nozzle, a)) <= q.table.max_feed; };
    const auto weaker = [&](int a) { return rank_of(q, nozzle, a) > s.rank; };
    s.amperes = held(low) ? last_true(low, high, held) : low;
    if (weaker(s.amperes)) { // a slow table: the cut comes first, the feed is then the table's
        s.amperes = last_true(s.amperes, high, weaker) + 1;
    }
    s.held_back = s.amperes < high;
    s.too_fast = !held(s.amperes);
    return s;
}

Current whole_amps(int amperes) {
    return Current{static_cast<double>(amperes), ampere};
}

Text why(const Setting& s, const Nozzle& nozzle) {
    const Current rated{std::round(nozzle.rated.in(ampere)), ampere};
    const bool pierces = s.rank.reach == Reach::clean;
    Text text;
    if (s.rank.slow) { // no nozzle here does better, so it is the smallest of all that cut cleanly
        text = pierces ? Text(words::choice::SmallestPierces{.nozzle = rated})
                       : Text(words::choice::SmallestFromEdge{.nozzle = rated});
        text += words::choice::slow;
    } else {
        text = pierces ? Text(words::choice::PiercesWell{.nozzle = rated})
                       : Text(words::choice::WellFromEdge{.nozzle = rated});
    }
    if (s.too_fast) {
        text += words::choice::TooFast{.current = whole_amps(s.amperes)};
    } else if (s.held_back) {
        text += words::choice::HeldBack{.current = whole_amps(s.amperes)};
    }
    return text;
}

// What is missing: a nozzle for the machine's full current, or a larger machine.
Text why_none(const Question& q, bool any_setting) {
    const int high = static_cast<int>(std::floor(q.machine.max_current.in(ampere)));
    const bool bigger_helps = reach_of(q, Nozzle{q.machine.max_current, {}}, high) <= Reach::edge_start;
    const auto& nozzles = q.machine.nozzles;
    const bool all_larger =
        std::all_of(nozzles.begin(), nozzles.end(), [&](const Nozzle& n) { return n.rated > q.machine.max_current; });
    if (bigger_helps && all_larger) {
        return words::choice::NozzlesTooLarge{.current = whole_amps(high)};
    }
    if (bigger_helps) {
        return words::choice::NozzlesTooSmall{.current = whole_amps(high)};
    }
    if (!any_setting) {
        return words::choice::nozzles_below_machine;
    }
    return words::choice::past_machine;
}

} // namespace

Choice choose(const CutSetup& plate, const Machine& machine, const Table& table, const FeedModel& model,
              const Terms& terms, Length proven) {
    const Question q{plate, machine, table, model, terms, proven};
    std::vector<Nozzle> nozzles = machine.nozzles;
    sort_rows(nozzles, [](const Nozzle& a, const Nozzle& b) { return a.rated < b.rated; });
    bool any = false;
    Choice best;
    Rank found{Reach::sever, false}; // what no choice is worse than
    for (const Nozzle& nozzle : nozzles) {
        const std::optional<Setting> s = best_setting(q, nozzle);
        any = any || s;
        if (!s || s->rank >= found) {
            continue;
        }
        found = s->rank;
        best = {whole_amps(s->amperes), nozzle.rated, s->rank.reach, why(*s, nozzle)};
    }
    if (!best.current) {
        best.reason = why_none(q, any);
    }
    return best;
}

} // namespace torchside::cut
