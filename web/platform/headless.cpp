#include "web/platform/headless.hpp"

#include "core/link/link.hpp"
#include "core/quote/quote_html.hpp"
#include "core/words/languages.hpp"

namespace torchside::web {
namespace {

const Language& customers_words(std::string_view code) {
    const Language* language = language_of(code);
    return language != nullptr ? *language : customers_english();
}

} // namespace

HeadlessBrowser& browser() {
    static HeadlessBrowser one;
    return one;
}

namespace platform {

void request_frame() {}
void wake(int milliseconds) {
    browser().wake_ms = milliseconds;
}
double now_ms() {
    return browser().now_ms;
}
void publish(std::string_view) {}
void place(std::string_view path) {
    browser().fragment = path;
}
void theme(std::string_view, std::string_view) {}
Saved save(int slot, std::string_view record) {
    ++browser().writes;
    if (browser().saves) {
        return browser().saves(slot, record);
    }
    if (browser().refuses_to_keep) {
        return Saved::refused;
    }
    browser().kept[slot] = record;
    return Saved::kept;
}
void keep_in(int milliseconds) {
    browser().keep_at = browser().now_ms + milliseconds;
}
void leave(std::string_view record, std::string_view typed) {
    browser().left = {std::string(record), std::string(typed)};
}
void put(int slot, std::string_view record) {
    browser().kept[slot] = record;
}
void save_kept() {
    browser().downloaded.push_back({"kept", "text/plain", browser().kept[0] + browser().kept[1]});
}
std::string load(int slot) {
    return browser().loads ? browser().loads(slot) : browser().kept[slot];
}
std::string words_of(std::string_view code, bool) {
    const auto found = browser().words.find(std::string(code));
    return found == browser().words.end() ? std::string() : found->second;
}
std::string language() {
    return browser().language;
}
std::string locale() {
    return browser().locale;
}
void copy(std::string_view text) {
    browser().copied.emplace_back(text);
}
void download(std::string_view name, std::string_view type, std::string_view text) {
    browser().downloaded.push_back({std::string(name), std::string(type), std::string(text)});
}
void save_quote(std::string_view name, std::string_view link) {
    const auto quote = document::open_quote_link(link);
    if (quote.ok()) {
        browser().downloaded.push_back(
            {std::string(name), "text/html",
             document::quote_file(quote.value(), customers_words(quote.value().language), "")});
    }
}
void print() {
    ++browser().printed;
}
void pick_file(std::string_view) {}
void open_drawing() {}
void read_drawing_as(int) {}
void cancel_drawing() {}
std::vector<double> take_drawing(int) {
    return {};
}
void use_update() {}
void keep_awake(bool on) {
    browser().awake = on;
}
void ring(const Bell& bell) {
    browser().bells.push_back(bell);
}
int today() {
    return 20786; // 2026-11-29
}
std::string address() {
    return browser().address;
}
void open_page(std::string_view address) {
    browser().opened.emplace_back(address);
}
bool can_share() {
    return browser().can_share;
}
void share_text(std::string_view, std::string_view text) {
    browser().shared_texts.emplace_back(text);
}
void share_quote(std::string_view name, std::string_view) {
    browser().shared_files.emplace_back(name);
}
void paste() {
    ++browser().pastes;
}
void vibrate(int milliseconds) {
    browser().vibrated.push_back(milliseconds);
}
void install() {
    ++browser().installs;
}
void remember(std::string_view name, std::string_view text) {
    browser().device[std::string(name)] = text;
}
std::string remembered(std::string_view name) {
    return browser().device[std::string(name)];
}
void share(std::string_view, std::string_view address) {
    browser().shared.emplace_back(address);
}
bool can_seal() {
    return browser().can_seal;
}
std::string new_key() {
    return std::string(64, 'a');
}
void seal(std::string_view, std::string_view) {}
void qr(std::string_view) {}
Wishes wishes() {
    return browser().wishes;
}
bool reduced_motion() {
    return browser().reduced_motion;
}
bool whole() {
    return true;
}
bool fine_pointer() {
    return browser().fine_pointer;
}
float density() {
    return 1;
}
std::string fragment() {
    return browser().fragment;
}

} // namespace platform
} // namespace torchside::web
