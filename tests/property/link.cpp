// Properties of links over random workbooks and quotes, and damaged links. More of both: tests/links.
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <iterator>
#include <string>

#include "core/link/link.hpp"
#include "core/link/link_numbers.hpp"
#include "core/schema/intent.hpp"
#include "core/store/workbook_file.hpp"
#include "tests/core/said.hpp"
#include "tests/property/forged_link.hpp"
#include "tests/property/link_bytes.hpp"
#include "tests/property/random_quote.hpp"

using namespace torchside;
using namespace torchside::document;

TEST_CASE("a job link gives the same workbook to the last bit, without what stays on the device") {
    test::Rng rng(1);
    for (int i = 0; i < 2000; ++i) {
        Workbook w = test::random_workbook(rng);
        const std::string link = job_link(w);
        const auto back = open_job_link(link);
        INFO("workbook " << i << (back ? "" : back.fault().field + ": " + test::said(back.fault().text)));
        REQUIRE(back.ok());
        REQUIRE(back.value().shop.seal_key.empty());
        REQUIRE(back.value().shop.old_keys.empty());
        REQUIRE(back.value().shop.issued.empty());
        REQUIRE(back.value().shop.others.empty());
        REQUIRE(!back.value().shop.example);
        test::forget_own(w.shop);
        REQUIRE(test::same(w, back.value()));
        REQUIRE(job_link(back.value()) == link);
    }
}

TEST_CASE("a quote link gives the same quote") {
    test::Rng rng(2);
    for (int i = 0; i < 2000; ++i) {
        const Quote q = test::random_quote(rng);
        const auto fault = check_quote(q);
        INFO((fault ? fault->field + ": " + test::said(fault->text) : ""));
        REQUIRE_FALSE(fault);
        const auto back = open_quote_link(quote_link(q));
        INFO("quote " << i << (back ? "" : back.fault().field + ": " + test::said(back.fault().text)));
        REQUIRE(back.ok());
        REQUIRE(test::same(q, back.value()));
    }
}

namespace {

// What opening makes of a text is a refusal in one line, or something in range.
bool one_line_refusal(const Fault& fault) {
    return !fault.field.empty() && test::said(fault.text).find(", accepted is ") != std::string::npos &&
           (fault.field + test::said(fault.text)).find('\n') == std::string::npos;
}

} // namespace

TEST_CASE("a damaged link is refused; one that was made to lie is refused or in range") {
    test::Rng rng(3);
    int opened = 0;
    int refused = 0;
    for (int round = 0; round < 100; ++round) {
        Workbook w = test::random_workbook(rng);
        w.shop.tests.resize(std::min<std::size_t>(w.shop.tests.size(), 3));
        const std::string job = job_link(w);
        const std::string quote = quote_link(test::random_quote(rng));
        for (int i = 0; i < 100; ++i) {
            // The checksum lets one in 2^32 through.
            const std::string changed = test::damaged(job, rng);
            REQUIRE((changed == job || !open_job_link(changed)));
            const std::string inside = test::link_bytes(job);
            const auto forged =
                open_job_link(test::checked_link('j', test::damaged(inside.substr(0, inside.size() - 4), rng)));
            REQUIRE((forged ? !check(forged.value()) : one_line_refusal(forged.fault())));
            const std::string in_quote = test::link_bytes(quote);
            const auto lie =
                open_quote_link(test::checked_link('q', test::damaged(in_quote.substr(0, in_quote.size() - 4), rng)));
            REQUIRE((lie ? !check_quote(lie.value()) : one_line_refusal(lie.fault())));
            opened += (forged ? 1 : 0) + (lie ? 1 : 0);
            refused += (forged ? 0 : 1) + (lie ? 0 : 1);
        }
    }
    CHECK(opened > 200);
    CHECK(refused > 5000);
}

TEST_CASE("a quote link's body is the text that stands for what was opened") {
    test::Rng rng(4);
    for (int i = 0; i < 500; ++i) {
        const test::SealedPair pair = test::sealed_pair(rng, i % 2 == 0 ? 24 : 28);
        for (const std::string& text :
             {pair.body + '.' + pair.seal, "https://x/y#" + pair.body + '.' + pair.seal + '\n'}) {
            const auto read = open_sealed_quote(text);
            REQUIRE(read.ok());
            REQUIRE(read.value().body == pair.body);
            REQUIRE(read.value().seal == pair.seal);
            REQUIRE(test::same(read.value().quote, pair.quote));
        }
        REQUIRE(open_sealed_quote(pair.body).value().seal.empty());
    }
}

TEST_CASE("no text opens one quote under the seal of another") { // a million of them: tests/links
    test::Rng rng(5);
    int genuine = 0;
    int refused = 0;
    for (int i = 0; i < 20000; ++i) {
        static test::SealedPair pair;
        if (i % 500 == 0) {
            pair = test::sealed_pair(rng, i % 1000 == 0 ? 24 : 28);
        }
        const test::Seen seen = test::seen(pair, test::forged(pair, rng));
        REQUIRE(seen != test::Seen::fooled);
        genuine += seen == test::Seen::genuine ? 1 : 0;
        refused += seen == test::Seen::refused ? 1 : 0;
    }
    CHECK(genuine > 0);
    CHECK(refused > 10000);
}

namespace {

void each_key(Fields fields, void (*act)(std::string_view)) {
    for (const Field& f : fields) {
        act(f.key);
        if (f.children) {
            each_key(*f.children, act);
        }
    }
}

} // namespace

TEST_CASE(
    "every key has a number for links, save those that never go out: a new one goes to the end of link_numbers.cpp") {
    const auto has_number = [](std::string_view key) {
        constexpr std::string_view none[] = {"seal_key", "old_keys", "issued", "ending", "seal", "example", "others"};
        INFO(key);
        CHECK(link_number(key).has_value() == (std::find(std::begin(none), std::end(none), key) == std::end(none)));
    };
    each_key(workbook_fields(), has_number);
    each_key(quote_fields(), has_number);
}
