// The version of the workbook is tied to its keys: a schema that changed has another number, and every number that was
// can still be read.
#include <catch2/catch_test_macros.hpp>

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

#include "core/codec/crc32.hpp"
#include "core/schema/fields.hpp"
#include "core/schema/words.hpp"
#include "core/store/record.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::document;

#ifndef __EMSCRIPTEN__ // as wasm the tests have no files
namespace {

/// Every key with all that decides which values it accepts.
void describe(Fields fields, const std::string& path, std::string& out) {
    for (const Field& field : fields) {
        const FieldInfo& i = field.info;
        const std::string here = path + '.' + std::string(field.key);
        out += here + ' ' + std::to_string(static_cast<int>(i.kind)) + (i.nullable ? " null" : "") +
               (i.required ? " required" : "") + (i.plain ? " plain " : " ") + std::string(unit_name(i.unit));
        out += ' ' + std::to_string(i.low) + ' ' + std::to_string(i.high);
        if (i.words.data() == metal_words.data()) {
            out += " metals"; // one more at the end is the same version; tests/oracle/links.py holds their order
        } else {
            for (const std::string_view word : i.words) {
                out += ' ' + std::string(word);
            }
        }
        for (const int choice : i.choices) {
            out += ' ' + std::to_string(choice);
        }
        out += '\n';
        if (field.children != nullptr) {
            describe(*field.children, here, out);
        }
    }
}

std::string read_file(const std::string& name) {
    std::ifstream file(std::string(TORCHSIDE_SOURCE_DIR) + "/tests/data/" + name);
    return std::string(std::istreambuf_iterator<char>(file), {});
}

/// Whether any section of the change log is of a version that is out.
bool was_released(std::string_view log) {
    for (std::size_t at = log.find("\n## "); at != std::string_view::npos; at = log.find("\n## ", at + 1)) {
        const std::string_view heading = log.substr(at + 1, log.find('\n', at + 1) - at - 1);
        if (heading.find("(not yet released)") == std::string_view::npos) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("a version is out when its section of the change log says no other thing") {
    CHECK_FALSE(was_released("# Changelog\n\n## 0.1.0 (not yet released)\n\n- one\n"));
    CHECK(was_released("# Changelog\n\n## 0.1.0 (2027-01-05)\n\n- one\n"));
    CHECK(was_released("# Changelog\n\n## 0.2.0 (not yet released)\n\n- two\n\n## 0.1.0 (2027-01-05)\n"));
}

TEST_CASE("the schema is the one that its version number stands for") {
    std::string keys;
    describe(workbook_fields(), "", keys);
    const std::string line = std::to_string(workbook_version) + ' ' + std::to_string(codec::crc32(keys)) + '\n';
    const std::string pinned = read_file("workbook_versions.txt");
    INFO("the schema of this version now sums to: "
         << line
         << "A key or range changed. While this version is in no release, write that line into "
            "tests/data/workbook_versions.txt in place of its old one. After a release raise workbook_version "
            "(core/schema/schema.hpp), add the step from the version before to core/store/workbook_file.cpp, a "
            "sample tests/data/workbook_v<n>.json, and a line.");
    // Before the first release a schema may change without another number, and a line that lags is a warning. From then
    // on it fails; tools/validate_data sees to it that a released line is not written over.
    const bool released = was_released(read_file("../../CHANGELOG.md"));
    if (!released && pinned.find('\n' + line) == std::string::npos) {
        WARN("tests/data/workbook_versions.txt is to say: " << line);
    }
    CHECK((!released || pinned.find('\n' + line) != std::string::npos));
}

TEST_CASE("a workbook of every version that was is read") {
    for (int version = 1; version <= workbook_version; ++version) {
        const std::string sample = read_file("workbook_v" + std::to_string(version) + ".json");
        INFO("version " << version);
        REQUIRE(sample.find("\"torchside\": " + std::to_string(version)) != std::string::npos);
        const auto read = read_workbook(sample);
        REQUIRE(read.ok());
        CHECK(read.value().job.name == "Handrail bracket");
        CHECK(read.value().shop.tests.size() == 2);
        CHECK(write_workbook(read.value()).find("\"torchside\": " + std::to_string(workbook_version)) !=
              std::string::npos);
    }
}

#endif

TEST_CASE("a version that never was is refused, a newer one is named") {
    for (const char* version : {"0", "-1", "0.5", "\"1\"", "null"}) {
        const auto read = read_workbook("{\"torchside\": " + std::string(version) + "}");
        REQUIRE_FALSE(read.ok());
        CHECK(std::string(read.fault().field) == "torchside");
    }
    const auto newer = read_workbook("{\"torchside\": " + std::to_string(workbook_version + 1) + "}");
    REQUIRE_FALSE(newer.ok());
    CHECK(test::said(newer.fault().text).find("newer Torchside") != std::string::npos);
}
