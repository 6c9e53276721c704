// torchside simulate tune: how many test cuts shops need with this program, against the 10 % rule.
#include <cstdint>
#include <string>

#include "core/codec/utf8.hpp"
#include "tools/cli/command.hpp"
#include "tools/cli/results/json.hpp"
#include "tools/simulate/simulate.hpp"

namespace torchside::cli {

namespace {

constexpr double most_shops = 100000;
constexpr double largest_seed = 9007199254740991.0; // 2^53 - 1: every whole number up to it is a double

Outcome<double> whole(const Words& words, std::string_view name, double low, double high, const char* accepted) {
    const auto number = words.number(name);
    if (!number) {
        return number.fault();
    }
    const double n = number.value();
    if (!(n >= low && n <= high) || n != static_cast<double>(static_cast<std::int64_t>(n))) {
        return Fault{std::string(name),
                     codec::one_line(*words.option(name)) + " is not accepted, accepted is " + accepted};
    }
    return n;
}

Json decile_json(const tune::Decile& decile) {
    return {{"said", number(decile.said)}, {"came", number(decile.came)}, {"cuts", number(decile.cuts)}};
}

Json to_json(const tune::SimulationReport& r) {
    return {{"shops", r.shops},
            {"mean_cuts", number(r.mean_cuts)},
            {"mean_cuts_se", number(r.mean_cuts_se)},
            {"rule_mean_cuts", number(r.rule_mean_cuts)},
            {"ratio", number(r.ratio)},
            {"knowing_mean_cuts", number(r.knowing_mean_cuts)},
            {"told_mean_cuts", number(r.told_mean_cuts)},
            {"coverage80", number(r.coverage80)},
            {"first_cut_clean", number(r.first_cut_clean)},
            {"truly_clean", number(r.truly_clean)},
            {"worst_calibration", number(r.worst_calibration)},
            {"calibration", list_of(r.calibration, decile_json)}};
}

} // namespace

Outcome<std::string> run_simulate(const Arguments& arguments) {
    if (arguments.empty() || arguments[0] != "tune") {
        return Fault{"SIMULATION", (arguments.empty() ? "missing" : codec::one_line(arguments[0]) + " is unknown") +
                                       ", accepted is tune"};
    }
    const auto words = Words::sort(arguments, 1, {"--shops", "--seed"});
    if (!words) {
        return words.fault();
    }
    const auto shops = whole(words.value(), "--shops", 1, most_shops, "a whole number 1 to 100000");
    const auto seed = whole(words.value(), "--seed", 0, largest_seed, "a whole number from 0 to 9007199254740991");
    if (!shops) {
        return shops.fault();
    }
    if (!seed) {
        return seed.fault();
    }
    const auto report = tune::simulate(static_cast<int>(shops.value()), static_cast<std::uint64_t>(seed.value()),
                                       tune::usual_population());
    if (!report) {
        return report.fault();
    }
    return printed(to_json(report.value()));
}

} // namespace torchside::cli
