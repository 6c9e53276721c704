#include "core/tune/program.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

#include "core/part/piece.hpp"
#include "core/quantity/print.hpp"
#include "generated/words/ask.hpp"
#include "generated/words/coupon_note.hpp"
#include "generated/words/refusal.hpp"

namespace torchside::tune {
namespace {

constexpr int longest_code = 40;
constexpr Speed plunge{1000, mm_min}; // down to cut height: slow enough for any torch lifter; a prior

bool plain(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~' && c != '(' && c != ')'; });
}

std::optional<Fault> refusal(const Coupon& c, const Controller& w) {
    const struct {
        const char* field;
        std::string_view code;
        bool needed;
    } codes[] = {{"shop.controller.torch_on", w.torch_on, true},
                 {"shop.controller.torch_off", w.torch_off, true},
                 {"shop.controller.height_on", w.height_on, false},
                 {"shop.controller.height_off", w.height_off, !w.height_on.empty()}};
    for (const auto& [field, code, needed] : codes) {
        if (needed && code.find_first_not_of(' ') == std::string_view::npos) {
            return Fault{field, words::ask::PlainRange{.least = 1, .most = longest_code}};
        }
        if (code.size() > longest_code || !plain(code)) {
            return Fault{field, words::ask::PlainUpTo{.most = longest_code}};
        }
        // Such a code would light the torch before or after a leg.
        if (code.data() != w.torch_on.data() && code == w.torch_on) {
            return Fault{field, words::refusal::code_alike};
        }
    }
    if (!w.z_words && c.kind == CouponKind::heights) {
        return Fault{"shop.controller.z_words", words::refusal::no_heights};
    }
    constexpr Length highest{100, mm};
    if (w.z_words && !(w.safe_height >= c.pierce_height && w.safe_height <= highest)) {
        return Fault{"shop.controller.safe_height_mm", words::refusal::SafeHeight{.most = words::size(highest)}};
    }
    return std::nullopt;
}

class Writer {
public:
    Writer(const Coupon& coupon, const Controller& controller, const Speech& speech)
        : coupon_(coupon), controller_(controller), speech_(speech), inches_(!speech.units.metric()) {}

    std::string write(const Text& title) {
        header(title);
        for (std::size_t i = 0; i < coupon_.legs.size(); ++i) {
            cut(coupon_.legs[i], coupon_.path.runs[i]);
        }
        line({controller_.torch_off, "\nM2"});
        return std::move(text_);
    }

private:
    using Parts = std::initializer_list<std::string_view>;

    void line(Parts parts) {
        for (const std::string_view part : parts) {
            text_ += part;
        }
        text_ += '\n';
    }
    void comment(const Text& text) { line({"(", ascii(say(text, speech_)), ")"}); }

    /// Controllers read ASCII: letters of Latin-1 go without their accents, and what is no letter or ends a comment is a
    /// blank.
    static std::string ascii(std::string_view said) {
        constexpr std::string_view latin =
            "AAAAAAACEEEEIIIIDNOOOOOxOUUUUYTsaaaaaaaceeeeiiiidnooooo/ouuuuyty"; // from U+00C0
        std::string out;
        for (std::size_t i = 0; i < said.size(); ++i) {
            const auto c = static_cast<unsigned char>(said[i]);
            if (c == 0xC3 && i + 1 < said.size()) {
                out += latin[static_cast<unsigned char>(said[++i]) & 0x3FU];
            } else {
                out += c < ' ' || c > '~' || c == '(' || c == ')' ? ' ' : said[i];
            }
        }
        return out;
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

    std::string with_unit(Length length) const { return place(length) + (inches_ ? " in" : " mm"); }

    void header(const Text& title) {
        using namespace words::coupon_note;
        constexpr std::array<Word, 4> kinds{ladder, heights, words::coupon_note::kerf, swirl};
        comment(Title{.kind = kinds[static_cast<std::size_t>(coupon_.kind)]});
        comment(title);
        comment(check);
        comment(Needs{.height = with_unit(coupon_.height), .width = place(coupon_.width)});
        comment(controller_.z_words ? z_zero : no_z);
        line({"G17\n", inches_ ? "G20" : "G21", "\nG90\nG94"});
        line({controller_.torch_off});
        if (!controller_.height_off.empty()) {
            line({controller_.height_off});
        }
    }

    void up() {
        if (controller_.z_words) {
            line({"G0 Z", place(controller_.safe_height)});
        }
    }

    void pierce(const Leg& leg, part::Point at) {
        up();
        line({"G0 X", place(at.x), " Y", place(at.y)});
        if (controller_.z_words) {
            line({"G0 Z", place(coupon_.pierce_height)});
        }
        line({controller_.torch_on});
        const double dwell = coupon_.dwell.in(second);
        const bool ms = controller_.dwell == DwellUnit::millisecond;
        line({"G4 P", fixed(ms ? dwell * 1000.0 : dwell, ms ? 0 : 2)});
        if (controller_.z_words) {
            line({"G1 Z", place(leg.cut_height), " F", feed(std::min(leg.feed, plunge))});
        }
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
        const std::string speed = feed(leg.feed) + (inches_ ? " in/min" : " mm/min");
        const std::string height = place(leg.cut_height);
        if (leg.size) {
            comment(words::coupon_note::Sized{
                .feed = speed, .height = height, .label = leg.label, .size = place(*leg.size)});
        } else {
            comment(words::coupon_note::Numbered{
                .feed = speed, .height = height, .label = leg.label, .number = leg.number});
        }
        const bool controlled = leg.height_control && !controller_.height_on.empty();
        pierce(leg, run.path.front().at);
        if (controlled) {
            line({controller_.height_on});
        }
        follow(run, leg.feed);
        if (controlled) {
            line({controller_.height_off});
        }
        line({controller_.torch_off});
        up();
    }

    const Coupon& coupon_;
    const Controller& controller_;
    const Speech& speech_;
    bool inches_;
    std::string text_{};
};

} // namespace

Outcome<std::string> program(const Coupon& coupon, const Controller& controller, const Speech& speech,
                             const Text& title) {
    if (auto fault = refusal(coupon, controller)) {
        return *fault;
    }
    return Writer(coupon, controller, speech).write(title);
}

} // namespace torchside::tune
