#include "tools/cli/results/coupon.hpp"

#include <utility>

#include "core/part/piece.hpp"
#include "core/words/say.hpp"
#include "tools/cli/results/words.hpp"

namespace torchside::cli {

namespace {

Json point_json(part::Point p) {
    return Json::array({number(p.x), number(p.y)});
}

Json piece_json(const part::Piece& piece) {
    Json out = {{"kind", piece_words[piece.straight()    ? 0
                                     : piece.bulge < 0.0 ? 1
                                                         : 2]},
                {"to_mm", point_json(piece.to)}};
    if (!piece.straight()) {
        out["centre_mm"] = point_json(part::arc_of(piece).centre);
    }
    return out;
}

Json leg_json(const tune::Leg& leg, const part::Run& run) {
    Json pieces = Json::array();
    for (std::size_t i = 0; i + 1 < run.path.size(); ++i) {
        pieces.push_back(piece_json({run.path[i].at, run.path[i + 1].at, run.path[i].bulge}));
    }
    return {{"label", say(leg.label, UnitSystem::metric)}, {"number", leg.number > 0 ? Json(leg.number) : Json()},
            {"feed_mm_min", amount(leg.feed, mm_min)},     {"cut_height_mm", amount(leg.cut_height, mm)},
            {"height_control", leg.height_control},        {"size_mm", amount(leg.size, mm)},
            {"start_mm", point_json(run.path.front().at)}, {"pieces", std::move(pieces)}};
}

} // namespace

Json coupon_json(const tune::Coupon& coupon) {
    Json legs = Json::array();
    for (std::size_t i = 0; i < coupon.legs.size(); ++i) {
        legs.push_back(leg_json(coupon.legs[i], coupon.path.runs[i]));
    }
    return {{"kind", word_of(coupon_words, coupon.kind)},
            {"width_mm", amount(coupon.width, mm)},
            {"height_mm", amount(coupon.height, mm)},
            {"cut_mm", amount(coupon.cut_length, mm)},
            {"time_s", amount(coupon.time, second)},
            {"pierce_height_mm", amount(coupon.pierce_height, mm)},
            {"pierce_delay_s", amount(coupon.pierce_delay, second)},
            {"dwell_s", amount(coupon.dwell, second)},
            {"legs", std::move(legs)}};
}

} // namespace torchside::cli
