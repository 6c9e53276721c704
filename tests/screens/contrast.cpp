// Text and lines stand out from their ground: the contrast of WCAG 2.2, "relative luminance" and "contrast ratio" of its glossary.
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <cmath>
#include <string>

#include "tests/screens/person.hpp"
#include "web/kit/theme.hpp"

using namespace torchside::web;

namespace {

double luminance(Colour c) {
    const auto linear = [&c](int shift) {
        const double s = static_cast<double>((c.rgb >> shift) & 0xFF) / 255;
        return s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(16) + 0.7152 * linear(8) + 0.0722 * linear(0);
}

double contrast(Colour a, Colour b) {
    const auto [dark, light] = std::minmax({luminance(a), luminance(b)});
    return (light + 0.05) / (dark + 0.05);
}

void stands_out(const Tokens& t, double figures, double text, double lines) {
    const std::string name = t.name;
    for (const Colour ground : {t.ground, t.fill}) {
        INFO(name << " on " << std::hex << ground.rgb);
        CHECK(contrast(t.ink, ground) >= figures);
        CHECK(contrast(t.rule, ground) >= std::max(3.0, lines));
        CHECK(contrast(t.hairline, ground) >= lines);
        for (const Colour c : {t.quiet, t.accent, t.caution, t.stop}) {
            INFO(std::hex << c.rgb);
            CHECK(contrast(c, ground) >= text);
        }
    }
}

} // namespace

TEST_CASE("contrast: the glossary's own extremes") {
    CHECK(contrast({0x000000}, {0xFFFFFF}) == 21.0);
    CHECK(contrast({0x777777}, {0x777777}) == 1.0);
    CHECK(std::abs(contrast({0x767676}, {0xFFFFFF}) - 4.54) <
          0.005); // the lightest gray that W3C's Understanding 1.4.3 calls enough
}

TEST_CASE("contrast: figures can be read in the sun, text by most, in both themes") {
    stands_out(paper, 12, 4.5, 1);
    stands_out(night, 12, 4.5, 1);
}

TEST_CASE("contrast: who asks for more gets it") {
    stands_out(paper_contrast, 17, 7, 3);
    stands_out(night_contrast, 17, 7, 3);
}

TEST_CASE("contrast: what the system asks for is heard, and the shop's own theme goes before its darkness") {
    keep_shop();
    Person p;
    CHECK(&p.app().tokens() == &paper);
    browser().wishes = {.dark = true, .contrast = true};
    CHECK(&p.app().tokens() == &night_contrast);
    browser().wishes = {.dark = true};
    CHECK(&p.app().tokens() == &night);
    browser().wishes = {.contrast = true};
    CHECK(&p.app().tokens() == &paper_contrast);
    browser().wishes = {};
}
