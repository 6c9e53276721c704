// Test cuts that shops give each other: what goes out, what comes in, and what is refused.
#include <algorithm>
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include <string>

#include "core/codec/json.hpp"
#include "core/store/cuts_file.hpp"
#include "core/tune/others.hpp"
#include "core/tune/posterior.hpp"
#include "tests/core/said.hpp"
#include "tests/property/random_workbook.hpp"

using namespace torchside;
using namespace torchside::document;

namespace {

std::string says(const std::string& text) {
    const auto read = read_cuts(text);
    return read ? "accepted" : read.fault().field + ": " + test::said(read.fault().text);
}

std::string with_cut(const std::string& cut) {
    return R"({"torchside_cuts": 1, "cuts": [)" + cut + "]}";
}

tune::TestCut clean_cut(double thickness_mm) {
    tune::TestCut cut;
    cut.thickness = Length{thickness_mm, mm};
    cut.feed = Speed{1500, mm_min};
    cut.verdict = tune::Verdict::clean;
    return cut;
}

} // namespace

TEST_CASE("a cut is given away with its bore, and read as it was given") {
    const Machine machine; // one nozzle, 45 A and 1.1 mm
    tune::TestCut cut = clean_cut(6);
    cut.nozzle = Current{45, ampere};
    const auto given = cuts_to_give(std::vector{cut}, machine);
    REQUIRE(given.size() == 1);
    CHECK(given[0].bore == Length{1.1, mm});
    CHECK_FALSE(given[0].cut.nozzle.has_value());
    CHECK(write_cuts(given) ==
          "{\n  \"torchside_cuts\": 1,\n  \"cuts\": [\n"
          "    {\"material\": \"mild_steel\", \"thickness_mm\": 6, \"current_a\": 45, \"bore_mm\": 1.1, "
          "\"feed_mm_min\": 1500, \"verdict\": \"clean\"}\n  ]\n}\n");
    CHECK(read_cuts(write_cuts(given)).value() == given);
}

TEST_CASE("of a log goes out what teaches, in no order of time") {
    const Machine machine; // one nozzle, 45 A and 1.1 mm
    tune::TestCut worn = clean_cut(4);
    worn.worn = true;
    const std::vector<tune::TestCut> log{clean_cut(10), worn, clean_cut(3), tune::TestCut{}};
    const auto given = cuts_to_give(log, machine);
    REQUIRE(given.size() == 2);
    CHECK(given[0].cut.thickness == Length{3, mm});
    CHECK(given[1].cut.thickness == Length{10, mm});
    CHECK(cuts_to_give(std::vector{log[2], log[0]}, machine) == given);
}

TEST_CASE("a pierce delay is given away from transfer, whatever stood in the program") {
    tune::TestCut cut = clean_cut(6);
    cut.pierce = tune::PierceVerdict::good;
    cut.pierce_delay = Duration{0.95, second};
    Machine machine; // contact start: 0.5 s
    CHECK(std::abs(cuts_to_give(std::vector{cut}, machine)[0].cut.pierce_delay->in(second)-0.45) < 1e-12);
    machine.waits_for_transfer = true;
    CHECK(cuts_to_give(std::vector{cut}, machine)[0].cut.pierce_delay == cut.pierce_delay);
    CHECK(tune::log_of(cuts_to_give(std::vector{cut}, machine)).machine.waits_for_transfer);
}

TEST_CASE("a delay is given away by the lag that the shop's own fit reads it with") {
    std::vector<tune::TestCut> log;
    for (const double dwell : {0.5, 0.9}) { // shorter than the usual lag of a contact start: its own is shorter
        log.push_back(clean_cut(6));
        log.back().pierce = tune::PierceVerdict::good;
        log.back().pierce_delay = Duration{dwell, second};
    }
    const Machine machine;
    const auto given = cuts_to_give(log, machine);
    REQUIRE(given.size() == 2);
    CHECK(std::abs(given[0].cut.pierce_delay->in(second)-0.1) < 1e-12); // 0.8 of 0.5 s is lag
    CHECK(std::abs(given[1].cut.pierce_delay->in(second)-0.5) < 1e-12);
    CHECK(tune::learn(log, machine).program_lag == tune::lag_of(log, machine));
    const auto theirs = tune::log_of(given);
    const auto delay = [](const tune::Posterior& p) {
        return tune::pierce_delay(p, {Metal::mild_steel, Length{6, mm}, Current{45, ampere}, {}, {}, {}}).value;
    };
    const Duration own = delay(tune::learn(log, machine)), read = delay(tune::learn(theirs.cuts, theirs.machine));
    CHECK(std::abs(own / read - 1.0) < 1e-9);
}

TEST_CASE("the longer log of a shop takes the place of what was kept of it") {
    std::vector<tune::TestCut> log;
    for (const double t : {3.0, 4.0, 5.0, 6.0, 8.0}) {
        log.push_back(clean_cut(t));
    }
    const auto first = cuts_to_give(log, Machine{});
    auto another = first;
    for (tune::SharedCut& cut : another) {
        cut.cut.feed = 1.1 * *cut.cut.feed;
    }
    Workbook book = take_in(take_in({}, another).value(), first).value();
    CHECK(book.shop.others.size() == 10);
    log.erase(log.begin()); // one was wrong, seven are new
    for (int i = 0; i < 7; ++i) {
        log.push_back(clean_cut(10 + i));
    }
    const auto grown = cuts_to_give(log, Machine{});
    const auto next = take_in(book, grown);
    REQUIRE(next.ok());
    const auto& others = next.value().shop.others;
    CHECK(others.size() == 5 + 11);
    CHECK(std::count_if(others.begin(), others.end(), [](const auto& cut) { return cut.shop == 2; }) == 11);
    for (const auto& older : {grown, first, another}) {
        CHECK(test::said(take_in(next.value(), older).fault().text) == "These cuts are in already.");
    }
}

TEST_CASE("a shop that timed its lag gives the same cuts once more: they are taken for the old ones") {
    tune::TestCut cut = clean_cut(6);
    cut.pierce = tune::PierceVerdict::good;
    cut.pierce_delay = Duration{1.2, second};
    Machine machine;
    const Workbook book = take_in({}, cuts_to_give(std::vector{cut}, machine)).value();
    machine.start_lag = Duration{0.9, second};
    const auto next = take_in(book, cuts_to_give(std::vector{cut}, machine));
    REQUIRE(next.ok());
    REQUIRE(next.value().shop.others.size() == 1);
    CHECK(std::abs(next.value().shop.others[0].cut.pierce_delay->in(second)-0.3) < 1e-12);
}

TEST_CASE("a shop's own cuts are not those of another shop") {
    Workbook book;
    for (const double t : {3.0, 4.0, 5.0, 6.0}) {
        book.shop.tests.push_back(clean_cut(t));
    }
    const auto own = cuts_to_give(book.shop.tests, book.shop.machine);
    book.shop.tests.push_back(clean_cut(8));
    book.shop.machine.nozzles.front().bore = Length{1.2, mm}; // measured since
    CHECK_FALSE(take_in(book, own).ok());
    auto others = own; // two rows that coincide are chance
    others.resize(2);
    CHECK(take_in(book, others).ok());
}

TEST_CASE("nothing leaves a shop but the cuts' own keys") {
    test::Rng rng(20261130);
    for (int i = 0; i < 200; ++i) {
        const Workbook book = test::random_workbook(rng);
        const auto given = cuts_to_give(book.shop.tests, book.shop.machine);
        const auto parsed = codec::parse_json(write_cuts(given));
        REQUIRE(parsed.ok());
        const codec::JsonValue& top = parsed.value();
        REQUIRE(top.keys == std::vector<std::string>{"torchside_cuts", "cuts"});
        for (const codec::JsonValue& cut : top.items[1].items) {
            for (std::size_t k = 0; k < cut.keys.size(); ++k) {
                const std::string allowed = " material thickness_mm current_a bore_mm feed_mm_min verdict kerf_top_mm "
                                            "kerf_bottom_mm arc_v cut_height_mm pierce_delay_s pierce ";
                INFO(cut.keys[k]);
                CHECK(allowed.find(' ' + cut.keys[k] + ' ') != std::string::npos);
                const bool is_word = cut.keys[k] == "material" || cut.keys[k] == "verdict" || cut.keys[k] == "pierce";
                CHECK(cut.items[k].type == (is_word ? codec::JsonValue::Type::text : codec::JsonValue::Type::number));
            }
        }
    }
}

TEST_CASE("what is no file of cuts is refused by its field") {
    const std::string plain = R"("material": "mild_steel", "thickness_mm": 6, "current_a": 45)";
    CHECK(says(with_cut('{' + plain + '}')) == "accepted");
    CHECK(says("{}") == "torchside_cuts: missing, accepted is 1");
    CHECK(says("[]") == "torchside_cuts: missing, accepted is 1");
    CHECK(says(R"({"torchside": 1})") == "torchside_cuts: missing, accepted is 1");
    CHECK(says(R"({"torchside_cuts": 2, "cuts": []})") == "torchside_cuts: another version, accepted is 1");
    CHECK(says(R"({"torchside_cuts": 1, "cuts": []})") == "cuts: 0 entries, accepted is a list of 1 to 500 entries");
    CHECK(says(R"({"torchside_cuts": 1, "cuts": [], "shop": {}})") ==
          "cuts: 0 entries, accepted is a list of 1 to 500 entries");
    CHECK(says(R"({"torchside_cuts": 1})") == "cuts: missing, accepted is a list of 1 to 500 entries");
    CHECK(says(with_cut('{' + plain + R"(, "name": "mine"})")).starts_with("cuts[0].name: unknown key, accepted is "));
    CHECK(says(with_cut('{' + plain + R"(, "shop": 1})")).starts_with("cuts[0].shop: unknown key"));
    CHECK(says(with_cut('{' + plain + R"(, "nozzle_a": 45})")).starts_with("cuts[0].nozzle_a: unknown key"));
    CHECK(says(with_cut(R"({"material": "mild_steel", "thickness_mm": 6})"))
              .starts_with("cuts[0].current_a: missing, accepted is 5 to 200 A"));
    CHECK(says(with_cut(R"({"material": "wood", "thickness_mm": 6, "current_a": 45})"))
              .starts_with("cuts[0].material: "));
    CHECK(says(with_cut('{' + plain + R"(, "bore_mm": 9})")) ==
          "cuts[0].bore_mm: 9 is not accepted, accepted is 0.4 to 4 mm, or null");
    CHECK(says(with_cut('{' + plain + R"(, "verdict": "clean"})")).starts_with("cuts[0].feed_mm_min: "));
    CHECK(says("{\"torchside_cuts\": 1, ").starts_with("cuts: line 1"));
    std::string many;
    for (int i = 0; i < 501; ++i) {
        many += (i > 0 ? ",{" : "{") + plain + '}';
    }
    CHECK(says(with_cut(many)) == "cuts: 501 entries, accepted is a list of 1 to 500 entries");
}

TEST_CASE("a file of cuts is told from other JSON by how it begins") {
    CHECK(looks_like_cuts(with_cut("{}")));
    CHECK(looks_like_cuts("\n { \"torchside_cuts\": 7"));
    CHECK_FALSE(looks_like_cuts(R"({"torchside": 1})"));
    CHECK_FALSE(looks_like_cuts(""));
}
