// The log for a spreadsheet and back: what is saved is read again, what is refused names its row and column, and no cell is run.
#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include "core/codec/csv.hpp"
#include "core/codec/fold.hpp"
#include "core/quantity/print_cell.hpp"
#include "core/store/log_table.hpp"
#include "core/store/workbook_file.hpp"
#include "core/words/languages.hpp"

using namespace torchside;

namespace {

Speech spanish(UnitSystem units = UnitSystem::metric) {
    return {*language_of("es"), units};
}

std::string refusal(std::string_view text, const Speech& speech = UnitSystem::metric) {
    const auto pasted = document::paste_cuts(Workbook{}, text, speech);
    return pasted.ok() ? std::string() : say(pasted.fault().told(), speech);
}

tune::TestCut only_cut(std::string_view text, const Speech& speech = UnitSystem::metric) {
    const auto pasted = document::paste_cuts(Workbook{}, text, speech);
    INFO(text << ": " << refusal(text, speech));
    REQUIRE(pasted.ok());
    REQUIRE(pasted.value().cuts == 1);
    return pasted.value().book.shop.tests.back();
}

/// The same cells as a spreadsheet of that language would copy them.
std::string as_copied(const std::string& csv, char decimal) {
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    std::string out;
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        quoted = quoted != (c == '"');
        const bool point = c == '.' && i > 0 && i + 1 < csv.size() && digit(csv[i - 1]) && digit(csv[i + 1]);
        out += c == ',' && !quoted ? '\t' : point ? decimal : c;
    }
    return out;
}

} // namespace

TEST_CASE("a table is written as RFC 4180 has it, and no text in it is a formula") {
    codec::CsvWriter out;
    out.text("=1+1");
    out.text("say \"go\"");
    out.figure("-2");
    out.end_row();
    for (const char* text : {"+1", "-1", "@sum", "\tx", "a,b", "two\nlines", "plain"}) {
        out.text(text);
    }
    out.end_row();
    CHECK(out.table() == "'=1+1,\"say \"\"go\"\"\",-2\r\n'+1,'-1,'@sum,'\tx,\"a,b\",\"two\nlines\",plain\r\n");
}

TEST_CASE("copied cells are read: tabs, quotation marks, ends of lines of any system, blanks around") {
    using Rows = std::vector<codec::Cells>;
    CHECK(codec::read_tabbed("a\tb\r\nc\t\r\n") == Rows{{"a", "b"}, {"c", ""}});
    CHECK(codec::read_tabbed("\"a\tb\"\t\" say \"\"go\"\" \"") == Rows{{"a\tb", "say \"go\""}});
    CHECK(codec::read_tabbed("  1 \t 2\n\n\t\n3") == Rows{{"1", "2"}, {"3"}});
    CHECK(codec::read_tabbed("\"never ended\t1") == Rows{{"never ended\t1"}});
    CHECK(codec::read_tabbed("").empty());
}

TEST_CASE("letters are made alike to be found") {
    CHECK(codec::folded("Sangría ÁREA ñ 6 mm") == "sangria area n 6 mm");
    CHECK(codec::folded("6 × 3 µm") == "6 × 3 µm");
}

TEST_CASE("a number for a cell stands alone, behind a point, in the reader's unit") {
    const Units es{UnitSystem::metric, ','};
    CHECK(print_cell(6.35, FieldUnit::mm, es) == "6.35");
    CHECK(print_cell(6.35, FieldUnit::mm, UnitSystem::inch) == "0.25");
    CHECK(print_cell(12000, FieldUnit::mm_min, es) == "12000");
    CHECK(print_cell(0.3, FieldUnit::share, es) == "30");
    CHECK(print_cell(-12.5, FieldUnit::celsius, es) == "-12.5");
    CHECK(print_cell(0, FieldUnit::mm, es) == "0");
}

TEST_CASE("a row of numbers is a cut of the job's metal") {
    const tune::TestCut cut = only_cut("6\t45\t1500\tclean");
    CHECK(cut.material == Metal::mild_steel);
    CHECK(cut.thickness.in(mm) == 6);
    CHECK(cut.current.in(ampere) == 45);
    REQUIRE(cut.feed.has_value());
    CHECK(cut.feed->in(mm_min) == 1500);
    CHECK(cut.verdict == tune::Verdict::clean);
    CHECK(only_cut("Stainless\t3\t40\t2100").material == Metal::stainless);
    CHECK(only_cut("\t\t1800\ttoo fast").thickness.in(mm) == 6);      // blank: the job's
    CHECK(only_cut("8 mm\t45 A\t60 in/min").feed->in(mm_min) > 1523); // a unit that is typed counts
}

TEST_CASE("numbers are read in the reader's decimal sign and units") {
    CHECK(only_cut("6,35\t45\t1500,5\tmuy rápido", spanish()).thickness.in(mm) == 6.35);
    CHECK(only_cut("6,35\t45\t1500,5\tmuy rapido", spanish()).verdict == tune::Verdict::too_fast);
    CHECK(only_cut("0.25\t45\t60", UnitSystem::inch).thickness.in(mm) == 6.35);
    CHECK(only_cut("1/4\t45\t60", UnitSystem::inch).thickness.in(mm) == 6.35);
}

TEST_CASE("a thickness may be the number of a gauge, of the row's own metal") {
    CHECK(only_cut("10 ga\t40\t2000").thickness.in(inch) == Catch::Approx(0.1345));
    CHECK(only_cut("Stainless\t10 ga\t40\t2000").thickness.in(inch) == Catch::Approx(0.140625)); // 9/64 in
    CHECK(only_cut("3/16\"\t40\t80", UnitSystem::inch).thickness.in(inch) == Catch::Approx(0.1875));
    CHECK(refusal("99 ga\t40\t2000").find("Thickness") != std::string::npos);
}

TEST_CASE("a row of heads sets the order, and its units count") {
    const tune::TestCut cut = only_cut("Feed (in/min)\tThickness (in)\tThe cut was\n60\t0.25\tToo slow");
    CHECK(cut.thickness.in(mm) == 6.35);
    CHECK(cut.feed->in(mm_min) == 1524);
    CHECK(cut.verdict == tune::Verdict::too_slow);
    CHECK(refusal("Thickness (mm)\tOperator\n6\tAnn") == "The log has no column Operator.");
    CHECK(refusal("Thickness (mm)\tFeed (mm/min)") == "Nothing to log there. Copy rows of cells first.");
}

TEST_CASE("what is refused names its row and its column, and nothing is taken") {
    CHECK(refusal("6\t45\t1500\n6\t45\t99999").find("Nothing was logged. Row 2, Feed: Enter 10 to ") == 0);
    CHECK(refusal("600\t45\t1500") == "Nothing was logged. Row 1, Thickness: Enter 0.3 to 150 mm.");
    CHECK(refusal("6\t45\t1500\tfine") == "Nothing was logged. Row 1, The cut was: Enter clean, too fast or too slow.");
    CHECK(refusal("6\t45\tfast").find("Row 1, Feed: ") != std::string::npos);
    CHECK(refusal("6\t45\t1,500").find("Row 1, Feed: ") != std::string::npos); // 1500, or one and a half?
    CHECK(refusal("6\t45\t1.500", spanish()).find("Fila 1, Avance: ") != std::string::npos);
    CHECK(refusal("6" + std::string(20, '\t') + "x").find("Row 1 has more than 13 cells.") != std::string::npos);
    CHECK(refusal("\t\n") == "Nothing to log there. Copy rows of cells first.");
}

TEST_CASE("no more rows than the log takes") {
    std::string rows;
    for (int i = 0; i < 501; ++i) {
        rows += "6\t45\t1500\n";
    }
    CHECK_FALSE(document::paste_cuts(Workbook{}, rows, UnitSystem::metric).ok());
}

TEST_CASE("a log that is saved and copied back is the same, in each language and both units") {
    Workbook book;
    tune::TestCut cut;
    cut.material = Metal::aluminium;
    cut.thickness = {3.175, mm};
    cut.feed = Speed{2540, mm_min};
    cut.verdict = tune::Verdict::too_slow;
    cut.kerf_top = Length{1.524, mm};
    cut.arc = Voltage{128, volt};
    cut.pierce_delay = Duration{0.4, second};
    cut.pierce = tune::PierceVerdict::is_short;
    cut.worn = true;
    cut.starts = 120;
    book.shop.tests = {cut, tune::TestCut{}};
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::inch}) {
        for (const Speech& speech : {Speech(units), spanish(units)}) {
            const std::string csv = document::log_csv(book, speech);
            INFO(csv);
            const auto back = document::paste_cuts(Workbook{}, as_copied(csv, speech.units.decimal), speech);
            REQUIRE(back.ok());
            REQUIRE(back.value().book.shop.tests.size() == 2);
            const tune::TestCut& same = back.value().book.shop.tests[0];
            CHECK(same.material == cut.material);
            CHECK(same.verdict == cut.verdict);
            CHECK(same.pierce == cut.pierce);
            CHECK(same.worn == cut.worn);
            CHECK(same.starts == cut.starts);
            CHECK(std::abs(same.thickness.in(mm)-3.175) < 1e-9);
            CHECK(std::abs(same.feed->in(mm_min)-2540) < 1e-6);
            CHECK(std::abs(same.kerf_top->in(mm)-1.524) < 1e-9);
        }
    }
}
