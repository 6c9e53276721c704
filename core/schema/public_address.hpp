// Where a customer opens the shop's quotes: the address that links are built on.
//
// What       whether an address can be opened from elsewhere. A page that stands in a file, on this machine or in the shop's own
//            network has one that a customer cannot reach.
// Source     addresses: RFC 1918 (10/8, 172.16/12, 192.168/16), RFC 3927 (169.254/16), RFC 6598 (100.64/10), RFC 1122 (127/8, 0/8),
//            RFC 4193 (fc00::/7), RFC 4291 (::1, fe80::/10). Names: RFC 6761 (.localhost, .test), RFC 6762 (.local), RFC 8375
//            (.home.arpa), ".internal" (ICANN, reserved for private use), ".lan", ".home" and names without a dot (common practice).
// Range      any text
#pragma once

#include <string>
#include <string_view>

namespace torchside::document {

/// True for "file:…", for no host at all, and for a host that only this machine or its own network knows.
[[nodiscard]] bool only_here(std::string_view address);

/// What "shop.public_url" accepts: nothing, or an https address of plain letters.
[[nodiscard]] bool is_public_address(std::string_view address);

/// What a link's "#…" is put after: the shop's own address when it has one, else where the page stands.
[[nodiscard]] std::string link_base(std::string_view public_url, std::string_view page);

} // namespace torchside::document
