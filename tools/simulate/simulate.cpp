#include "tools/simulate/simulate.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/tune/plan.hpp"
#include "core/tune/plate_terms.hpp"
#include "core/tune/pool.hpp"
#include "core/tune/posterior.hpp"
#include "generated/words/cli.hpp"
#include "generated/words/file.hpp"
#include "tools/simulate/shop_draw.hpp"

namespace torchside::tune {
namespace {

constexpr int most_cuts = 60; // of one job
constexpr double rule_step = 1.10;

constexpr Population all_worlds[] = {
#include "generated/tune_population.inc"
};

// The learner's priors for one who knows the world: its spreads and no doubt about the typical shop.
Priors told(const Population& world) {
    constexpr double exact = 1e8;
    Priors p = priors_of(
        KnownShops{world.mean, world.bias_sd, world.slope_sd, world.stock_sd, world.window, world.misread, exact});
    p.feed_others = 0.0;
    p.feed_bend = world.bend_sd;
    p.feed_drift = world.drift;
    return p;
}

struct Said {
    double p;
    bool clean;
};

struct Tally {
    std::vector<Said> said{};
    long cuts = 0, squares = 0, rule = 0, knowing = 0, told = 0, told_world = 0, pooled = 0;
    long jobs = 0, covered = 0, first_clean = 0, truly_clean = 0;
};

// Where the twelve jobs lie: the chart's ln(feed / level 1), and the plate.
struct Jobs {
    std::array<cut::CutSetup, 12> plate{};
    std::array<Regressors, 12> place{};
    std::array<Speed, 12> level_1{};
    std::array<double, 12> chart{};
};

Jobs jobs_of(const Posterior& none) {
    Jobs jobs;
    for (std::size_t i = 0; i < job_thickness_mm.size(); ++i) {
        cut::CutSetup plate;
        plate.thickness = Length{job_thickness_mm[i], mm};
        jobs.plate[i] = plate_of(plate, none.nozzles);
        jobs.place[i] = feed_regressors(jobs.plate[i]);
        jobs.level_1[i] = cut::balance_feed(jobs.plate[i], cut::small_air_torch(plate.metal));
        jobs.chart[i] = none.feed.curve(jobs.place[i].x);
    }
    return jobs;
}

TestCut row_of(const Jobs& jobs, std::size_t job, double y, Judgement reading) {
    TestCut row;
    row.thickness = jobs.plate[job].thickness;
    row.current = jobs.plate[job].current;
    row.feed = std::exp(y) * jobs.level_1[job];
    row.verdict = reading == Judgement::good   ? Verdict::clean
                  : reading == Judgement::high ? Verdict::too_fast
                                               : Verdict::too_slow;
    return row;
}

struct Learner {
    Machine machine{};
    Priors priors{};
};

std::vector<TestCut> learn_by_cutting(const ShopDraw& shop, const Jobs& jobs, const Learner& learner, Tally& tally) {
    std::vector<TestCut> log;
    for (std::size_t job = 0; job < job_thickness_mm.size(); ++job) {
        const double truth = jobs.chart[job] + shop.truth(job);
        for (int cut = 0; cut < most_cuts; ++cut) {
            const Posterior posterior = learn(log, learner.machine, {}, learner.priors);
            const Distribution belief = posterior.feed.distribution(jobs.place[job].x, jobs.place[job].tag,
                                                                    shop.starts(job) / learner.priors.feed_set_starts);
            const auto beliefs = posterior.feed.beliefs(jobs.place[job].x, jobs.place[job].tag,
                                                        shop.starts(job) / learner.priors.feed_set_starts);
            if (cut == 0) {
                ++tally.jobs;
                tally.covered += truth >= belief.quantile(0.1) && truth <= belief.quantile(0.9);
            }
            const Test test = Search(beliefs).next();
            const double off = test.y - jobs.chart[job];
            const Judgement reading = shop.read(job, cut, off);
            tally.said.push_back({test.good, shop.happened(job, off) == Judgement::good});
            log.push_back(row_of(jobs, job, test.y, reading));
            log.back().starts = shop.starts(job);
            if (reading != Judgement::good) {
                continue;
            }
            tally.first_clean += cut == 0;
            tally.truly_clean += tally.said.back().clean;
            break;
        }
    }
    const auto cuts = static_cast<long>(log.size());
    tally.cuts += cuts;
    tally.squares += cuts * cuts;
    return log;
}

long rule_cuts(const ShopDraw& shop) {
    long cuts = 0;
    for (std::size_t job = 0; job < job_thickness_mm.size(); ++job) {
        double y = 0.0;
        for (int cut = 0; cut < most_cuts; ++cut) {
            ++cuts;
            const Judgement reading = shop.read(job, cut, y);
            if (reading == Judgement::good) {
                break;
            }
            y += (reading == Judgement::high ? -1.0 : 1.0) * std::log(rule_step);
        }
    }
    return cuts;
}

// One job with nothing to learn from but its own cuts.
int search_cuts(const ShopDraw& shop, std::size_t job, const Distribution& belief, const Window& window) {
    Search search(std::vector<Belief>{{1.0, window, belief}});
    for (int cut = 0; cut < most_cuts; ++cut) {
        const double y = search.next().y;
        const Judgement reading = shop.read(job, cut, y);
        if (reading == Judgement::good) {
            return cut + 1;
        }
        search.observe(y, reading);
    }
    return most_cuts;
}

long knowing_cuts(const ShopDraw& shop, const Population& population, const Window& window) {
    long cuts = 0;
    for (std::size_t job = 0; job < job_thickness_mm.size(); ++job) {
        cuts += search_cuts(shop, job, {shop.curve(job), population.stock_sd, 0.0, 0.0, {}}, window);
    }
    return cuts;
}

long told_cuts(const ShopDraw& shop, const Jobs& jobs, const Population& population, const Window& window) {
    const double sd[] = {population.bias_sd, population.slope_sd};
    Gaussian known = Gaussian::independent(sd);
    const double s2 = population.stock_sd * population.stock_sd;
    long cuts = 0;
    for (std::size_t job = 0; job < job_thickness_mm.size(); ++job) {
        const Vector x{1.0, jobs.place[job].x[1]};
        const auto* first = std::find(job_thickness_mm.begin(), job_thickness_mm.end(), job_thickness_mm[job]);
        const bool repeats = first != job_thickness_mm.begin() + job;
        const double spread = repeats ? 0.005 : std::sqrt(known.variance(x) + s2);
        cuts += search_cuts(shop, job, {repeats ? shop.truth(job) : known.at(x), spread, 0.0, 0.0, {}}, window);
        if (!repeats) {
            known.observe(x, shop.truth(job), s2);
        }
    }
    return cuts;
}

// What other shops of the world teach, cut with nobody to learn from.
Priors pooled_priors(const Population& population, const Jobs& jobs, std::uint64_t seed, int shops) {
    if (shops == 0) {
        return priors();
    }
    constexpr std::uint64_t elsewhere = 0x5eed;
    const Learner learner{{}, priors()};
    Tally unused;
    std::vector<ShopLog> logs;
    for (int i = 0; i < shops; ++i) {
        const ShopDraw shop(population, seed ^ elsewhere, i, shops);
        logs.push_back({learn_by_cutting(shop, jobs, learner, unused), {}});
    }
    return priors_of(pool(logs));
}

void calibrate(std::vector<Said>& said, SimulationReport& report) {
    std::stable_sort(said.begin(), said.end(), [](const Said& a, const Said& b) { return a.p < b.p; });
    for (std::size_t d = 0; d < report.calibration.size(); ++d) {
        const std::size_t begin = said.size() * d / report.calibration.size();
        const std::size_t end = said.size() * (d + 1) / report.calibration.size();
        Decile& decile = report.calibration[d];
        for (std::size_t i = begin; i < end; ++i) {
            decile.said += said[i].p;
            decile.came += said[i].clean ? 1.0 : 0.0;
        }
        decile.cuts = static_cast<int>(end - begin);
        decile.said /= std::fmax(1.0, decile.cuts);
        decile.came /= std::fmax(1.0, decile.cuts);
        report.worst_calibration = std::fmax(report.worst_calibration, std::abs(decile.said - decile.came));
    }
}

SimulationReport report_of(Tally& tally, int shops) {
    SimulationReport r;
    const double n = shops;
    const auto per_shop = [&](long cuts) { return static_cast<double>(cuts) / n; };
    const auto per_job = [&](long count) { return static_cast<double>(count) / static_cast<double>(tally.jobs); };
    r.shops = shops;
    r.mean_cuts = per_shop(tally.cuts);
    r.mean_cuts_se = std::sqrt(std::fmax(0.0, per_shop(tally.squares) - r.mean_cuts * r.mean_cuts) / n);
    r.rule_mean_cuts = per_shop(tally.rule);
    r.ratio = r.rule_mean_cuts / r.mean_cuts;
    r.knowing_mean_cuts = per_shop(tally.knowing);
    r.told_mean_cuts = per_shop(tally.told);
    r.told_world_mean_cuts = per_shop(tally.told_world);
    r.pooled_mean_cuts = per_shop(tally.pooled);
    r.ratio_to_told_world = r.mean_cuts / r.told_world_mean_cuts;
    r.coverage80 = per_job(tally.covered);
    r.first_cut_clean = per_job(tally.first_clean);
    r.truly_clean = per_job(tally.truly_clean);
    calibrate(tally.said, r);
    return r;
}

} // namespace

std::span<const Population> worlds() {
    return all_worlds;
}

const Population* find_world(std::string_view name) {
    const auto* found = std::find_if(std::begin(all_worlds), std::end(all_worlds),
                                     [&](const Population& p) { return p.world == name; });
    return found != std::end(all_worlds) ? found : nullptr;
}

const Population& usual_population() {
    return all_worlds[0];
}

Outcome<SimulationReport> simulate(int shops, std::uint64_t seed, const Population& population, int pooled) {
    if (shops < 1 || shops > 100000) {
        return Fault{"shops", words::file::NotAccepted{.accepted = words::cli::shops, .value = std::to_string(shops)}};
    }
    if (pooled < 0 || pooled > 200) {
        return Fault{"pooled",
                     words::file::NotAccepted{.accepted = words::cli::pooled, .value = std::to_string(pooled)}};
    }
    const Learner untold{{}, priors()};
    const Learner told_world{{}, told(population)};
    const Jobs jobs = jobs_of(learn({}, untold.machine));
    const Learner newcomer{{}, pooled_priors(population, jobs, seed, pooled)};
    const Window truth{population.window, priors().window_soft, population.misread};
    Tally tally;
    Tally told_tally;
    Tally pooled_tally;
    for (int i = 0; i < shops; ++i) {
        const ShopDraw shop(population, seed, i, shops);
        learn_by_cutting(shop, jobs, untold, tally);
        learn_by_cutting(shop, jobs, told_world, told_tally);
        if (pooled > 0) {
            learn_by_cutting(shop, jobs, newcomer, pooled_tally);
        }
        tally.rule += rule_cuts(shop);
        tally.knowing += knowing_cuts(shop, population, truth);
        tally.told += told_cuts(shop, jobs, population, truth);
    }
    tally.told_world = told_tally.cuts;
    tally.pooled = pooled_tally.cuts;
    return report_of(tally, shops);
}

} // namespace torchside::tune
