#include "core/cut/capacity.hpp"

#include <algorithm>
#include <cmath>

namespace torchside::cut {
namespace {

Length cap(const Terms& terms, Length proven) {
    return std::max(Length{terms.capacity_cap.value, mm}, proven);
}

Speed feed_at(CutSetup plate, Length thickness, const FeedModel& model) {
    plate.thickness = thickness;
    return model.feed(plate);
}

Speed rating(const Term& term) {
    return Speed{term.value, mm_min};
}

} // namespace

Speed recommended_feed(Current current, const Terms& terms) {
    return Speed{std::max(terms.recommended_feed.value, terms.recommended_feed_a.value / current.in(ampere)), mm_min};
}

Limits limits(const CutSetup& plate, const FeedModel& model, const Terms& terms, Length proven) {
    const Length top = cap(terms, proven);
    const Length clean = thickness_at(rating(terms.clean_feed), plate, model);
    const Length pierce = thickness_at(rating(terms.pierce_feed), plate, model);
    const Length sever = thickness_at(rating(terms.sever_feed), plate, model);
    Limits l;
    l.clean = std::min(clean, top);
    l.recommended = std::min(thickness_at(recommended_feed(plate.current, terms), plate, model), l.clean);
    l.pierce = std::min(pierce, l.clean);
    l.sever = std::min(sever, terms.sever_ratio.value * l.clean);
    l.capped = clean > top;
    return l;
}

Reach reach(const CutSetup& plate, const FeedModel& model, const Terms& terms, Length proven) {
    const Length top = cap(terms, proven);
    const Length t = plate.thickness;
    const Speed feed = model.feed(plate);
    if (t <= top && feed >= rating(terms.pierce_feed)) {
        return Reach::clean;
    }
    if (t <= top && feed >= rating(terms.clean_feed)) {
        return Reach::edge_start;
    }
    const Length clean_enough = t / terms.sever_ratio.value;
    if (feed >= rating(terms.sever_feed) && clean_enough <= top &&
        feed_at(plate, clean_enough, model) >= rating(terms.clean_feed)) {
        return Reach::sever;
    }
    return Reach::refused;
}

Reach reach(Length thickness, const Limits& limits) {
    if (thickness <= limits.pierce) {
        return Reach::clean;
    }
    if (thickness <= limits.clean) {
        return Reach::edge_start;
    }
    return thickness <= limits.sever ? Reach::sever : Reach::refused;
}

Length bore(const Nozzle& nozzle, const Terms& terms) {
    CutSetup at_rating;
    at_rating.current = nozzle.rated;
    at_rating.bore = nozzle.bore;
    return bore(at_rating, terms);
}

const Nozzle* nozzle_for(std::span<const Nozzle> nozzles, Current current) {
    const Nozzle* best = nullptr;
    for (const Nozzle& n : nozzles) {
        if (!best) {
            best = &n;
            continue;
        }
        const bool fits = n.rated >= current;
        const bool best_fits = best->rated >= current;
        if (fits != best_fits ? fits : (fits ? n.rated < best->rated : n.rated > best->rated)) {
            best = &n;
        }
    }
    return best;
}

} // namespace torchside::cut
