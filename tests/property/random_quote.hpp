// Random quotes in range, and random damage.
#pragma once

#include <cmath>

#include "core/price/money.hpp"
#include "core/quote/quote_fields.hpp"
#include "tests/property/random_workbook.hpp"

namespace torchside::test {

inline document::QuoteOutline random_outline(Rng& rng) {
    document::QuoteOutline out;
    out.step_um = 1 + static_cast<int>(rng.below(400));
    out.partly = rng.chance(0.2);
    const double step = out.step_um / 1000.0;
    const auto place = [&](std::size_t from) { return static_cast<double>(from + rng.below(40000)) * step; };
    for (auto n = rng.below(8); n > 0; --n) {
        document::QuoteContour contour;
        if (rng.chance(0.5)) {
            const auto radius = 1 + rng.below(2000);
            contour.circle_mm = std::round(2000.0 * static_cast<double>(radius) * step) / 1000.0;
            contour.points = {{place(radius), place(radius)}};
        } else {
            contour.open = rng.chance(0.2);
            for (auto k = 3 + rng.below(40); k > 0; --k) {
                contour.points.push_back({place(0), place(0)});
            }
        }
        out.contours.push_back(contour);
    }
    return out;
}

inline document::Quote random_quote(Rng& rng) {
    document::Quote q;
    detail::fill(document::quote_fields(), &q, rng);
    const int places = price::decimals(q.currency);
    const auto whole = [&](double v) { return price::amount(price::money(v, places), places); };
    q.price_each = whole(rng.by_factor(0.01, 1e6));
    q.price_total = whole(q.price_each * q.quantity);
    q.tax_amount.reset();
    if (q.tax) {
        q.tax_amount = whole(q.price_total * *q.tax);
    }
    q.to_pay =
        price::amount(price::money(q.price_total, places) + price::money(q.tax_amount.value_or(0.0), places), places);
    q.outline = random_outline(rng);
    return q;
}

inline bool same(const document::QuoteOutline& a, const document::QuoteOutline& b) {
    bool equal = a.step_um == b.step_um && a.partly == b.partly && a.contours.size() == b.contours.size();
    for (std::size_t i = 0; equal && i < a.contours.size(); ++i) {
        equal = a.contours[i].open == b.contours[i].open && a.contours[i].circle_mm == b.contours[i].circle_mm &&
                a.contours[i].points == b.contours[i].points;
    }
    return equal;
}

inline bool same(const document::Quote& a, const document::Quote& b) {
    return same(document::quote_fields(), &a, &b) && same(a.outline, b.outline);
}

/// One to three bytes changed, added or lost, or an end cut off.
inline std::string damaged(const std::string& whole, Rng& rng) {
    std::string text = whole;
    for (auto n = 1 + rng.below(3); n > 0 && text.size() > 1; --n) {
        const auto at = rng.below(text.size());
        switch (rng.below(8)) {
        case 0:
        case 1:
            text[at] = static_cast<char>(static_cast<unsigned char>(text[at]) ^ (1U << rng.below(8)));
            break;
        case 2:
        case 3:
            text.insert(at, 1, static_cast<char>(rng.below(256)));
            break;
        case 4:
        case 5:
            text.erase(at, 1 + rng.below(4));
            break;
        case 6:
            text[at] = static_cast<char>(rng.below(256));
            break;
        default:
            text.resize(at);
        }
    }
    return text;
}

} // namespace torchside::test
