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
/// All that lies in the browser's storage, byte for byte, as a file.
void save_kept();

/// Answered by a notice "copied" or "not-copied".
void copy(std::string_view text);
void download(std::string_view name, std::string_view type, std::string_view text);
/// The quote of this link as one file of that name; answered by a notice "saved" or "not-saved".
void save_quote(std::string_view name, std::string_view link);
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

[[nodiscard]] bool prefers_dark();
[[nodiscard]] bool reduced_motion();
/// A mouse or the like, and no finger on any screen here.
[[nodiscard]] bool fine_pointer();
/// All of the program is there, not only what the first answer needs.
[[nodiscard]] bool whole();
[[nodiscard]] float density();
[[nodiscard]] std::string fragment();

} // namespace torchside::web::platform
