// How a quantity reads on the screen, in the user's units with the other unit near. Only words and rounding; no figure
// is made here.
#pragma once

#include <string>
#include <string_view>

#include "core/cut/settings.hpp"
#include "core/quantity/estimate.hpp"
#include "core/quantity/field_unit.hpp"
#include "core/worksheet/figures.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::web {

class App;

struct Shown {
    std::string number;
    std::string unit;
    std::string other; // in the other system of units, with its unit; empty when there is none

    [[nodiscard]] std::string whole() const { return number + ' ' + unit; }
};

[[nodiscard]] Shown show(Length length, Units units);
/// The thickest plate of something: down to a tenth, for what is shown must not promise more.
[[nodiscard]] Shown show_limit(Length length, Units units);
/// The smallest hole, as it is judged by.
[[nodiscard]] Shown show_least_hole(const cut::Settings& settings, Units units);
/// A plate as its stock is called: "6 mm", "1/4 in", "10 ga".
[[nodiscard]] Shown show_plate(Length thickness, Metal metal, Units units);
/// A feed to dial in: the same figure wherever it stands. What the arc would do does not ask the table.
[[nodiscard]] Shown show_feed(Speed feed, Units units, Speed fastest = Speed{1e300, mm_min});
[[nodiscard]] Shown show_feed(const App& app, Speed feed);
[[nodiscard]] Shown show(Voltage voltage, Units units);
[[nodiscard]] Shown show(Current current, Units units);
[[nodiscard]] Shown show(Duration duration, Units units);
/// A figure of the table as every screen, card and text gives it; "edge start" where a plate has none.
[[nodiscard]] Shown show(const App& app, const Figure& figure, const cut::Settings& settings);

/// "1190 to 2210", rounded to a step that fits the band.
[[nodiscard]] std::string show_range(const App& app, const Estimate<Speed>& e);
[[nodiscard]] std::string show_range(const App& app, const Estimate<Length>& e);
[[nodiscard]] std::string show_range(const App& app, const Estimate<Voltage>& e);
[[nodiscard]] std::string show_range(const App& app, const Estimate<Duration>& e);
/// Empty where the figure has no band.
[[nodiscard]] std::string show_range(const App& app, const Figure& figure, const cut::Settings& settings);

/// A number of the workbook as print_field() has it, an amount of money with the sign of the shop's currency: (35, money)
/// is "$35".
[[nodiscard]] std::string show_field(double value, FieldUnit unit, std::string_view currency, Units units);

[[nodiscard]] std::string show_text(Length length, Units units);
[[nodiscard]] std::string show_text(Speed speed, Units units);

/// "$7.50", "7.50 CHF": the sign where no other currency has it, else the code.
[[nodiscard]] std::string with_currency(std::string_view amount, std::string_view currency);

/// "$"; empty where the currency has no sign of its own.
[[nodiscard]] std::string_view currency_sign(std::string_view currency);

/// "7.50": rounded as money is, without the currency.
[[nodiscard]] std::string show_money(double amount, int decimals, Units units);

/// "physics, practice, 2 cuts of yours"; of the example shop no cut is yours.
[[nodiscard]] std::string show_basis(const App& app, const Basis& basis);

} // namespace torchside::web
