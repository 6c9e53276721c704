// Properties of the workbook file over random workbooks and damaged files.
#include <catch2/catch_test_macros.hpp>

#include <string>

#include "core/schema/intent.hpp"
#include "core/schema/schema.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/core/said.hpp"
#include "tests/property/random_workbook.hpp"

using namespace torchside;
using namespace torchside::document;

TEST_CASE("reading what was written gives the same workbook to the last bit") {
    test::Rng rng(1);
    for (int i = 0; i < 2000; ++i) {
        const Workbook w = test::random_workbook(rng);
        const auto fault = check(w);
        INFO((fault ? fault->field + ": " + test::said(fault->text) : ""));
        REQUIRE_FALSE(fault);
        const std::string text = write_workbook(w);
        const auto back = read_workbook(text);
        INFO((back ? "" : back.fault().field + ": " + test::said(back.fault().text)));
        REQUIRE(back.ok());
        REQUIRE(test::same(w, back.value()));
        REQUIRE(write_workbook(back.value()) == text);
    }
}

TEST_CASE("a damaged file is refused in one line or is a workbook in range") {
    test::Rng rng(2);
    const std::string good = write_workbook(test::random_workbook(rng));
    int refused = 0;
    for (int i = 0; i < 6000; ++i) {
        std::string text = good;
        for (auto n = 1 + rng.below(3); n > 0; --n) {
            const auto at = rng.below(text.size());
            if (rng.chance(0.3)) {
                text.erase(at, 1 + rng.below(40));
            } else {
                text[at] = static_cast<char>(rng.below(256));
            }
        }
        const auto read = read_workbook(text);
        if (!read) {
            ++refused;
            REQUIRE_FALSE(read.fault().field.empty());
            REQUIRE(test::said(read.fault().text).find(", accepted is ") != std::string::npos);
            REQUIRE((read.fault().field + test::said(read.fault().text)).find('\n') == std::string::npos);
        } else {
            REQUIRE_FALSE(check(read.value()));
        }
    }
    CHECK(refused > 3000);
}

namespace {

void collect(Fields fields, const std::string& prefix, std::vector<std::string>& out) {
    for (const Field& f : fields) {
        const std::string path = prefix + std::string(f.key);
        out.push_back(path);
        if (f.children) {
            collect(*f.children, path + (f.list ? "[0]." : "."), out);
        }
    }
}

} // namespace

TEST_CASE("every key is described, has a default in its range, and refuses what lies just outside") {
    std::vector<std::string> paths;
    collect(workbook_fields(), "", paths);
    CHECK(paths.size() > 100);
    test::Rng rng(3);
    Workbook w = test::random_workbook(rng);
    w.shop.tests.resize(1);
    w.shop.tests[0].verdict.reset();
    w.shop.others.resize(1);
    w.shop.wear.sets.resize(1);
    for (const std::string& path : paths) {
        INFO(path);
        const auto info = field(path);
        REQUIRE(info);
        CHECK(test::said(info->meaning).size() > 8);
        CHECK(test::said(info->meaning).ends_with('.'));
        if (info->kind == FieldKind::object || info->kind == FieldKind::list || info->kind == FieldKind::outline) {
            CHECK_FALSE(get(w, path));
            continue;
        }
        REQUIRE(default_of(path));
        CHECK((info->required || !judge(*info, *default_of(path)))); // what must be given has no default to judge
        CHECK(set(w, path, nullptr).ok() == info->nullable);
        if (info->kind != FieldKind::number && info->kind != FieldKind::integer) {
            CHECK_FALSE(set(w, path, 0.5).ok());
            continue;
        }
        CHECK_FALSE(judge(*info, info->low));
        CHECK_FALSE(judge(*info, info->high));
        CHECK(judge(*info, std::nextafter(info->low, -HUGE_VAL)));
        CHECK(judge(*info, std::nextafter(info->high, HUGE_VAL)));
        CHECK(judge(*info, NAN));
        CHECK(judge(*info, HUGE_VAL));
        CHECK(judge(*info, "6"));
    }
}
