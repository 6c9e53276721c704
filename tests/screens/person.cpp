#include "tests/screens/person.hpp"

#include <catch2/catch_test_macros.hpp>
#include <fstream>
#include <iterator>
#include <set>
#include <stdexcept>

#include "core/link/link.hpp"
#include "core/quote/quote_html.hpp"
#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "web/platform/platform.hpp"

namespace torchside::web {
namespace {

bool is_named(const Node& node, std::string_view name) {
    return is_control(node.role) && node.name == name;
}

} // namespace

HeadlessBrowser& browser() {
    static HeadlessBrowser one;
    return one;
}

void HeadlessBrowser::keep_shop(bool example) {
    std::ifstream file(std::string(TORCHSIDE_SOURCE_DIR) + "/assets/demo.json");
    auto read = document::read_workbook(std::string(std::istreambuf_iterator<char>(file), {}));
    REQUIRE(read.ok());
    read.value().shop.example = example;
    kept[0] = document::pack_record(document::write_workbook(read.value()), 1);
}

Person::Person(float width, float height) : screen_{0, 0, width, height} {
    look();
}

void Person::resize(float width, float height) {
    screen_ = {0, 0, width, height};
    look();
}

void Person::look() {
    static Fonts fonts;
    static float built_scale = 0;
    for (int i = 0; i < 3; ++i) {
        if (app_.word_scale() != built_scale) {
            built_scale = app_.word_scale();
            fonts.build(1, built_scale);
        }
        Pen::witness = &written_;
        app_.frame(fonts, 1, screen_, now_);
        Pen::witness = nullptr;
        now_ += 16;
    }
    std::set<std::string_view> seen;
    for (const Node& node : app_.ui().tree().nodes()) {
        INFO("node " << node.id << " in " << node.parent);
        CHECK((node.parent.empty() || seen.contains(node.parent)));
        CHECK(seen.insert(node.id).second);
    }
}

void Person::touch_id(std::string_view id) {
    if (node(id) == nullptr) {
        throw std::runtime_error("nothing on screen has the id " + std::string(id) + ":\n" + text());
    }
    app_.ui().activate(id);
    look();
}

const Node* Person::named(std::string_view name) const {
    for (const Node& node : app_.ui().tree().nodes()) {
        if (is_named(node, name)) {
            return &node;
        }
    }
    return nullptr;
}

void Person::touch(std::string_view name) {
    const Node* found = named(name);
    if (found == nullptr) {
        throw std::runtime_error("no control is called '" + std::string(name) + "':\n" + text());
    }
    touch_id(std::string(found->id));
}

void Person::type(std::string_view label, std::string_view text) {
    touch(label);
    const std::string id = app_.ui().edit() ? app_.ui().edit()->id : std::string();
    if (id.empty()) {
        throw std::runtime_error("'" + std::string(label) + "' opens no field");
    }
    app_.ui().enter(id, text, true);
    look();
}

void Person::back() {
    app_.back();
    look();
}

std::string Person::reads(std::string_view name) const {
    const Node* found = named(name);
    return found != nullptr ? found->value : std::string();
}

std::string Person::text() const {
    std::string out;
    for (const Node& node : app_.ui().tree().nodes()) {
        out += node.name;
        for (const std::string* more : {&node.value, &node.about}) {
            if (!more->empty()) {
                out += " | " + *more;
            }
        }
        out += '\n';
    }
    return out;
}

// --- the browser's side of platform.hpp

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
    REQUIRE(quote.ok());
    browser().downloaded.push_back({std::string(name), "text/html", document::quote_file(quote.value(), "")});
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
