// What a contour of the part is called and measures.
#include "core/part/checks.hpp"
#include "core/part/measure.hpp"
#include "core/quantity/print.hpp"
#include "generated/words/common.hpp"
#include "generated/words/contour.hpp"
#include "generated/words/missing.hpp"
#include "web/screens/part/part_picture.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

constexpr Word size_names[] = {words::contour::width, words::contour::height,
                               words::contour::diameter}; // by PartSize::What

} // namespace

ContourWords words_of(const App& app, std::size_t i) {
    const part::Contour& contour = app.worksheet().part->outline.contours[i];
    const Units units = app.units();
    const part::Box box = part::box_of(contour);
    const Printed across = print(Length{box.width(), mm}, units);
    const bool round = across.number == print(Length{box.height(), mm}, units).number;
    const std::string size = round && contour.role != part::Role::outer ? across.text() : across_up(app, box);
    const int number = static_cast<int>(i) + 1;
    switch (contour.role) {
    case part::Role::outer:
        return {app.say(words::contour::Outside{.number = number}), size};
    case part::Role::inner:
        return {app.say(words::contour::Hole{.number = number}), size};
    case part::Role::open:
        break;
    }
    return {app.say(words::contour::Open{.number = number}), size};
}

std::string across_up(const App& app, const part::Box& box) {
    const Units units = app.units();
    const std::string across = print(Length{box.width(), mm}, units).number;
    return app.say(words::common::By{.across = across, .up = Length{box.height(), mm}});
}

void contour_words(Body& column) {
    App& app = column.app;
    const part::Contour& contour = app.worksheet().part->outline.contours[*app.scratch.contour];
    const ContourWords is = words_of(app, *app.scratch.contour);
    Text text = words::contour::About{.length = Length{part::length_mm(contour), mm}, .name = is.name, .size = is.size};
    const auto& settings = app.worksheet().settings;
    const Length kerf = settings ? settings->kerf.value : Length{};
    if (!settings) { // no kerf, and so nothing to say of what comes out
        text += words::verbatim(missing(app, words::missing::cut_sizes) + '.');
    }
    for (const part::PartSize& size :
         settings ? part::sizes_of({{contour}}, app.book().job.thickness, kerf) : std::vector<part::PartSize>()) {
        text += words::contour::ComesOut{.draw = size.draw,
                                         .drawn = size.drawn,
                                         .on_line = size.on_line,
                                         .what = size_names[static_cast<std::size_t>(size.what)]};
        if (size.deviation.state == part::Deviation::State::given) {
            text +=
                words::contour::Tolerance{.either_way = size.deviation.either_way, .standard = part::deviation_edition};
        }
    }
    column.gap(8);
    column.text("part/contour/words", app.say(text));
    column.gap(8);
}

} // namespace torchside::web
