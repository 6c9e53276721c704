#include "core/words/word_file.hpp"

#include <utility>

namespace torchside {

namespace {

constexpr std::string_view mark = "TSW1";
constexpr std::size_t head = 12, most_bytes = 1'000'000, most_groups = 1000, zeros_at_end = 256;
constexpr std::uint32_t nowhere = 0xFFFFFFFF;

std::uint32_t number_at(std::string_view bytes, std::size_t at) {
    std::uint32_t n = 0;
    for (std::size_t i = 4; i-- > 0;) {
        n = n << 8U | static_cast<unsigned char>(bytes[at + i]);
    }
    return n;
}

} // namespace

WordFile::WordFile(std::string_view code, std::string bytes, std::vector<Language::Group> groups, std::size_t phrases)
    : code_(code), bytes_(std::move(bytes)),
      groups_(std::move(groups)), language_{code_, bytes_.data() + phrases, "", groups_.data()} {}

std::unique_ptr<WordFile> WordFile::read(std::string_view code, std::string bytes) {
    if (bytes.size() < head || bytes.size() > most_bytes || !bytes.starts_with(mark) ||
        number_at(bytes, 4) != words_fingerprint()) {
        return nullptr;
    }
    const std::size_t count = number_at(bytes, 8);
    const std::size_t phrases = head + 4 * count;
    if (count > most_groups || bytes.size() < phrases + zeros_at_end ||
        bytes.find_first_not_of('\0', bytes.size() - zeros_at_end) != std::string::npos) {
        return nullptr;
    }
    const std::size_t room = bytes.size() - phrases - zeros_at_end;
    std::vector<Language::Group> groups;
    for (std::size_t i = 0; i < count; ++i) {
        using Where = Language::Group::Where;
        const std::uint32_t start = number_at(bytes, head + 4 * i);
        if (start != nowhere && start > room) {
            return nullptr;
        }
        groups.push_back(Language::Group{start == nowhere ? Where::nowhere : Where::now,
                                         start == nowhere ? 0U : start & 0x3FFFFFFFU});
    }
    return std::unique_ptr<WordFile>(new WordFile(code, std::move(bytes), std::move(groups), phrases));
}

} // namespace torchside
