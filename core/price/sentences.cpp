#include "core/price/sentences.hpp"

#include <cmath>

#include "core/quantity/print.hpp"
#include "generated/words/price.hpp"

namespace torchside::price {
namespace {

std::string percent(double share) {
    return print_trimmed(100.0 * share, 1) + " %";
}

// A rate as it was typed.
std::string rate(double r) {
    return print_trimmed(r, 4);
}

std::string of(double figure, const char* unit) {
    return print_significant(figure, 3) + unit;
}

// "a 25 % share of the plate bought is scrap (33.3 % on top of the parts)": both ways to say it, so that neither is
// taken for the other.
std::string scrap_text(const JobPrice& p) {
    const double share = p.waste_per_part ? margin_of(*p.waste_per_part) : p.scrap_share;
    return percent(share) + " of the plate bought is scrap, " + percent(markup_of(share)) + " on top of the parts";
}

} // namespace

void describe(const Work& w, const Order& o, Report& out) {
    const int places = out.decimals;
    const auto cash = [&](double a) { return print(money(a, places), places); };
    const auto set = [&](LineKind kind, std::string text) {
        out.lines[static_cast<std::size_t>(kind)].how = std::move(text);
    };
    const Rates& r = o.rates;
    const auto parts = static_cast<double>(o.quantity);
    set(LineKind::setup, print_trimmed(o.price.setup.in(minute), 1) + " min at " + rate(r.labour_per_h) + "/h");
    const bool metric = o.units == UnitSystem::metric;
    const Unit<MassKind> weight = metric ? kg : lb;
    set(LineKind::material, of(parts * w.mass.in(weight), metric ? " kg at " : " lb at ") +
                                rate(o.price.material_per_kg * weight.per_base) + (metric ? "/kg; " : "/lb; ") +
                                scrap_text(o.price));
    const double hours = r.machine_per_h > 0.0 ? line(out, LineKind::machine).each.value * parts / r.machine_per_h
                                               : parts * (w.arc.value + w.moving).in(hour);
    set(LineKind::machine, of(60.0 * hours, " min at ") + rate(r.machine_per_h) + "/h, rests included");
    set(LineKind::labour,
        print_trimmed(o.price.handling.in(minute), 1) + " min for each part at " + rate(r.labour_per_h) + "/h");
    set(LineKind::consumables, of(parts * w.sets.value, " sets at ") + rate(o.set_price));
    const double each_kwh = kwh(w.input.value, w.arc.value) + kwh(w.air, w.arc.value + w.air_after);
    set(LineKind::energy, of(parts * each_kwh, " kWh at ") + rate(r.energy_per_kwh) + ", compressed air included");
    set(LineKind::minimum,
        out.minimum_applies ? "up to the minimum charge of " + cash(r.minimum_charge) : "not needed");
    const double m = o.price.margin, cost = amount(out.cost, places);
    set(LineKind::margin, percent(m) + " of the price");
    out.margin_text = "A margin of " + percent(m) + " is a share of the price: a markup of " + percent(markup_of(m)) +
                      " on the cost. " + percent(m) + " as markup would bring " +
                      cash(cost / (1.0 - m) - cost * (1.0 + m)) + " less.";
    out.rounding = "Each line is rounded to the smallest coin, halves up; the total is the sum of the lines.";
    if (out.each_rounded)
        out.rounding += " The price of one is rounded: the total is what counts.";
    out.band =
        "80 % bands from arc time, wear and arc volts, first order, causes independent; what you typed has none.";
}

void describe(MakeOrBuy& m, int quantity, int decimals) {
    const double each = m.saved_each.value;
    const std::string one = print(money(std::abs(each), decimals), decimals);
    const std::string all = print(money(std::abs(each * quantity), decimals), decimals);
    if (m.choice == Choice::make)
        m.title = words::price::Making{.all = all, .each = one};
    else if (m.choice == Choice::buy)
        m.title = words::price::Buying{.all = all, .each = one};
    else if (each < 0.0)
        m.title = words::price::CloseCosts{.all = all, .each = one};
    else
        m.title = words::price::CloseSaves{.all = all, .each = one};
    if (m.break_even)
        m.detail = words::price::PaysFrom{.count = *m.break_even};
    else
        m.detail = words::price::never_pays;
}

} // namespace torchside::price
