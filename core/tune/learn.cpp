// From the log to the four fits.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/cut/pierce.hpp"
#include "core/gear/start.hpp"
#include "core/tune/others.hpp"
#include "core/tune/plate_terms.hpp"
#include "core/tune/rows.hpp"
#include "generated/words/tune.hpp"

namespace torchside::tune {
namespace {

struct Practice {
    Metal metal;
    double thickness_mm;
    double current_a;
    double bore_mm;
    double feed_mm_min;
    double log_sd;
};

constexpr Practice practice[] = {
#include "generated/practice.inc"
};

double square(double x) {
    return x * x;
}

double rest(double whole, double part) {
    return std::sqrt(std::fmax(0.0, square(whole) - square(part)));
}

Judgement reading_of(Verdict verdict) {
    switch (verdict) {
    case Verdict::too_fast:
        return Judgement::high;
    case Verdict::too_slow:
        return Judgement::low;
    case Verdict::clean:
        break;
    }
    return Judgement::good;
}

Judgement reading_of(PierceVerdict verdict) {
    switch (verdict) {
    case PierceVerdict::is_long:
        return Judgement::high;
    case PierceVerdict::is_short:
        return Judgement::low;
    case PierceVerdict::good:
        break;
    }
    return Judgement::good;
}

Observation at(const Regressors& place, int row) {
    Observation o;
    o.x = place.x;
    o.tag = place.tag;
    o.row = row;
    return o;
}

Model model_of(const Gaussian& prior, double stock_sd, const Priors& p) {
    Model m;
    m.prior = prior;
    m.stock_sd = stock_sd;
    m.outlier_sd = p.outlier_sd;
    m.student_dof = p.student_dof;
    return m;
}

// In the order of the columns.
struct Kind {
    double odds, spread, stock, bend, window, misread, drift;
};

constexpr Kind kinds[] = {
#include "generated/tune_shops.inc"
};

// The kinds of shop beside the model's own; a set's wear is told apart only where its starts are counted.
std::vector<OtherShop> other_shops(const Model& usual, const Priors& p, const std::vector<Observation>& rows) {
    const bool counted = std::any_of(rows.begin(), rows.end(), [](const Observation& o) { return o.used != 0.0; });
    std::vector<OtherShop> shops;
    for (const Kind& kind : kinds) {
        if (p.feed_others == 0.0 || (kind.drift != 0.0 && !counted)) {
            continue;
        }
        OtherShop shop{{kind.window, p.window_soft, kind.misread}, std::log(kind.odds), usual.prior};
        for (Vector& row : shop.prior.cov) {
            for (double& c : row) {
                c *= kind.spread * kind.spread;
            }
        }
        shop.prior.cov[bend_term][bend_term] += square(kind.bend);
        shop.stock_sd = kind.stock * usual.stock_sd;
        shop.drift = kind.drift;
        shops.push_back(shop);
    }
    return shops;
}

Gaussian feed_spread(double bias, double slope, const Priors& p) {
    std::array<double, bend_term + 1> sd{bias, slope, p.feed_current};
    std::fill(sd.begin() + 3, sd.end(), p.feed_metal);
    sd[bend_term] = 0.0;
    return Gaussian::independent(sd);
}

Gaussian with_gradient(Gaussian arc, const Priors& p, std::optional<Gradient> gradient) {
    const cut::Terms& t = cut::small_air_torch(Metal::mild_steel);
    if (gradient) {
        arc.observe({0.0, 0.0, 0.0, 1.0}, gradient->in(volt_per_mm)-t.arc_per_height.value,
                    square(p.arc_gradient_noise));
    }
    return arc;
}

} // namespace

Gaussian feed_physics(const Priors& p) {
    return feed_spread(p.feed_bias, p.feed_slope, p);
}

namespace {

// Many shops' logs tell the typical curve of mild steel at 45 A.
void take_in_pooled(Gaussian& typical, const Priors& p) {
    const Vector middle{1.0, 0.0, 0.0, 1.0};
    const Vector slope{0.0, 1.0};
    typical.add(middle, p.feed_pooled, p.feed_pooled * (typical.at(middle) + p.feed_mean));
    typical.add(slope, p.feed_pooled, p.feed_pooled * typical.at(slope));
}

} // namespace

// Rules of thumb describe the typical shop: they are taken in by the part of the prior that all shops share, and the
// shop's own part is laid on top again.
Gaussian feed_practice(const Priors& p) {
    Gaussian typical = feed_spread(rest(p.feed_bias, p.feed_shop_bias), rest(p.feed_slope, p.feed_shop_slope), p);
    for (const Practice& row : practice) {
        cut::CutSetup plate;
        plate.metal = row.metal;
        plate.thickness = Length{row.thickness_mm, mm};
        plate.current = Current{row.current_a, ampere};
        plate.bore = Length{row.bore_mm, mm};
        const Speed level_1 = cut::balance_feed(plate, cut::small_air_torch(row.metal));
        typical.observe(feed_regressors(plate).x, std::log(row.feed_mm_min / level_1.in(mm_min)), square(row.log_sd));
    }
    take_in_pooled(typical, p);
    typical.cov[0][0] += square(std::fmin(p.feed_shop_bias, p.feed_bias));
    typical.cov[1][1] += square(std::fmin(p.feed_shop_slope, p.feed_slope));
    typical.cov[bend_term][bend_term] += square(p.feed_bend);
    return typical;
}

void read_row(const TestCut& row, int index, const cut::CutSetup& plate, Speed level_1, double used, const Priors& p,
              Evidence& evidence) {
    const cut::Terms& terms = cut::small_air_torch(row.material);
    const bool kerf_measured = row.kerf_top || row.kerf_bottom;
    if (row.feed && (row.verdict || !(kerf_measured || row.arc || row.pierce))) {
        Observation o = at(feed_regressors(plate), index);
        o.y = std::log(*row.feed / level_1);
        o.used = used;
        if (row.verdict) {
            o.verdict = reading_of(*row.verdict);
        } else {
            o.noise = square(rest(p.feed_noise, p.feed_stock));
        }
        evidence.feed.push_back(o);
    }
    if (kerf_measured) {
        const bool both = row.kerf_top && row.kerf_bottom;
        const Length one = row.kerf_top ? *row.kerf_top : *row.kerf_bottom;
        const Length w = both ? 0.5 * (*row.kerf_top + *row.kerf_bottom) : one;
        Observation o = at(power_regressors(plate), index);
        o.y = std::log(w / cut::kerf(plate, terms));
        o.noise = square(p.kerf_noise) + (both ? 0.0 : square(p.kerf_one_face));
        evidence.kerf.push_back(o);
    }
    if (row.arc) {
        Observation o = at(arc_regressors(plate), index);
        o.y = (*row.arc - cut::arc_volts(plate, terms)).in(volt);
        o.noise = square(p.arc_noise);
        evidence.arc.push_back(o);
    }
}

namespace {

// Level 1 of rows that differ by thickness alone shares the search for the limit.
struct KnownLimit {
    cut::CutSetup plate{};
    Length limit{};

    [[nodiscard]] bool holds_for(const cut::CutSetup& p) const {
        return plate.metal == p.metal && plate.current == p.current && plate.bore == p.bore && plate.height == p.height;
    }
};

} // namespace

// A dwell that pierced well was longer than the lag; where nobody timed it, the log may say so much.
Duration lag_of(std::span<const TestCut> cuts, const Machine& machine) {
    constexpr double most = 0.8; // of such a dwell, a prior
    Duration lag = program_lag(machine);
    for (const TestCut& cut : cuts) {
        if (!machine.start_lag && !cut.worn && cut.pierce == PierceVerdict::good && cut.pierce_delay) {
            lag = std::min(lag, most * *cut.pierce_delay);
        }
    }
    return lag;
}

namespace {

// The log speaks of what stood in the program.
std::vector<Observation> pierce_rows(std::span<const TestCut> cuts, const Posterior& posterior) {
    std::vector<Observation> rows;
    std::vector<KnownLimit> limits;
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        const TestCut& cut = cuts[i];
        if (cut.worn || !cut.pierce || !cut.pierce_delay || !(cut.pierce_delay->in(second) > 0.0)) {
            continue;
        }
        const cut::CutSetup plate = plate_of(cut, posterior.nozzles);
        auto known =
            std::find_if(limits.begin(), limits.end(), [&](const KnownLimit& k) { return k.holds_for(plate); });
        if (known == limits.end()) {
            known = limits.insert(limits.end(), {plate, pierce_limit(posterior, plate)});
        }
        const Duration level_1 = pierce_level_1(plate, known->limit);
        if (!(level_1.in(second) > 0.0)) {
            continue;
        }
        Observation o = at(power_regressors(plate), static_cast<int>(i));
        o.y = std::log(after_transfer(*cut.pierce_delay, posterior.program_lag) / level_1);
        o.verdict = reading_of(*cut.pierce);
        rows.push_back(o);
    }
    return rows;
}

ResponseFit fit_pierce(std::span<const TestCut> cuts, const Posterior& posterior, const Gaussian& prior,
                       const Priors& p) {
    Model model = model_of(prior, p.pierce_stock, p);
    model.window = {p.pierce_window, p.pierce_soft, p.pierce_misread};
    return fit(cuts.empty() ? std::vector<Observation>{} : pierce_rows(cuts, posterior), model);
}

// Of the set that the first row with a count was cut with.
double first_used(std::span<const TestCut> cuts, const Priors& p) {
    const auto counted = std::find_if(cuts.begin(), cuts.end(), [](const TestCut& c) { return c.starts.has_value(); });
    return counted != cuts.end() ? set_used(*counted->starts, p) : 0.0;
}

// Into its notes, too, what cannot be read. A row without a count of starts was cut with the set of the row before it.
Evidence read_log(std::span<const TestCut> cuts, const Priors& p, Posterior& posterior) {
    Evidence evidence;
    double used = first_used(cuts, p);
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        used = cuts[i].starts ? set_used(*cuts[i].starts, p) : used;
        const cut::CutSetup plate = plate_of(cuts[i], posterior.nozzles);
        const Speed level_1 = cut::balance_feed(plate, cut::small_air_torch(plate.metal));
        if (cuts[i].worn) {
            posterior.notes[i].why = RowNote::Why::worn;
        } else if (!(level_1.in(mm_min) > 0.0)) {
            posterior.notes[i].why = RowNote::Why::outside_model;
        } else {
            read_row(cuts[i], static_cast<int>(i), plate, level_1, used, p, evidence);
        }
    }
    return evidence;
}

void mark(std::vector<RowNote>& notes, const ResponseFit& response) {
    for (const Finding& f : response.findings()) {
        RowNote& note = notes[static_cast<std::size_t>(f.row)];
        note.why = RowNote::Why::taught;
        note.measure_again = note.measure_again || f.flagged;
        note.weight = std::fmin(note.weight, f.weight);
        note.sd_off = std::fmax(note.sd_off, f.sd_off);
    }
}

Word text_of(const RowNote& note) {
    if (note.measure_again) {
        return words::tune::row_odd;
    }
    switch (note.why) {
    case RowNote::Why::worn:
        return words::tune::row_worn;
    case RowNote::Why::says_nothing:
        return words::tune::row_says_nothing;
    case RowNote::Why::outside_model:
        return words::tune::row_outside;
    case RowNote::Why::taught:
        break;
    }
    return {};
}

} // namespace

Posterior learn(std::span<const TestCut> cuts, const Machine& machine, std::optional<Gradient> gradient) {
    return learn(cuts, machine, gradient, priors());
}

Start usual_start(const Priors& p) {
    const cut::Terms& t = cut::small_air_torch(Metal::mild_steel);
    const double kerf_sd[] = {p.kerf_bias, p.kerf_slope, p.kerf_current};
    const double arc_sd[] = {t.arc_offset.sd, t.arc_per_mm.sd, t.arc_per_a.sd, t.arc_per_height.sd};
    const double pierce_sd[] = {p.pierce_bias, p.pierce_slope, p.pierce_current};
    return {feed_practice(p), Gaussian::independent(kerf_sd), Gaussian::independent(arc_sd),
            Gaussian::independent(pierce_sd)};
}

Posterior learn(std::span<const TestCut> cuts, const Machine& machine, std::optional<Gradient> gradient,
                const Priors& p) {
    return learn(cuts, machine, gradient, usual_start(p), p);
}

Posterior learn(std::span<const TestCut> cuts, const Machine& machine, std::optional<Gradient> gradient,
                const Start& start, const Priors& p) {
    Posterior posterior;
    posterior.nozzles = machine.nozzles;
    posterior.notes.resize(cuts.size());
    posterior.feed_physics = feed_physics(p);
    posterior.feed_practice = feed_practice(p);
    posterior.feed_others = start.feed;
    posterior.others = start.others;

    Evidence evidence;
    if (!cuts.empty()) {
        evidence = read_log(cuts, p, posterior);
    }

    Model feed_model = model_of(start.feed, p.feed_stock, p);
    feed_model.window = {p.window, p.window_soft, p.misread};
    feed_model.drift = p.feed_drift;
    if (!evidence.feed.empty()) {
        feed_model.others = other_shops(feed_model, p, evidence.feed);
    }
    posterior.feed = fit(std::move(evidence.feed), feed_model);
    posterior.kerf = fit(std::move(evidence.kerf), model_of(start.kerf, 0.0, p));
    posterior.arc = fit(std::move(evidence.arc), model_of(with_gradient(start.arc, p, gradient), 0.0, p));
    posterior.program_lag = lag_of(cuts, machine);
    posterior.pierce = fit_pierce(cuts, posterior, start.pierce, p);

    for (const ResponseFit* response : {&posterior.feed, &posterior.kerf, &posterior.arc, &posterior.pierce}) {
        mark(posterior.notes, *response);
    }
    for (RowNote& note : posterior.notes) {
        note.text = text_of(note);
    }
    return posterior;
}

} // namespace torchside::tune
