// Every key of the workbook that a person can know has a field on some panel that touches lead to.
#include <catch2/catch_test_macros.hpp>
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "core/schema/fields.hpp"
#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

using Names = std::set<std::string, std::less<>>;

/// Keys whose control has a name of its own.
const std::map<std::string, std::string, std::less<>> other_names = {
    {"job.thickness_mm", "stock/thickness"}, {"job.current_a", "stock/current"}, {"job.material", "stock/metal/"},
    {"job.torch", "stock/torch/"},           {"job.part.shape", "shape/"},       {"job.mesh.kind", "stock/kind/"},
};

/// Keys that nobody enters, and why.
const std::map<std::string, std::string, std::less<>> without = {
    {"job.part.drawing_name", "the name of the file that was opened"},
    {"job.part.drawing", "read from the file"},
    {"job.part.findings", "found by reading the file"},
    {"shop.others", "come with another shop's file"},
    {"shop.seal_key", "made on the device, secret"},
    {"shop.old_keys", "keys that were in use before"},
    {"shop.issued", "noted when a quote is handed out"},
    {"shop.example", "said on every screen; left by Start my shop"},
};

void keys_of(document::Fields fields, const std::string& above, Names& out) {
    for (const document::Field& field : fields) {
        const std::string path = above + (above.empty() ? "" : ".") + std::string(field.key);
        if (without.contains(path)) {
            continue;
        }
        if (field.info.kind == document::FieldKind::object) {
            keys_of(*field.children, path, out);
        } else if (field.info.kind == document::FieldKind::list) {
            keys_of(*field.children, path + "[0]", out);
        } else {
            out.insert(path);
        }
    }
}

/// A row of a list opens the panel of that row: "log/0".
bool is_list_row(std::string_view id) {
    for (const std::string_view list : {"log/", "wear/"}) {
        if (id.starts_with(list) && id.find_first_not_of("0123456789", list.size()) == std::string_view::npos) {
            return true;
        }
    }
    return false;
}

/// Touches all that opens something, from here on, and notes what is on the panels.
void gather(Person& person, Names& panels, Names& ids) {
    Names openers;
    for (const Node& node : person.app().ui().tree().nodes()) {
        ids.insert(node.id);
        if (node.role == Role::button && (node.state == "collapsed" || is_list_row(node.id))) {
            openers.insert(node.id);
        }
    }
    const Page page = person.app().page();
    const std::string panel = person.app().open_panel();
    for (const std::string& opener : openers) {
        person.touch_id(opener);
        if (person.app().open_panel() != panel && panels.insert(person.app().open_panel()).second) {
            gather(person, panels, ids);
        }
        person.app().go(page);
        person.app().open(panel);
        person.look();
    }
}

void gather_all(Person& person, Names& ids) {
    Names panels;
    for (const char* place : {"place/cut", "place/tune", "place/part", "place/quote", "place/shop"}) {
        person.app().close();
        person.look();
        person.touch_id(place);
        gather(person, panels, ids);
    }
}

bool starts_any(const Names& ids, const std::string& with) {
    const auto at = ids.lower_bound(with);
    return at != ids.end() && at->starts_with(with);
}

} // namespace

TEST_CASE("every key that a person can know has a field on screen") {
    browser() = {};
    Person person;
    Workbook book;
    book.shop.tests.push_back({.material = Metal::mild_steel, .thickness = {6, mm}, .current = {45, ampere}});
    book.shop.wear.sets.push_back({300, {60, minute}, wear::Ended::worn});
    Names ids;
    for (int shape = 0; shape <= static_cast<int>(part::Shape::bracket); ++shape) {
        book.job.part.shape = static_cast<part::Shape>(shape);
        book.job.mesh.kind = shape % 2 == 0 ? part::MeshKind::solid : part::MeshKind::expanded;
        REQUIRE(person.app().take(book, "A book"sv));
        gather_all(person, ids);
    }
    Names keys;
    keys_of(document::workbook_fields(), "", keys);
    CHECK(keys.size() > 100);
    for (const std::string& key : keys) {
        INFO("no field for " << key);
        const auto other = other_names.find(key);
        CHECK((ids.contains("field/" + key) || starts_any(ids, "field/" + key + "/") ||
               (other != other_names.end() && starts_any(ids, other->second))));
    }
    for (const auto& [key, why] : without) {
        INFO(key << " is said to have no field: " << why);
        CHECK_FALSE(ids.contains("field/" + key));
    }
}
