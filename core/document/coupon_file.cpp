#include "core/document/coupon_file.hpp"

#include "core/document/figures.hpp"
#include "core/document/words.hpp"

namespace torchside::document {

namespace {

void write_point(std::string_view key, tune::Point p, JsonWriter& out) {
    out.key(key).open_line('[');
    out.number(p.x_mm);
    out.number(p.y_mm);
    out.close();
}

void write_leg(const tune::Leg& leg, JsonWriter& out) {
    out.open_line('{');
    out.key("label").text(leg.label);
    write_plain("number", leg.number > 0 ? std::optional(leg.number) : std::nullopt, out);
    write_amount("feed_mm_min", leg.feed, mm_min, out);
    write_amount("cut_height_mm", leg.cut_height, mm, out);
    out.key("height_control").flag(leg.height_control);
    write_amount("size_mm", leg.size, mm, out);
    write_point("start_mm", leg.start, out);
    out.key("pieces").open('[');
    for (const tune::Piece& piece : leg.pieces) {
        out.open('{');
        out.key("kind").text(word_of(piece_words, piece.kind));
        write_point("to_mm", piece.to, out);
        if (piece.kind != tune::Piece::Kind::line) {
            write_point("centre_mm", piece.centre, out);
        }
        out.close();
    }
    out.close();
    out.close();
}

} // namespace

std::string write_coupon(const tune::Coupon& coupon) {
    JsonWriter out;
    out.open('{');
    out.key("kind").text(word_of(coupon_words, coupon.kind));
    write_amount("width_mm", coupon.width, mm, out);
    write_amount("height_mm", coupon.height, mm, out);
    write_amount("cut_mm", coupon.cut_length, mm, out);
    write_amount("time_s", coupon.time, second, out);
    write_amount("pierce_height_mm", coupon.pierce_height, mm, out);
    write_amount("pierce_delay_s", coupon.pierce_delay, second, out);
    out.key("legs").open('[');
    for (const tune::Leg& leg : coupon.legs) {
        write_leg(leg, out);
    }
    out.close();
    out.close();
    return out.take();
}

} // namespace torchside::document
