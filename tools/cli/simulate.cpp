// torchside simulate tune: how many test cuts shops need with this program, against the 10 % rule.
#include <cstdint>
#include <string>

#include "core/document/json.hpp"
#include "core/document/utf8.hpp"
#include "tools/cli/command.hpp"
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
                     document::one_line(*words.option(name)) + " is not accepted, accepted is " + accepted};
    }
    return n;
}

std::string to_json(const tune::SimulationReport& r) {
    document::JsonWriter out;
    out.open('{');
    out.key("shops").number(r.shops);
    out.key("mean_cuts").number(r.mean_cuts);
    out.key("mean_cuts_se").number(r.mean_cuts_se);
    out.key("rule_mean_cuts").number(r.rule_mean_cuts);
    out.key("ratio").number(r.ratio);
    out.key("knowing_mean_cuts").number(r.knowing_mean_cuts);
    out.key("told_mean_cuts").number(r.told_mean_cuts);
    out.key("coverage80").number(r.coverage80);
    out.key("first_cut_clean").number(r.first_cut_clean);
    out.key("truly_clean").number(r.truly_clean);
    out.key("worst_calibration").number(r.worst_calibration);
    out.key("calibration").open('[');
    for (const tune::Decile& decile : r.calibration) {
        out.open_line('{');
        out.key("said").number(decile.said);
        out.key("came").number(decile.came);
        out.key("cuts").number(decile.cuts);
        out.close();
    }
    out.close();
    out.close();
    return out.take();
}

} // namespace

Outcome<std::string> run_simulate(const Arguments& arguments) {
    if (arguments.empty() || arguments[0] != "tune") {
        return Fault{"SIMULATION", (arguments.empty() ? "missing" : document::one_line(arguments[0]) + " is unknown") +
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
    return to_json(report.value());
}

} // namespace torchside::cli
