// What can be read of damaged work is read, what cannot is counted, and nothing is made up.
#include <catch2/catch_test_macros.hpp>

#include <fstream>
#include <iterator>
#include <string>

#include "core/schema/intent.hpp"
#include "core/schema/schema.hpp"
#include "core/store/record.hpp"
#include "core/store/salvage.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/property/random_workbook.hpp"
#include "tests/property/rng.hpp"

using namespace torchside;
using namespace torchside::document;

#ifndef __EMSCRIPTEN__ // as wasm the tests have no files
namespace {

std::string demo() {
    std::ifstream file(std::string(TORCHSIDE_SOURCE_DIR) + "/assets/demo.json");
    const auto read = read_workbook(std::string(std::istreambuf_iterator<char>(file), {}));
    REQUIRE(read.ok());
    return write_workbook(read.value());
}

std::string replaced(std::string text, std::string_view what, std::string_view with) {
    const std::size_t at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), with);
}

} // namespace

TEST_CASE("whole work is salvaged to the last value") {
    const std::string json = demo();
    for (const std::string& bytes : {json, pack_record(json, 7)}) {
        const Salvaged out = salvage(bytes);
        CHECK(out.lost == 0);
        CHECK(write_workbook(out.workbook) == json);
    }
}

TEST_CASE("an unknown key, a value out of range and a word of later days cost themselves alone") {
    std::string json = demo();
    json = replaced(json, "\"job\": {", "\"job\": {\n    \"colour\": 3,");
    json = replaced(json, "\"quantity\": 24", "\"quantity\": -24");
    CHECK_FALSE(read_workbook(json).ok());
    const Salvaged out = salvage(json);
    CHECK(out.lost == 2);
    const auto whole = set(read_workbook(demo()).value(), "job.quantity", *default_of("job.quantity"));
    CHECK(write_workbook(out.workbook) == write_workbook(whole.value()));
}

TEST_CASE("one damaged byte anywhere costs at most six of all values and entries") {
    const std::string json = demo();
    const int all = salvage(json).read;
    test::Rng rng(11);
    int worst = 0;
    for (int i = 0; i < 2000; ++i) {
        std::string bytes = json;
        const std::size_t at = 20 + rng.below(bytes.size() - 20);
        bytes[at] = static_cast<char>(bytes[at] ^ static_cast<char>(1U << rng.below(7)));
        const Salvaged out = salvage(bytes);
        INFO("byte " << at << " of " << json.size() << ": " << bytes.substr(at - 20, 40));
        CHECK_FALSE(check(out.workbook).has_value());
        worst = std::max(worst, all - out.read);
        CHECK(out.read >= all - 7); // all that `display` holds
    }
    CHECK(worst > 0);
}

TEST_CASE("a cut record gives all that stands before the cut") {
    const std::string json = demo();
    const std::string record = pack_record(json, 9);
    const Salvaged half = salvage(record.substr(0, record.size() / 2));
    CHECK(half.read > 20);
    CHECK(half.workbook.shop.name == read_workbook(json).value().shop.name);
    CHECK_FALSE(check(half.workbook).has_value());
}

#endif

TEST_CASE("salvage takes anything and gives a workbook that holds its rules") {
    test::Rng rng(5);
    for (int i = 0; i < 300; ++i) {
        std::string bytes = write_workbook(test::random_workbook(rng));
        for (std::size_t n = rng.below(30); n > 0; --n) {
            const std::size_t at = rng.below(bytes.size());
            switch (rng.below(3)) {
            case 0:
                bytes[at] = static_cast<char>(rng.below(256));
                break;
            case 1:
                bytes.erase(at, rng.below(200));
                break;
            default:
                bytes.insert(at, "}\n  \"");
            }
            bytes += bytes.empty() ? "{" : "";
        }
        const Salvaged out = salvage(bytes);
        CHECK((out.read == 0 || !check(out.workbook)));
    }
    CHECK(salvage("").read == 0);
    CHECK(salvage("hello").read == 0);
    CHECK(salvage(std::string(3'000'000, '{')).read == 0);
}
