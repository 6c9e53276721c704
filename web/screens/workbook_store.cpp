#include "web/screens/workbook_store.hpp"

#include <algorithm>
#include <utility>

#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "web/platform/platform.hpp"

namespace torchside::web {

Workbook WorkbookStore::load() {
    auto kept = document::newest(platform::load(0), platform::load(1));
    if (!kept.ok()) {
        const std::string& field = kept.fault().field;
        found_ = field == "storage.empty" ? Found::nothing : field == "torchside" ? Found::newer : Found::unreadable;
        return {};
    }
    found_ = Found::work;
    counter_ = kept.value().counter;
    slot_ = kept.value().slot == document::Slot::a ? 1 : 0;
    base_ = std::move(kept.value().workbook);
    return base_;
}

void WorkbookStore::save(const Workbook& book, std::string_view written) {
    if (left_alone()) {
        return;
    }
    Sent next{book, std::string(written)};
    if (sent_) {
        waiting_ = std::move(next); // and takes the place of one that waits already
    } else {
        send(std::move(next));
    }
}

void WorkbookStore::send(Sent next) {
    sent_ = std::move(next);
    switch (platform::save(slot_, document::pack_record(sent_->written, counter_ + 1))) {
    case platform::Saved::kept:
        return kept();
    case platform::Saved::refused:
        refused_ = true;
        sent_.reset();
        return;
    case platform::Saved::answers:
        return;
    }
}

void WorkbookStore::kept() {
    base_ = std::move(sent_->book);
    sent_.reset();
    refused_ = false;
    found_ = Found::work;
    ++counter_;
    slot_ = 1 - slot_;
}

bool WorkbookStore::hears(std::string_view word) {
    if (word == "other-tab") {
        other_tab_ = !left_alone();
    } else if (word == "behind") {
        other_tab_ = true;
        sent_.reset();
    } else if (word == "not-kept") {
        refused_ = true;
        sent_.reset();
    } else if (sent_) {
        kept();
    }
    if (sent_) {
        return false; // its answer says how this one goes on
    }
    if (other_tab_) {
        other_tab_ = false;
        waiting_.reset(); // what it holds is put together with theirs
        return true;
    }
    if (waiting_) {
        send(*std::exchange(waiting_, {}));
    }
    return false;
}

std::optional<document::Merged> WorkbookStore::together(const Workbook& mine) {
    const Workbook base = base_;
    static_cast<void>(load());
    if (found_ == Found::nothing) { // cleared by the user or the browser: this tab's work is kept anew
        base_ = {};
        return document::Merged{mine, mine, {}};
    }
    if (left_alone()) {
        return {};
    }
    return document::merge(base, mine, base_);
}

std::string WorkbookStore::waiting() const {
    return waiting_ ? document::pack_record(waiting_->written, counter_ + 2) : std::string();
}

void WorkbookStore::begin_anew() {
    found_ = Found::nothing;
    counter_ = 0;
    slot_ = 0;
    for (const int slot : {0, 1}) {
        const auto record = document::open_record(platform::load(slot));
        if (record.ok() && record.value().counter >= counter_) {
            counter_ = record.value().counter; // what follows must count as newer
            slot_ = 1 - slot;
        }
    }
}

std::optional<document::Salvaged> WorkbookStore::salvage() const {
    auto a = document::salvage(platform::load(0));
    auto b = document::salvage(platform::load(1));
    auto& more = b.read > a.read ? b : a;
    return more.read > 0 ? std::optional(std::move(more)) : std::nullopt;
}

} // namespace torchside::web
