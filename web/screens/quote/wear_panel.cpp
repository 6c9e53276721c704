// Nozzle and electrode: how far this set is, what the job takes of it, and the sets that are used up, which the learning goes by.
#include "core/quantity/print.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

/// How much of it is used, and how much this job will.
void life(Body& body, const wear::Report& w, bool cuts) {
    const auto percent = [](double share) { return print_fixed(share * 100, 0); };
    const auto from_to = [](const Estimate<double>& e, int places) {
        return print_fixed(e.low, places) + " to " + print_fixed(e.high, places);
    };
    body.line("wear/used", "Life used, 8 times in 10",
              percent(w.life_used.low) + " to " + percent(w.life_used.high) + " %");
    if (cuts) {
        body.line("wear/part", "One part uses, of a set", print_percent(w.part_uses.value, 2).text());
        body.line("wear/job", "This job uses, sets", from_to(w.job_uses, 2));
    }
    body.line("wear/left", "Starts left", from_to(w.starts_left, 0));
    if (cuts) {
        body.line("wear/change", "Change",
                  !w.change_before        ? std::string("Not in this batch")
                  : *w.change_before == 1 ? std::string("Now")
                                          : "Before part " + std::to_string(*w.change_before));
        body.line("wear/hold", "Spare sets", std::to_string(w.sets_to_hold));
    } else {
        body.gap(8);
        body.text("wear/none", missing(body.app, words::missing::wear) + '.');
    }
    body.gap(12);
    if (w.guess) {
        body.words("wear/guess", Type::text, "A guess until a worn set is in your log: then your log speaks.",
                   body.ui().tokens().caution);
        body.gap(10);
    }
}

/// What was done with the set, one touch each.
void changes(Body& body, bool cuts) {
    App& app = body.app;
    const auto act = [&](const char* id, const char* label, const char* name, auto make) {
        if (body.button(id, label)) {
            app.take(make(), name);
        }
        body.gap(8);
    };
    act("wear/worn", "Changed, it was worn out", "Worn set logged. A new one is in the torch",
        [&] { return document::log_change(app.book(), wear::Ended::worn); });
    act("wear/pulled", "Changed, it was still good", "Set changed while good. A new one is in the torch",
        [&] { return document::log_change(app.book(), wear::Ended::pulled); });
    if (cuts) {
        act("wear/cut", "This job is cut: count its starts", "Counted this job's starts and arc time",
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
    body.heading("wear/sets", sets.empty() ? "No set is used up yet" : "Sets used up");
    for (std::size_t i = sets.size(); i-- > 0;) {
        const std::string id = "wear/" + std::to_string(i);
        const char* how = sets[i].ended == wear::Ended::worn ? "Worn out" : "Changed while still good";
        if (body.row(id, std::to_string(sets[i].starts) + " starts, " + show(sets[i].arc).whole() + " of arc", how,
                     Mark::nozzle)) {
            app.open(id);
        }
    }
}

} // namespace

void wear_panel(App& app, PanelAt at) {
    constexpr PathLabel now[] = {{"shop.wear.now.starts", "Starts on this set"},
                                 {"shop.wear.now.arc_min", "Arc time on this set"},
                                 {"shop.wear.set_price", "Price of a set"}};
    panel(app, at, "wear", "Nozzle and electrode", [&](Body& body) {
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
    panel(app, of, "wear/set", "A used-up set", [&](Body& body) {
        constexpr const char* ends[] = {"worn", "pulled"};
        constexpr const char* end_names[] = {"Worn out", "Still good"};
        const std::string at = "shop.wear.sets[" + std::to_string(index) + "]";
        body.field(at + ".starts", "Arc starts");
        body.field(at + ".arc_min", "Arc time");
        body.word_choice((at + ".ended").c_str(), "When it was changed", ends, end_names);
        if (body.button("wear/set/delete", "Delete this set") && app.remove(at, "Used-up set deleted")) {
            app.open("wear");
        }
        body.gap(20);
    });
}

} // namespace torchside::web
