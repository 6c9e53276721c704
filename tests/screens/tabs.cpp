// Two and three tabs of one browser: nothing that was changed in one is dropped without a word, and all end alike.
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <deque>
#include <memory>
#include <set>
#include <vector>

#include "core/schema/intent.hpp"
#include "core/store/merge.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/property/rng.hpp"
#include "tests/screens/person.hpp"

using namespace torchside;
using namespace torchside::web;
using torchside::test::Rng;

namespace {

using Slots = std::array<std::string, 2>;
constexpr std::array<const char*, 3> keys = {"job.name", "shop.name", "shop.contact"};

/// The browser's side of one tab, as web/page/js/storage.js has it: saves and looks are acts of the one storage, in any
/// order between tabs; what the page says of them reaches the app later, in order.
struct Tab {
    WorkbookStore store;
    Workbook book;
    Slots latest, taken;
    struct Act {
        std::string record; // empty: it only looks
        int slot;
        Slots on;
    };
    std::deque<Act> acts;
    std::deque<std::string> words;
    bool unsaved = false;        // changed, and not yet told to keep it
    std::set<std::string> asked; // values this tab was asked about
    bool asked_rows = false;
};

struct Browser {
    Slots slots;
    std::vector<std::unique_ptr<Tab>> tabs;
    Tab* now = nullptr;

    explicit Browser(std::size_t count) {
        browser() = {};
        browser().loads = [this](int slot) {
            const auto i = static_cast<std::size_t>(slot);
            return now->taken[i] = now->latest[i];
        };
        browser().saves = [this](int slot, std::string_view record) {
            now->acts.push_back({std::string(record), slot, now->taken});
            return platform::Saved::answers;
        };
        for (std::size_t i = 0; i < count; ++i) {
            tabs.push_back(std::make_unique<Tab>());
            now = tabs.back().get();
            now->book = now->store.load();
        }
    }
    ~Browser() { browser() = {}; }

    void act(Tab& tab) {
        const Tab::Act act = tab.acts.front();
        tab.acts.pop_front();
        if (act.record.empty()) {
            if (slots != tab.taken) {
                tab.latest = slots;
                tab.words.emplace_back("other-tab");
            }
            return;
        }
        const bool first = slots == act.on;
        if (first) {
            slots[static_cast<std::size_t>(act.slot)] = act.record;
            tab.taken = slots;
            for (const auto& other : tabs) {
                if (other.get() != &tab) {
                    other->acts.push_back({{}, 0, {}});
                }
            }
        }
        tab.latest = slots;
        tab.words.emplace_back(first ? "kept" : "behind");
    }

    void hear(Tab& tab) {
        now = &tab;
        const std::string word = tab.words.front();
        tab.words.pop_front();
        if (!tab.store.hears(word)) {
            return;
        }
        auto merged = tab.store.together(tab.book); // as App::take_theirs() does
        REQUIRE(merged.has_value());
        for (const std::string& path : merged->conflicts) {
            const auto value = document::get(merged->mine, path);
            value ? static_cast<void>(tab.asked.insert(value->text)) : static_cast<void>(tab.asked_rows = true);
        }
        tab.book = merged->theirs;
        tab.unsaved = false;
        const std::string written = document::write_workbook(tab.book);
        if (written != document::write_workbook(tab.store.theirs())) {
            tab.store.save(tab.book, written);
        }
    }

    void save(Tab& tab) { // as App::keep_now() does
        now = &tab;
        tab.unsaved = false;
        tab.store.save(tab.book, document::write_workbook(tab.book));
    }

    /// One of the things that can happen now to a tab that has any; false when all is quiet.
    bool step(Rng& rng) {
        std::vector<std::pair<Tab*, void (Browser::*)(Tab&)>> open;
        for (const auto& tab : tabs) {
            if (!tab->acts.empty()) {
                open.emplace_back(tab.get(), &Browser::act);
            }
            if (!tab->words.empty()) {
                open.emplace_back(tab.get(), &Browser::hear);
            }
            if (tab->unsaved) {
                open.emplace_back(tab.get(), &Browser::save);
            }
        }
        if (open.empty()) {
            return false;
        }
        const auto [tab, happens] = open[rng.below(open.size())];
        (this->*happens)(*tab);
        return true;
    }
};

struct Done {
    std::size_t tab;
    std::string value; // of a key, or the note of a row
};

std::string row_name(const tune::TestCut& cut) {
    return std::to_string(cut.feed ? cut.feed->in(mm_min) : 0);
}

std::set<std::string> rows_of(const Workbook& book) {
    std::set<std::string> out;
    for (const auto& cut : book.shop.tests) {
        out.insert(row_name(cut));
    }
    return out;
}

/// What was done, and what of it somebody who had seen it put something else in the place of.
struct Story {
    std::vector<Done> set, added, removed;
    std::set<std::string> replaced, taken_out;
    int last = 0;

    void edit(Browser& b, std::size_t which, Rng& rng) {
        Tab& tab = *b.tabs[which];
        b.now = &tab;
        ++last;
        const std::size_t kind = rng.below(6);
        if (kind < 4) {
            const char* key = keys[rng.below(3)];
            const std::string value = "v" + std::to_string(last);
            replaced.insert(document::get(tab.book, key)->text);
            set.push_back({which, value});
            tab.book = document::set(tab.book, key, std::string_view(value)).value();
        } else if (kind == 4 || tab.book.shop.tests.empty()) {
            tune::TestCut cut;
            cut.feed = Speed{100.0 + last, mm_min};
            added.push_back({which, row_name(cut)});
            tab.book = document::add(tab.book, cut).value();
        } else {
            const std::size_t i = rng.below(tab.book.shop.tests.size());
            const std::string name = row_name(tab.book.shop.tests[i]);
            taken_out.insert(name);
            removed.push_back({which, name});
            tab.book = document::remove(tab.book, "shop.tests[" + std::to_string(i) + "]").value();
        }
        tab.unsaved = true; // kept some time later, with what follows until then
    }
};

} // namespace

// TORCHSIDE_INTERLEAVINGS: how many; 10 000 take some tens of seconds.
TEST_CASE("interleavings of two and three tabs drop no change without a word, and end alike") {
    std::size_t asked = 0;
    const char* wanted = std::getenv("TORCHSIDE_INTERLEAVINGS");
    const int runs = wanted != nullptr ? std::atoi(wanted) : 1000;
    for (int run = 0; run < runs; ++run) {
        Rng rng(static_cast<std::uint64_t>(run) + 1);
        Browser b(run % 2 == 0 ? 2 : 3);
        Story story;
        const std::size_t edits = 3 + rng.below(7);
        while (story.set.size() + story.added.size() + story.removed.size() < edits) {
            if (rng.below(3) == 0 || !b.step(rng)) {
                story.edit(b, rng.below(b.tabs.size()), rng);
            }
        }
        int steps = 0;
        while (b.step(rng)) {
            REQUIRE(++steps < 1000); // tabs do not answer one another for ever
        }
        const std::string end = document::write_workbook(b.tabs[0]->book);
        INFO("run " << run);
        std::set<std::string> values;
        for (const char* key : keys) {
            values.insert(document::get(b.tabs[0]->book, key)->text);
        }
        for (const auto& tab : b.tabs) {
            REQUIRE(document::write_workbook(tab->book) == end);
            REQUIRE(document::write_workbook(tab->store.theirs()) == end);
            asked += tab->asked.size() + (tab->asked_rows ? 1 : 0);
        }
        const auto asked_about = [&](const Done& e) { return b.tabs[e.tab]->asked.contains(e.value); };
        for (const Done& e : story.set) {
            REQUIRE((values.contains(e.value) || story.replaced.contains(e.value) || asked_about(e)));
        }
        const std::set<std::string> rows = rows_of(b.tabs[0]->book);
        for (const Done& e : story.added) {
            REQUIRE((rows.contains(e.value) || story.taken_out.contains(e.value) || b.tabs[e.tab]->asked_rows));
        }
        for (const Done& e : story.removed) {
            REQUIRE((!rows.contains(e.value) || b.tabs[e.tab]->asked_rows));
        }
    }
    CHECK(asked > static_cast<std::size_t>(runs) / 10); // the hard case came up
}

namespace {

/// Two tabs, of which the second kept a change that the first has not seen; the first then makes its own.
template <class Change>
void meet(Person& one, Person& other, Change change) {
    change(other.app(), true);
    other.hide();
    browser().saves = [](int, std::string_view) { return platform::Saved::answers; };
    change(one.app(), false);
    one.hide();
    one.app().notice("behind", "");
    one.look();
    one.app().notice("kept", "");
}

} // namespace

TEST_CASE("what two tabs changed in different places is put together, and undo takes back the own change alone") {
    browser() = {};
    keep_shop();
    Person one, other;
    meet(one, other, [](App& app, bool first) {
        first ? app.set("job.name", "Bracket", "Part") : app.set("job.quantity", 7, "Pieces");
    });
    const auto& tab = one.app();
    CHECK(tab.book().job.name == "Bracket");
    CHECK(tab.book().job.quantity == 7);
    CHECK_FALSE(tab.clash.has_value());
    CHECK(document::write_workbook(tab.store().theirs()) == document::write_workbook(tab.book()));
    one.app().undo();
    CHECK(tab.book().job.name == "Bracket");
    CHECK(tab.book().job.quantity == 24);
}

TEST_CASE("what two tabs changed in the same place is asked, and both are shown") {
    for (const bool mine : {true, false}) {
        browser() = {};
        keep_shop();
        Person one, other;
        meet(one, other, [](App& app, bool first) { app.set("job.quantity", first ? 7 : 9, "Pieces"); });
        CHECK(one.app().book().job.quantity == 7);
        CHECK(one.text().find("The same was changed in another tab") != std::string::npos);
        one.touch_id("notice/storage");
        CHECK(one.text().find("The other tab | 7") != std::string::npos);
        CHECK(one.text().find("This tab | 9") != std::string::npos);
        one.touch(mine ? "Use this tab's" : "Use the other tab's");
        CHECK(one.app().book().job.quantity == (mine ? 9 : 7));
        CHECK(one.text().find("changed in another tab") == std::string::npos);
    }
}

TEST_CASE("another tab's work waits while a field is typed in, and comes when it is left") {
    browser() = {};
    keep_shop();
    Person one, other;
    one.touch_id("place/quote");
    one.app().open("stock");
    one.look();
    one.touch_id("stock/current");
    REQUIRE(one.app().ui().edit().has_value());
    other.app().set("job.name", "Bracket", "Part");
    other.hide();
    one.app().notice("other-tab", "");
    one.look();
    CHECK(one.app().book().job.name != "Bracket");
    one.back();
    one.look();
    CHECK(one.app().book().job.name == "Bracket");
}
