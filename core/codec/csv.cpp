#include "core/codec/csv.hpp"

#include <algorithm>
#include <utility>

namespace torchside::codec {
namespace {

constexpr std::string_view line_end = "\r\n";
constexpr std::string_view starts_formula = "=+-@\t\r\n";

std::string without_blanks(std::string_view text) {
    constexpr std::string_view blanks = " \r";
    const std::size_t first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) {
        return {};
    }
    return std::string(text.substr(first, text.find_last_not_of(blanks) + 1 - first));
}

/// A cell that begins with a quotation mark, up to the mark that ends it; `at` comes to stand behind it.
std::string quoted(std::string_view text, std::size_t& at) {
    std::string out;
    for (++at; at < text.size(); ++at) {
        if (text[at] == '"' && at + 1 < text.size() && text[at + 1] == '"') {
            ++at;
        } else if (text[at] == '"') {
            ++at;
            break;
        }
        out += text[at];
    }
    return out;
}

} // namespace

void CsvWriter::cell(std::string_view content) {
    if (begun_) {
        out_ += ',';
    }
    begun_ = true;
    if (content.find_first_of(",\"\r\n") == std::string_view::npos) {
        out_ += content;
        return;
    }
    out_ += '"';
    for (const char c : content) {
        out_ += c;
        if (c == '"') {
            out_ += c;
        }
    }
    out_ += '"';
}

void CsvWriter::text(std::string_view words) {
    const bool formula = !words.empty() && starts_formula.find(words.front()) != std::string_view::npos;
    cell(formula ? "'" + std::string(words) : std::string(words));
}

void CsvWriter::end_row() {
    out_ += line_end;
    begun_ = false;
}

std::vector<Cells> read_tabbed(std::string_view text) {
    std::vector<Cells> rows;
    Cells row;
    std::string cell;
    const auto end_cell = [&] {
        row.push_back(without_blanks(cell));
        cell.clear();
    };
    const auto end_row = [&] {
        end_cell();
        if (std::any_of(row.begin(), row.end(), [](const std::string& c) { return !c.empty(); })) {
            rows.push_back(std::move(row));
        }
        row.clear();
    };
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        if (c == '"' && cell.empty()) {
            cell = quoted(text, at);
            continue;
        }
        ++at;
        if (c == '\t') {
            end_cell();
        } else if (c == '\n' || c == '\r') {
            end_row();
        } else {
            cell += c;
        }
    }
    end_row();
    return rows;
}

} // namespace torchside::codec
