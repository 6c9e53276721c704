#include "core/quote/date.hpp"

#include "generated/words/date.hpp"

namespace torchside::document {

namespace {

constexpr int days_before_epoch = 719162; // from 0001-01-01

struct Date {
    int year = 0;
    int month = 1; // 1..12
    int day = 1;
};

bool is_leap(int year) {
    return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

int days_in(int year, int month) {
    constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month == 2 && is_leap(year) ? 29 : days[month - 1];
}

int first_day(int year) {
    const int before = year - 1;
    return before * 365 + before / 4 - before / 100 + before / 400 - days_before_epoch;
}

Date date_of(int day) {
    Date date{1970 + day / 366, 1, 1}; // never too late a year
    while (first_day(date.year + 1) <= day) {
        ++date.year;
    }
    int left = day - first_day(date.year);
    for (; left >= days_in(date.year, date.month); ++date.month) {
        left -= days_in(date.year, date.month);
    }
    date.day = left + 1;
    return date;
}

std::string two_digits(int value) {
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
    const auto& [year, month, day] = parts;
    if (year < 1970 || month < 1 || month > 12 || day < 1 || day > days_in(year, month)) {
        return {};
    }
    int number = first_day(year) + day - 1;
    for (int before = 1; before < month; ++before) {
        number += days_in(year, before);
    }
    return number <= last_day ? std::optional(number) : std::nullopt;
}

std::string iso_day(int day) {
    const Date date = date_of(day);
    return std::to_string(date.year) + '-' + two_digits(date.month) + '-' + two_digits(date.day);
}

Text day_words(int day) {
    using namespace words::date;
    constexpr Word months[] = {month_1, month_2, month_3, month_4,  month_5,  month_6,
                               month_7, month_8, month_9, month_10, month_11, month_12};
    const Date date = date_of(day);
    return Day{.day = date.day, .month = months[date.month - 1], .year = date.year};
}

} // namespace torchside::document
