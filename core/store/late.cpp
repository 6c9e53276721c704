#include "core/store/late.hpp"

#include <array>
#include <utility>

#include "core/store/workbook_file.hpp"

namespace torchside::document {

std::optional<Late> put_late(std::string_view found) {
    std::array<std::string_view, 4> texts;
    for (std::string_view& text : texts) {
        text = found.substr(0, found.find(late_mark));
        found.remove_prefix(text.size() < found.size() ? text.size() + 1 : found.size());
    }
    const auto base = newest(texts[0], {}), left = newest(texts[1], {}), here = newest(texts[2], texts[3]);
    const bool none = !here.ok() && std::string_view(here.fault().field) == "storage.empty"; // cleared since
    if (!left.ok() || !(here.ok() || none)) {
        return {};
    }
    const Workbook& last = left.value().workbook;
    if (none) {
        return Late{{last, last, {}}, std::string(texts[1]), Slot::a};
    }
    const Kept& kept = here.value();
    Merged merged = merge(base.ok() ? base.value().workbook : Workbook{}, kept.workbook, last);
    std::string record = pack_record(write_workbook(merged.theirs), kept.counter + 1);
    return Late{std::move(merged), std::move(record), kept.slot == Slot::a ? Slot::b : Slot::a};
}

} // namespace torchside::document
