// The words of the file format for every enum of the workbook, in the order of the enum. The words a
// screen shows are the screen's own.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

#include "core/stock/metal.hpp"

namespace torchside::document {

using Words = std::span<const std::string_view>;

inline constexpr auto metal_words = stock::each_metal(&stock::MetalInfo::key);
inline constexpr std::string_view start_words[] = {"contact", "high_frequency", "capacitor"};
inline constexpr std::string_view breaker_words[] = {"ul489", "iec60898b", "iec60898c", "iec60898d"};
inline constexpr std::string_view plug_words[] = {"nema_5_15", "nema_5_20",  "nema_l5_30", "nema_6_20", "nema_6_30",
                                                  "nema_6_50", "nema_14_30", "nema_14_50", "uk_13",     "schuko_16",
                                                  "blue_16",   "blue_32",    "red_16",     "red_32",    "red_63"};
inline constexpr std::string_view country_words[] = {"us", "uk", "eu", "other"};
inline constexpr std::string_view ended_words[] = {"worn", "pulled"};
inline constexpr std::string_view verdict_words[] = {"clean", "too_fast", "too_slow"};
inline constexpr std::string_view pierce_words[] = {"good", "short", "long"};
inline constexpr std::string_view shape_words[] = {"plate",  "disc",          "ring",    "flange",
                                                   "gusset", "slotted_plate", "bracket", "drawing"};
inline constexpr std::string_view mesh_words[] = {"solid", "expanded", "grating", "perforated"};
inline constexpr std::string_view found_words[] = {
    "unit_unknown",    "not_read",   "elsewhere",   "hidden",   "flattened", "tilted",  "open_contour",
    "branch",          "duplicate",  "short_piece", "crossing", "overlap",   "no_area", "unchecked",
    "style_transform", "fit_points", "inside_out",  "face",     "cut_short"};
inline constexpr std::string_view torch_words[] = {"table", "hand_standoff", "hand_drag"};
inline constexpr std::string_view unit_words[] = {"metric", "inch"};
inline constexpr std::string_view dwell_words[] = {"s", "ms"};
inline constexpr std::string_view theme_words[] = {"auto", "paper", "night"};

template <class Enum>
[[nodiscard]] constexpr std::string_view word_of(Words words, Enum value) {
    return words[static_cast<std::size_t>(value)];
}

} // namespace torchside::document
