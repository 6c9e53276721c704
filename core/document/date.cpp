#include "core/document/date.hpp"

#include <chrono>

namespace torchside::document {

namespace {

std::chrono::year_month_day date_of(int day) {
    return std::chrono::sys_days(std::chrono::days(day));
}

std::string two_digits(unsigned value) {
    return {static_cast<char>('0' + value / 10), static_cast<char>('0' + value % 10)};
}

} // namespace

std::optional<int> read_day(std::string_view iso) {
    int parts[3] = {};
    std::size_t part = 0;
    if (iso.size() != 10) {
        return {};
    }
    for (std::size_t i = 0; i < iso.size(); ++i) {
        const char c = iso[i];
        if (i == 4 || i == 7) {
            ++part;
            if (c != '-') {
                return {};
            }
        } else if (c < '0' || c > '9') {
            return {};
        } else {
            parts[part] = parts[part] * 10 + (c - '0');
        }
    }
    const std::chrono::year_month_day date{std::chrono::year(parts[0]),
                                           std::chrono::month(static_cast<unsigned>(parts[1])),
                                           std::chrono::day(static_cast<unsigned>(parts[2]))};
    if (!date.ok()) {
        return {};
    }
    const auto day = std::chrono::sys_days(date).time_since_epoch().count();
    return day >= 0 && day <= last_day ? std::optional(static_cast<int>(day)) : std::nullopt;
}

std::string iso_day(int day) {
    const auto date = date_of(day);
    return std::to_string(static_cast<int>(date.year())) + '-' + two_digits(static_cast<unsigned>(date.month())) + '-' +
           two_digits(static_cast<unsigned>(date.day()));
}

std::string print_day(int day) {
    constexpr std::string_view months = "JanFebMarAprMayJunJulAugSepOctNovDec";
    const auto date = date_of(day);
    return std::to_string(static_cast<unsigned>(date.day())) + ' ' +
           std::string(months.substr((static_cast<unsigned>(date.month()) - 1) * 3, 3)) + ' ' +
           std::to_string(static_cast<int>(date.year()));
}

} // namespace torchside::document
