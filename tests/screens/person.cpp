#include "tests/screens/person.hpp"

#include <catch2/catch_test_macros.hpp>
#include <fstream>
#include <iterator>
#include <set>
#include <stdexcept>

#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"

namespace torchside::web {
namespace {

bool is_named(const Node& node, std::string_view name) {
    return is_control(node.role) && node.name == name;
}

} // namespace

void keep_shop(bool example) {
    std::ifstream file(std::string(TORCHSIDE_SOURCE_DIR) + "/assets/demo.json");
    auto read = document::read_workbook(std::string(std::istreambuf_iterator<char>(file), {}));
    REQUIRE(read.ok());
    read.value().shop.example = example;
    browser().kept[0] = document::pack_record(document::write_workbook(read.value()), 1);
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
    static bool built_accents = false;
    static float built_far = 0;
    for (int i = 0; i < 3; ++i) {
        if (app_.word_scale() != built_scale || app_.accents() != built_accents || app_.far_scale() != built_far) {
            built_scale = app_.word_scale();
            built_accents = app_.accents();
            built_far = app_.far_scale();
            fonts.build(1, built_scale, built_accents, built_far);
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

void Person::wait(double ms) {
    browser().now_ms += ms;
    if (browser().keep_at && *browser().keep_at <= browser().now_ms) {
        browser().keep_at.reset();
        app_.notice("keep", "");
    }
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

} // namespace torchside::web
