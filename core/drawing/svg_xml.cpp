#include "core/drawing/svg_xml.hpp"

#include <algorithm>

#include "core/drawing/number.hpp"
#include "generated/words/drawing_fault.hpp"

namespace torchside::drawing {

namespace {

constexpr std::size_t deepest = 256;
constexpr std::size_t most_attributes = 256;

bool blank(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}
bool name_end(char c) {
    return blank(c) || c == '=' || c == '>' || c == '/' || c == '<' || c == '"' || c == '\'';
}

std::string_view local(std::string_view name) {
    const std::size_t colon = name.rfind(':');
    return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

} // namespace

SvgXml::Event SvgXml::refuse(Word why) {
    fault_ = why;
    return Event::fault;
}

std::size_t SvgXml::line() const {
    const auto end = text_.begin() + static_cast<std::ptrdiff_t>(std::min(tag_, text_.size()));
    return static_cast<std::size_t>(std::count(text_.begin(), end, '\n')) + 1;
}

std::string_view SvgXml::prefix() const {
    return open_.back().substr(0, open_.back().size() - name_.size());
}

void SvgXml::go_to(std::size_t offset) {
    at_ = offset;
    open_.clear();
    closing_ = closed_ = false;
}

bool SvgXml::pass(std::string_view until) {
    const std::size_t found = text_.find(until, at_);
    at_ = found == std::string_view::npos ? text_.size() : found + until.size();
    return found != std::string_view::npos;
}

// <!DOCTYPE ... [ <!ENTITY ...> ] >: brackets and quotes are minded, nothing in it is used.
bool SvgXml::pass_declaration() {
    char quote = 0;
    int square = 0;
    for (; at_ < text_.size(); ++at_) {
        const char c = text_[at_];
        if (quote != 0) {
            quote = c == quote ? '\0' : quote;
        } else if (c == '"' || c == '\'') {
            quote = c;
        } else if (c == '[') {
            ++square;
        } else if (c == ']') {
            --square;
        } else if (c == '>' && square <= 0) {
            ++at_;
            return true;
        }
    }
    return false;
}

void SvgXml::skip_blanks() {
    while (at_ < text_.size() && blank(text_[at_])) {
        ++at_;
    }
}

std::string_view SvgXml::take_name() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && !name_end(text_[at_])) {
        ++at_;
    }
    return text_.substr(begin, at_ - begin);
}

SvgXml::Event SvgXml::next() {
    if (closed_) {
        open_.pop_back();
        closed_ = false;
    }
    if (closing_) {
        closing_ = false;
        closed_ = true;
        return Event::close;
    }
    while (true) {
        const std::size_t found = text_.find('<', at_);
        if (found == std::string_view::npos) {
            tag_ = text_.size();
            return open_.empty() ? Event::end : refuse(words::drawing_fault::element_open);
        }
        tag_ = found;
        at_ = found + 1;
        const std::string_view rest = text_.substr(at_, 8);
        bool whole = true;
        if (rest.starts_with("!--")) {
            at_ += 3;
            whole = pass("-->");
        } else if (rest.starts_with("![CDATA[")) {
            whole = pass("]]>");
        } else if (rest.starts_with("?")) {
            whole = pass("?>");
        } else if (rest.starts_with("!")) {
            whole = pass_declaration();
        } else {
            return rest.starts_with("/") ? close_tag() : open_tag();
        }
        if (!whole) {
            return refuse(words::drawing_fault::comment_open);
        }
    }
}

SvgXml::Event SvgXml::open_tag() {
    const std::string_view whole_name = take_name();
    if (whole_name.empty()) {
        return refuse(words::drawing_fault::no_name);
    }
    if (open_.size() >= deepest) {
        return refuse(words::drawing_fault::elements_deep);
    }
    attributes_.clear();
    if (!attributes()) {
        return Event::fault;
    }
    open_.push_back(whole_name);
    name_ = local(whole_name);
    return Event::open;
}

SvgXml::Event SvgXml::close_tag() {
    ++at_;
    const std::string_view whole_name = take_name();
    skip_blanks();
    if (at_ >= text_.size() || text_[at_] != '>') {
        return refuse(words::drawing_fault::close_open);
    }
    ++at_;
    if (open_.empty() || open_.back() != whole_name) {
        return refuse(words::drawing_fault::not_open);
    }
    name_ = local(whole_name);
    closed_ = true;
    return Event::close;
}

bool SvgXml::attributes() {
    while (true) {
        skip_blanks();
        if (at_ < text_.size() && text_[at_] == '>') {
            ++at_;
            return true;
        }
        if (text_.substr(at_, 2) == "/>") {
            at_ += 2;
            closing_ = true;
            return true;
        }
        const std::string_view name = take_name();
        skip_blanks();
        if (name.empty() || at_ >= text_.size() || text_[at_] != '=') {
            refuse(words::drawing_fault::tag_open);
            return false;
        }
        ++at_;
        skip_blanks();
        const char quote = at_ < text_.size() ? text_[at_] : '\0';
        const std::size_t end = quote == '"' || quote == '\'' ? text_.find(quote, at_ + 1) : std::string_view::npos;
        if (end == std::string_view::npos) {
            refuse(words::drawing_fault::no_quotes);
            return false;
        }
        if (attributes_.size() >= most_attributes || !attribute(name).empty()) {
            refuse(words::drawing_fault::attribute_twice);
            return false;
        }
        attributes_.push_back({name, text_.substr(at_ + 1, end - at_ - 1)});
        at_ = end + 1;
    }
}

std::string_view SvgXml::attribute(std::string_view name) const {
    for (const Attribute& a : attributes_) {
        if (a.name == name) {
            return a.value;
        }
    }
    return {};
}

std::string_view SvgXml::content() const {
    const std::size_t end = closing_ ? at_ : std::min(text_.find("</", at_), text_.size());
    return text_.substr(at_, end - at_);
}

bool moves_or_hides(std::string_view sheet) {
    constexpr struct {
        std::string_view property, value; // what the value begins with; empty: any but none
    } sought[] = {{"transform", ""}, {"display", "none"}, {"visibility", "hidden"}, {"visibility", "collapse"}};
    const auto word = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || c == '_'; };
    for (const auto& [property, value] : sought) {
        for (std::size_t at = 0; at + property.size() <= sheet.size(); ++at) {
            if (!alike(sheet.substr(at, property.size()), property) || (at > 0 && word(sheet[at - 1]))) {
                continue;
            }
            std::string_view rest = without_blanks(sheet.substr(at + property.size()));
            if (!rest.starts_with(':')) {
                continue;
            }
            rest = without_blanks(rest.substr(1));
            if (value.empty() ? !alike(rest.substr(0, 4), "none") : alike(rest.substr(0, value.size()), value)) {
                return true;
            }
        }
    }
    return false;
}

std::string_view style_value(std::string_view style, std::string_view property) {
    while (!style.empty()) {
        const std::size_t end = std::min(style.find(';'), style.size());
        const std::string_view entry = style.substr(0, end);
        const std::size_t colon = entry.find(':');
        if (colon != std::string_view::npos && alike(without_blanks(entry.substr(0, colon)), property)) {
            std::string_view value = without_blanks(entry.substr(colon + 1));
            if (const std::size_t mark = value.find('!'); mark != std::string_view::npos) { // !important
                value = without_blanks(value.substr(0, mark));
            }
            return value;
        }
        style.remove_prefix(std::min(end + 1, style.size()));
    }
    return {};
}

} // namespace torchside::drawing
