// Cuts that shops give each other: what goes out, shown before it goes; what came in, taken only when the user says so.
#include <algorithm>

#include "core/quantity/print.hpp"
#include "core/store/cuts_file.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/others.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/example.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tune/cut_words.hpp"

namespace torchside::web {
namespace {

constexpr std::size_t most_shown = 60;
constexpr std::string_view file_name = "torchside-cuts.json";

std::string stock_and_bore(const App& app, const tune::SharedCut& shared) {
    std::string out = stock_words(app, shared.cut);
    if (shared.bore) {
        out += ", " + app.say(words::others::Bore{.bore = words::size(*shared.bore)});
    }
    return out;
}

/// Everything of a cut that its stock does not say.
std::string found_words(const App& app, const tune::TestCut& cut) {
    const Units units = app.units();
    std::string out;
    const auto also = [&](std::string_view text) { (out += out.empty() ? "" : ", ") += text; };
    if (cut.feed) {
        also(print(*cut.feed, units).text());
    }
    if (cut.verdict) {
        also(app.word(verdict_words(*cut.verdict)));
    }
    if (cut.kerf_top) {
        also(app.say(words::others::KerfTop{.kerf = words::size(*cut.kerf_top)}));
    }
    if (cut.kerf_bottom) {
        also(app.say(words::others::KerfBottom{.kerf = words::size(*cut.kerf_bottom)}));
    }
    if (cut.arc) {
        also(show(*cut.arc, units).whole());
    }
    if (cut.cut_height) {
        also(app.say(words::others::Height{.height = words::size(*cut.cut_height)}));
    }
    if (cut.pierce_delay) {
        also(app.say(words::others::Delay{.time = *cut.pierce_delay}));
    }
    if (cut.pierce) {
        constexpr Word pierces[] = {words::others::pierce_good, words::others::pierce_short,
                                    words::others::pierce_long};
        also(app.word(pierces[static_cast<std::size_t>(*cut.pierce)]));
    }
    return out;
}

void cut_rows(Body& body, std::string_view id, const std::vector<tune::SharedCut>& cuts) {
    const App& app = body.app;
    for (std::size_t i = 0; i < std::min(cuts.size(), most_shown); ++i) {
        const std::string at = std::string(id) + '/' + std::to_string(i);
        body.words(at, Type::label, stock_and_bore(app, cuts[i]), body.ui().tokens().quiet);
        body.words(at + "/found", Type::text, found_words(app, cuts[i].cut), body.ui().tokens().ink);
        body.gap(8);
    }
    if (cuts.size() > most_shown) {
        body.note(std::string(id) + "/more",
                  app.say(words::others::More{.count = static_cast<int>(cuts.size() - most_shown)}));
        body.gap(8);
    }
}

int shops_of(const std::vector<tune::SharedCut>& others) {
    std::vector<int> shops;
    for (const tune::SharedCut& cut : others) {
        if (std::find(shops.begin(), shops.end(), cut.shop) == shops.end()) {
            shops.push_back(cut.shop);
        }
    }
    return static_cast<int>(shops.size());
}

} // namespace

void others_rows(Body& body) {
    App& app = body.app;
    const auto& others = app.book().shop.others;
    body.gap(18);
    body.heading("others", words::others::title);
    if (!others.empty()) {
        body.line("others/count", words::others::taken,
                  app.say(words::others::Count{.cuts = static_cast<int>(others.size()), .shops = shops_of(others)}));
        body.gap(4);
    }
    body.note("others/how", words::others::how);
    body.gap(10);
    if (body.button("others/give", words::others::give)) {
        app.open("give");
    }
    body.gap(8);
    if (body.button("others/pick", words::others::pick)) {
        platform::pick_file(".json,application/json");
    }
    if (!others.empty()) {
        body.gap(8);
        if (body.button("others/delete", words::others::remove)) {
            Workbook next = app.book();
            next.shop.others.clear();
            app.take(std::move(next), words::others::removed);
        }
    }
    body.gap(12);
}

void give_panel(App& app, PanelAt at) {
    panel(app, at, "give", words::others::give, [&](Body& body) {
        if (app.book().shop.example) {
            return example_refusal(body, "give/example");
        }
        const auto cuts = document::cuts_to_give(app.book().shop.tests, app.book().shop.machine);
        body.gap(10);
        if (cuts.empty()) {
            body.text("give/none", words::others::none);
            body.gap(16);
            return;
        }
        body.text("give/what", app.say(words::others::Goes{.count = static_cast<int>(cuts.size())}));
        body.gap(12);
        if (body.button("give/save", words::others::save, Look::main)) {
            platform::download(file_name, "application/json", document::write_cuts(cuts));
        }
        body.gap(14);
        cut_rows(body, "give/cut", cuts);
        body.gap(20);
    });
}

void taken_panel(App& app, PanelAt at) {
    panel(app, at, "taken", words::others::pick, [&](Body& body) {
        const std::vector<tune::SharedCut>& cuts = app.scratch.cuts;
        body.gap(10);
        if (!app.refusal().empty()) {
            body.refusal("taken/refused", app.refusal());
            body.gap(12);
        }
        if (cuts.empty()) {
            body.text("taken/none", words::others::nothing);
            body.gap(16);
            return;
        }
        body.text("taken/what", app.say(words::others::Came{.count = static_cast<int>(cuts.size())}));
        body.gap(12);
        const bool take = body.button("taken/take", words::others::take, Look::main);
        body.gap(8);
        const bool leave = body.button("taken/leave", words::others::leave);
        body.gap(14);
        cut_rows(body, "taken/cut", cuts);
        body.gap(20);
        if (take && app.take(document::take_in(app.book(), cuts), words::others::took)) {
            app.scratch.cuts.clear();
            app.open("log");
        } else if (leave) {
            app.scratch.cuts.clear();
            app.open("log");
        }
    });
}

} // namespace torchside::web
