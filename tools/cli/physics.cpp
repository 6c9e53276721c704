// torchside physics: the energy balance alone, with the terms of a small air torch, for checks.
#include "core/cut/balance.hpp"
#include "tools/cli/command.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

namespace {

// The balance knows the workbook's keys; here the same figures came by options.
Fault by_option(const Fault& fault, const Words& given) {
    constexpr std::string_view options[][2] = {
        {"thickness", "--thickness_mm"}, {"current", "--current_a"}, {"bore", "--bore_mm"}, {"arc", "--arc_v"}};
    for (const auto& [part, option] : options) {
        if (fault.field.find(part) != std::string::npos) {
            const std::string typed = given.option(option).value_or("");
            return {std::string(option),
                    typed.empty() ? fault.text : Text(words::cli::NotTaken{.typed = typed, .why = fault.text})};
        }
    }
    return fault;
}

// kerf_mm is the width that the balance melts; the kerf to offset by is another figure.
Json to_json(const cut::Balance& b, Length offset_kerf) {
    return {{"feed_mm_min", amount(b.feed, mm_min)},
            {"arc_v", amount(b.arc, volt)},
            {"kerf_mm", amount(b.kerf, mm)},
            {"kerf_to_offset_mm", amount(offset_kerf, mm)},
            {"power_w", amount(b.power, watt)},
            {"melt_w", amount(b.melt, watt)},
            {"conduction_w", amount(b.conduction, watt)}};
}

} // namespace

Outcome<std::string> run_physics(const Arguments& arguments, const Language&) {
    const auto words =
        Words::sort(arguments, 0, {"--material", "--thickness_mm", "--current_a", "--arc_v", "--bore_mm"});
    if (!words) {
        return words.fault();
    }
    const auto metal = words.value().material();
    const auto thickness = words.value().number("--thickness_mm");
    const auto current = words.value().number("--current_a");
    const auto arc = words.value().number_if_given("--arc_v");
    const auto bore = words.value().number_if_given("--bore_mm");
    if (!metal) {
        return metal.fault();
    }
    for (const auto* number : {&thickness, &current}) {
        if (!*number) {
            return number->fault();
        }
    }
    for (const auto* number : {&arc, &bore}) {
        if (!*number) {
            return number->fault();
        }
    }
    cut::CutSetup plate;
    plate.metal = metal.value();
    plate.thickness = Length{thickness.value(), mm};
    plate.current = Current{current.value(), ampere};
    if (arc.value()) {
        plate.arc = Voltage{*arc.value(), volt};
    }
    if (bore.value()) {
        plate.bore = Length{*bore.value(), mm};
    }
    const cut::Terms& terms = cut::small_air_torch(plate.metal);
    const auto balance = cut::balance(plate, terms);
    if (!balance) {
        return by_option(balance.fault(), words.value());
    }
    return printed(to_json(balance.value(), cut::kerf(plate, terms)));
}

} // namespace torchside::cli
