#include "web/screens/keeper.hpp"

#include "core/document/record.hpp"
#include "core/document/workbook_file.hpp"
#include "web/platform/platform.hpp"

namespace torchside::web {

Workbook Keeper::load() {
    const auto kept = document::newest(platform::load(0), platform::load(1));
    if (!kept.ok()) {
        read_only_ = kept.fault().field == "torchside";
        return {};
    }
    counter_ = kept.value().counter;
    slot_ = kept.value().slot == document::Slot::a ? 1 : 0;
    return kept.value().workbook;
}

void Keeper::save(std::string_view written) {
    if (read_only_) {
        return;
    }
    refused_ = !platform::save(slot_, document::pack_record(written, ++counter_));
    if (!refused_) {
        slot_ = 1 - slot_;
    }
}

} // namespace torchside::web
