// Keeps the workbook in the browser: two generations written in turn, each with a checksum, so that a torn write loses
// one change and never the work. Nothing is written until the user changes something.
//
// A save names the generation that it builds on: the browser writes it only where that is still the newest, and says
// "behind" where another tab was first (web/page/js/storage.js). One save is on its way at a time; the next follows when
// the answer is there. Nothing that cannot be read is ever written over: see Found.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/store/merge.hpp"
#include "core/store/salvage.hpp"
#include "core/worksheet/workbook.hpp"

namespace torchside::web {

class WorkbookStore {
public:
    enum class Found {
        nothing,    // a first visit
        work,       // read
        unreadable, // something that no generation of can be read: left alone, and nothing is kept over it
        newer       // saved by a newer version: left alone in the same way
    };

    /// The newest good generation, or an empty shop when there is none.
    [[nodiscard]] Workbook load();
    /// `written` is the workbook as a file.
    void save(const Workbook& book, std::string_view written);

    /// The record that waits for a save under way, as it would follow that one; "" when none does.
    [[nodiscard]] std::string waiting() const;

    /// The page's word on a save or on another tab: "kept", "not-kept", "behind", "other-tab". True when another tab's
    /// work lies in the browser and is to be put together with this one's.
    [[nodiscard]] bool hears(std::string_view word);
    /// What this tab holds and what lies in the browser; save() the outcome where it differs from `theirs()`. None when
    /// there is nothing there, and when it cannot be read.
    [[nodiscard]] std::optional<document::Merged> together(const Workbook& mine);
    /// What lies in the browser, or will when what is on its way is there.
    [[nodiscard]] const Workbook& theirs() const { return waiting_ ? waiting_->book : sent_ ? sent_->book : base_; }

    /// The user lets go of what cannot be read: the next save takes its place.
    void begin_anew();
    /// What can still be read of it; none when nothing can.
    [[nodiscard]] std::optional<document::Salvaged> salvage() const;

    [[nodiscard]] Found found() const { return found_; }
    [[nodiscard]] bool left_alone() const { return found_ == Found::unreadable || found_ == Found::newer; }
    /// True when the browser refused to keep the last change, or said from the start that it will.
    [[nodiscard]] bool refused() const { return refused_; }
    void refuse() { refused_ = true; }
    /// A save is on its way, or waits for one that is.
    [[nodiscard]] bool busy() const { return sent_ || waiting_; }

private:
    struct Sent {
        Workbook book;
        std::string written;
    };
    void send(Sent next);
    void kept();

    Workbook base_; // what the browser holds, as far as this tab knows
    std::optional<Sent> sent_, waiting_;
    bool other_tab_ = false; // has news that wait for an answer
    unsigned counter_ = 0;
    int slot_ = 0;
    Found found_ = Found::nothing;
    bool refused_ = false;
};

} // namespace torchside::web
