// What a page left behind when it was closed, put together with the work that has been kept since.
//
// The page that finds it asks for this inside the one act of the database that reads and writes, so that it is put in
// once, whole, or not at all: no tab holds it alone at any time, and none can take it with it when it dies.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/store/merge.hpp"
#include "core/store/record.hpp"

namespace torchside::document {

/// Between the texts of `found`: no record holds one.
inline constexpr char late_mark = '\f';

struct Late {
    Merged merged{}; // `theirs` is as the closed page had it where both changed the same, `mine` as it lay there
    std::string record;
    Slot slot = Slot::a;
};

/// `found`: the record that the closed page built on ("" for none), the one that it left, and the two that lie there. None
/// when what it left or what lies there cannot be read: both are left alone then.
[[nodiscard]] std::optional<Late> put_late(std::string_view found);

} // namespace torchside::document
