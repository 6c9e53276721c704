#include "core/schema/public_address.hpp"

#include <algorithm>
#include <array>

namespace torchside::document {

namespace {

std::string lower(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? char(c + 32) : c; });
    return out;
}

/// The host of an address in small letters; empty when there is none.
std::string host_of(std::string_view address) {
    const std::size_t slashes = address.find("://");
    if (slashes == std::string_view::npos) {
        return {};
    }
    std::string_view rest = address.substr(slashes + 3);
    rest = rest.substr(0, rest.find_first_of("/?#"));
    const std::size_t at = rest.rfind('@');
    rest.remove_prefix(at == std::string_view::npos ? 0 : at + 1);
    if (rest.starts_with('[')) { // IPv6
        return lower(rest.substr(1, rest.find(']') - 1));
    }
    return lower(rest.substr(0, rest.find(':')));
}

/// Four numbers between dots; false for anything else.
bool ipv4(std::string_view host, std::array<int, 4>& parts) {
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::size_t end = i == 3 ? host.size() : host.find('.');
        if (end == std::string_view::npos || end == 0 || end > 3) {
            return false;
        }
        parts[i] = 0;
        for (const char c : host.substr(0, end)) {
            if (c < '0' || c > '9') {
                return false;
            }
            parts[i] = parts[i] * 10 + (c - '0');
        }
        host.remove_prefix(std::min(end + 1, host.size()));
    }
    return host.empty();
}

bool private_ipv4(const std::array<int, 4>& p) {
    return p[0] == 0 || p[0] == 10 || p[0] == 127 || (p[0] == 100 && p[1] >= 64 && p[1] < 128) ||
           (p[0] == 169 && p[1] == 254) || (p[0] == 172 && p[1] >= 16 && p[1] < 32) || (p[0] == 192 && p[1] == 168);
}

bool private_ipv6(std::string_view host) {
    return host == "::1" || host == "::" || host.starts_with("fc") || host.starts_with("fd") ||
           host.starts_with("fe8") || host.starts_with("fe9") || host.starts_with("fea") || host.starts_with("feb");
}

bool private_name(std::string_view host) {
    if (host.ends_with('.')) {
        host.remove_suffix(1);
    }
    constexpr std::string_view ends[] = {".local", ".localhost", ".internal", ".lan", ".home.arpa", ".home", ".test"};
    return host.find('.') == std::string_view::npos ||
           std::any_of(std::begin(ends), std::end(ends), [&](std::string_view end) { return host.ends_with(end); });
}

} // namespace

bool only_here(std::string_view address) {
    const std::string host = host_of(address);
    if (host.empty()) {
        return true;
    }
    if (host.find(':') != std::string::npos) {
        return private_ipv6(host);
    }
    std::array<int, 4> parts{};
    return ipv4(host, parts) ? private_ipv4(parts) : private_name(host);
}

bool is_public_address(std::string_view address) {
    constexpr std::string_view start = "https://";
    const auto plain = [](char c) { return c > ' ' && c <= '~'; };
    return address.empty() || (address.starts_with(start) && address.size() > start.size() &&
                               std::all_of(address.begin(), address.end(), plain));
}

std::string link_base(std::string_view public_url, std::string_view page) {
    const std::string_view from = public_url.empty() ? page : public_url;
    return std::string(from.substr(0, from.find('#')));
}

} // namespace torchside::document
