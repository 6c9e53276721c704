// Signs and pictograms: our own strokes, 2 px, one size.
#pragma once

#include "core/words/text.hpp"
#include "web/kit/pen.hpp"

namespace torchside::web {

enum class Sign { holds, caution, stop };
enum class Mark {
    cut,
    tune,
    part,
    quote,
    shop,
    chart, // places
    machine,
    nozzle,
    height,
    table,
    circuit,
    air,
    screen,
    kept, // what stands in the shop
    chevron,
    close,
    erase,
    keyboard,
    back,
    send,
    rates,
    costs,
    quantities,
    terms,
    issued // what follows from a quote
};

/// About 18 px across, centred: a disc holds, a triangle cautions, a square stops.
void draw_sign(const Pen& pen, const Tokens& tokens, Sign sign, Point centre);
[[nodiscard]] Colour colour_of(const Tokens& tokens, Sign sign);
[[nodiscard]] Word word_of(Sign sign);

/// 24 px across, centred, times `scale`.
void draw_mark(const Pen& pen, Mark mark, Point centre, Colour colour, float scale = 1);

} // namespace torchside::web
