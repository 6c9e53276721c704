#include "core/words/say.hpp"

#include <array>
#include <cmath>
#include <utility>

#include "core/quantity/field_unit.hpp"
#include "core/quantity/print.hpp"
#include "core/words/own_phrases.hpp"
#include "generated/words/language.hpp"

namespace torchside {

using words::Slot;

namespace {

using Where = Language::Group::Where;
#include "generated/words_tables.inc"

std::string with_unit(std::string number, std::string_view unit) {
    return Printed{std::move(number), unit}.text();
}

std::string pressure_up(double in_bar, Units units) {
    const bool metric = units.metric();
    const double step = metric ? 0.1 : 1.0;
    const auto unit = metric ? bar : psi;
    return print(Pressure{std::ceil(Pressure{in_bar, bar}.in(unit) / step - 1e-9) * step, unit}, units).text();
}

std::string size(double in_mm, Units units) {
    return units.metric() ? with_unit(print_trimmed(in_mm, 2, units), "mm")
                          : with_unit(print_trimmed(Length{in_mm, mm}.in(inch), 3, units), "in");
}

std::string feed(double in_mm_min, Units units) {
    return units.metric() ? with_unit(print_significant(in_mm_min, 2, units), "mm/min")
                          : with_unit(print_significant(Speed{in_mm_min, mm_min}.in(in_min), 2, units), "in/min");
}

std::string distance(double in_mm, Units units) {
    return units.metric() ? with_unit(print_trimmed(Length{in_mm, mm}.in(metre), 1, units), "m")
                          : with_unit(print_trimmed(Length{in_mm, mm}.in(foot), 0, units), "ft");
}

std::string section(double in_mm2, Units units) {
    return units.metric() ? with_unit(print_trimmed(in_mm2, 2, units), "mm²")
                          : with_unit(print_trimmed(in_mm2 / mm2_per_kcmil, 1, units), "kcmil");
}

std::string figure(Slot::Form form, double x, int digits, Units units) {
    using Form = Slot::Form;
    switch (form) {
    case Form::text:
    case Form::verbatim:
        break;
    case Form::fixed:
        return print_fixed(x, digits, units);
    case Form::trimmed:
        return print_trimmed(x, digits, units);
    case Form::significant:
        return print_significant(x, digits, units);
    case Form::money:
        return print_plain(x, digits, units);
    case Form::percent:
        return print_percent(x, digits, units).text();
    case Form::length:
        return print(Length{x, mm}, units).text();
    case Form::size:
        return size(x, units);
    case Form::limit:
        return print_at_most(Length{x, mm}, units).text();
    case Form::distance:
        return distance(x, units);
    case Form::speed:
        return print(Speed{x, mm_min}, units).text();
    case Form::feed:
        return feed(x, units);
    case Form::pressure:
        return print(Pressure{x, bar}, units).text();
    case Form::pressure_up:
        return pressure_up(x, units);
    case Form::flow:
        return print(Flow{x, litre_min}, units).text();
    case Form::volume:
        return print(Volume{x, litre}, units).text();
    case Form::mass:
        return print(Mass{x, kg}, units).text();
    case Form::water:
        return print_water(x, units).text();
    case Form::duration:
        return print(Duration{x, second}, units).text();
    case Form::current:
        return print(Current{x, ampere}, units).text();
    case Form::voltage:
        return print(Voltage{x, volt}, units).text();
    case Form::power:
        return with_unit(print_trimmed(x / 1000, 1, units), "kVA");
    case Form::section:
        return section(x, units);
    case Form::temperature:
        return units.metric() ? with_unit(print_fixed(x, digits, units), "°C")
                              : with_unit(print_fixed(x * 1.8 + 32, digits, units), "°F");
    case Form::low_end:
        return print_low_end(x, static_cast<FieldUnit>(digits), units);
    case Form::high_end:
        return print_high_end(x, static_cast<FieldUnit>(digits), units);
    }
    return {};
}

const char* start_of(Word word, const Language& language) {
    const auto number = static_cast<unsigned>(word);
    const Language::Group& group = language.groups[(number >> 8U) - 1];
    if (group.where == Where::nowhere) {
        return "";
    }
    const char* at = (group.where == Where::later ? language.later : language.now) + group.start;
    for (unsigned left = number & 0xFFU; left > 0; --left) {
        at += std::string_view{at}.size() + 1;
    }
    return at;
}

} // namespace

/// Goes through the bytes of a text.
class Teller {
public:
    explicit Teller(const Speech& speech) : speech_(speech) {}

    void tell(const Text& text) { tell(text.bytes_); }
    std::string take() { return std::move(out_); }

private:
    struct Filled {
        Slot::Form form{};
        std::string_view content{};
    };
    static constexpr std::size_t most_slots = 8; // this and the marks in a phrase: tools/embed_words
    static constexpr unsigned char first_plural = 16, by_units = 24, choice_end = 31;

    static std::size_t two_bytes(std::string_view at) {
        return static_cast<unsigned char>(at[0]) + 256U * static_cast<unsigned char>(at[1]);
    }

    static double value_of(std::string_view content) {
        std::array<char, sizeof(double)> bytes{};
        if (content.size() > bytes.size()) { // else it is no figure
            content.copy(bytes.data(), bytes.size(), 1);
        }
        return __builtin_bit_cast(double, bytes); // the wasm compiler's library has no std::bit_cast
    }

    void tell(std::string_view bytes) {
        for (bool first = true; !bytes.empty(); first = false) {
            if (!first) {
                out_ += ' ';
            }
            const Word word{static_cast<std::uint16_t>(two_bytes(bytes))};
            const std::size_t count = static_cast<unsigned char>(bytes[2]);
            bytes.remove_prefix(3);
            std::array<Filled, most_slots> slots{};
            for (std::size_t i = 0; i < count; ++i) {
                const std::size_t size = two_bytes(bytes.substr(1));
                slots[i] = {static_cast<Slot::Form>(bytes[0]), bytes.substr(3, size)};
                bytes.remove_prefix(3 + size);
            }
            tell_phrase(word, slots);
        }
    }

    void tell_phrase(Word word, const std::array<Filled, most_slots>& slots) {
        if (word == words::as_it_is) {
            return tell_slot(slots[0]);
        }
        if (word == words::by_units) {
            return tell_slot(slots[speech_.units.metric() ? 0 : 1]);
        }
        for (const char* at = start_of(word, speech_.language); *at != '\0'; ++at) {
            const auto sign = static_cast<unsigned char>(*at);
            if (sign > choice_end) {
                out_ += *at;
            } else if (sign < first_plural) {
                tell_slot(sign <= most_slots ? slots[sign - 1] : Filled{});
            } else if (sign == by_units) {
                at = tell_choice(at + 1, speech_.units.metric());
            } else {
                at = tell_choice(at + 1, sign < first_plural + most_slots &&
                                             value_of(slots[sign - first_plural].content) == 1.0);
            }
        }
    }

    /// "hole|holes" and a mark at its end, where it returns; before the end of a phrase that lacks it.
    const char* tell_choice(const char* at, bool wants_first) {
        for (bool first = true; *at != choice_end; ++at) {
            if (*at == '\0') {
                return at - 1;
            }
            if (*at == '|') {
                first = false;
            } else if (first == wants_first) {
                out_ += *at;
            }
        }
        return at;
    }

    void tell_slot(const Filled& slot) {
        if (slot.form == Slot::Form::text) {
            tell(slot.content);
        } else if (slot.form == Slot::Form::verbatim) {
            out_ += slot.content;
        } else {
            out_ += figure(slot.form, value_of(slot.content), slot.content[0], speech_.units);
        }
    }

    const Speech& speech_;
    std::string out_{};
};

namespace {

std::string titled(const Text& title, const std::string& below, const Speech& speech) {
    const std::string above = say(title, speech);
    return below.empty() ? above + '.' : above + ". " + below;
}

} // namespace

Speech::Speech(const Language& table, UnitSystem in) : language(table), units(in) {
    if (const char sign = *start_of(words::language::decimal_sign, table); sign != '\0') {
        units.decimal = sign; // a table of few groups does not say
    }
}

const Language& english() {
    return whole_language;
}

std::uint32_t words_fingerprint() {
    return fingerprint;
}

const Language& customers_english() {
    return customer_language;
}

const Language& readers_english() {
    return reader_language;
}

std::string_view phrase(Word word, const Language& language) {
    return start_of(word, language);
}

std::string say(const Text& text, const Speech& speech) {
    Teller teller{speech};
    teller.tell(text);
    return teller.take();
}

std::string say_below(const Message& message, const Speech& speech) {
    Text below = message.detail;
    below += message.remedy;
    return say(below, speech);
}

std::string say_summary(const Message& message, const Speech& speech) {
    return titled(message.title, say(message.detail, speech), speech);
}

std::string say(const Message& message, const Speech& speech) {
    return titled(message.title, say_below(message, speech), speech);
}

} // namespace torchside
