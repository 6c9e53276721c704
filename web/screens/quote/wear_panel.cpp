// Nozzle and electrode: how far this set is, what the job takes of it, and the sets that are used up, which the learning goes by.
#include "core/quantity/print.hpp"
#include "generated/words/consumables.hpp"
#include "generated/words/missing.hpp"
#include "generated/words/quote_screen.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

/// How much of it is used, and how much this job will.
void life(Body& body, const wear::Report& w, bool cuts) {
    const App& app = body.app;
    const auto from_to = [&app](const Estimate<double>& e, int places) {
        return app.say(
            words::consumables::Range{.high = words::fixed(e.high, places), .low = words::fixed(e.low, places)});
    };
    body.line("wear/used", words::consumables::used,
              app.say(words::consumables::RangePercent{.high = words::fixed(w.life_used.high * 100, 0),
                                                       .low = words::fixed(w.life_used.low * 100, 0)}));
    if (cuts) {
        body.line("wear/part", words::consumables::part_uses,
                  print_percent(w.part_uses.value, 2, body.app.units()).text());
        body.line("wear/job", words::consumables::job_uses, from_to(w.job_uses, 2));
    }
    body.line("wear/left", words::consumables::left, from_to(w.starts_left, 0));
    if (cuts) {
        body.line("wear/change", words::consumables::change,
                  app.say(!w.change_before        ? Text(words::consumables::not_in_batch)
                          : *w.change_before == 1 ? Text(words::consumables::now)
                                                  : words::consumables::Before{.number = *w.change_before}));
        body.line("wear/hold", words::consumables::spares, std::to_string(w.sets_to_hold));
    } else {
        body.gap(8);
        body.text("wear/none", missing(app, words::missing::wear) + '.');
    }
    body.gap(12);
    if (w.guess) {
        body.words("wear/guess", Type::text, words::consumables::guess, body.ui().tokens().caution);
        body.gap(10);
    }
}

/// What was done with the set, one touch each.
void changes(Body& body, bool cuts) {
    App& app = body.app;
    const auto act = [&](const char* id, Word label, Word name, auto make) {
        if (body.button(id, label)) {
            app.take(make(), name);
        }
        body.gap(8);
    };
    act("wear/worn", words::consumables::worn, words::consumables::worn_logged,
        [&] { return document::log_change(app.book(), wear::Ended::worn); });
    act("wear/pulled", words::consumables::pulled, words::consumables::pulled_logged,
        [&] { return document::log_change(app.book(), wear::Ended::pulled); });
    if (cuts) {
        act("wear/cut", words::consumables::job_cut, words::consumables::job_logged,
            [&] { return document::log_cut(app.book(), app.worksheet(), app.book().job.quantity); });
    }
    if (!app.refusal().empty() && !app.ui().edit()) {
        body.refusal("wear/refused", app.refusal());
        body.gap(10);
    }
}

/// The sets that are used up, newest first; each opens its own panel.
void used_up(Body& body) {
    App& app = body.app;
    const auto& sets = app.book().shop.wear.sets;
    body.heading("wear/sets", sets.empty() ? words::consumables::no_sets : words::consumables::sets);
    for (std::size_t i = sets.size(); i-- > 0;) {
        const std::string id = "wear/" + std::to_string(i);
        const Word how =
            sets[i].ended == wear::Ended::worn ? words::consumables::ended_worn : words::consumables::ended_good;
        const Text set =
            words::consumables::SetRow{.arc = show(sets[i].arc, app.units()).whole(), .starts = sets[i].starts};
        if (body.row(id, app.say(set), how, Mark::nozzle)) {
            app.open(id);
        }
    }
}

} // namespace

void wear_panel(App& app, PanelAt at) {
    constexpr PathLabel now[] = {{"shop.wear.now.starts", words::consumables::starts_now},
                                 {"shop.wear.now.arc_min", words::consumables::arc_now},
                                 {"shop.wear.set_price", words::consumables::price}};
    panel(app, at, "wear", words::quote_screen::wear, [&](Body& body) {
        const bool cuts = app.worksheet().time.has_value(); // else nothing is known of this job's wear
        body.gap(6);
        life(body, app.worksheet().wear, cuts);
        changes(body, cuts);
        body.fields(now);
        used_up(body);
        body.gap(12);
    });
}

void set_row_panel(App& app, PanelAt of) {
    const std::size_t index = of.index();
    if (index >= app.book().shop.wear.sets.size()) {
        wear_panel(app, of);
        return;
    }
    panel(app, of, "wear/set", words::consumables::set, [&](Body& body) {
        constexpr const char* ends[] = {"worn", "pulled"};
        constexpr Label end_names[] = {words::consumables::ended_worn, words::consumables::good};
        const std::string at = "shop.wear.sets[" + std::to_string(index) + "]";
        body.field(at + ".starts", words::consumables::starts);
        body.field(at + ".arc_min", words::consumables::arc);
        body.word_choice((at + ".ended").c_str(), words::consumables::ended, ends, end_names);
        if (body.button("wear/set/delete", words::consumables::delete_set) &&
            app.remove(at, words::consumables::deleted)) {
            app.open("wear");
        }
        body.gap(20);
    });
}

} // namespace torchside::web
