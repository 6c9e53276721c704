// The words of a printed result for every enum it tells of, in the order of the enum.
#pragma once

#include <string_view>

#include "core/schema/words.hpp"

namespace torchside::cli {

using document::word_of;

inline constexpr std::string_view reach_words[] = {"clean", "edge_start", "sever", "refused"};
inline constexpr std::string_view circuit_words[] = {"holds", "may_trip", "trips_within_hour", "trips_soon",
                                                     "cannot_deliver"};
inline constexpr std::string_view power_basis_words[] = {"estimate", "corrected", "nameplate", "plate_refuted"};
inline constexpr std::string_view check_words[] = {
    "drop",       "low_line",  "plug_load", "run_device",   "run_load", "cord_load", "welder_device",
    "welder_run", "generator", "nameplate", "breaker_load", "plug",     "plug_fit",  "welder_size"};
inline constexpr std::string_view cap_words[] = {"machine", "breaker", "run", "cord", "plug", "generator", "voltage"};
inline constexpr std::string_view rating_words[] = {"full", "plate", "entered", "assumed"};
inline constexpr std::string_view stop_words[] = {"panel", "breaker", "run", "cord", "machine", "torch"};
inline constexpr std::string_view tested_words[] = {"none", "near", "here"};
inline constexpr std::string_view footing_words[] = {"physics", "practice", "cuts"};
inline constexpr std::string_view taught_words[] = {"taught", "worn", "says_nothing", "outside_model"};
inline constexpr std::string_view air_words[] = {"sustained", "overworked", "runs_then_waits", "not_enough_pressure"};
inline constexpr std::string_view coupon_words[] = {"ladder", "heights", "kerf", "swirl"};
inline constexpr std::string_view piece_words[] = {"line", "clockwise", "counter_clockwise"};
inline constexpr std::string_view role_words[] = {"outer", "inner", "open"};
inline constexpr std::string_view line_words[] = {"setup",       "material", "machine", "labour",
                                                  "consumables", "energy",   "minimum", "margin"};
inline constexpr std::string_view choice_words[] = {"make", "buy", "even"};
inline constexpr std::string_view severity_words[] = {"note", "caution", "stop"};

} // namespace torchside::cli
