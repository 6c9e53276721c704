// The version of the workbook is tied to its keys: a schema that changed has another number, and every number that was
// can still be read.
#include <catch2/catch_test_macros.hpp>

#include <fstream>
#include <iterator>
#include <string>

#include "core/codec/crc32.hpp"
#include "core/schema/fields.hpp"
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
        for (const std::string_view word : i.words) {
            out += ' ' + std::string(word);
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

} // namespace

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
    // A schema that is in no release yet may still change without another number; from the first release on this fails.
    const bool released = read_file("../../CHANGELOG.md").find("## 0.1.0 (not yet released)") == std::string::npos;
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
