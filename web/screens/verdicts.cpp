#include "web/screens/verdicts.hpp"

#include <algorithm>

#include "core/quantity/sort_rows.hpp"
#include "core/worksheet/hindrance.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

std::string reach_words(const App& app) {
    const cut::Capacity& c = app.worksheet().capacity;
    const UnitSystem units = app.book().shop.display.units;
    return "Clean cut up to " + show_limit(c.clean, units).number + ", pierce " + show_limit(c.pierce, units).number +
           ", sever " + show_limit(c.sever, units).whole();
}

/// The worst of the warnings whose code starts so.
Sign worst(const App& app, std::string_view family) {
    Sign sign = Sign::holds;
    for (const Warning& w : app.worksheet().warnings) {
        if (w.code.starts_with(family)) {
            sign = std::max(sign, sign_of(w.severity));
        }
    }
    return sign;
}

} // namespace

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    }
    return text;
}

Sign circuit_sign(const App& app) {
    const supply::CircuitVerdict verdict = app.worksheet().circuit.verdict;
    const Sign sign = verdict == supply::CircuitVerdict::holds      ? Sign::holds
                      : verdict == supply::CircuitVerdict::may_trip ? Sign::caution
                                                                    : Sign::stop;
    return std::max(sign, worst(app, "circuit"));
}

Verdict plate_verdict(const App& app) {
    Verdict v{"plate", Sign::holds, "Plate is within reach", reach_words(app), "reach"};
    switch (app.worksheet().capacity.verdict) {
    case cut::Reach::clean:
        break;
    case cut::Reach::edge_start:
        v.sign = Sign::caution;
        v.sentence = "Too thick to pierce: start at an edge";
        break;
    case cut::Reach::sever:
        v.sign = Sign::caution;
        v.sentence = "Severs this plate, no clean cut";
        break;
    case cut::Reach::refused:
        v.sign = Sign::stop;
        v.sentence = hindrance(app.book(), app.worksheet())->reason;
        break;
    }
    return v;
}

namespace {

/// "Circuit holds: 43 A on a 50 A breaker" and what to do: the first clause is the row's title, the rest its quiet
/// line.
Verdict of_summary(std::string code, Sign sign, const std::string& summary, const std::string& way_out) {
    const std::size_t colon = summary.find(": ");
    Verdict v{code, sign, summary.substr(0, colon), "", code};
    if (colon != std::string::npos) {
        v.way_out = summary.substr(colon + 2);
        v.way_out += way_out.empty() ? "" : ". ";
    }
    v.way_out += way_out;
    return v;
}

Verdict circuit(const App& app) {
    const supply::Report& r = app.worksheet().circuit;
    return of_summary("circuit", circuit_sign(app), r.summary, r.way_out);
}

Verdict air_supply(const App& app) {
    const air::Report& r = app.worksheet().air;
    return of_summary("air", worst(app, "air"), r.summary, r.way_out);
}

Verdict eyes(const App& app) {
    return {"safety", Sign::holds, app.worksheet().safety.shade_text, "Shock, eyes, fume, fire, ears: read once",
            "safety"};
}

/// What stands in the safety panel at length, and nowhere else.
bool is_hazard(const App& app, std::string_view code) {
    for (const safety::Caution& c : app.worksheet().safety.cautions) {
        if (c.code == code) {
            return true;
        }
    }
    return false;
}

/// Warnings that no row above speaks for; each opens the panel that holds its field.
bool has_own_row(std::string_view code) {
    return code.starts_with("plate_") || code.starts_with("circuit") || code.starts_with("air") ||
           code.starts_with("breaker");
}

std::string panel_for(std::string_view field) {
    if (field.starts_with("shop.machine")) {
        return "machine";
    }
    if (field.starts_with("shop.height_control")) {
        return "height";
    }
    if (field.starts_with("job.part")) {
        return "shape";
    }
    if (field.starts_with("shop.wear")) {
        return "wear";
    }
    if (field.starts_with("shop.table")) {
        return "table";
    }
    return "stock";
}

bool is_of_quote(const Warning& w) {
    return w.field.starts_with("job.price") || w.field.starts_with("shop.rates");
}

} // namespace

bool is_of_part(const Warning& w) {
    return w.field.starts_with("job.part") || w.code == "slow_places" || w.code == "duty_rests";
}

Verdict of_warning(const Warning& w) {
    const std::size_t cut = std::min(w.text.find(": "), w.text.find("; ")); // "50:1" is one word
    Verdict v{w.code, sign_of(w.severity), w.text, "", panel_for(w.field)};
    if (cut != std::string::npos && cut + 2 < w.text.size()) {
        v.sentence = w.text.substr(0, cut);
        v.way_out = capital(w.text.substr(cut + 2));
    }
    return v;
}

void worst_first(std::vector<Verdict>& rows) {
    sort_rows(rows,
              [](const Verdict& a, const Verdict& b) { return static_cast<int>(a.sign) > static_cast<int>(b.sign); });
}

std::string missing(const App& app, std::string_view what) {
    const auto in_the_way = hindrance(app.book(), app.worksheet());
    return "No " + std::string(what) + (in_the_way ? ": " + in_the_way->reason : std::string());
}

Sign sign_of(Severity severity) {
    return severity == Severity::stop ? Sign::stop : severity == Severity::caution ? Sign::caution : Sign::holds;
}

Sign sign_of(air::AirVerdict verdict) {
    return verdict == air::AirVerdict::sustained             ? Sign::holds
           : verdict == air::AirVerdict::not_enough_pressure ? Sign::stop
                                                             : Sign::caution;
}

std::vector<Verdict> quote_verdicts(const App& app) {
    std::vector<Verdict> rows;
    for (const Warning& w : app.worksheet().warnings) {
        if (is_of_quote(w)) {
            rows.push_back(of_warning(w));
            rows.back().panel = w.code == "minimum_charge" ? "rates" : "costs";
        } else if (w.field.starts_with("shop.wear")) {
            rows.push_back(of_warning(w));
            rows.back().panel = "wear";
        }
    }
    const auto& price = app.worksheet().price;
    if (price && price->make_or_buy && price->make_or_buy->choice != price::Choice::buy) {
        const std::string& text = price->make_or_buy->text;
        const std::size_t end = text.find(". ");
        rows.push_back(
            {"make", Sign::holds, text.substr(0, end), end == std::string::npos ? "" : text.substr(end + 2), "costs"});
    }
    if (price && !app.worksheet().wear.change_before && !app.worksheet().wear.outlived) {
        rows.push_back({"wear", Sign::holds, "The set in the torch sees the batch through",
                        app.worksheet().wear.guess ? "A guess until a worn set is logged" : "By your log", "wear"});
    }
    worst_first(rows);
    return rows;
}

std::vector<Verdict> verdicts(const App& app) {
    std::vector<Verdict> rows{plate_verdict(app), circuit(app), air_supply(app)};
    for (const Warning& w : app.worksheet().warnings) {
        if (!has_own_row(w.code) && !is_of_part(w) && !is_of_quote(w)) {
            rows.push_back(of_warning(w));
            if (is_hazard(app, w.code)) {
                rows.back().panel = "safety";
            }
        }
    }
    rows.push_back(eyes(app));
    worst_first(rows);
    return rows;
}

} // namespace torchside::web
