#include "core/document/figures.hpp"

namespace torchside::document {

void write_texts(std::string_view key, const std::vector<std::string>& lines, JsonWriter& out) {
    out.key(key).open('[');
    for (const std::string& line : lines) {
        out.text(line);
    }
    out.close();
}

void write_figure(std::string_view key, const Estimate<double>& e, JsonWriter& out) {
    out.key(key).open_line('{');
    out.key("value").number(e.value);
    out.key("low").number(e.low);
    out.key("high").number(e.high);
    write_basis(e.basis, out);
    out.close();
}

void write_basis(const Basis& b, JsonWriter& out) {
    out.key("basis").open('[');
    if (b.physics) {
        out.text("physics");
    }
    if (b.practice) {
        out.text("practice");
    }
    if (!b.published.empty()) {
        out.text("published:" + std::string(b.published));
    }
    if (b.tests > 0) {
        out.text("tests:" + std::to_string(b.tests));
    }
    if (b.entered) {
        out.text("entered");
    }
    out.close();
}

} // namespace torchside::document
