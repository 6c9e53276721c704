// The browser's side of platform.hpp: small named calls into the page's shell object (web/page), and nothing else.
#include "web/platform/platform.hpp"

#include <cstdlib>
#include <emscripten.h>

// clang-format off
EM_JS(void, shell_request_frame, (), { Module['shell']['requestFrame'](); })
EM_JS(void, shell_wake, (int ms), { Module['shell']['wake'](ms); })
EM_JS(void, shell_mirror, (const char* text), { Module['shell']['mirror'](UTF8ToString(text)); })
EM_JS(void, shell_place, (const char* path), { Module['shell']['place'](UTF8ToString(path)); })
EM_JS(void, shell_theme, (const char* name, const char* ground), { Module['shell']['theme'](UTF8ToString(name), UTF8ToString(ground)); })
EM_JS(void, shell_save, (int slot, const char* record), { Module['shell']['save'](UTF8ToString(record), slot); })
EM_JS(void, shell_keep_in, (int ms), { Module['shell']['keepIn'](ms); })
EM_JS(void, shell_leave, (const char* record, const char* typed), { Module['shell']['leave'](UTF8ToString(record), UTF8ToString(typed)); })
EM_JS(void, shell_put, (int slot, const char* record), { Module['shell']['put'](UTF8ToString(record), slot); })
EM_JS(void, shell_save_kept, (), { Module['shell']['saveKept'](); })
EM_JS(char*, shell_load, (int slot), {
    var text = Module['shell']['load'](slot);
    var bytes = lengthBytesUTF8(text) + 1;
    var at = _malloc(bytes);
    stringToUTF8(text, at, bytes);
    return at;
})
EM_JS(char*, shell_fragment, (), {
    var text = Module['shell']['fragment']();
    var bytes = lengthBytesUTF8(text) + 1;
    var at = _malloc(bytes);
    stringToUTF8(text, at, bytes);
    return at;
})
EM_JS(void, shell_copy, (const char* text), { Module['shell']['copy'](UTF8ToString(text)); })
EM_JS(void, shell_share_text, (const char* title, const char* text), { Module['shell']['shareText'](UTF8ToString(title), UTF8ToString(text)); })
EM_JS(void, shell_share_quote, (const char* name, const char* link), { Module['shell']['shareQuote'](UTF8ToString(name), UTF8ToString(link)); })
EM_JS(void, shell_paste, (), { Module['shell']['paste'](); })
EM_JS(void, shell_vibrate, (int ms), { Module['shell']['vibrate'](ms); })
EM_JS(void, shell_install, (), { Module['shell']['install'](); })
EM_JS(void, shell_remember, (const char* name, const char* text), { Module['shell']['remember'](UTF8ToString(name), UTF8ToString(text)); })
EM_JS(char*, shell_remembered, (const char* name), {
    var text = Module['shell']['remembered'](UTF8ToString(name));
    var bytes = lengthBytesUTF8(text) + 1;
    var at = _malloc(bytes);
    stringToUTF8(text, at, bytes);
    return at;
})
EM_JS(void, shell_download, (const char* name, const char* type, const char* text), { Module['shell']['download'](UTF8ToString(name), UTF8ToString(type), UTF8ToString(text)); })
EM_JS(void, shell_save_quote, (const char* name, const char* link), { Module['shell']['saveQuote'](UTF8ToString(name), UTF8ToString(link)); })
EM_JS(void, shell_print, (), { Module['shell']['print'](); })
EM_JS(void, shell_pick_file, (const char* accept), { Module['shell']['pickFile'](UTF8ToString(accept)); })
EM_JS(void, shell_open_drawing, (), { Module['shell']['openDrawing'](); })
EM_JS(void, shell_read_drawing, (int unit), { Module['shell']['readDrawing'](unit); })
EM_JS(void, shell_cancel_drawing, (), { Module['shell']['cancelDrawing'](); })
EM_JS(int, shell_take_drawing, (double* to, int most), {
    var numbers = Module['shell']['takeDrawing']();
    if (!numbers || numbers.length != most) { return 0; }
    HEAPF64.set(numbers, to >> 3);
    return most;
})
EM_JS(int, shell_find_words, (const char* code, int spoken), { return Module['shell']['findWords'](UTF8ToString(code), spoken); })
EM_JS(void, shell_take_words, (char* to), { HEAPU8.set(Module['shell']['takeWords'](), to); })
EM_JS(char*, shell_language, (), {
    var text = Module['shell']['language']();
    var at = _malloc(text.length + 1);
    stringToUTF8(text, at, text.length + 1);
    return at;
})
EM_JS(char*, shell_locale, (), {
    var text = Module['shell']['locale']();
    var at = _malloc(text.length + 1);
    stringToUTF8(text, at, text.length + 1);
    return at;
})
EM_JS(void, shell_use_update, (), { Module['shell']['useUpdate'](); })
EM_JS(int, shell_wishes, (), { return Module['shell']['wishes'](); })
EM_JS(int, shell_reduced_motion, (), { return Module['shell']['reducedMotion'](); })
EM_JS(int, shell_whole, (), { return Module['shell']['whole'](); })
EM_JS(int, shell_fine_pointer, (), { return Module['shell']['finePointer'](); })
EM_JS(double, shell_density, (), { return Module['shell']['density'](); })
EM_JS(int, shell_today, (), { return Module['shell']['today'](); })
EM_JS(char*, shell_address, (), {
    var text = Module['shell']['address']();
    var bytes = lengthBytesUTF8(text) + 1;
    var at = _malloc(bytes);
    stringToUTF8(text, at, bytes);
    return at;
})
EM_JS(void, shell_open_page, (const char* address), { Module['shell']['openPage'](UTF8ToString(address)); })
EM_JS(int, shell_can_share, (), { return Module['shell']['canShare'](); })
EM_JS(void, shell_share, (const char* title, const char* address), { Module['shell']['share'](UTF8ToString(title), UTF8ToString(address)); })
EM_JS(int, shell_can_seal, (), { return Module['shell']['canSeal'](); })
EM_JS(char*, shell_new_key, (), {
    var text = Module['shell']['newKey']();
    var at = _malloc(text.length + 1);
    stringToUTF8(text, at, text.length + 1);
    return at;
})
EM_JS(void, shell_seal, (const char* link, const char* key), { Module['shell']['seal'](UTF8ToString(link), UTF8ToString(key)); })
EM_JS(void, shell_bench, (int what, int ms, int how), { Module['shell']['bench'](what, ms, how); })
EM_JS(double, shell_event_ms, (), { return window.event ? window.event.timeStamp : performance.now(); })
EM_JS(void, shell_qr, (const char* text), { Module['shell']['qr'](UTF8ToString(text)); })
// clang-format on

namespace torchside::web::platform {
namespace {

std::string owned(char* text) {
    std::string out(text);
    std::free(text);
    return out;
}

} // namespace

void request_frame() {
    shell_request_frame();
}
void wake(int milliseconds) {
    shell_wake(milliseconds);
}
double now_ms() {
    return emscripten_get_now();
}
double event_ms() {
    return shell_event_ms();
}
void publish(std::string_view tree_wire) {
    shell_mirror(std::string(tree_wire).c_str());
}
void place(std::string_view path) {
    shell_place(std::string(path).c_str());
}
void theme(std::string_view name, std::string_view ground) {
    shell_theme(std::string(name).c_str(), std::string(ground).c_str());
}
Saved save(int slot, std::string_view record) {
    shell_save(slot, std::string(record).c_str());
    return Saved::answers;
}
void keep_in(int milliseconds) {
    shell_keep_in(milliseconds);
}
void leave(std::string_view record, std::string_view typed) {
    shell_leave(std::string(record).c_str(), std::string(typed).c_str());
}
void put(int slot, std::string_view record) {
    shell_put(slot, std::string(record).c_str());
}
void save_kept() {
    shell_save_kept();
}
std::string load(int slot) {
    return owned(shell_load(slot));
}
std::string words_of(std::string_view code, bool spoken) {
    std::string words(static_cast<std::size_t>(shell_find_words(std::string(code).c_str(), spoken ? 1 : 0)), '\0');
    if (!words.empty()) {
        shell_take_words(words.data());
    }
    return words;
}
std::string language() {
    return owned(shell_language());
}
std::string locale() {
    return owned(shell_locale());
}
void copy(std::string_view text) {
    shell_copy(std::string(text).c_str());
}
void download(std::string_view name, std::string_view type, std::string_view text) {
    shell_download(std::string(name).c_str(), std::string(type).c_str(), std::string(text).c_str());
}
void save_quote(std::string_view name, std::string_view link) {
    shell_save_quote(std::string(name).c_str(), std::string(link).c_str());
}
void share_text(std::string_view title, std::string_view text) {
    shell_share_text(std::string(title).c_str(), std::string(text).c_str());
}
void share_quote(std::string_view name, std::string_view link) {
    shell_share_quote(std::string(name).c_str(), std::string(link).c_str());
}
void paste() {
    shell_paste();
}
void vibrate(int milliseconds) {
    shell_vibrate(milliseconds);
}
void install() {
    shell_install();
}
void remember(std::string_view name, std::string_view text) {
    shell_remember(std::string(name).c_str(), std::string(text).c_str());
}
std::string remembered(std::string_view name) {
    return owned(shell_remembered(std::string(name).c_str()));
}
void print() {
    shell_print();
}
void pick_file(std::string_view accept) {
    shell_pick_file(std::string(accept).c_str());
}
void open_drawing() {
    shell_open_drawing();
}
void read_drawing_as(int unit) {
    shell_read_drawing(unit);
}
void cancel_drawing() {
    shell_cancel_drawing();
}
std::vector<double> take_drawing(int count) {
    std::vector<double> numbers(static_cast<std::size_t>(count > 0 ? count : 0));
    numbers.resize(static_cast<std::size_t>(shell_take_drawing(numbers.data(), count)));
    return numbers;
}
void use_update() {
    shell_use_update();
}
void keep_awake(bool on) {
    shell_bench(0, on ? 1 : 0, 0);
}
void ring(const Bell& bell) {
    shell_bench(1 + bell.number, bell.after_ms, (bell.sound ? 1 : 0) + (bell.vibration ? 2 : 0) + (bell.last ? 4 : 0));
}
int today() {
    return shell_today();
}
std::string address() {
    return owned(shell_address());
}
void open_page(std::string_view address) {
    shell_open_page(std::string(address).c_str());
}
bool can_share() {
    return shell_can_share() != 0;
}
void share(std::string_view title, std::string_view address) {
    shell_share(std::string(title).c_str(), std::string(address).c_str());
}
bool can_seal() {
    return shell_can_seal() != 0;
}
std::string new_key() {
    return owned(shell_new_key());
}
void seal(std::string_view link, std::string_view key) {
    shell_seal(std::string(link).c_str(), std::string(key).c_str());
}
void qr(std::string_view text) {
    shell_qr(std::string(text).c_str());
}
Wishes wishes() {
    const int said = shell_wishes();
    return {.dark = (said & 1) != 0, .contrast = (said & 2) != 0};
}
bool reduced_motion() {
    return shell_reduced_motion() != 0;
}
bool whole() {
    return shell_whole() != 0;
}
bool fine_pointer() {
    return shell_fine_pointer() != 0;
}
float density() {
    return static_cast<float>(shell_density());
}
std::string fragment() {
    return owned(shell_fragment());
}

} // namespace torchside::web::platform
