// As much XML as an SVG needs: tags with attributes, one after another. Text, comments, declarations and the DOCTYPE
// are passed over; no entity is expanded but the five of XML itself and numbered signs, and those only where asked for.
// Internal to reading.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/words/text.hpp"

namespace torchside::drawing {

class SvgXml {
public:
    enum class Event { open, close, end, fault };

    explicit SvgXml(std::string_view text) : text_(text) {}

    /// The next tag; <a/> is an open and then a close.
    Event next();
    [[nodiscard]] std::string_view name() const { return name_; }          // without a prefix such as "svg:"
    [[nodiscard]] std::string_view prefix() const;                         // "svg:" or nothing
    [[nodiscard]] std::string_view attribute(std::string_view name) const; // as written; empty when not there
    [[nodiscard]] std::string_view content() const;                  // behind the tag at hand, up to the next close
    [[nodiscard]] std::size_t depth() const { return open_.size(); } // open elements, this one too
    [[nodiscard]] std::size_t offset() const { return tag_; }        // of the tag at hand
    [[nodiscard]] std::size_t line() const;                          // of the tag at hand, from 1
    [[nodiscard]] Word fault() const { return fault_; }

    /// Begin again at the tag with this offset, as if nothing were open.
    void go_to(std::size_t offset);

private:
    struct Attribute {
        std::string_view name{};
        std::string_view value{};
    };
    Event refuse(Word why);
    Event open_tag();
    Event close_tag();
    bool attributes();
    bool pass(std::string_view until); // to behind it
    bool pass_declaration();
    std::string_view take_name();
    void skip_blanks();
    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t tag_ = 0;
    std::string_view name_{};
    std::vector<Attribute> attributes_{};
    std::vector<std::string_view> open_{};
    bool closing_ = false; // the tag at hand was <a/>: its close comes next
    bool closed_ = false;  // the tag before was a close: leave it
    Word fault_{};
};

/// Whether a style sheet has a declaration that transforms or hides what it selects.
[[nodiscard]] bool moves_or_hides(std::string_view sheet);

/// A value of style="...": "none" for display in "fill:red; display: none". Empty when not there.
[[nodiscard]] std::string_view style_value(std::string_view style, std::string_view property);

} // namespace torchside::drawing
