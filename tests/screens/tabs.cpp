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
#include "core/store/late.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/property/rng.hpp"
#include "web/platform/headless.hpp"
#include "web/screens/workbook_store.hpp"

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
        std::string record; // empty: it only looks, and takes what a closed tab left
        int slot;
        Slots on;
    };
    std::deque<Act> acts;
    std::optional<Act> flying; // sent, and nothing heard of it
    bool closed = false;
    std::deque<std::string> words;
    bool unsaved = false;        // changed, and not yet told to keep it
    std::set<std::string> asked; // values this tab was asked about
    bool asked_rows = false;
};

struct Browser {
    Slots slots;
    struct Late { // what a closed tab could not finish
        std::string record, base;
        Tab::Act flying;
    };
    std::vector<Late> lates;     // one a tab
    std::set<std::string> trail; // every record that ever lay there, and that of each late one once it is put in
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
            now->flying = now->acts.back();
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
            take_lates(tab);
            if (slots != tab.taken) {
                tab.latest = slots;
                tab.words.emplace_back("other-tab");
            }
            return;
        }
        const bool first = slots == act.on;
        if (first) {
            slots[static_cast<std::size_t>(act.slot)] = act.record;
            trail.insert(act.record);
            tab.taken = slots;
            tell_others(tab);
        }
        tab.latest = slots;
        tab.words.emplace_back(first ? "kept" : "behind");
    }

    void hear(Tab& tab) {
        now = &tab;
        const std::string word = tab.words.front();
        tab.words.pop_front();
        if (word != "other-tab") {
            tab.flying.reset();
        }
        if (tab.store.hears(word)) {
            put_together(tab, tab.store.together(tab.book));
        }
    }

    static void ask_of(Tab& tab, const document::Merged& merged) {
        for (const std::string& path : merged.conflicts) {
            const auto value = document::get(merged.mine, path);
            value ? static_cast<void>(tab.asked.insert(value->text)) : static_cast<void>(tab.asked_rows = true);
        }
    }

    void put_together(Tab& tab, std::optional<document::Merged> merged) { // as the function of App does
        REQUIRE(merged.has_value());
        ask_of(tab, *merged);
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

    /// The write on its way is done, or is not; the one behind it never is. Both are left for who is there.
    void close(Tab& tab, bool done) {
        if (tab.unsaved) {
            save(tab);
        }
        tab.closed = true;
        if (tab.flying) {
            const std::string waiting = tab.store.waiting();
            const Tab::Act& f = *tab.flying;
            lates.push_back({waiting.empty() ? f.record : waiting, f.on[static_cast<std::size_t>(1 - f.slot)], f});
        }
        while (done && !tab.acts.empty()) {
            act(tab);
        }
        tab.acts.clear();
        tab.words.clear();
        tell_others(tab);
    }

    void tell_others(const Tab& tab) {
        for (const auto& other : tabs) {
            if (other.get() != &tab && !other->closed) {
                other->acts.push_back({{}, 0, {}});
            }
        }
    }

    /// Killed: it leaves nothing. What it had kept or had been asked stays its own affair, so only one that owes nothing dies.
    void die(Tab& tab) {
        const bool saves =
            std::any_of(tab.acts.begin(), tab.acts.end(), [](const auto& a) { return !a.record.empty(); });
        if (!tab.unsaved && !tab.flying && !saves && tab.asked.empty() && !tab.asked_rows) {
            tab.closed = true;
            tab.acts.clear();
            tab.words.clear();
        }
    }

    /// As takeLate() in web/page/js/storage.js: each is one act of the storage; with other work there the app is asked inside it.
    void take_lates(Tab& tab) {
        for (const Late& late : lates) {
            if (tab.closed || !trail.insert(late.record).second) {
                continue; // put in before
            }
            const auto slot = static_cast<std::size_t>(late.flying.slot);
            const bool sent = slots[slot] == late.flying.record && slots[1 - slot] == late.flying.on[1 - slot];
            if (sent || slots == late.flying.on) {
                slots[sent ? 1 - slot : slot] = late.record;
            } else {
                const bool behind = late.record != late.flying.record && trail.contains(late.flying.record);
                const auto put =
                    document::put_late((behind ? late.flying.record : late.base) + document::late_mark + late.record +
                                       document::late_mark + slots[0] + document::late_mark + slots[1]);
                REQUIRE(put);
                slots[put->slot == document::Slot::a ? 0 : 1] = put->record;
                trail.insert(put->record);
                ask_of(tab, put->merged);
            }
            tell_others(tab);
        }
    }

    /// One of the things that can happen now to a tab that has any; false when all is quiet.
    bool step(Rng& rng) {
        std::vector<std::pair<Tab*, void (Browser::*)(Tab&)>> open;
        for (const auto& tab : tabs) {
            if (tab->closed) {
                continue;
            }
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

namespace {

/// How tabs end at some moment: the last `closed` are closed, the one before them dies when it has nothing of its own to lose.
struct Ends {
    std::size_t closed = 0;
    bool dies = false;
};

// TORCHSIDE_INTERLEAVINGS: how many; 10 000 take some tens of seconds.
void interleave(Ends ends) {
    std::size_t asked = 0;
    const char* wanted = std::getenv("TORCHSIDE_INTERLEAVINGS");
    const int runs = wanted != nullptr ? std::atoi(wanted) : 1000;
    for (int run = 0; run < runs; ++run) {
        Rng rng(static_cast<std::uint64_t>(run) + 1);
        Browser b((run % 2 == 0 ? 2 : 3) + (ends.closed > 1 ? 1 : 0) + (ends.dies ? 1 : 0));
        Story story;
        const std::size_t edits = 3 + rng.below(7);
        const auto close_one = [&] {
            for (std::size_t i = b.tabs.size() - ends.closed; i < b.tabs.size(); ++i) {
                if (!b.tabs[i]->closed) {
                    return b.close(*b.tabs[i], rng.below(2) == 0);
                }
            }
        };
        while (story.set.size() + story.added.size() + story.removed.size() < edits) {
            if (rng.below(12) == 0) {
                close_one();
                if (rng.below(2) == 0) {
                    close_one(); // the browser is closed: its tabs go at once
                }
            }
            const std::size_t which = rng.below(b.tabs.size());
            if ((rng.below(3) == 0 || !b.step(rng)) && !b.tabs[which]->closed) {
                story.edit(b, which, rng);
            }
        }
        for (std::size_t i = 0; i < ends.closed; ++i) {
            close_one();
        }
        int steps = 0;
        while (b.step(rng)) {
            REQUIRE(++steps < 1000); // tabs do not answer one another for ever
            if (ends.dies && rng.below(4) == 0) {
                b.die(*b.tabs[b.tabs.size() - ends.closed - 1]);
            }
        }
        const std::string end = document::write_workbook(b.tabs[0]->book);
        INFO("run " << run);
        std::set<std::string> values;
        for (const char* key : keys) {
            values.insert(document::get(b.tabs[0]->book, key)->text);
        }
        bool asked_rows = false;
        for (const auto& tab : b.tabs) {
            if (!tab->closed) {
                REQUIRE(document::write_workbook(tab->book) == end);
                REQUIRE(document::write_workbook(tab->store.theirs()) == end);
            }
            asked_rows = asked_rows || tab->asked_rows;
            asked += tab->asked.size() + (tab->asked_rows ? 1 : 0);
        }
        const auto asked_about = [&](const Done& e) {
            return std::any_of(b.tabs.begin(), b.tabs.end(),
                               [&](const auto& tab) { return tab->asked.contains(e.value); });
        };
        for (const Done& e : story.set) {
            REQUIRE((values.contains(e.value) || story.replaced.contains(e.value) || asked_about(e)));
        }
        const std::set<std::string> rows = rows_of(b.tabs[0]->book);
        REQUIRE((rows.size() == b.tabs[0]->book.shop.tests.size() || asked_rows)); // none twice
        for (const Done& e : story.added) {
            REQUIRE((rows.contains(e.value) || story.taken_out.contains(e.value) || asked_rows));
        }
        for (const Done& e : story.removed) {
            REQUIRE((!rows.contains(e.value) || asked_rows));
        }
    }
    CHECK(asked > static_cast<std::size_t>(runs) / (ends.closed > 0 ? 100 : 10)); // the hard case came up
}

} // namespace

TEST_CASE("interleavings of two and three tabs drop no change without a word, and end alike") {
    interleave({});
}

TEST_CASE("interleavings of tabs of which one is closed drop none of its changes, and take none twice") {
    interleave({.closed = 1});
}

TEST_CASE("interleavings of tabs of which two are closed, also at once, drop none of their changes") {
    interleave({.closed = 2});
}

TEST_CASE("a tab that dies as it takes what closed ones left behind drops none of it") {
    interleave({.closed = 1, .dies = true});
    interleave({.closed = 2, .dies = true});
}
