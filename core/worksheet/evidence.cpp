#include "core/worksheet/evidence.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/codec/decimal.hpp"
#include "core/stock/properties.hpp"
#include "core/tune/posterior.hpp"

namespace torchside {
namespace {

using Use = Published::Use;

// A text weighs nothing in the page's first answer; a table of numbers would (tools/wasm_texts.py).
constexpr std::string_view table =
#include "generated/published_cuts.inc"
    ;

constexpr std::string_view sources[] = {
#include "generated/published_sources.inc"
};

constexpr double usual_thickness_mm = 6.0;
constexpr std::string_view uses[] = {"fit", "kerf", "kerf_fit", "check", "context"}; // in the order of Use

/// What stands before the next of these signs, which is taken away too.
std::string_view take_until(char sign, std::string_view& text) {
    const std::size_t end = text.find(sign);
    const std::string_view taken = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    return taken;
}

std::vector<Published> read_table() {
    std::vector<Published> rows;
    for (std::string_view rest = table; !rest.empty();) {
        std::string_view line = take_until('\n', rest);
        Published row;
        row.id = take_until(';', line);
        row.use =
            static_cast<Use>(std::find(std::begin(uses), std::end(uses), take_until(';', line)) - std::begin(uses));
        const std::string_view metal = take_until(';', line);
        for (const Metal known : all_metals) {
            if (stock::key(known) == metal) {
                row.metal = known;
            }
        }
        for (double* number : {&row.thickness_mm, &row.current_a, &row.arc_v, &row.bore_mm, &row.height_mm,
                               &row.feed_mm_min, &row.kerf_mm}) {
            const std::string_view cell = take_until(';', line);
            *number = cell.empty() ? 0.0 : codec::read_decimal(cell);
        }
        row.source = static_cast<int>(codec::read_decimal(take_until(';', line)));
        row.seen = !line.empty();
        rows.push_back(row);
    }
    return rows;
}

cut::CutSetup plate_of(const Published& row) {
    cut::CutSetup plate;
    plate.metal = *row.metal;
    plate.thickness = Length{row.thickness_mm > 0 ? row.thickness_mm : usual_thickness_mm, mm};
    plate.current = Current{row.current_a, ampere};
    plate.bore = cut::bore(plate, cut::small_air_torch(plate.metal));
    if (row.bore_mm > 0) {
        plate.bore = Length{row.bore_mm, mm};
    }
    if (row.height_mm > 0) {
        plate.height = Length{row.height_mm, mm};
    }
    return plate;
}

template <class Q>
Estimate<double> in(const Estimate<Q>& e, Unit<typename Q::kind> unit) {
    return {e.value.in(unit), e.low.in(unit), e.high.in(unit), e.basis};
}

double published(const Published& row, Measured what) {
    switch (what) {
    case Measured::feed:
        return row.thickness_mm > 0 ? row.feed_mm_min : 0.0;
    case Measured::kerf:
        return row.kerf_mm;
    case Measured::arc:
        break;
    }
    return row.thickness_mm > 0 ? row.arc_v : 0.0;
}

Estimate<double> ours(const tune::Posterior& chart, const Published& row, Measured what) {
    const cut::CutSetup plate = plate_of(row);
    switch (what) {
    case Measured::feed:
        return in(tune::feed(chart, plate), mm_min);
    case Measured::kerf:
        return in(tune::kerf(chart, plate), mm);
    case Measured::arc:
        break;
    }
    return in(tune::arc(chart, plate), volt);
}

EvidenceSummary summary(const std::vector<Compared>& compared, Measured what) {
    EvidenceSummary s{.what = what};
    for (const Compared& c : compared) {
        if (c.what != what) {
            continue;
        }
        s.fitted += c.fitted ? 1 : 0;
        if (!c.fitted) {
            ++s.rows;
            s.bias += c.ln_error;
            s.rms += c.ln_error * c.ln_error;
            s.coverage += c.inside ? 1.0 : 0.0;
        }
    }
    if (s.rows > 0) {
        s.bias /= s.rows;
        s.rms = std::sqrt(s.rms / s.rows);
        s.coverage /= s.rows;
        s.off = std::exp(s.bias) - 1;
        s.factor = std::exp(s.rms);
    }
    return s;
}

} // namespace

std::span<const Published> published_cuts() {
    static const std::vector<Published> rows = read_table();
    return rows;
}

std::span<const std::string_view> published_sources() {
    return sources;
}

Evidence evidence() {
    const tune::Posterior chart = tune::learn({}, Machine{});
    Evidence out;
    for (const Measured what : {Measured::feed, Measured::kerf, Measured::arc}) {
        for (const Published& row : published_cuts()) {
            const double there = published(row, what);
            if (!row.metal || !(row.current_a > 0) || !(there > 0)) {
                continue;
            }
            Compared c{&row, what, there, ours(chart, row, what)};
            if (!(c.ours.value > 0)) {
                continue; // refused
            }
            c.ln_error = std::log(c.ours.value / there);
            c.off = c.ours.value / there - 1;
            c.inside = c.ours.low <= there && there <= c.ours.high;
            c.fitted =
                (what == Measured::feed && row.use == Use::fit) || (what == Measured::kerf && row.use == Use::kerf_fit);
            out.compared.push_back(c);
        }
        out.summaries.push_back(summary(out.compared, what));
    }
    for (const Published& row : published_cuts()) {
        bool found = false;
        for (const Compared& c : out.compared) {
            found = found || c.row == &row;
        }
        if (!found) {
            out.not_compared.push_back(&row);
        }
    }
    return out;
}

} // namespace torchside
