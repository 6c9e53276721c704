// Things that stand one below the other. Each is drawn where the last one ended, registers itself, and says whether it was used.
//
//     column.heading("air/fields", words::compressor::torch_and_weather);
//     column.line("air/water", words::compressor::water, "12 g");
//     if (column.button("read/log", words::read_cut::log, Look::main)) { ... }
//
// Rows reach from edge to edge; words, lines and buttons keep a margin. What draws itself asks for its place: strip(), inside().
#pragma once

#include "web/kit/controls.hpp"
#include "web/kit/figures.hpp"
#include "web/kit/grid.hpp"

namespace torchside::web {

class Column {
public:
    static constexpr float margin = 14;

    /// A measured column draws nothing and nothing in it is used. It knows words, signs, rules and buttons.
    enum class Only { drawn, measured };
    /// Begins at the top of `place` and is as wide; how high it grows, height() says.
    Column(Ui& ui, Rect place, Only only = Only::drawn) : ui_(&ui), place_(place), y_(place.y), only_(only) {}

    [[nodiscard]] Ui& ui() const { return *ui_; }
    [[nodiscard]] bool draws() const { return only_ == Only::drawn; }
    [[nodiscard]] float height() const { return y_ - place_.y; }
    [[nodiscard]] float width() const { return place_.w; }
    /// How much of it is seen at once.
    [[nodiscard]] float view() const { return place_.h; }
    /// What words have between the margins.
    [[nodiscard]] float room() const { return place_.w - 2 * margin; }
    /// Where the next thing begins, between the margins.
    [[nodiscard]] Point at() const { return {place_.x + margin, y_}; }

    void gap(float height) { y_ += height; }
    /// A strip from edge to edge, or between the margins, for what draws itself.
    Rect strip(float height);
    Rect inside(float height);
    /// Room for so many cells between the margins.
    Grid grid(std::size_t count, std::size_t columns, float high);

    // --- words
    void words(std::string_view id, Type type, Label text, Colour colour);
    void text(std::string_view id, Label text) { words(id, Type::text, text, ui_->tokens().ink); }
    /// Small and quiet: a basis, a source, a hint.
    void note(std::string_view id, Label text) { words(id, Type::label, text, ui_->tokens().quiet); }
    /// Why something was not done.
    void refusal(std::string_view id, Label text) { words(id, Type::text, text, ui_->tokens().stop); }
    void heading(std::string_view id, Label title);
    /// Name on the left, figure on the right, a hairline under it.
    void line(std::string_view id, Label name, Label value);
    /// A sentence behind a sign, with its source in quiet print.
    void sign(std::string_view id, Sign sign, Label text, Label source = {});
    void rule();
    /// Notes under a heading, each a paragraph.
    void notes(std::string_view id, Label title, std::span<const std::string> all);

    // --- rows from edge to edge
    bool row(std::string_view id, Label title, Label quiet, Mark mark, bool chosen = false);
    bool verdict(std::string_view id, Sign sign, Label sentence, Label remedy, bool chosen = false);
    bool toggle(std::string_view id, Label label, bool on, Label quiet = {});

    // --- between the margins
    bool button(std::string_view id, Label label, Look look = Look::plain, std::string_view state = {});
    /// One button, or two side by side; which was used.
    struct Side {
        std::string_view id;
        Label label;
        Look look = Look::plain;
        std::string_view state{};
        std::string_view of{}; // what it acts on
    };
    std::optional<std::size_t> buttons(const Side& left, const std::optional<Side>& right = {});
    std::optional<std::size_t> choices(std::string_view group, Label name, std::span<const Choice> items, int columns);

    // --- figures
    bool figure(std::string_view id, const FigureLook& look, std::span<const double> cuts = {});
    /// Small ones side by side, between rules, in so many columns or in as many as their words can be read in; which was used.
    std::optional<std::size_t> figures(std::string_view prefix, std::span<const FigureCell> cells,
                                       std::size_t columns = 0);

private:
    Ui* ui_;
    Rect place_;
    float y_;
    Only only_;
};

} // namespace torchside::web
