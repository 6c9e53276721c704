// Keeps the workbook in the browser: two slots written in turn, each with a checksum, so that a torn write loses one
// change and never the work. Nothing is written until the user changes something.
#pragma once

#include <string_view>

#include "core/worksheet/workbook.hpp"

namespace torchside::web {

class Keeper {
public:
    /// The newest good record, or an empty shop when there is none.
    [[nodiscard]] Workbook load();
    void save(std::string_view written);
    /// True when the browser refused to keep the last change.
    [[nodiscard]] bool refused() const { return refused_; }
    /// True when what was kept is of a newer version than this app: it is shown, never overwritten.
    [[nodiscard]] bool read_only() const { return read_only_; }

private:
    unsigned counter_ = 0;
    int slot_ = 0;
    bool refused_ = false;
    bool read_only_ = false;
};

} // namespace torchside::web
