#include "web/screens/verdicts.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "core/quantity/sort_rows.hpp"
#include "core/worksheet/hindrance.hpp"
#include "generated/words/settings.hpp"
#include "generated/words/wear_check.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

std::string reach_words(const App& app) {
    const cut::Capacity& c = app.worksheet().capacity;
    const Units units = app.units();
    return app.say(words::settings::Reach{.clean = show_limit(c.clean, units).number,
                                          .pierce = show_limit(c.pierce, units).number,
                                          .recommended = show_limit(c.recommended, units).number,
                                          .sever = show_limit(c.sever, units).whole()});
}

/// The worst of what is said of this.
Sign worst(const App& app, Topic topic) {
    Sign sign = Sign::holds;
    for (const Message& message : app.worksheet().warnings) {
        if (message.topic == topic) {
            sign = std::max(sign, sign_of(message.severity));
        }
    }
    return sign;
}

} // namespace

Sign circuit_sign(const App& app) {
    const supply::CircuitVerdict verdict = app.worksheet().circuit.verdict;
    const Sign sign = verdict == supply::CircuitVerdict::holds      ? Sign::holds
                      : verdict == supply::CircuitVerdict::may_trip ? Sign::caution
                                                                    : Sign::stop;
    return std::max(sign, worst(app, Topic::circuit));
}

Verdict plate_verdict(const App& app) {
    Verdict v{"plate", Sign::holds, app.say(words::settings::Within{.current = app.book().job.current}),
              reach_words(app), panel_of(Topic::reach)};
    for (const Message& message : app.worksheet().warnings) {
        if (message.topic == Topic::reach) {
            v.sign = sign_of(message.severity);
            v.sentence = app.say(message.title);
        }
    }
    return v;
}

namespace {

Verdict row_of(const App& app, std::string code, Sign sign, const Message& message) {
    return {std::move(code), sign, app.say(message.title), say_below(message, app.speech()), panel_of(message.topic)};
}

Verdict circuit(const App& app) {
    return row_of(app, "circuit", circuit_sign(app), app.worksheet().circuit.message);
}

Verdict air_supply(const App& app) {
    return row_of(app, "air", worst(app, Topic::air), app.worksheet().air.message);
}

Verdict eyes(const App& app) {
    return {"safety", Sign::holds, app.say(app.worksheet().safety.shade_text), app.say(words::settings::safety),
            "safety"};
}

/// Where what is said of a topic is shown. Reach, circuit and air have a row of their own on Cut.
struct Shown {
    const char* panel;
    bool on_cut, on_part, on_quote;
};
constexpr Shown shown[] = {
    // by Topic
    {"reach", false, false, false},   {"stock", true, false, false}, {"stock", true, true, false},
    {"machine", true, false, false},  {"table", true, false, false}, {"height", true, false, false},
    {"circuit", false, false, false}, {"air", false, false, false},  {"safety", true, false, false},
    {"shape", false, true, false},    {"table", false, true, false}, {"machine", false, true, false},
    {"wear", true, false, true},      {"costs", false, false, true}, {"rates", false, false, true},
};
static_assert(std::size(shown) == static_cast<std::size_t>(Topic::rates) + 1);

const Shown& shown_of(Topic topic) {
    return shown[static_cast<std::size_t>(topic)];
}

} // namespace

std::string panel_of(Topic topic) {
    return shown_of(topic).panel;
}

bool is_of_part(Topic topic) {
    return shown_of(topic).on_part;
}

Verdict of_message(const App& app, const Message& message) {
    return row_of(app, std::string(message.code), sign_of(message.severity), message);
}

void worst_first(std::vector<Verdict>& rows) {
    sort_rows(rows,
              [](const Verdict& a, const Verdict& b) { return static_cast<int>(a.sign) > static_cast<int>(b.sign); });
}

std::string missing(const App& app, Word what) {
    const auto in_the_way = hindrance(app.book(), app.worksheet());
    return in_the_way ? app.say(words::missing::Because{.what = what, .why = in_the_way->reason}) : app.say(what);
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
    for (const Message& message : app.worksheet().warnings) {
        if (shown_of(message.topic).on_quote) {
            rows.push_back(of_message(app, message));
        }
    }
    if (circuit_sign(app) == Sign::stop) { // what is priced here trips the breaker
        rows.push_back(circuit(app));
    }
    const auto& price = app.worksheet().price;
    if (price && price->make_or_buy && price->make_or_buy->choice != price::Choice::buy) {
        const price::MakeOrBuy& m = *price->make_or_buy;
        rows.push_back({"make", Sign::holds, app.say(m.title), app.say(m.detail), panel_of(Topic::price)});
    }
    if (price && !app.worksheet().wear.change_before && !app.worksheet().wear.outlived) {
        rows.push_back({"wear", Sign::holds, app.say(words::wear_check::lasts),
                        app.say(app.worksheet().wear.guess ? words::wear_check::guess : words::wear_check::from_log),
                        panel_of(Topic::wear)});
    }
    worst_first(rows);
    return rows;
}

std::vector<Verdict> verdicts(const App& app) {
    std::vector<Verdict> rows{plate_verdict(app), circuit(app), air_supply(app)};
    for (const Message& message : app.worksheet().warnings) {
        if (shown_of(message.topic).on_cut) {
            rows.push_back(of_message(app, message));
        }
    }
    rows.push_back(eyes(app));
    worst_first(rows);
    return rows;
}

} // namespace torchside::web
