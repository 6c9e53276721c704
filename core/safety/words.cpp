#include "core/safety/words.hpp"

#include "generated/words/safety_limit.hpp"
#include "generated/words/safety_text.hpp"

namespace torchside::safety {

namespace {

struct Limit {
    std::string_view caution, where;
    Word text;
};
constexpr Limit limits[] = {
#include "generated/safety_limits.inc"
};

std::string_view name_of(Country country) {
    return country == Country::us ? "us" : country == Country::uk ? "uk" : country == Country::eu ? "eu" : "none";
}

} // namespace

std::vector<Word> limits_of(const Caution& caution, Country country) {
    std::vector<Word> all;
    std::size_t kept = 0; // up to the laxest of the shop's own
    for (const Limit& limit : limits) {
        if (limit.caution == caution.code) {
            all.push_back(limit.text);
            kept = limit.where.find(name_of(country)) != std::string_view::npos ? all.size() : kept;
        }
    }
    if (kept > 0) {
        all.resize(kept);
    }
    return all;
}

Text shade_note(const Report& r) {
    const Text own = words::safety_text::ShadeLegal{.shade = r.shade.us};
    Text en = words::safety_text::shade_en_none;
    if (r.shade.en != 0) {
        en = words::safety_text::ShadeEn{.shade = r.shade.en};
    }
    Text note = r.country == Country::us ? own : en;
    note += r.country == Country::us ? en : own;
    return note += words::safety_text::shade_choose;
}

} // namespace torchside::safety
