#include "core/tune/program.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/quantity/print.hpp"

namespace torchside::tune {
namespace {

constexpr std::size_t longest_word = 40;
constexpr const char* same_word = "the same word as torch on, accepted is another one";
constexpr Speed plunge{1000, mm_min}; // down to cut height: slow enough for any torch lifter; a prior

bool plain(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~' && c != '(' && c != ')'; });
}

std::optional<Fault> bad_word(std::string_view field, std::string_view word, bool needed) {
    const bool blank = word.find_first_not_of(' ') == std::string_view::npos;
    if (needed && blank)
        return Fault{std::string(field), "missing, accepted is 1 to 40 plain letters, no brackets"};
    if (word.size() > longest_word || !plain(word))
        return Fault{std::string(field), "not accepted, accepted is 0 to 40 plain letters, no brackets"};
    return std::nullopt;
}

std::optional<Fault> refusal(const Coupon& c, const Controller& w) {
    for (const auto& fault : {bad_word("shop.controller.torch_on", w.torch_on, true),
                              bad_word("shop.controller.torch_off", w.torch_off, true),
                              bad_word("shop.controller.height_on", w.height_on, false),
                              bad_word("shop.controller.height_off", w.height_off, !w.height_on.empty())})
        if (fault)
            return fault;
    // Such a word would light the torch before or after a leg.
    if (w.torch_on == w.torch_off)
        return Fault{"shop.controller.torch_off", same_word};
    if (w.torch_on == w.height_on)
        return Fault{"shop.controller.height_on", same_word};
    if (w.torch_on == w.height_off)
        return Fault{"shop.controller.height_off", same_word};
    if (!w.z_words && c.kind == CouponKind::heights)
        return Fault{"shop.controller.z_words",
                     "a height ladder needs a controller that takes heights from the program"};
    if (w.z_words && !(w.safe_height >= c.pierce_height && w.safe_height.in(mm) <= 100.0))
        return Fault{"shop.controller.safe_height_mm", "the safe height is between the pierce height and 100 mm"};
    return std::nullopt;
}

class Writer {
public:
    Writer(const Coupon& coupon, const Controller& words, UnitSystem units)
        : coupon_(coupon), words_(words), inches_(units == UnitSystem::inch) {}

    std::string write(std::string_view title) {
        header(title);
        for (const Leg& leg : coupon_.legs)
            cut(leg);
        line(words_.torch_off);
        line("M2");
        return std::move(text_);
    }

private:
    void line(std::string_view words) {
        text_ += words;
        text_ += '\n';
    }
    void comment(std::string_view words) {
        std::string clean(words);
        std::replace_if(
            clean.begin(), clean.end(), [](char c) { return c < ' ' || c > '~' || c == '(' || c == ')'; }, ' ');
        line("(" + clean + ")");
    }

    // print_fixed is for the eye and writes a typographic minus; a controller wants a plain one, and no "-0.000".
    static std::string fixed(double value, int decimals) {
        const std::string digits = print_fixed(std::abs(value), decimals);
        const bool zero = digits.find_first_not_of("0.") == std::string::npos;
        return value < 0.0 && !zero ? "-" + digits : digits;
    }
    std::string place(double value_mm) const { return inches_ ? fixed(value_mm / 25.4, 5) : fixed(value_mm, 3); }
    std::string place(Length length) const { return place(length.in(mm)); }
    std::string feed(Speed v) const {
        const double per_minute = inches_ ? v.in(in_min) : v.in(mm_min);
        return fixed(std::floor(per_minute * 10.0 + 1e-9) / 10.0, 1);
    }

    void header(std::string_view title) {
        constexpr std::array<std::string_view, 4> kinds{"feed ladder", "height ladder", "kerf square and hole",
                                                        "two squares for tilt and swirl"};
        comment("Test coupon: " + std::string(kinds[static_cast<std::size_t>(coupon_.kind)]));
        comment(title);
        comment("Check before you run: units, origin, heights, torch words");
        comment("Needs " + place(coupon_.width) + " by " + place(coupon_.height) + (inches_ ? " in" : " mm") +
                " of plate, origin at lower left");
        if (words_.z_words)
            comment("Z 0 is the top of the plate");
        else
            comment("Heights are set by the controller");
        line("G17");
        line(inches_ ? "G20" : "G21");
        line("G90");
        line("G94");
        line(words_.torch_off);
        if (!words_.height_off.empty())
            line(words_.height_off);
    }

    void up() {
        if (words_.z_words)
            line("G0 Z" + place(words_.safe_height));
    }

    void pierce(const Leg& leg) {
        up();
        line("G0 X" + place(leg.start.x_mm) + " Y" + place(leg.start.y_mm));
        if (words_.z_words)
            line("G0 Z" + place(coupon_.pierce_height));
        line(words_.torch_on);
        const double dwell = coupon_.pierce_delay.in(second);
        line("G4 P" + (words_.dwell == DwellUnit::millisecond ? fixed(dwell * 1000.0, 0) : fixed(dwell, 2)));
        if (words_.z_words)
            line("G1 Z" + place(leg.cut_height) + " F" + feed(std::min(leg.feed, plunge)));
    }

    void follow(const Leg& leg) {
        Point at = leg.start;
        bool feed_given = false;
        for (const Piece& piece : leg.pieces) {
            std::string words = piece.kind == Piece::Kind::line            ? "G1"
                                : piece.kind == Piece::Kind::arc_clockwise ? "G2"
                                                                           : "G3";
            words += " X" + place(piece.to.x_mm) + " Y" + place(piece.to.y_mm);
            if (piece.kind != Piece::Kind::line)
                words += " I" + place(piece.centre.x_mm - at.x_mm) + " J" + place(piece.centre.y_mm - at.y_mm);
            if (!feed_given)
                words += " F" + feed(leg.feed);
            feed_given = true;
            line(words);
            at = piece.to;
        }
    }

    void cut(const Leg& leg) {
        comment(leg.label + (leg.size ? " " + place(*leg.size) : "") + ": " + feed(leg.feed) +
                (inches_ ? " in/min, height " : " mm/min, height ") + place(leg.cut_height));
        const bool controlled = leg.height_control && !words_.height_on.empty();
        pierce(leg);
        if (controlled)
            line(words_.height_on);
        follow(leg);
        if (controlled)
            line(words_.height_off);
        line(words_.torch_off);
        up();
    }

    const Coupon& coupon_;
    const Controller& words_;
    bool inches_;
    std::string text_{};
};

} // namespace

Outcome<std::string> program(const Coupon& coupon, const Controller& controller, UnitSystem units,
                             std::string_view title) {
    if (auto fault = refusal(coupon, controller))
        return *fault;
    return Writer(coupon, controller, units).write(title);
}

} // namespace torchside::tune
