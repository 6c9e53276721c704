#include "web/screens/cut/chart_marks.hpp"

namespace torchside::web {
namespace {

// In the order of DominantBasis, and of Tested.
constexpr const char* footing_names[] = {"physics", "shop practice"}; // and the cuts of a shop
constexpr const char* footing_words[] = {"physics", "practice", "cuts"};
constexpr const char* tested_words[] = {"", "near", "here"};
constexpr const char* reach_words[] = {"", "Edge start: no clean cut from a pierce", "Severs rough: no clean cut",
                                       ""}; // by Reach

constexpr Whose yours{"your cuts", {"", "Near a cut of yours", "You cut this"}, "cut by you"};
constexpr Whose of_example{
    "cuts of the example shop", {"", "Near a cut of the example shop", "The example shop cut this"}, "cut there"};

} // namespace

const Whose& whose(const App& app) {
    return app.book().shop.example ? of_example : yours;
}

std::string about_cell(const Whose& who, const std::string& range, tune::DominantBasis footing, Tested tested,
                       cut::Reach reach) {
    std::string out = reach_words[static_cast<std::size_t>(reach)];
    out += (out.empty() || range.empty() ? "" : ". ") + range;
    out += out.empty() ? "Basis: " : ". Basis: ";
    out += footing == tune::DominantBasis::cuts ? who.cuts : footing_names[static_cast<int>(footing)];
    return tested == Tested::none ? out : out + ". " + who.tested[static_cast<int>(tested)];
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

float chart_key(const Pen& pen, const Tokens& t, const Whose& who, Point at, float room, bool draw) {
    const float line_height = Pen::line_height(Type::label) + 3;
    const char* const names[] = {footing_names[0], footing_names[1], who.cuts, who.here, "near a cut"};
    float x = at.x;
    float y = at.y;
    for (int i = 0; i < 5; ++i) {
        const float w = 16 + pen.width(Type::label, names[i]) + 14;
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
            pen.text(Type::label, {x + 16, y}, t.ink, names[i]);
        }
        x += w;
    }
    return y + line_height - at.y;
}

} // namespace torchside::web
