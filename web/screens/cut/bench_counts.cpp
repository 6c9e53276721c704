#include "web/screens/cut/bench_counts.hpp"

#include <algorithm>

#include "core/supply/load.hpp"
#include "generated/words/bench.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

constexpr int of_pierce = 0; // bells
constexpr int of_arc = 1;
constexpr int of_touch = 2; // that something begins

Duration now() {
    return Duration{platform::now_ms() / 1000, second};
}

void ring(const App& app, int number, double after_s, bool last) {
    const Display& display = app.book().shop.display;
    platform::ring({number, static_cast<int>(after_s * 1000 + 0.5), display.sound, display.vibration, last});
}

void silence(int number) {
    platform::ring({number, -1, false, false});
}

Duration allowed(const App& app) {
    return app.worksheet().circuit.arc_per_10_min;
}

int whole(double left) {
    const int down = static_cast<int>(left);
    return down < left ? down + 1 : down;
}

/// Of the arc that burns, or of the rest that was begun: when it is over, by the duty cycle at the job's current.
void set_count(App& app) {
    Bench& bench = app.scratch.bench;
    bench.allowed = allowed(app);
    const Duration left = bench.arc.on() ? bench.arc.left(now(), bench.allowed) : bench.arc.rest(now(), bench.allowed);
    const bool endless = bench.arc.on() && bench.allowed.in(second) >= supply::duty_period_s;
    if (endless || left.in(second) <= 0) {
        bench.counts = Bench::Counts::nothing;
        silence(of_arc);
        return;
    }
    bench.counts = bench.arc.on() ? Bench::Counts::arc : Bench::Counts::rest;
    bench.until = now().in(second) + left.in(second);
    ring(app, of_arc, left.in(second), true);
}

} // namespace

std::string clock_text(int seconds) {
    const int rest = seconds % 60;
    return std::to_string(seconds / 60) + (rest < 10 ? ":0" : ":") + std::to_string(rest);
}

void drop_pierce(App& app) {
    Bench& bench = app.scratch.bench;
    if (bench.pierce_until) {
        bench.pierce_until.reset();
        silence(of_pierce);
    }
    bench.pierced = false;
}

void count_pierce(App& app, Duration delay) {
    Bench& bench = app.scratch.bench;
    if (bench.pierce_until) {
        drop_pierce(app);
        bench.spoken = app.word(words::bench::count_stopped);
        return;
    }
    bench.pierced = false;
    bench.pierce_until = now().in(second) + delay.in(second);
    bench.spoken = app.say(words::bench::PierceBegins{.delay = show(delay, app.units()).whole()});
    ring(app, of_touch, 0, false);
    ring(app, of_pierce, delay.in(second), true);
}

void count_arc(App& app) {
    Bench& bench = app.scratch.bench;
    ring(app, of_touch, 0, false);
    if (!bench.arc.on()) {
        bench.spoken = app.say(words::bench::ArcBegins{.left = clock_text(arc_left(app))});
        bench.arc.start(now());
        set_count(app);
        return;
    }
    bench.arc.stop(now());
    set_count(app);
    const int rest = count_left(app).value_or(0);
    bench.spoken = app.say(words::bench::RestBegins{.rest = clock_text(rest)});
}

std::optional<int> pierce_left(const App& app) {
    const auto& until = app.scratch.bench.pierce_until;
    return until ? std::optional(std::max(0, whole(*until - now().in(second)))) : std::nullopt;
}

std::optional<int> count_left(const App& app) {
    const Bench& bench = app.scratch.bench;
    return bench.counts != Bench::Counts::nothing ? std::optional(std::max(0, whole(bench.until - now().in(second))))
                                                  : std::nullopt;
}

int arc_left(const App& app) {
    constexpr double near_enough = 1e-3; // s
    return static_cast<int>(app.scratch.bench.arc.left(now(), allowed(app)).in(second) + near_enough);
}

void keep_counting(App& app) {
    Bench& bench = app.scratch.bench;
    const double at = now().in(second);
    if (bench.pierce_until && *bench.pierce_until <= at) {
        bench.pierce_until.reset();
        bench.pierced = true;
        bench.spoken = app.word(words::bench::pierce_over);
    }
    if (bench.counts != Bench::Counts::nothing && bench.until <= at) {
        const bool rested = bench.counts == Bench::Counts::rest;
        bench.counts = Bench::Counts::nothing;
        bench.spoken = rested ? app.say(words::bench::RestOver{.arc = clock_text(arc_left(app))})
                              : app.word(words::bench::arc_over);
    }
    if ((bench.arc.on() || bench.counts == Bench::Counts::rest) && allowed(app) != bench.allowed) {
        set_count(app); // another current, another duty
    }
    double next = -1; // s until a figure changes
    const auto due = [&](double until) {
        const double left = until - at;
        const double step = left - (whole(left) - 1);
        next = next < 0 ? step : std::min(next, step);
    };
    if (bench.pierce_until) {
        due(*bench.pierce_until);
    }
    if (bench.counts != Bench::Counts::nothing) {
        due(bench.until);
    }
    platform::wake(next < 0 ? -1 : static_cast<int>(next * 1000) + 1);
}

} // namespace torchside::web
