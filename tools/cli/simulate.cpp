// torchside simulate tune: how many test cuts shops need with this program, against the 10 % rule.
#include <cstdint>
#include <string>

#include "core/codec/utf8.hpp"
#include "generated/words/file.hpp"
#include "tools/cli/command.hpp"
#include "tools/cli/results/json.hpp"
#include "tools/simulate/simulate.hpp"

namespace torchside::cli {

namespace {

constexpr double most_shops = 100000;
constexpr double most_pooled = 200;
constexpr double largest_seed = 9007199254740991.0; // 2^53 - 1: every whole number up to it is a double

Outcome<double> whole(const Words& given, std::string_view name, double low, double high, Word accepted) {
    const auto number = given.number(name);
    if (!number) {
        return number.fault();
    }
    const double n = number.value();
    if (!(n >= low && n <= high) || n != static_cast<double>(static_cast<std::int64_t>(n))) {
        const std::string typed = codec::one_line(*given.option(name));
        return Fault{std::string(name), words::file::NotAccepted{.accepted = accepted, .value = typed}};
    }
    return n;
}

Json decile_json(const tune::Decile& decile) {
    return {{"said", number(decile.said)}, {"came", number(decile.came)}, {"cuts", number(decile.cuts)}};
}

Json to_json(const tune::SimulationReport& r, std::string_view world) {
    constexpr double points = 100.0;
    return {{"world", std::string(world)},
            {"shops", r.shops},
            {"mean_cuts", number(r.mean_cuts)},
            {"mean_cuts_se", number(r.mean_cuts_se)},
            {"rule_mean_cuts", number(r.rule_mean_cuts)},
            {"ratio", number(r.ratio)},
            {"knowing_mean_cuts", number(r.knowing_mean_cuts)},
            {"told_mean_cuts", number(r.told_mean_cuts)},
            {"told_world_mean_cuts", number(r.told_world_mean_cuts)},
            {"ratio_to_told_world", number(r.ratio_to_told_world)},
            {"coverage80", number(r.coverage80)},
            {"first_cut_clean", number(r.first_cut_clean)},
            {"truly_clean", number(r.truly_clean)},
            {"worst_calibration", number(r.worst_calibration)},
            {"worst_decile_points", number(points * r.worst_calibration)},
            {"calibration", list_of(r.calibration, decile_json)}};
}

Outcome<const tune::Population*> world_of(const Words& given) {
    const std::string name = given.option("--world").value_or(std::string(tune::usual_population().world));
    if (const tune::Population* world = tune::find_world(name)) {
        return world;
    }
    std::string names;
    for (const tune::Population& world : tune::worlds()) {
        names += (names.empty() ? "" : ", ") + std::string(world.world);
    }
    return Fault{"--world", words::cli::UnknownWorld{.typed = codec::one_line(name), .worlds = names}};
}

} // namespace

Outcome<std::string> run_simulate(const Arguments& arguments, const Language&) {
    if (arguments.empty() || arguments[0] != "tune") {
        return Fault{"SIMULATION", arguments.empty()
                                       ? Text(words::cli::no_simulation)
                                       : Text(words::cli::UnknownSimulation{.typed = codec::one_line(arguments[0])})};
    }
    const auto given = Words::sort(arguments, 1, {"--shops", "--seed", "--world", "--pooled"});
    if (!given) {
        return given.fault();
    }
    const auto shops = whole(given.value(), "--shops", 1, most_shops, words::cli::shops);
    const auto seed = whole(given.value(), "--seed", 0, largest_seed, words::cli::seed);
    if (!shops) {
        return shops.fault();
    }
    if (!seed) {
        return seed.fault();
    }
    const auto pooled = given.value().option("--pooled")
                            ? whole(given.value(), "--pooled", 1, most_pooled, words::cli::pooled)
                            : Outcome<double>(0.0);
    if (!pooled) {
        return pooled.fault();
    }
    const auto world = world_of(given.value());
    if (!world) {
        return world.fault();
    }
    const auto report = tune::simulate(static_cast<int>(shops.value()), static_cast<std::uint64_t>(seed.value()),
                                       *world.value(), static_cast<int>(pooled.value()));
    if (!report) {
        return report.fault();
    }
    Json out = to_json(report.value(), world.value()->world);
    if (pooled.value() > 0.0) {
        out["pooled_mean_cuts"] = number(report.value().pooled_mean_cuts);
        out["ratio_pooled_to_told_world"] =
            number(report.value().pooled_mean_cuts / report.value().told_world_mean_cuts);
    }
    return printed(out);
}

} // namespace torchside::cli
