#include "core/link/link.hpp"

#include <algorithm>

#include "core/codec/base64url.hpp"
#include "core/codec/crc32.hpp"
#include "core/link/link_pack.hpp"
#include "core/quote/quote_fields.hpp"
#include "core/schema/access.hpp"
#include "generated/words/link_fault.hpp"

namespace torchside::document {

namespace {

using Wrong = std::optional<Fault>;

constexpr std::size_t check_size = 4;

// Letters of a seal: which key (2) and 16 bytes; or its kind (1), which key (5) and 16 bytes.
constexpr bool is_seal_size(std::size_t letters) {
    return letters == 24 || letters == 28;
}

Fault damaged() {
    return {"link", words::link_fault::damaged, words::link_fault::damaged_do};
}

std::string framed(LinkKind kind, std::string_view cbor) {
    std::string bytes{static_cast<char>(link_version), static_cast<char>(kind)};
    bytes += cbor;
    const std::uint32_t check = codec::crc32(bytes);
    for (unsigned shift = 32; shift > 0;) {
        shift -= 8;
        bytes += static_cast<char>(static_cast<unsigned char>(check >> shift & 0xFFU));
    }
    return (kind == LinkKind::job ? "j=" : "q=") + codec::to_base64url(bytes);
}

bool begins_link(std::string_view text) {
    return text.starts_with("j=") || text.starts_with("q=");
}

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n"; // copied along
    text.remove_prefix(std::min(text.find_first_not_of(blanks), text.size()));
    return text.substr(0, text.find_last_not_of(blanks) + 1);
}

// The link in an address: what stands after the first '#', as browsers take an address apart. A second one is a letter like
// any other then, and no letter of a link; so is any in a text that is a link from its start.
std::string_view tail(std::string_view text) {
    text = trimmed(text);
    const std::size_t hash = begins_link(text) ? std::string_view::npos : text.find('#');
    return hash == std::string_view::npos ? text : trimmed(text.substr(hash + 1));
}

struct Framed {
    std::string cbor{};
    std::string seal{};
};

// The CBOR inside, when everything around it is right, and the seal behind it, when there is one.
Wrong unframe(std::string_view text, LinkKind wanted, Framed& out) {
    std::string& cbor = out.cbor;
    if (text.size() > longest_link) {
        const auto count = static_cast<int>(std::min(text.size(), std::size_t{1000000000}));
        const auto most = static_cast<int>(longest_link);
        return Fault{"link", words::link_fault::TooLong{.count = count, .most = most},
                     words::link_fault::TooLongDo{.count = count, .most = most}};
    }
    const auto kind = link_kind(text);
    if (!kind) {
        return kind.fault();
    }
    std::string_view letters = tail(text).substr(2);
    const std::size_t dot = letters.find('.');
    if (dot != std::string_view::npos) {
        out.seal = letters.substr(dot + 1);
        std::string bytes;
        if (kind.value() == LinkKind::job || !is_seal_size(out.seal.size()) ||
            !codec::from_base64url(out.seal, bytes)) {
            return damaged();
        }
    }
    if (!codec::from_base64url(letters.substr(0, dot), cbor) || cbor.size() < 2 + check_size) {
        return damaged();
    }
    const std::string_view whole = cbor;
    std::uint32_t check = 0;
    for (const char c : whole.substr(whole.size() - check_size)) {
        check = check << 8 | static_cast<unsigned char>(c);
    }
    if (codec::crc32(whole.substr(0, whole.size() - check_size)) != check) {
        return damaged();
    }
    const unsigned version = static_cast<unsigned char>(whole[0]);
    if (version != link_version) {
        return Fault{
            "link",
            words::link_fault::Version{.known = static_cast<int>(link_version), .version = static_cast<int>(version)},
            words::link_fault::version_do};
    }
    if (whole[1] != static_cast<char>(kind.value()) || kind.value() != wanted) {
        return wanted == LinkKind::job ? Fault{"link", words::link_fault::quote, words::link_fault::quote_do}
                                       : Fault{"link", words::link_fault::job, words::link_fault::job_do};
    }
    cbor = cbor.substr(2, cbor.size() - 2 - check_size);
    return {};
}

} // namespace

Outcome<LinkKind> link_kind(std::string_view text) {
    const std::string_view link = tail(text);
    if (link.starts_with("j=")) {
        return LinkKind::job;
    }
    if (link.starts_with("q=")) {
        return LinkKind::quote;
    }
    return Fault{"link", words::link_fault::foreign, words::link_fault::foreign_do};
}

std::string job_link(const Workbook& workbook) {
    const Workbook fresh;
    std::string cbor;
    pack_object(workbook_fields(), &workbook, &fresh, cbor);
    return framed(LinkKind::job, cbor);
}

Outcome<Workbook> open_job_link(std::string_view text) {
    Framed read;
    if (auto wrong = unframe(text, LinkKind::job, read)) {
        return *wrong;
    }
    Workbook workbook;
    std::string path;
    codec::CborReader in(read.cbor);
    if (auto wrong = unpack_object(workbook_fields(), in, &workbook, path)) {
        return *wrong;
    }
    if (!in.done()) {
        return damaged();
    }
    if (auto wrong = broken_rule(workbook)) {
        return *wrong;
    }
    return workbook;
}

std::string quote_link(const Quote& quote) {
    const Quote fresh;
    const std::string outline = pack_outline(quote.outline);
    std::string cbor;
    codec::cbor_head(cbor, codec::Cbor::array, 2);
    pack_object(quote_fields(), &quote, &fresh, cbor);
    codec::cbor_head(cbor, codec::Cbor::bytes, outline.size());
    return framed(LinkKind::quote, cbor + outline);
}

Outcome<OpenedQuote> open_sealed_quote(std::string_view text) {
    Framed read;
    if (auto wrong = unframe(text, LinkKind::quote, read)) {
        return *wrong;
    }
    OpenedQuote opened;
    Quote& quote = opened.quote;
    std::string path;
    codec::CborReader in(read.cbor);
    std::uint64_t count = 0;
    if (!in.head(codec::Cbor::array, 2, count) || count != 2) {
        return damaged();
    }
    if (auto wrong = unpack_object(quote_fields(), in, &quote, path)) {
        return *wrong;
    }
    std::string_view outline;
    if (!in.string(codec::Cbor::bytes, longest_link, outline) || !in.done()) {
        return damaged();
    }
    if (!unpack_outline(outline, quote.outline)) {
        return Fault{"outline", words::link_fault::Outline{.most = static_cast<int>(most_points)}};
    }
    if (auto wrong = check_quote(quote)) {
        return *wrong;
    }
    opened.body = framed(LinkKind::quote, read.cbor);
    opened.seal = std::move(read.seal);
    return opened;
}

Outcome<Quote> open_quote_link(std::string_view text) {
    auto opened = open_sealed_quote(text);
    if (!opened) {
        return opened.fault();
    }
    return std::move(opened.value().quote);
}

} // namespace torchside::document
