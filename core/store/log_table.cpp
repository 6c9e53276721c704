#include "core/store/log_table.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>
#include <vector>

#include "core/codec/csv.hpp"
#include "core/codec/fold.hpp"
#include "core/quantity/print_cell.hpp"
#include "core/schema/entry.hpp"
#include "core/schema/intent.hpp"
#include "core/schema/schema.hpp"
#include "core/schema/words.hpp"
#include "core/stock/properties.hpp"
#include "core/stock/thickness.hpp"
#include "generated/words/common.hpp"
#include "generated/words/figure.hpp"
#include "generated/words/log.hpp"
#include "generated/words/rows.hpp"
#include "generated/words/title.hpp"

namespace torchside::document {
namespace {

constexpr LogColumn columns[] = {{"material", words::title::metal},
                                 {"thickness_mm", words::title::thickness},
                                 {"current_a", words::title::current},
                                 {"feed_mm_min", words::figure::feed},
                                 {"verdict", words::log::verdict},
                                 {"kerf_top_mm", words::common::kerf_top},
                                 {"kerf_bottom_mm", words::common::kerf_bottom},
                                 {"arc_v", words::figure::arc},
                                 {"cut_height_mm", words::figure::cut_height},
                                 {"pierce_delay_s", words::log::delay},
                                 {"pierce", words::log::pierce},
                                 {"nozzle_a", words::log::nozzle},
                                 {"worn", words::log::worn},
                                 {"starts", words::log::starts}};

/// A word of the file, and what a reader calls it.
struct Named {
    std::string_view key;
    Word name;
};
constexpr Named verdicts[] = {{verdict_words[0], words::log::clean},
                              {verdict_words[1], words::log::too_fast},
                              {verdict_words[2], words::log::too_slow}};
constexpr Named pierces[] = {{pierce_words[0], words::log::good},
                             {pierce_words[1], words::log::too_short},
                             {pierce_words[2], words::log::too_long}};
constexpr Named flags[] = {{"1", words::rows::yes}, {"0", words::rows::no}};

std::vector<Named> names_of(std::string_view key) {
    if (key == "material") {
        std::vector<Named> out;
        out.reserve(std::size(all_metals));
        for (const Metal metal : all_metals) {
            out.push_back({stock::key(metal), stock::name(metal)});
        }
        return out;
    }
    if (key == "worn") {
        return {std::begin(flags), std::end(flags)};
    }
    return key == "verdict"  ? std::vector<Named>(std::begin(verdicts), std::end(verdicts))
           : key == "pierce" ? std::vector<Named>(std::begin(pierces), std::end(pierces))
                             : std::vector<Named>();
}

std::string path_of(std::size_t row, std::string_view key) {
    return "shop.tests[" + std::to_string(row) + "]." + std::string(key);
}

bool is_called(std::string_view cell, Word name, const Speech& speech) {
    return codec::folded(cell) == codec::folded(phrase(name, speech.language)) ||
           codec::folded(cell) == codec::folded(phrase(name, english()));
}

struct Column {
    std::size_t of = 0; // in `columns`
    std::string unit{}; // that its head names
};

/// The column that a head names, with its unit in brackets behind it.
std::optional<Column> column_of(std::string_view head, const Speech& speech) {
    Column out;
    const std::size_t bracket = head.rfind(" (");
    if (bracket != std::string_view::npos && head.ends_with(')')) {
        out.unit = head.substr(bracket + 2, head.size() - bracket - 3);
        head = head.substr(0, bracket);
    }
    for (; out.of < std::size(columns); ++out.of) {
        if (is_called(head, columns[out.of].name, speech)) {
            return out;
        }
    }
    return {};
}

Outcome<std::vector<Column>> columns_of(const codec::Cells& heads, const Speech& speech) {
    std::vector<Column> out;
    for (const std::string& head : heads) {
        const auto column = column_of(head, speech);
        if (!column) {
            return Fault("shop.tests", words::rows::UnknownColumn{.name = std::string_view(head)});
        }
        out.push_back(*column);
    }
    return out;
}

bool is_head(const codec::Cells& row, const Speech& speech) {
    return std::any_of(row.begin(), row.end(),
                       [&](const std::string& cell) { return column_of(cell, speech).has_value(); });
}

/// Without a head: all columns in their order, without the metal where the row does not begin with one.
std::vector<Column> usual_columns(const codec::Cells& row, const Speech& speech) {
    const auto metals = names_of("material");
    const bool named = std::any_of(metals.begin(), metals.end(), [&](const Named& metal) {
        return codec::folded(row.front()) == metal.key || is_called(row.front(), metal.name, speech);
    });
    std::vector<Column> out;
    for (std::size_t i = named ? 0 : 1; i < std::size(columns); ++i) {
        out.push_back({i});
    }
    return out;
}

/// What to enter where one of a few words is wanted.
Text wanted(std::string_view key) {
    return key == "material"  ? words::rows::a_metal
           : key == "verdict" ? words::rows::a_verdict
           : key == "pierce"  ? words::rows::a_pierce
                              : words::rows::yes_or_no;
}

/// One cell as the workbook holds it; else what to enter in its place. `metal`: of the row, where a gauge is written.
Outcome<Scalar> read_cell(const std::string& cell, const Column& column, Metal metal, const Speech& speech) {
    const std::string_view key = columns[column.of].key;
    const FieldInfo info = *field(path_of(0, key));
    const auto named = names_of(key);
    for (const Named& one : named) {
        if (codec::folded(cell) == one.key || is_called(cell, one.name, speech)) {
            return info.kind == FieldKind::flag ? Scalar(one.key == "1") : Scalar(one.key);
        }
    }
    if (!named.empty()) {
        return Fault(std::string(key), wanted(key));
    }
    if (key == "thickness_mm") { // as the log itself shows it
        const auto gauge = stock::read_thickness(cell, metal, speech.units);
        if (const auto* answer = gauge.answer(); answer != nullptr && column.unit.empty()) {
            return Scalar(answer->value.in(mm));
        }
    }
    const bool bare = cell.back() >= '0' && cell.back() <= '9';
    const auto reading =
        read_field(bare && !column.unit.empty() ? cell + ' ' + column.unit : cell, info.unit, speech.units);
    if (const auto* answer = reading.answer()) {
        return Scalar(answer->value);
    }
    const auto* doubt = reading.question();
    return Fault(std::string(key), doubt != nullptr ? question(doubt->doubt) : enter(info));
}

Fault refused(int row, const Column& column, const Text& why) {
    return {"shop.tests", words::rows::Refused{.column = columns[column.of].name, .row = row, .why = why}};
}

/// One row more in the log of `book`.
std::optional<Fault> take_row(Workbook& book, const codec::Cells& cells, const std::vector<Column>& under, int row,
                              const Speech& speech) {
    tune::TestCut cut;
    cut.material = book.job.material;
    cut.thickness = book.job.thickness;
    cut.current = book.job.current;
    auto grown = add(book, cut);
    if (!grown.ok()) {
        return Fault("shop.tests", grown.fault().told());
    }
    book = std::move(grown.value());
    if (cells.size() > under.size()) {
        return Fault("shop.tests", words::rows::TooMany{.most = static_cast<int>(under.size()), .row = row});
    }
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i].empty()) {
            continue;
        }
        const auto value = read_cell(cells[i], under[i], book.shop.tests.back().material, speech);
        if (!value.ok()) {
            return refused(row, under[i], value.fault().told());
        }
        auto next = set(book, path_of(book.shop.tests.size() - 1, columns[under[i].of].key), value.value());
        if (!next.ok()) {
            return refused(row, under[i], next.fault().told());
        }
        book = std::move(next.value());
    }
    return {};
}

} // namespace

std::span<const LogColumn> log_columns() {
    return columns;
}

std::string column_head(std::string_view name, std::string_view unit) {
    std::string out(name);
    if (!unit.empty()) {
        out += " (";
        out += unit;
        out += ')';
    }
    return out;
}

std::string log_csv(const Workbook& book, const Speech& speech) {
    codec::CsvWriter out;
    for (const LogColumn& column : columns) {
        const FieldInfo info = *field(path_of(0, column.key));
        out.text(column_head(phrase(column.name, speech.language), bare_unit(info.unit, speech.units)));
    }
    out.end_row();
    for (std::size_t row = 0; row < book.shop.tests.size(); ++row) {
        for (const LogColumn& column : columns) {
            const std::string path = path_of(row, column.key);
            const Scalar value = get(book, path).value_or(Scalar());
            const auto named = names_of(column.key);
            std::string_view key = value.text;
            if (value.type == Scalar::Type::flag) {
                key = value.number != 0 ? "1" : "0";
            }
            const auto one =
                std::find_if(named.begin(), named.end(), [&](const Named& name) { return name.key == key; });
            if (value.type == Scalar::Type::number) {
                out.figure(print_cell(value.number, field(path)->unit, speech.units));
            } else {
                out.text(one == named.end() ? std::string_view() : phrase(one->name, speech.language));
            }
        }
        out.end_row();
    }
    return out.table();
}

Outcome<Pasted> paste_cuts(const Workbook& book, std::string_view text, const Speech& speech) {
    auto rows = codec::read_tabbed(text);
    std::vector<Column> under;
    int first = 0;
    if (!rows.empty() && is_head(rows.front(), speech)) {
        auto heads = columns_of(rows.front(), speech);
        if (!heads.ok()) {
            return heads.fault();
        }
        under = std::move(heads.value());
        first = 1;
    } else if (!rows.empty()) {
        under = usual_columns(rows.front(), speech);
    }
    const int count = static_cast<int>(rows.size());
    if (first >= count) {
        return Fault("shop.tests", words::rows::nothing);
    }
    Pasted out{book, count - first};
    for (int row = first; row < count; ++row) {
        if (auto fault = take_row(out.book, rows[static_cast<std::size_t>(row)], under, row + 1, speech)) {
            return std::move(*fault);
        }
    }
    return out;
}

} // namespace torchside::document
