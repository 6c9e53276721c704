#include "web/screens/tune/verdict_cards.hpp"

#include <string>

#include "generated/words/common.hpp"
#include "generated/words/feed_test.hpp"
#include "web/screens/job_cuts.hpp"

namespace torchside::web {
namespace {

constexpr Shows shows[] = {
    {tune::Verdict::too_slow, "slow", words::common::too_slow, words::feed_test::slow_sign,
     words::feed_test::slow_logged},
    {tune::Verdict::clean, "clean", words::common::clean, words::feed_test::clean_sign, words::feed_test::clean_logged},
    {tune::Verdict::too_fast, "fast", words::common::too_fast, words::feed_test::fast_sign,
     words::feed_test::fast_logged},
};

constexpr float with_sign = 130; // a card so high has room for what the eye looks for

/// A cut seen from the side, with what the eye looks for: drops under the plate, sparks below, or sparks over the top.
void cut_drawing(const Pen& pen, const Tokens& t, tune::Verdict verdict, Point c) {
    const Rect left{c.x - 36, c.y - 8, 30, 16};
    const Rect right{c.x + 6, c.y - 8, 30, 16};
    for (const Rect plate : {left, right}) {
        pen.fill(plate, t.fill);
        pen.frame(plate, t.ink, 1.5F);
    }
    pen.fill({c.x - 2, c.y - 20, 4, 28}, t.ink);
    switch (verdict) {
    case tune::Verdict::too_slow:
        for (const float x : {-10.0F, 10.0F}) {
            pen.disc({c.x + x, c.y + 11}, 4.5F, t.ink);
        }
        break;
    case tune::Verdict::clean:
        for (const float x : {-7.0F, 0.0F, 7.0F}) {
            pen.line({c.x, c.y + 9}, {c.x + x, c.y + 22}, t.accent, 2);
        }
        break;
    case tune::Verdict::too_fast:
        for (const float x : {-18.0F, -9.0F, 9.0F, 18.0F}) {
            pen.line({c.x, c.y - 9}, {c.x + x, c.y - 22}, t.accent, 2);
        }
        break;
    }
}

} // namespace

std::span<const Shows> all_shows() {
    return shows;
}

bool verdict_card(Ui& ui, Rect place, const Shows& show, std::string_view screen, std::string_view state) {
    const std::string id = std::string(screen) + show.id;
    const bool used = ui.node(id, Role::button, place, show.name, {}, state, show.sign);
    const Pen& pen = ui.pen();
    const Tokens& t = ui.tokens();
    pen.fill(place, ui.pressed(id) ? t.hairline : t.ground);
    pen.frame(place, t.ink, 1.5F);
    cut_drawing(pen, t, show.verdict, {place.centre().x, place.y + 30});
    if (place.h < with_sign) {
        pen.words_in({place.x + 4, place.y + 54, place.w - 8, place.h - 58}, Type::title, t.ink, ui.word(show.name),
                     Align::centre);
        return used;
    }
    pen.text(Type::title, {place.centre().x, place.y + 57}, t.ink, ui.word(show.name), Align::centre);
    pen.paragraph(Type::label, {place.x + 8, place.y + 78}, t.quiet, ui.word(show.sign), place.w - 14);
    return used;
}

void log_verdict(App& app, Speed feed, const Shows& show) {
    tune::TestCut cut = cut_of_job(app.book(), feed);
    cut.verdict = show.verdict;
    if (app.log(document::add(app.book(), cut), show.logged)) {
        app.scratch.inputs.cut_feed.reset();
    }
}

} // namespace torchside::web
