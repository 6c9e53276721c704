// When a change is to be kept. Writing the whole workbook at every letter is work for nothing; waiting for ever while
// somebody types would lose what a closed browser must not: an edit older than a second.
#pragma once

#include <algorithm>
#include <optional>

namespace torchside::web {

class SaveDelay {
public:
    static constexpr double after_last_ms = 300;  // change: the user has stopped
    static constexpr double after_first_ms = 600; // that is not kept yet, however long he goes on

    void changed(double now_ms) {
        last_ = now_ms;
        first_ = first_.value_or(now_ms);
    }
    void kept() { first_.reset(); }
    [[nodiscard]] bool waits() const { return first_.has_value(); }
    /// From now on; 0 when it is time, or past it. Something waits.
    [[nodiscard]] double left_ms(double now_ms) const {
        return std::max(0.0, std::min(last_ + after_last_ms, *first_ + after_first_ms) - now_ms);
    }

private:
    std::optional<double> first_{};
    double last_ = 0;
};

} // namespace torchside::web
