#include "core/document/coupon_file.hpp"

#include "core/document/figures.hpp"
#include "core/document/words.hpp"
#include "core/part/piece.hpp"

namespace torchside::document {

namespace {

void write_point(std::string_view key, part::Point p, JsonWriter& out) {
    out.key(key).open_line('[');
    out.number(p.x);
    out.number(p.y);
    out.close();
}

void write_leg(const tune::Leg& leg, const part::Run& run, JsonWriter& out) {
    out.open_line('{');
    out.key("label").text(leg.label);
    write_plain("number", leg.number > 0 ? std::optional(leg.number) : std::nullopt, out);
    write_amount("feed_mm_min", leg.feed, mm_min, out);
    write_amount("cut_height_mm", leg.cut_height, mm, out);
    out.key("height_control").flag(leg.height_control);
    write_amount("size_mm", leg.size, mm, out);
    write_point("start_mm", run.path.front().at, out);
    out.key("pieces").open('[');
    for (std::size_t i = 0; i + 1 < run.path.size(); ++i) {
        const part::Piece piece{run.path[i].at, run.path[i + 1].at, run.path[i].bulge};
        out.open('{');
        out.key("kind").text(piece_words[piece.straight() ? 0 : piece.bulge < 0.0 ? 1 : 2]);
        write_point("to_mm", piece.to, out);
        if (!piece.straight()) {
            write_point("centre_mm", part::arc_of(piece).centre, out);
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
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        write_leg(coupon.legs[i], coupon.path.runs[i], out);
    }
    out.close();
    out.close();
    return out.take();
}

} // namespace torchside::document
