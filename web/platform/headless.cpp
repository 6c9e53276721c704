#include "web/platform/headless.hpp"

#include "core/link/link.hpp"
#include "core/quote/quote_html.hpp"

namespace torchside::web {

HeadlessBrowser& browser() {
    static HeadlessBrowser one;
    return one;
}

namespace platform {

void request_frame() {}
void wake(int) {}
double now_ms() {
    return 1000;
}
void publish(std::string_view) {}
void place(std::string_view path) {
    browser().fragment = path;
}
void theme(std::string_view, std::string_view) {}
Saved save(int slot, std::string_view record) {
    if (browser().saves) {
        return browser().saves(slot, record);
    }
    if (browser().refuses_to_keep) {
        return Saved::refused;
    }
    browser().kept[slot] = record;
    return Saved::kept;
}
void save_kept() {
    browser().downloaded.push_back({"kept", "text/plain", browser().kept[0] + browser().kept[1]});
}
std::string load(int slot) {
    return browser().loads ? browser().loads(slot) : browser().kept[slot];
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
            {std::string(name), "text/html", document::quote_file(quote.value(), customers_english(), "")});
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
    return false;
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
bool prefers_dark() {
    return false;
}
bool reduced_motion() {
    return true;
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
