#include "web/screens/navigation.hpp"

#include <algorithm>

namespace torchside::web {
namespace {

constexpr float two_columns = 700;
constexpr float three_columns = 1100;

/// Of a panel that goes in steps ("start", "start/2", ...) the step before; else none.
std::string before(std::string_view panel) {
    constexpr std::string_view steps = "start/";
    if (!panel.starts_with(steps)) {
        return {};
    }
    const char step = panel.back();
    return step > '2' && step <= '9' ? std::string(steps) + static_cast<char>(step - 1) : "start";
}

} // namespace

void Navigation::go(Page page) {
    page_ = page;
    panel_.clear();
}

bool Navigation::back() {
    if (!panel_.empty()) {
        panel_ = before(panel_);
        return false;
    }
    page_ = Page::cut;
    return true;
}

void Navigation::fit(float width) {
    width_ = width;
    columns_ = width >= three_columns ? 3 : width >= two_columns ? 2 : 1;
}

Navigation::Widths Navigation::widths() const {
    constexpr float least_first = 320;
    constexpr float least_last = 360;
    constexpr float least_middle = 290; // as in the narrowest window with three
    const float room = width_ - least_middle;
    Widths out = wanted_;
    out.last = columns_ > 2 ? std::clamp(out.last, least_last, std::max(least_last, room - least_first)) : 0;
    out.first = std::clamp(out.first, least_first, std::max(least_first, room - out.last));
    return out;
}

std::string Navigation::packed_widths() const {
    return std::to_string(static_cast<int>(wanted_.first)) + ' ' + std::to_string(static_cast<int>(wanted_.last));
}

void Navigation::unpack_widths(std::string_view packed) {
    int numbers[2] = {};
    int which = 0;
    for (const char c : packed) {
        if (c >= '0' && c <= '9' && numbers[which] < 10000) {
            numbers[which] = numbers[which] * 10 + (c - '0');
        } else {
            which = 1;
        }
    }
    if (numbers[0] > 0 && numbers[1] > 0) {
        wanted_ = {static_cast<float>(numbers[0]), static_cast<float>(numbers[1])};
    }
}

std::string Navigation::address() const {
    std::string out(row_of(page_).address);
    if (!panel_.empty()) {
        out += '/';
        out += panel_;
    }
    return out;
}

void Navigation::follow(std::string_view fragment) {
    go(Page::cut);
    for (const PageRow& row : pages()) {
        if (fragment.starts_with(row.address)) {
            page_ = row.page;
            const std::string_view rest = fragment.substr(row.address.size());
            panel_ = rest.size() > 1 && rest[0] == '/' ? rest.substr(1) : std::string_view();
        }
    }
}

} // namespace torchside::web
