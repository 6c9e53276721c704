#include "core/codec/json.hpp"

#include <cmath>

#include "core/codec/decimal.hpp"

namespace torchside::codec {

void JsonWriter::line_end() {
    if (flat_from_ == 0) {
        out_ += '\n';
        out_.append(2 * closers_.size(), ' ');
    }
}

void JsonWriter::begin_value() {
    if (after_key_) {
        after_key_ = false;
        return;
    }
    if (closers_.empty()) {
        return;
    }
    if (!first_) {
        out_ += flat_from_ == 0 ? "," : ", ";
    }
    first_ = false;
    line_end();
}

void JsonWriter::open(char bracket) {
    begin_value();
    out_ += bracket;
    closers_ += bracket == '{' ? '}' : ']';
    first_ = true;
}

void JsonWriter::open_line(char bracket) {
    open(bracket);
    if (flat_from_ == 0) {
        flat_from_ = closers_.size();
    }
}

void JsonWriter::close() {
    const char bracket = closers_.back();
    const bool flat = flat_from_ != 0;
    if (closers_.size() == flat_from_) {
        flat_from_ = 0;
    }
    closers_.pop_back();
    if (!first_ && !flat) {
        line_end();
    }
    out_ += bracket;
    first_ = false;
}

JsonWriter& JsonWriter::key(std::string_view name) {
    text(name);
    out_ += ": ";
    after_key_ = true;
    return *this;
}

void JsonWriter::number(double value) {
    begin_value();
    out_ += std::isfinite(value) ? decimal_text(value) : "null";
}

void JsonWriter::flag(bool value) {
    begin_value();
    out_ += value ? "true" : "false";
}

void JsonWriter::null() {
    begin_value();
    out_ += "null";
}

void JsonWriter::text(std::string_view value) {
    begin_value();
    out_ += '"';
    for (const char c : value) {
        if (c == '"' || c == '\\') {
            out_ += '\\';
            out_ += c;
        } else if (static_cast<unsigned char>(c) < 0x20) {
            out_ += c < 0x10 ? "\\u000" : "\\u001";
            out_ += "0123456789abcdef"[c & 0xF];
        } else {
            out_ += c;
        }
    }
    out_ += '"';
}

std::string JsonWriter::take() {
    out_ += '\n';
    return std::move(out_);
}

} // namespace torchside::codec
