#include "web/screens/cut/chart_marks.hpp"

#include "generated/words/basis.hpp"
#include "generated/words/chart.hpp"

namespace torchside::web {
namespace {

// In the order of DominantBasis, and of Tested.
constexpr Word footing_names[] = {words::basis::physics, words::chart::practice}; // and the cuts of a shop
constexpr const char* footing_words[] = {"physics", "practice", "cuts"};
constexpr const char* tested_words[] = {"", "near", "here"};
constexpr Word reach_words[] = {{}, words::chart::edge_start, words::chart::rough, {}}; // by Reach

constexpr Whose yours{
    words::chart::your_cuts, {{}, words::chart::near_yours, words::chart::here_yours}, words::chart::by_you};
constexpr Whose of_example{
    words::chart::example_cuts, {{}, words::chart::near_example, words::chart::here_example}, words::chart::there};

} // namespace

const Whose& whose(const App& app) {
    return app.book().shop.example ? of_example : yours;
}

std::string about_cell(const App& app, const std::string& range, tune::DominantBasis footing, Tested tested,
                       cut::Reach reach) {
    const Whose& who = whose(app);
    std::string out = app.say(reach_words[static_cast<std::size_t>(reach)]);
    out += (out.empty() || range.empty() ? "" : ". ") + range;
    const Word basis = footing == tune::DominantBasis::cuts ? who.cuts : footing_names[static_cast<int>(footing)];
    out += (out.empty() ? "" : ". ") + app.say(words::chart::Basis{.what = basis});
    return tested == Tested::none ? out : out + ". " + app.say(who.tested[static_cast<int>(tested)]);
}

std::string paper_marks(tune::DominantBasis footing, Tested tested, cut::Reach reach) {
    std::string out = std::string("mark-") + footing_words[static_cast<int>(footing)];
    out += reach == cut::Reach::clean ? "" : " mark-unclean";
    return tested == Tested::none ? out : out + " mark-" + tested_words[static_cast<int>(tested)];
}

void footing_mark(const Pen& pen, Colour ink, tune::DominantBasis footing, Point c) {
    constexpr float half = 4.5F;
    const Rect box{c.x - half, c.y - half, 2 * half, 2 * half};
    const float filled = footing == tune::DominantBasis::cuts       ? box.w
                         : footing == tune::DominantBasis::practice ? half
                                                                    : 0;
    pen.fill({box.x, box.y, filled, box.h}, ink);
    pen.frame(box, ink, 1.25F);
}

void tested_mark(const Pen& pen, Colour ink, Tested tested, Point c) {
    if (tested == Tested::here) {
        pen.ring(c, 3.5F, ink, 1.5F);
    } else if (tested == Tested::near) {
        pen.disc(c, 2, ink);
    }
}

float chart_key(const App& app, Point at, float room, bool draw) {
    const Pen& pen = app.ui().pen();
    const Tokens& t = app.tokens();
    const Whose& who = whose(app);
    const float line_height = Pen::line_height(Type::label) + 3;
    const Word names[] = {footing_names[0], footing_names[1], who.cuts, who.here, words::chart::near};
    float x = at.x;
    float y = at.y;
    for (int i = 0; i < 5; ++i) {
        const std::string_view name = app.word(names[i]);
        const float w = 16 + pen.width(Type::label, name) + 14;
        if (x > at.x && x + w - 14 > at.x + room) {
            x = at.x;
            y += line_height;
        }
        if (draw) {
            const Point c{x + 5, y + Pen::line_height(Type::label) / 2};
            if (i < 3) {
                footing_mark(pen, t.ink, static_cast<tune::DominantBasis>(i), c);
            } else {
                tested_mark(pen, t.ink, i == 3 ? Tested::here : Tested::near, c);
            }
            pen.text(Type::label, {x + 16, y}, t.ink, name);
        }
        x += w;
    }
    return y + line_height - at.y;
}

} // namespace torchside::web
