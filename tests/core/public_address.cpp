// Which addresses a customer can open, and what a shop may enter as its own.
#include <catch2/catch_test_macros.hpp>
#include <string>

#include "core/schema/intent.hpp"
#include "core/schema/public_address.hpp"
#include "tests/core/said.hpp"

using namespace torchside;
using namespace torchside::document;

TEST_CASE("an address that only this machine or its network knows is told from one that the world can open") {
    for (const char* here : {"localhost:8080/",
                             "LOCALHOST/",
                             "shop.localhost/",
                             "127.0.0.1:8080/",
                             "127.9.9.9/",
                             "0.0.0.0:8080/",
                             "10.0.0.7/",
                             "172.16.0.1/",
                             "172.31.255.255/",
                             "192.168.1.20:8080/index.html#/cut",
                             "169.254.3.4/",
                             "100.64.0.1/",
                             "[::1]:8080/",
                             "[fe80::1]/",
                             "[fd12:3456::1]/",
                             "bench/",
                             "bench.local/",
                             "bench.local./",
                             "nas.lan/",
                             "nas.home.arpa/",
                             "anna:secret@192.168.1.20/"}) {
        INFO(here);
        CHECK(only_here(std::string("http://") + here));
    }
    for (const char* here : {"file:///D:/torchside.html", "", "torchside.html"}) {
        INFO(here);
        CHECK(only_here(here));
    }
    for (const char* out : {"shop.example/torchside/", "8.8.8.8/", "172.15.0.1/", "172.32.0.1/", "11.0.0.1/",
                            "100.63.0.1/", "192.169.0.1/", "localhost.example/", "10.example/", "1.2.3/",
                            "[2001:db8::1]/", "shop.example/#/192.168.1.1", "local.shop.example/"}) {
        INFO(out);
        CHECK_FALSE(only_here(std::string("https://") + out));
    }
}

TEST_CASE("a shop's public address is https or nothing, and says what to enter") {
    const Workbook fresh;
    for (const char* good : {"", "https://shop.example", "https://shop.example/torchside/index.html?a=1#/quote"}) {
        INFO(good);
        CHECK(set(fresh, "shop.public_url", good).ok());
    }
    for (const char* bad : {"shop.example", "http://shop.example/", "https://", "https://shop example/",
                            "ftp://shop.example", "javascript:alert(1)", "https://sh\xC3\xB6p.example/"}) {
        const auto refused = set(fresh, "shop.public_url", bad);
        INFO(bad);
        REQUIRE_FALSE(refused.ok());
        CHECK(test::said(refused.fault().text) ==
              "not an address for links, accepted is one with https:// and no blanks");
    }
    const std::string longest = "https://" + std::string(192, 'a');
    CHECK(set(fresh, "shop.public_url", std::string_view(longest)).ok());
    CHECK_FALSE(set(fresh, "shop.public_url", std::string_view(longest + 'a')).ok());
}

TEST_CASE("a link stands on the shop's public address, without what follows its #") {
    CHECK(link_base("", "http://localhost:8080/#/quote") == "http://localhost:8080/");
    CHECK(link_base("https://shop.example/t/#/cut", "http://127.0.0.1:8080/") == "https://shop.example/t/");
}
