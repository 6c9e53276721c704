// What a person is told to enter: in his units, in percent where it is a share, never a word of the file.
#include <catch2/catch_test_macros.hpp>

#include "core/codec/json.hpp"
#include "core/quantity/read.hpp"
#include "core/schema/access.hpp"
#include "core/schema/entry.hpp"
#include "core/schema/fields.hpp"
#include "core/schema/intent.hpp"
#include "core/schema/schema.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using document::enter;
using document::field;

namespace {

constexpr UnitSystem metric = UnitSystem::metric;
constexpr UnitSystem in_inch = UnitSystem::inch;

void walk(document::Fields fields, const std::string& path, auto look) {
    for (const document::Field& f : fields) {
        const std::string at = path.empty() ? std::string(f.key) : path + '.' + std::string(f.key);
        if (f.children != nullptr) {
            walk(*f.children, f.list != nullptr ? at + "[0]" : at, look);
        } else {
            look(at, f.info);
        }
    }
}

} // namespace

TEST_CASE("a range is told in the user's units and in percent") {
    CHECK(test::said(enter(*field("job.thickness_mm")), metric) == "Enter 0.3 to 150 mm.");
    CHECK(test::said(enter(*field("job.thickness_mm")), in_inch) == "Enter 0.0119 to 5.9 in.");
    CHECK(test::said(enter(*field("job.price.margin")), metric) == "Enter 0 to 90 %.");
    CHECK(test::said(enter(*field("shop.machine.duty_cycle")), metric) == "Enter 5 to 100 %.");
    CHECK(test::said(enter(*field("shop.machine.efficiency")), in_inch) == "Enter 50 to 98 %.");
    CHECK(test::said(enter(*field("shop.machine.power_factor")), metric) == "Enter 0.4 to 1.");
    CHECK(test::said(enter(*field("job.quote.tax")), metric) == "Enter 0 to 50 %. Leave blank to print no tax line.");
    CHECK(test::said(enter(*field("shop.machine.phases")), metric) == "Enter 1 or 3.");
    CHECK(test::said(enter(*field("job.run_offs")), metric) == "Enter a whole number, 0 to 200.");
    CHECK(test::said(enter(*field("job.name")), metric) == "Enter up to 60 letters.");
    CHECK(test::said(enter(*field("shop.rates.currency")), metric) == "Enter 3 letters.");
    CHECK(test::said(enter(*field("shop.controller.torch_on")), metric) ==
          "Enter 1 to 40 letters, no accents or brackets.");
}

TEST_CASE(
    "no key tells a person of null, of shares or of what is accepted, and every optional figure says what blank does") {
    int optional = 0;
    walk(document::workbook_fields(), "", [&](const std::string& path, const document::FieldInfo& info) {
        using Kind = document::FieldKind;
        if (info.kind != Kind::number && info.kind != Kind::integer && info.kind != Kind::text) {
            return;
        }
        for (const UnitSystem units : {metric, in_inch}) {
            const std::string text = test::said(enter(info), units);
            INFO(path << ": " << text);
            CHECK(text.starts_with("Enter "));
            for (const char* word : {"null", "accept", "share", "not known"}) {
                CHECK(text.find(word) == std::string::npos);
            }
            CHECK((text.find("Leave blank to ") != std::string::npos) == info.nullable);
        }
        optional += info.nullable ? 1 : 0;
    });
    CHECK(optional >= 18);
}

TEST_CASE("both ends of every range, typed as they are told, are taken") {
    walk(document::workbook_fields(), "", [&](const std::string& path, const document::FieldInfo& info) {
        if (info.kind != document::FieldKind::number || path.find("findings") != std::string::npos) {
            return;
        }
        for (const UnitSystem units : {metric, in_inch}) {
            const std::string low = print_low_end(info.low, info.unit, units);
            const std::string high = print_high_end(info.high, info.unit, units);
            for (const std::string& end : {low, high}) {
                INFO(path << ": " << end);
                const bool below = end.starts_with("−");
                const auto read = read_field(below ? '-' + end.substr(3) : end, info.unit, units);
                REQUIRE(read.answer());
                CHECK_FALSE(document::judge(info, read.answer()->value));
            }
        }
    });
}

TEST_CASE("a refusal carries what to enter beside the line for the file") {
    Workbook book;
    const auto refused = document::set(book, "job.thickness_mm", 999);
    REQUIRE_FALSE(refused.ok());
    CHECK(test::said(refused.fault().text) == "999 is not accepted, accepted is 0.3 to 150 mm");
    CHECK(test::said(refused.fault().ask, in_inch) == "Enter 0.0119 to 5.9 in.");
    const auto pressure = document::set(book, "shop.air.cut_out_bar", 1);
    REQUIRE_FALSE(pressure.ok());
    CHECK(test::said(pressure.fault().ask, in_inch).find("psi") != std::string::npos);
    CHECK(test::said(pressure.fault().ask, in_inch).find("bar") == std::string::npos);
}

TEST_CASE("a rate is asked for in the unit that the field shows") {
    struct Row {
        const char* path;
        const char* in_metric;
        const char* inches;
    };
    constexpr Row rows[] = {
        {"job.price.material_per_kg", "Enter 0 to 1\u2009000\u2009000/kg.", "Enter 0 to 453\u2009000/lb."},
        {"job.gaps_per_m", "Enter 0 to 500 per m.", "Enter 0 to 152 per ft."},
        {"shop.rates.labour_per_h", "Enter 0 to 1\u2009000\u2009000.", "Enter 0 to 1\u2009000\u2009000."},
    };
    for (const Row& row : rows) {
        INFO(row.path);
        CHECK(test::said(enter(*field(row.path)), metric) == row.in_metric);
        CHECK(test::said(enter(*field(row.path)), in_inch) == row.inches);
    }
}

TEST_CASE("the compressor's duty is a share from 10 to 100 %") {
    const Workbook book;
    CHECK(book.shop.air.duty == 0.6);
    for (const double good : {0.1, 0.6, 1.0}) {
        const auto out = document::set(book, "shop.air.compressor_duty", good);
        REQUIRE(out);
        CHECK(out.value().shop.air.duty == good);
    }
    for (const double bad : {0.09, 1.01, 60.0}) {
        const auto out = document::set(book, "shop.air.compressor_duty", bad);
        REQUIRE_FALSE(out);
        CHECK(out.fault().field == "shop.air.compressor_duty");
        CHECK(test::said(out.fault().text).find("0.1 to 1") != std::string::npos);
    }
}

TEST_CASE("where no range is known, the quantity and its unit are asked for") {
    CHECK(test::said(document::ask_for(FieldUnit::mm, metric)) == "Enter a length (mm).");
    CHECK(test::said(document::ask_for(FieldUnit::mm, in_inch)) == "Enter a length (in).");
    CHECK(test::said(document::ask_for(FieldUnit::volt, metric)) == "Enter a voltage (V).");
    CHECK(test::said(document::ask_for(FieldUnit::mm2, metric)) == "Enter a cross-section (mm²).");
    CHECK(test::said(document::ask_for(FieldUnit::money, metric)) == "Enter an amount.");
    CHECK(test::said(document::ask_for(FieldUnit::kilohm, metric)) == "Enter a number.");
    for (int unit = 0; unit <= static_cast<int>(FieldUnit::kilohm); ++unit) {
        CHECK(test::said(document::ask_for(static_cast<FieldUnit>(unit), metric)).starts_with("Enter "));
    }
}

TEST_CASE("what is asked back says why") {
    CHECK(test::said(document::question(Doubt::fraction)).starts_with("The fraction is more than 1."));
    CHECK(test::said(document::question(Doubt::comma)).starts_with("The comma can separate thousands or decimals."));
    CHECK(test::said(document::question(Doubt::mil)).starts_with("A mil is a thousandth of an inch"));
}

TEST_CASE("a gauge that is no thickness of the metal is refused with what to type") {
    CHECK(test::said(document::refused_gauge(Unread::sold_by_thickness, Metal::copper))
              .starts_with("Copper is sold by thickness, not by gauge."));
    CHECK(test::said(document::refused_gauge(Unread::no_such_gauge, Metal::stainless)) ==
          "Enter 7 to 24 ga, or the thickness itself.");
    CHECK(document::refused_gauge(Unread::unknown_unit, Metal::copper).empty());
}

TEST_CASE("the printed schema is JSON that has every key and its words") {
    const std::string schema = document::schema_json();
    REQUIRE(codec::parse_json(schema).ok());
    CHECK(schema.find("\"const\": 1") != std::string::npos);
    CHECK(schema.find("\"enum\": [\"mild_steel\", \"stainless\"") != std::string::npos);
    std::size_t missing = 0;
    const auto look = [&](const auto& self, document::Fields fields) -> void {
        for (const document::Field& f : fields) {
            missing += schema.find('"' + std::string(f.key) + "\": {") == std::string::npos ? 1 : 0;
            if (f.children != nullptr) {
                self(self, *f.children);
            }
        }
    };
    look(look, document::workbook_fields());
    CHECK(missing == 0);
}
