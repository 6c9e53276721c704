// Reading and writing the workbook file, its schema, and the intents.
#include <catch2/catch_test_macros.hpp>
#include <cmath>

#include <fstream>
#include <sstream>
#include <string>

#include "core/schema/intent.hpp"
#include "core/schema/schema.hpp"
#include "core/store/workbook_file.hpp"
#include "core/tune/posterior.hpp"
#include "tests/core/said.hpp"
#include "tests/property/random_workbook.hpp"

using namespace torchside;
using namespace torchside::document;

namespace {

std::string says(const std::string& text) {
    const auto read = read_workbook(text);
    return read ? "accepted" : read.fault().field + ": " + test::said(read.fault().text);
}

std::string says(const Outcome<Workbook>& outcome) {
    return outcome ? "accepted" : outcome.fault().field + ": " + test::said(outcome.fault().text);
}

struct BadFile {
    const char* text;
    const char* expected;
};

constexpr BadFile bad_files[] = {
    // the file as a whole
    {"[]", "workbook: a list is not accepted, accepted is an object with torchside, shop and job"},
    {"null", "workbook: null is not accepted, accepted is an object with torchside, shop and job"},
    {"{}", "torchside: the version of the workbook is missing, accepted is 1"},
    {R"({"torchside": 0})", "torchside: 0 is not a version, accepted is 1"},
    {R"({"torchside": 1.5})", "torchside: version 1.5 is from a newer Torchside, accepted is 1 or older: update first"},
    {R"({"torchside": "1"})", "torchside: a text is not a version, accepted is 1"},
    {R"({"torchside": null})", "torchside: null is not a version, accepted is 1"},
    {R"({"torchside": 2, "new_key": 1})",
     "torchside: version 2 is from a newer Torchside, accepted is 1 or older: update first"},
    {R"({"torchside": 1, "shop": {}, "jobs": {}})", "jobs: unknown key, accepted is shop, job"},
    // unknown keys, by name and path
    {R"({"torchside": 1, "job": {"thickness": 6}})",
     "job.thickness: unknown key, accepted is name, material, "
     "thickness_mm, current_a, torch, quantity, mesh, gaps_per_m, run_offs, part, sheet, price, quote"},
    {R"({"torchside": 1, "shop": {"machine": {"nozzles": [{"rated_current_a": 45}, {"rated_current_a": 45, "d": 1}]}}})",
     "shop.machine.nozzles[1].d: unknown key, accepted is rated_current_a, bore_mm"},
    {"{\"torchside\": 1, \"job\": {\"a\\nb\\u202e\": 6}}",
     "job.a?b?: unknown key, accepted is name, material, thickness_mm, current_a, torch, quantity, mesh, gaps_per_m, "
     "run_offs, part, sheet, price, quote"},
    {R"({"torchside": 1, "torchside ": 1})", "torchside : unknown key, accepted is shop, job"},
    // wrong type
    {R"({"torchside": 1, "job": 6})", "job: a number is not accepted, accepted is an object with name, material, "
                                      "thickness_mm, current_a, torch, quantity, mesh, gaps_per_m, run_offs, "
                                      "part, sheet, price, quote"},
    {R"({"torchside": 1, "job": {"thickness_mm": "6"}})",
     "job.thickness_mm: \"6\" is not accepted, accepted is 0.3 to 150 mm"},
    {R"({"torchside": 1, "job": {"thickness_mm": null}})",
     "job.thickness_mm: null is not accepted, accepted is 0.3 to 150 mm"},
    {R"({"torchside": 1, "job": {"thickness_mm": [6]}})",
     "job.thickness_mm: a list is not accepted, accepted is 0.3 to 150 mm"},
    {R"({"torchside": 1, "job": {"thickness_mm": true}})",
     "job.thickness_mm: true is not accepted, accepted is 0.3 to 150 mm"},
    {R"({"torchside": 1, "job": {"quantity": 2.5}})",
     "job.quantity: 2.5 is not accepted, accepted is a whole number 1 to 100000"},
    {R"({"torchside": 1, "shop": {"table": {"water": 1}}})",
     "shop.table.water: 1 is not accepted, accepted is true or false"},
    {R"({"torchside": 1, "shop": {"tests": {}}})",
     "shop.tests: an object is not accepted, accepted is a list of 0 to 500 entries"},
    {R"({"torchside": 1, "shop": {"tests": [7]}})",
     "shop.tests[0]: a number is not accepted, accepted is an object with material, thickness_mm, current_a, "
     "feed_mm_min, verdict, kerf_top_mm, kerf_bottom_mm, arc_v, cut_height_mm, pierce_delay_s, pierce, nozzle_a, worn, "
     "starts"},
    // out of range, and the words
    {R"({"torchside": 1, "job": {"thickness_mm": 0.29}})",
     "job.thickness_mm: 0.29 is not accepted, accepted is 0.3 to 150 mm"},
    {R"({"torchside": 1, "job": {"thickness_mm": -6}})",
     "job.thickness_mm: -6 is not accepted, accepted is 0.3 to 150 mm"},
    {R"({"torchside": 1, "shop": {"circuit": {"run_awg": 9}}})",
     "shop.circuit.run_awg: 9 is not accepted, accepted is 2, 3, 4, 6, 8, 10, 12 or 14 AWG"},
    {R"({"torchside": 1, "shop": {"circuit": {"cord_awg": 20}}})",
     "shop.circuit.cord_awg: 20 is not accepted, accepted is 2, 4, 6, 8, 10, 12, 14, 16 or 18 AWG, or null"},
    {R"({"torchside": 1, "shop": {"machine": {"phases": 2}}})",
     "shop.machine.phases: 2 is not accepted, accepted is 1 or 3"},
    {R"({"torchside": 1, "shop": {"height_control": {"gradient_v_mm": 0}}})",
     "shop.height_control.gradient_v_mm: 0 is not accepted, accepted is 0.5 to 20 V/mm, or null"},
    {R"({"torchside": 1, "shop": {"height_control": {"cut_height_mm": 0.4}}})",
     "shop.height_control.cut_height_mm: 0.4 is not accepted, accepted is 0.5 to 6 mm, or null"},
    {R"({"torchside": 1, "shop": {"machine": {"nozzles": []}}})",
     "shop.machine.nozzles: 0 entries, accepted is a list of 1 to 8 entries"},
    {R"({"torchside": 1, "job": {"price": {"scrap_share": 0.95}}})",
     "job.price.scrap_share: 0.95 is not accepted, accepted is 0 to 0.9"},
    {R"({"torchside": 1, "job": {"price": {"waste_per_part": -0.1}}})",
     "job.price.waste_per_part: -0.1 is not accepted, accepted is 0 to 9, or null"},
    {R"({"torchside": 1, "job": {"price": {"handling_min": 1001}}})",
     "job.price.handling_min: 1001 is not accepted, accepted is 0 to 1000 min"},
    {R"({"torchside": 1, "job": {"run_offs": 0.5}})",
     "job.run_offs: 0.5 is not accepted, accepted is a whole number 0 to 200"},
    {R"({"torchside": 1, "job": {"mesh": {"kind": "net"}}})",
     "job.mesh.kind: \"net\" is not accepted, accepted is solid, expanded, grating or perforated"},
    {R"({"torchside": 1, "job": {"mesh": {"pitch_mm": 0.5}}})",
     "job.mesh.pitch_mm: 0.5 is not accepted, accepted is 1 to 500 mm"},
    {R"({"torchside": 1, "job": {"mesh": {"opening_mm": 500}}})",
     "job.mesh.opening_mm: 500 is not accepted, accepted is 0.1 to 499.9 mm"},
    {R"({"torchside": 1, "job": {"mesh": {"pitch_2_mm": 501}}})",
     "job.mesh.pitch_2_mm: 501 is not accepted, accepted is 1 to 500 mm"},
    {R"({"torchside": 1, "job": {"mesh": {"opening_2_mm": 0}}})",
     "job.mesh.opening_2_mm: 0 is not accepted, accepted is 0.1 to 499.9 mm"},
    {R"({"torchside": 1, "job": {"gaps_per_m": 501}})",
     "job.gaps_per_m: 501 is not accepted, accepted is 0 to 500 per m"},
    {R"({"torchside": 1, "shop": {"country": "usa"}})",
     "shop.country: \"usa\" is not accepted, accepted is us, uk, eu or other, or null"},
    {R"({"torchside": 1, "shop": {"example": 1}})", "shop.example: 1 is not accepted, accepted is true or false"},
    {R"({"torchside": 1, "shop": {"public_url": "http://shop.example/"}})",
     "shop.public_url: not an address for links, accepted is one with https:// and no blanks"},
    {R"({"torchside": 1, "shop": {"public_url": "https://shop .example/"}})",
     "shop.public_url: not an address for links, accepted is one with https:// and no blanks"},
    {R"({"torchside": 1, "shop": {"public_url": "https://"}})",
     "shop.public_url: not an address for links, accepted is one with https:// and no blanks"},
    {R"({"torchside": 1, "shop": {"old_keys": [{"seal_key": "ab"}]}})",
     "shop.old_keys[0].seal_key: not a key, accepted is 64 digits of 0-9 and a-f"},
    {R"({"torchside": 1, "shop": {"old_keys": [{"seal_key": "ABabababababababababababababababababababababababababababababab12"}]}})",
     "shop.old_keys[0].seal_key: not a key, accepted is 64 digits of 0-9 and a-f"},
    {R"({"torchside": 1, "shop": {"old_keys": 1}})",
     "shop.old_keys: a number is not accepted, accepted is a list of 0 to 20 entries"},
    {R"({"torchside": 1, "shop": {"issued": {}}})",
     "shop.issued: an object is not accepted, accepted is a list of 0 to 500 entries"},
    {R"({"torchside": 1, "shop": {"issued": [{"revision": 100}]}})",
     "shop.issued[0].revision: 100 is not accepted, accepted is a whole number 0 to 99"},
    {R"({"torchside": 1, "shop": {"issued": [{"to_pay": -1}]}})",
     "shop.issued[0].to_pay: -1 is not accepted, accepted is 0 to 2000000000000"},
    {R"({"torchside": 1, "shop": {"issued": [{"issued_day": 60001}]}})",
     "shop.issued[0].issued_day: 60001 is not accepted, accepted is a whole number 0 to 60000 days"},
    {R"({"torchside": 1, "shop": {"issued": [{"valid_days": 0}]}})",
     "shop.issued[0].valid_days: 0 is not accepted, accepted is a whole number 1 to 365 days"},
    {R"({"torchside": 1, "shop": {"issued": [{"ending": "123456789"}]}})",
     "shop.issued[0].ending: \"123456789\" is not accepted, accepted is a text of 0 to 8 letters"},
    {R"({"torchside": 1, "shop": {"issued": [{"seal": 7}]}})",
     "shop.issued[0].seal: 7 is not accepted, accepted is a text of 0 to 28 letters"},
    {R"({"torchside": 1, "shop": {"rates": {"minimum_charge": -1}}})",
     "shop.rates.minimum_charge: -1 is not accepted, accepted is 0 to 1000000000"},
    {R"({"torchside": 1, "shop": {"rates": {"compressor_kw_m3_min": 2}}})",
     "shop.rates.compressor_kw_m3_min: 2 is not accepted, accepted is 3 to 20 kW/(m3/min)"},
    {R"({"torchside": 1, "shop": {"height_control": {"touch_off_s": 61}}})",
     "shop.height_control.touch_off_s: 61 is not accepted, accepted is 0 to 60 s"},
    {R"({"torchside": 1, "shop": {"machine": {"clockwise_swirl": 1}}})",
     "shop.machine.clockwise_swirl: 1 is not accepted, accepted is true or false"},
    {R"({"torchside": 1, "shop": {"rates": {"currency": "EURO"}}})",
     "shop.rates.currency: \"EURO\" is not accepted, accepted is a text of 3 letters"},
    {R"({"torchside": 1, "shop": {"rates": {"currency": "eur"}}})",
     "shop.rates.currency: \"eur\" is not accepted, accepted is three capital letters such as USD or EUR"},
    {R"({"torchside": 1, "shop": {"name": "a\u202eb"}})",
     "shop.name: \"a?b\" contains control characters or is not UTF-8, accepted is a text of 0 to 60 letters"},
    // missing, and rules between keys
    {R"({"torchside": 1, "shop": {"tests": [{"material": "copper", "thickness_mm": 3}]}})",
     "shop.tests[0].current_a: missing, accepted is 5 to 200 A"},
    {R"({"torchside": 1, "shop": {"tests": [{"material": "copper", "thickness_mm": 3, "current_a": 40,
        "verdict": "clean"}]}})",
     "shop.tests[0].feed_mm_min: missing, accepted is the feed that the verdict is about"},
    {R"({"torchside": 1, "shop": {"machine": {"min_current_a": 60, "max_current_a": 40}}})",
     "shop.machine.max_current_a: 40 is below the smallest, accepted is at least 60 A, or a lower "
     "min_current_a"},
    {R"({"torchside": 1, "shop": {"machine": {"plate_i1max_a": 20, "plate_i1eff_a": 21}}})",
     "shop.machine.plate_i1eff_a: 21 is more than the largest supply current, accepted is at most 20 A"},
    {R"({"torchside": 1, "shop": {"wear": {"sets": [{"starts": 9, "arc_min": 0}, {"starts": 0, "arc_min": 0}]}}})",
     "shop.wear.sets[1].starts: no starts or arc time, accepted is a worn set with either"},
    {R"({"torchside": 1, "shop": {"air": {"cut_out_bar": 6}}})",
     "shop.air.cut_out_bar: 6 is not above the cut-in, accepted is more than 6 bar"},
    {R"({"torchside": 1, "job": {"current_a": 1e999}})",
     "workbook: line 1, column 39: a number too large for any field, accepted is a backup as Torchside saves it"},
};

#ifndef __EMSCRIPTEN__
std::string committed(const std::string& name) {
    std::ifstream in(std::string(TORCHSIDE_SOURCE_DIR) + "/" + name, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}
#endif

} // namespace

TEST_CASE("a file that breaks the schema is refused by the key's path") {
    for (const BadFile& row : bad_files) {
        INFO(row.text);
        CHECK(says(row.text) == row.expected);
    }
    const std::string metals = test::said(accepted(*field("job.material")));
    CHECK(metals.starts_with("mild_steel, stainless, "));
    for (const std::string metal : {"steel", "Mild_steel"}) {
        CHECK(says(R"({"torchside": 1, "job": {"material": ")" + metal + "\"}}") ==
              "job.material: \"" + metal + "\" is not accepted, accepted is " + metals);
    }
}

TEST_CASE("a missing key takes its default") {
    const auto read = read_workbook(R"({"torchside": 1})");
    REQUIRE(read.ok());
    CHECK(test::same(read.value(), Workbook{}));
    const auto some = read_workbook(R"({"job": {"thickness_mm": 12.7}, "torchside": 1.0})");
    REQUIRE(some.ok());
    CHECK(some.value().job.thickness.in(mm) == 12.7);
    CHECK(some.value().job.current.in(ampere) == 45.0);
    const auto nozzle =
        read_workbook(R"({"torchside": 1, "shop": {"machine": {"nozzles": [{"rated_current_a": 60}]}}})");
    REQUIRE(nozzle.ok());
    REQUIRE(nozzle.value().shop.machine.nozzles.size() == 1);
    CHECK(nozzle.value().shop.machine.nozzles[0].rated.in(ampere) == 60.0);
    CHECK_FALSE(nozzle.value().shop.machine.nozzles[0].bore);
}

TEST_CASE("the default workbook is in range and its file is stable") {
    CHECK_FALSE(check(Workbook{}));
    const std::string text = write_workbook(Workbook{});
    CHECK(text.starts_with("{\n  \"torchside\": 1,\n  \"shop\": {\n    \"name\": \"\",\n    \"contact\": \"\",\n    "
                           "\"country\": null,\n    \"machine\": {\n"
                           "      \"max_current_a\": 50,\n"));
    CHECK(text.find("\"nozzles\": [\n        {\"rated_current_a\": 45, \"bore_mm\": 1.1}\n      ]") !=
          std::string::npos);
    CHECK(text.find("\"run_m\": 15,") != std::string::npos);
    CHECK(text.find("\"cord_awg\": null,") != std::string::npos);
    const auto back = read_workbook(text);
    REQUIRE(back.ok());
    CHECK(write_workbook(back.value()) == text);
}

TEST_CASE("a length that is kept in millimetres is written in metres as it was typed") {
    for (const char* typed : {"0.3", "1.1", "15", "7.77", "0.007", "123.456789"}) {
        const auto read =
            read_workbook(std::string(R"({"torchside": 1, "shop": {"circuit": {"run_m": )") + typed + "}}}");
        REQUIRE(read.ok());
        CHECK(write_workbook(read.value()).find(std::string("\"run_m\": ") + typed + ",") != std::string::npos);
    }
}

TEST_CASE("every key of the contract is described") {
    const auto info = field("job.thickness_mm");
    REQUIRE(info);
    CHECK(info->kind == FieldKind::number);
    CHECK(info->low == 0.3);
    CHECK(info->high == 150.0);
    CHECK(info->unit == FieldUnit::mm);
    CHECK(test::said(info->meaning) == "Thickness of the plate.");
    CHECK(test::said(accepted(*info)) == "0.3 to 150 mm");
    CHECK(field("shop.machine.nozzles[3].bore_mm")->nullable);
    CHECK(field("shop.tests[]")->kind == FieldKind::object);
    CHECK(field("shop.tests")->kind == FieldKind::list);
    CHECK(field("job")->kind == FieldKind::object);
    CHECK(field("job.material")->words.size() == stock::metal_count);
    CHECK(field("shop.circuit.run_awg")->choices.size() == 8);
    for (const char* wrong :
         {"", "job.", ".job", "job..part", "jobs", "job.thickness_mm.x", "job[0]", "shop.tests.feed_mm_min",
          "shop.tests[0", "shop.tests[x].worn", "shop.tests[99999999].worn", "shop.name[0]"}) {
        INFO(wrong);
        CHECK_FALSE(field(wrong));
    }
}

TEST_CASE("the demo workbook is a valid file with a log to learn from") {
#ifndef __EMSCRIPTEN__
    const auto demo = read_workbook(committed("assets/demo.json"));
    REQUIRE(says(demo) == "accepted");
    CHECK(demo.value().job.quantity == 24);
    CHECK(demo.value().job.material == Metal::mild_steel);
    CHECK(demo.value().job.thickness.in(mm) == 6.0);
    CHECK(demo.value().shop.tests.size() >= 4);
    CHECK(demo.value().shop.wear.sets.size() >= 3);
    // It shows all there is: a path, a change of consumables within the batch, a price to hold against an outside one.
    const Worksheet sheet = evaluate(demo.value());
    REQUIRE(sheet.time);
    CHECK(sheet.part->pierces == 5);
    CHECK(sheet.part->problems.empty());
    CHECK(sheet.wear.sets_to_hold == 1);
    CHECK(sheet.wear.change_before);
    REQUIRE(sheet.price);
    CHECK(sheet.price->make_or_buy);
    CHECK_FALSE(demo.value().shop.name.empty());
    // One cut stands apart and asks to be made again; what the page shows first is the same without it.
    Workbook without = demo.value();
    const auto notes = tune::learn(without.shop.tests, without.shop.machine).notes;
    std::size_t apart = 0;
    for (std::size_t i = notes.size(); i-- > 0;) {
        if (notes[i].measure_again) {
            ++apart;
            CHECK(notes[i].sd_off > 3.0);
            without.shop.tests.erase(without.shop.tests.begin() + static_cast<std::ptrdiff_t>(i));
        }
    }
    CHECK(apart == 1);
    const Worksheet calm = evaluate(without);
    CHECK(std::abs(calm.settings->feed.value / sheet.settings->feed.value - 1.0) < 1e-3);
    CHECK(calm.price->price_total.value == sheet.price->price_total.value);
#endif
}

TEST_CASE("an intent changes one value or says why not") {
    const Workbook start;
    const auto next = set(start, "job.thickness_mm", 8);
    REQUIRE(next.ok());
    CHECK(next.value().job.thickness.in(mm) == 8.0);
    CHECK(get(next.value(), "job.thickness_mm") == Scalar(8.0));
    CHECK(get(start, "job.thickness_mm") == Scalar(6.0));
    CHECK(default_of("job.thickness_mm") == Scalar(6.0));
    CHECK(default_of("shop.tests[].verdict") == Scalar(nullptr));
    CHECK(get(set(start, "job.material", "stainless").value(), "job.material") == Scalar("stainless"));
    CHECK(get(set(start, "shop.circuit.cord_awg", 12).value(), "shop.circuit.cord_awg") == Scalar(12));
    CHECK(get(set(start, "shop.machine.nozzles[0].bore_mm", nullptr).value(), "shop.machine.nozzles[0].bore_mm") ==
          Scalar(nullptr));
    CHECK(get(set(start, "shop.circuit.run_m", 0.3).value(), "shop.circuit.run_m") == Scalar(0.3));
    CHECK(get(set(start, "shop.name", "Gate & Rail").value(), "shop.name") == Scalar("Gate & Rail"));

    CHECK(says(set(start, "job.thickness_mm", 900)) ==
          "job.thickness_mm: 900 is not accepted, accepted is 0.3 to 150 mm");
    CHECK(says(set(start, "job.thickness_mm", NAN)) ==
          "job.thickness_mm: nan is not accepted, accepted is 0.3 to 150 mm");
    CHECK(says(set(start, "shop.name", "\xff")) ==
          "shop.name: \"?\" contains control characters or is not UTF-8, accepted is a text of 0 to 60 letters");
    CHECK(says(set(start, "job", 1)).starts_with("job: the workbook has no such key or entry"));
    CHECK(says(set(start, "shop.tests[0].worn", true)).starts_with("shop.tests[0].worn: the workbook has no such"));
    CHECK_FALSE(get(start, "shop.tests[0].worn"));
    CHECK_FALSE(get(start, "shop.tests"));
}

TEST_CASE("several changes are made together or not at all") {
    const Workbook start;
    CHECK(says(set(start, "shop.air.cut_in_bar", 9)).starts_with("shop.air.cut_out_bar: 8 is not above"));
    const auto both = apply(start, {{"shop.air.cut_in_bar", 9}, {"shop.air.cut_out_bar", 11}});
    REQUIRE(both.ok());
    CHECK(both.value().shop.air.cut_in.in(bar) == 9.0);
    CHECK(says(apply(start, {{"job.thickness_mm", 8}, {"job.current_a", 0}})) ==
          "job.current_a: 0 is not accepted, accepted is 5 to 200 A");
}

TEST_CASE("entries are added and taken out within the list's limits") {
    Workbook start;
    const tune::TestCut cut{.material = Metal::copper, .thickness = Length{3, mm}, .current = Current{40, ampere}};
    const auto one = add(start, cut);
    REQUIRE(one.ok());
    CHECK(one.value().shop.tests.size() == 1);
    CHECK(remove(one.value(), "shop.tests[0]").value().shop.tests.empty());
    CHECK(says(remove(one.value(), "shop.tests[1]")).starts_with("shop.tests[1]: the workbook has no such"));
    CHECK(says(remove(one.value(), "shop.tests")).starts_with("shop.tests: the workbook has no such"));
    CHECK(says(remove(start, "shop.machine.nozzles[0]")) ==
          "shop.machine.nozzles[0]: the last entry stays, accepted is a list of 1 to 8 entries");
    CHECK(says(add(start, Nozzle{Current{300, ampere}, {}})) ==
          "shop.machine.nozzles[1].rated_current_a: 300 is not accepted, accepted is 10 to 200 A");
    CHECK(
        add(start, wear::ConsumableSet{300, Duration{60, minute}, wear::Ended::pulled}).value().shop.wear.sets.size() ==
        1);
    start.shop.tests.assign(500, cut);
    CHECK(says(add(start, cut)) == "shop.tests: 501 entries, accepted is a list of 0 to 500 entries");
}

TEST_CASE("reset puts defaults back") {
    const auto changed = apply(Workbook{}, {{"job.thickness_mm", 8}, {"shop.circuit.breaker_a", 50}});
    REQUIRE(changed.ok());
    CHECK(test::same(reset(changed.value(), "shop.circuit").value(), set(Workbook{}, "job.thickness_mm", 8).value()));
    CHECK(reset(changed.value(), "job.thickness_mm").value().job.thickness.in(mm) == 6.0);
    CHECK(test::same(reset(reset(changed.value(), "job").value(), "shop").value(), Workbook{}));
    CHECK_FALSE(reset(changed.value(), "shop.tests").ok());
    CHECK_FALSE(reset(changed.value(), "nothing").ok());
}

TEST_CASE("check finds what was put out of range in memory") {
    Workbook w;
    w.shop.air.humidity = static_cast<double>(NAN);
    REQUIRE(check(w));
    CHECK(check(w)->field == "shop.air.humidity");
    w = {};
    w.job.material = static_cast<Metal>(17);
    CHECK(check(w)->field == "job.material");
    w = {};
    w.shop.machine.nozzles.clear();
    CHECK(check(w)->field == "shop.machine.nozzles");
}

TEST_CASE("a workbook may begin with the mark that some editors put before UTF-8") {
    const auto read = read_workbook("\xEF\xBB\xBF{\"torchside\": 1, \"job\": {\"thickness_mm\": 8}}");
    REQUIRE(read.ok());
    CHECK(read.value().job.thickness.in(mm) == 8.0);
    CHECK_FALSE(read_workbook("\xEF\xBB\xBF\xEF\xBB\xBF{\"torchside\": 1}").ok());
}
