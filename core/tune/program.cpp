#include "core/tune/program.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

#include "core/part/piece.hpp"
#include "core/quantity/print.hpp"

namespace torchside::tune {
namespace {

constexpr std::size_t longest_word = 40;
constexpr Speed plunge{1000, mm_min}; // down to cut height: slow enough for any torch lifter; a prior

bool plain(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~' && c != '(' && c != ')'; });
}

std::optional<Fault> refusal(const Coupon& c, const Controller& w) {
    const struct {
        const char* field;
        std::string_view word;
        bool needed;
    } words[] = {{"shop.controller.torch_on", w.torch_on, true},
                 {"shop.controller.torch_off", w.torch_off, true},
                 {"shop.controller.height_on", w.height_on, false},
                 {"shop.controller.height_off", w.height_off, !w.height_on.empty()}};
    for (const auto& [field, word, needed] : words) {
        if (needed && word.find_first_not_of(' ') == std::string_view::npos)
            return Fault{field, "missing, accepted is 1 to 40 plain letters, no brackets"};
        if (word.size() > longest_word || !plain(word))
            return Fault{field, "not accepted, accepted is 0 to 40 plain letters, no brackets"};
        // Such a word would light the torch before or after a leg.
        if (word.data() != w.torch_on.data() && word == w.torch_on)
            return Fault{field, "the same word as torch on, accepted is another one"};
    }
    if (!w.z_words && c.kind == CouponKind::heights)
        return Fault{"shop.controller.z_words", "a height ladder needs heights in its program"};
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
        for (std::size_t i = 0; i < coupon_.legs.size(); ++i)
            cut(coupon_.legs[i], coupon_.path.runs[i]);
        line({words_.torch_off, "\nM2"});
        return std::move(text_);
    }

private:
    using Parts = std::initializer_list<std::string_view>;

    void line(Parts parts) {
        for (const std::string_view part : parts)
            text_ += part;
        text_ += '\n';
    }
    void comment(Parts parts) {
        const std::size_t from = text_.size();
        line(parts);
        std::replace_if(
            text_.begin() + static_cast<std::ptrdiff_t>(from), text_.end() - 1,
            [](char c) { return c < ' ' || c > '~' || c == '(' || c == ')'; }, ' ');
        text_.insert(from, 1, '(');
        text_.insert(text_.size() - 1, 1, ')');
    }

    // print_fixed is for the eye: a typographic minus, thin gaps between thousands. A controller wants none of them,
    // and no "-0.000".
    static std::string fixed(double value, int decimals) {
        std::string digits = print_fixed(std::abs(value), decimals);
        digits.erase(
            std::remove_if(digits.begin(), digits.end(), [](char c) { return c != '.' && !(c >= '0' && c <= '9'); }),
            digits.end());
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
        comment({"Test coupon: ", kinds[static_cast<std::size_t>(coupon_.kind)]});
        comment({title});
        comment({"Check before you run: units, origin, heights, torch words"});
        comment({"Needs ", place(coupon_.width), " by ", place(coupon_.height), inches_ ? " in" : " mm",
                 " of plate, origin at lower left"});
        comment({words_.z_words ? "Z 0 is the top of the plate" : "Heights are set by the controller"});
        line({"G17\n", inches_ ? "G20" : "G21", "\nG90\nG94"});
        line({words_.torch_off});
        if (!words_.height_off.empty())
            line({words_.height_off});
    }

    void up() {
        if (words_.z_words)
            line({"G0 Z", place(words_.safe_height)});
    }

    void pierce(const Leg& leg, part::Point at) {
        up();
        line({"G0 X", place(at.x), " Y", place(at.y)});
        if (words_.z_words)
            line({"G0 Z", place(coupon_.pierce_height)});
        line({words_.torch_on});
        const double dwell = coupon_.pierce_delay.in(second);
        const bool ms = words_.dwell == DwellUnit::millisecond;
        line({"G4 P", fixed(ms ? dwell * 1000.0 : dwell, ms ? 0 : 2)});
        if (words_.z_words)
            line({"G1 Z", place(leg.cut_height), " F", feed(std::min(leg.feed, plunge))});
    }

    void follow(const part::Run& run, Speed speed) {
        std::string feed_word = " F" + feed(speed); // once a run
        for (std::size_t i = 0; i + 1 < run.path.size(); ++i) {
            const part::Piece piece{run.path[i].at, run.path[i + 1].at, run.path[i].bulge};
            text_ += piece.straight() ? "G1" : piece.bulge < 0.0 ? "G2" : "G3";
            text_ += " X" + place(piece.to.x) + " Y" + place(piece.to.y);
            if (!piece.straight()) {
                const part::Point centre = part::arc_of(piece).centre - piece.from;
                text_ += " I" + place(centre.x) + " J" + place(centre.y);
            }
            line({feed_word});
            feed_word.clear();
        }
    }

    void cut(const Leg& leg, const part::Run& run) {
        comment({leg.label, leg.number > 0 ? " " + std::to_string(leg.number) : "",
                 leg.size ? " " + place(*leg.size) : "", ": ", feed(leg.feed),
                 inches_ ? " in/min, height " : " mm/min, height ", place(leg.cut_height)});
        const bool controlled = leg.height_control && !words_.height_on.empty();
        pierce(leg, run.path.front().at);
        if (controlled)
            line({words_.height_on});
        follow(run, leg.feed);
        if (controlled)
            line({words_.height_off});
        line({words_.torch_off});
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
