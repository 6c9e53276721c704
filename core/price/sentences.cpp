#include "core/price/sentences.hpp"

#include <cmath>

#include "generated/words/price.hpp"
#include "generated/words/price_more.hpp"

namespace torchside::price {
namespace {

/// A rate as it was typed.
words::Slot rate(double r) {
    return words::number(r, 4);
}

words::Slot percent(double share) {
    return words::number(100.0 * share, 1);
}

/// Scrap is said both as a share of the plate and on top of the parts, so that neither is taken for the other.
Text material(const Work& w, const Order& o) {
    const double share = o.price.waste_per_part ? margin_of(*o.price.waste_per_part) : o.price.scrap_share;
    const auto by = [&](Unit<MassKind> unit) {
        return words::significant(static_cast<double>(o.quantity) * w.mass.in(unit), 3);
    };
    const Text in_kg = words::price_more::MaterialKg{.mass = by(kg),
                                                     .on_top = percent(markup_of(share)),
                                                     .rate = rate(o.price.material_per_kg),
                                                     .scrap = percent(share)};
    const Text in_lb = words::price_more::MaterialLb{.mass = by(lb),
                                                     .on_top = percent(markup_of(share)),
                                                     .rate = rate(o.price.material_per_kg * lb.per_base),
                                                     .scrap = percent(share)};
    return words::either(in_kg, in_lb);
}

} // namespace

void describe(const Work& w, const Order& o, Report& out) {
    const int places = out.decimals;
    const auto cash = [&](double a) { return words::money(amount(money(a, places), places), places); };
    const auto set = [&](LineKind kind, Text text) { out.lines[static_cast<std::size_t>(kind)].how = std::move(text); };
    const Rates& r = o.rates;
    const auto parts = static_cast<double>(o.quantity);
    set(LineKind::setup,
        words::price_more::Setup{.minutes = words::number(o.price.setup.in(minute), 1), .rate = rate(r.labour_per_h)});
    set(LineKind::material, material(w, o));
    const double hours = r.machine_per_h > 0.0 ? line(out, LineKind::machine).each.value * parts / r.machine_per_h
                                               : parts * (w.arc.value + w.moving).in(hour);
    set(LineKind::machine,
        words::price_more::Machine{.minutes = words::significant(60.0 * hours, 3), .rate = rate(r.machine_per_h)});
    set(LineKind::labour, words::price_more::Labor{.minutes = words::number(o.price.handling.in(minute), 1),
                                                   .rate = rate(r.labour_per_h)});
    set(LineKind::consumables,
        words::price_more::Consumables{.rate = rate(o.set_price), .sets = words::significant(parts * w.sets.value, 3)});
    const double each_kwh = kwh(w.input.value, w.arc.value) + kwh(w.air, w.arc.value + w.air_after);
    set(LineKind::energy,
        words::price_more::Energy{.kwh = words::significant(parts * each_kwh, 3), .rate = rate(r.energy_per_kwh)});
    if (out.minimum_applies) {
        set(LineKind::minimum, words::price_more::Minimum{.charge = cash(r.minimum_charge)});
    } else {
        set(LineKind::minimum, words::price_more::not_needed);
    }
    const double m = o.price.margin, cost = amount(out.cost, places);
    set(LineKind::margin, words::price_more::MarginOf{.margin = percent(m)});
    out.margin_text = words::price_more::Margin{
        .less = cash(cost / (1.0 - m) - cost * (1.0 + m)), .margin = percent(m), .markup = percent(markup_of(m))};
    out.rounding = words::price_more::rounding;
    if (out.each_rounded) {
        out.rounding += words::price_more::rounding_each;
    }
    out.band = words::price_more::band;
}

void describe(MakeOrBuy& m, int quantity, int decimals) {
    const double each = m.saved_each.value;
    const auto cash = [&](double a) { return amount(money(std::abs(a), decimals), decimals); };
    const double one = cash(each), all = cash(each * quantity);
    if (m.choice == Choice::make) {
        m.title = words::price::Making{.all = words::money(all, decimals), .each = words::money(one, decimals)};
    } else if (m.choice == Choice::buy) {
        m.title = words::price::Buying{.all = words::money(all, decimals), .each = words::money(one, decimals)};
    } else if (each < 0.0) {
        m.title = words::price::CloseCosts{.all = words::money(all, decimals), .each = words::money(one, decimals)};
    } else {
        m.title = words::price::CloseSaves{.all = words::money(all, decimals), .each = words::money(one, decimals)};
    }
    if (m.break_even) {
        m.detail = words::price::PaysFrom{.count = *m.break_even};
    } else {
        m.detail = words::price::never_pays;
    }
}

} // namespace torchside::price
