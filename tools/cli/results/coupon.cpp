#include "tools/cli/results/coupon.hpp"

#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

Json point_json(tune::Point p) {
    return Json::array({number(p.x_mm), number(p.y_mm)});
}

Json piece_json(const tune::Piece& piece) {
    Json out = {{"kind", word_of(piece_words, piece.kind)}, {"to_mm", point_json(piece.to)}};
    if (piece.kind != tune::Piece::Kind::line) {
        out["centre_mm"] = point_json(piece.centre);
    }
    return out;
}

Json leg_json(const tune::Leg& leg) {
    return {{"label", leg.label},
            {"number", leg.number > 0 ? Json(leg.number) : Json()},
            {"feed_mm_min", amount(leg.feed, mm_min)},
            {"cut_height_mm", amount(leg.cut_height, mm)},
            {"height_control", leg.height_control},
            {"size_mm", amount(leg.size, mm)},
            {"start_mm", point_json(leg.start)},
            {"pieces", list_of(leg.pieces, piece_json)}};
}

} // namespace

Json coupon_json(const tune::Coupon& coupon) {
    return {{"kind", word_of(coupon_words, coupon.kind)},
            {"width_mm", amount(coupon.width, mm)},
            {"height_mm", amount(coupon.height, mm)},
            {"cut_mm", amount(coupon.cut_length, mm)},
            {"time_s", amount(coupon.time, second)},
            {"pierce_height_mm", amount(coupon.pierce_height, mm)},
            {"pierce_delay_s", amount(coupon.pierce_delay, second)},
            {"legs", list_of(coupon.legs, leg_json)}};
}

} // namespace torchside::cli
