// All that the app asks of the browser. browser.cpp answers with the page's shell object; headless.cpp answers where there
// is no browser.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace torchside::web::platform {

/// One more frame, as soon as the screen is ready for it.
void request_frame();
/// One frame after this many milliseconds; a new call replaces the old one, a negative one cancels.
void wake(int milliseconds);
[[nodiscard]] double now_ms();
/// When the browser's event that is being handed on happened, by the same clock.
[[nodiscard]] double event_ms();

void publish(std::string_view tree_wire);
void place(std::string_view path);
void theme(std::string_view name, std::string_view ground_css);

/// Keeps one generation, built on what load() gave last. `answers`: a notice follows: "kept", "not-kept" (private window,
/// storage full or refused) or "behind" (another tab has kept something since; load() gives it). "other-tab" says so too.
enum class Saved { kept, refused, answers };
Saved save(int slot, std::string_view record);
[[nodiscard]] std::string load(int slot);
/// The notice "keep" follows after this many milliseconds, without a frame; a new call replaces the old one. It follows at once
/// when the page is hidden or about to go.
void keep_in(int milliseconds);
/// What this page leaves behind if it goes now: the record that waits for a save under way, "" for none, and what a reload gets
/// by the notice "typed". Whoever is there next keeps the record. Where other work lies there by then, the notice "late" comes
/// inside the act that reads and writes (core/store/late.hpp): put() before it returns, or both are left as they are.
void leave(std::string_view record, std::string_view typed);
void put(int slot, std::string_view record);
/// All that lies in the browser's storage, byte for byte, as a file.
void save_kept();

/// Answered by a notice "copied" or "not-copied".
void copy(std::string_view text);
/// A text to whoever the user picks; where the browser shares none, or refuses, it is copied.
void share_text(std::string_view title, std::string_view text);
/// The same for rows that were copied elsewhere: a notice "pasted" has them, or "no-clipboard".
void paste();
/// A short one, where the device can and the user lets it.
void vibrate(int milliseconds);
/// Asks the user whether to install the page; a notice "may-install" said that it can be asked, "installed" takes that back.
void install();
/// Of this device alone: what was remembered under this name, "" for nothing.
void remember(std::string_view name, std::string_view text);
[[nodiscard]] std::string remembered(std::string_view name);
void download(std::string_view name, std::string_view type, std::string_view text);
/// The quote of this link as one file of that name; answered by a notice "saved" or "not-saved".
void save_quote(std::string_view name, std::string_view link);
/// The same file to whoever the user picks; where the browser shares no files it is saved.
void share_quote(std::string_view name, std::string_view link);
void print();
void pick_file(std::string_view accept);
/// Asks for a DXF or SVG from this device and reads it aside; the page then tells torchside_drawing() how that goes.
void open_drawing();
/// The same file again, its unit told: a drawing::DrawingUnit.
void read_drawing_as(int unit);
void cancel_drawing();
/// The numbers that were read (core/drawing/wire.hpp): as many as the page told.
[[nodiscard]] std::vector<double> take_drawing(int count);
void use_update();

/// The words of a language (core/words/word_file.hpp). Empty while there are none: a notice "words" follows when they have
/// arrived. Remembered for the next start.
[[nodiscard]] std::string words_of(std::string_view code, bool spoken = true);
/// The language of the browser: "es".
[[nodiscard]] std::string language();
/// As the browser has it, with its region where it names one: "es-MX".
[[nodiscard]] std::string locale();

/// The screen is to stay on from now, or need not any more. Answered by a notice "awake", now and whenever it changes: "on",
/// "refused", "none" (this browser has no such thing).
void keep_awake(bool on);
/// A beep and a buzz after so many milliseconds, each if wanted; one of each number waits, and less than none takes it back.
struct Bell {
    int number;
    int after_ms;
    bool sound, vibration;
    bool last = false; // the end of something: longer and lower
};
void ring(const Bell& bell);

/// Days since 1970-01-01 where the user is.
[[nodiscard]] int today();
/// The page's address without its fragment.
[[nodiscard]] std::string address();
void open_page(std::string_view address);
[[nodiscard]] bool can_share();
void share(std::string_view title, std::string_view address);
/// The browser lends its crypto: on https, from a file and on this machine.
[[nodiscard]] bool can_seal();
/// 64 random hex digits.
[[nodiscard]] std::string new_key();
/// Answered by a notice "sealed" with the whole link.
void seal(std::string_view link, std::string_view key);
/// Answered by a notice "qr" with the modules.
void qr(std::string_view text);

/// How the person's system asks pages to look: `prefers-color-scheme: dark` and `prefers-contrast: more` of Media Queries 5.
struct Wishes {
    bool dark = false;
    bool contrast = false;
};
[[nodiscard]] Wishes wishes();
[[nodiscard]] bool reduced_motion();
/// A mouse or the like, and no finger on any screen here.
[[nodiscard]] bool fine_pointer();
/// All of the program is there, not only what the first answer needs.
[[nodiscard]] bool whole();
[[nodiscard]] float density();
[[nodiscard]] std::string fragment();

} // namespace torchside::web::platform
