#include "core/store/cuts_file.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

#include "core/codec/json.hpp"
#include "core/gear/start.hpp"
#include "core/schema/access.hpp"
#include "core/store/workbook_read.hpp"
#include "core/tune/plate_terms.hpp"
#include "core/tune/posterior.hpp"
#include "generated/words/field_shop.hpp"
#include "generated/words/file.hpp"
#include "generated/words/others.hpp"
#include "generated/words/rule.hpp"

namespace torchside::document {

namespace {

using Wrong = std::optional<Fault>;

constexpr std::string_view version_key = "torchside_cuts";

struct CutsFile {
    std::vector<tune::SharedCut> cuts{};
};

constexpr Field file_table[] = {
    required(list<&CutsFile::cuts>("cuts", &shared_cut_fields, 1, most_cuts, words::field_shop::shop_others)),
};
constexpr Fields file_fields = file_table;

// What a person is told of a file that is none: the field and what it accepts are of no use to him.
Fault no_cuts(std::string_view field, Text why) {
    return {std::string(field), std::move(why), words::others::no_file};
}

Wrong take_version(codec::JsonValue& json) {
    const Text known = words::verbatim(std::to_string(cuts_version));
    const auto key = std::find(json.keys.begin(), json.keys.end(), version_key);
    if (json.type != codec::JsonValue::Type::object || key == json.keys.end()) {
        return no_cuts(version_key, words::file::Missing{.accepted = known});
    }
    const auto value = json.items.begin() + (key - json.keys.begin());
    if (value->type != codec::JsonValue::Type::number || value->number != cuts_version) {
        return Fault{std::string(version_key), words::others::OddVersion{.known = known}, words::others::newer};
    }
    json.items.erase(value);
    json.keys.erase(key);
    return {};
}

Wrong broken_cut(const std::vector<tune::SharedCut>& cuts) {
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        if (cuts[i].cut.verdict && !cuts[i].cut.feed) {
            return no_cuts("cuts[" + std::to_string(i) + "].feed_mm_min", words::rule::verdict_feed);
        }
    }
    return {};
}

bool teaches(const tune::TestCut& cut) {
    return !cut.worn && (cut.feed || cut.kerf_top || cut.kerf_bottom || cut.arc || (cut.pierce && cut.pierce_delay));
}

// By what was cut, key by key: nothing tells in which order.
bool comes_before(const tune::SharedCut& a, const tune::SharedCut& b) {
    for (const Field& field : shared_cut_fields) {
        double x = -1.0;
        double y = -1.0;
        field.scalar->get(field.member(&a), x);
        field.scalar->get(field.member(&b), y);
        if (x != y) {
            return x < y;
        }
    }
    return false;
}

} // namespace

std::vector<tune::SharedCut> cuts_to_give(std::span<const tune::TestCut> tests, const Machine& machine) {
    const Duration lag = tune::lag_of(tests, machine);
    std::vector<tune::SharedCut> out;
    for (const tune::TestCut& cut : tests) {
        if (!teaches(cut)) {
            continue;
        }
        tune::SharedCut given{.cut = cut};
        if (const auto bore = tune::plate_of(cut, machine.nozzles).bore) {
            given.bore = Length{std::clamp(std::round(bore->in(mm)*1000) / 1000, 0.4, 4.0), mm};
        }
        given.cut.nozzle.reset();
        given.cut.starts.reset();
        if (cut.pierce_delay) {
            given.cut.pierce_delay = after_transfer(*cut.pierce_delay, lag);
        }
        out.push_back(given);
    }
    std::sort(out.begin(), out.end(), comes_before);
    return out;
}

std::string write_cuts(std::span<const tune::SharedCut> cuts) {
    codec::JsonWriter out;
    out.open('{');
    out.key(version_key).number(cuts_version);
    out.key("cuts").open('[');
    for (const tune::SharedCut& cut : cuts) {
        out.open_line('{');
        for (const Field& field : shared_cut_fields) {
            if (const Scalar value = fetch(field, &cut); value.type != Scalar::Type::none) {
                out.key(field.key);
                write_scalar(value, out);
            }
        }
        out.close();
    }
    out.close();
    out.close();
    return out.take();
}

Outcome<std::vector<tune::SharedCut>> read_cuts(std::string_view json) {
    auto parsed = codec::parse_json(json);
    if (!parsed) {
        return no_cuts("cuts", parsed.fault().text);
    }
    if (auto wrong = take_version(parsed.value())) {
        return *wrong;
    }
    CutsFile file;
    std::string path;
    if (auto wrong = read_members(file_fields, parsed.value(), &file, path)) {
        return no_cuts(wrong->field, std::move(wrong->text));
    }
    if (auto wrong = broken_cut(file.cuts)) {
        return *wrong;
    }
    return std::move(file.cuts);
}

namespace {

using Cuts = std::vector<tune::SharedCut>;

constexpr std::size_t no_chance = 3; // so many rows that coincide are no chance any more

// Without what the settings of the day make of a cut: a nozzle's bore, the start lag in a delay.
tune::SharedCut bare(tune::SharedCut cut) {
    cut.shop = 1;
    cut.bore.reset();
    cut.cut.pierce_delay.reset();
    return cut;
}

/// How many rows of `a` are in `b`, each counted once.
std::size_t in_common(const Cuts& a, const Cuts& b) {
    Cuts left;
    std::transform(b.begin(), b.end(), std::back_inserter(left), bare);
    for (const tune::SharedCut& cut : a) {
        if (const auto there = std::find(left.begin(), left.end(), bare(cut)); there != left.end()) {
            left.erase(there);
        }
    }
    return b.size() - left.size();
}

bool all_in(const Cuts& cuts, Cuts there) {
    return std::all_of(cuts.begin(), cuts.end(), [&](tune::SharedCut cut) {
        cut.shop = there.front().shop;
        return std::find(there.begin(), there.end(), cut) != there.end();
    });
}

enum class Known { no, older, newer };

/// What a file is beside the cuts that are kept of a shop.
Known known_as(const Cuts& file, const Cuts& kept) {
    if (all_in(file, kept)) {
        return Known::older;
    }
    const std::size_t common = in_common(file, kept);
    const bool shorter = file.size() < kept.size() && common == file.size();
    if (2 * common > kept.size() && !shorter) {
        return Known::newer;
    }
    return common >= no_chance && 2 * common > file.size() ? Known::older : Known::no;
}

Cuts of_shop(const Cuts& others, int shop) {
    Cuts out;
    std::copy_if(others.begin(), others.end(), std::back_inserter(out),
                 [&](const tune::SharedCut& cut) { return cut.shop == shop; });
    return out;
}

} // namespace

Outcome<Workbook> take_in(const Workbook& workbook, std::vector<tune::SharedCut> cuts) {
    constexpr int most_shops = 99;
    const Fault in_already{"shop.others", words::others::in_already};
    const std::size_t own = in_common(cuts, cuts_to_give(workbook.shop.tests, workbook.shop.machine));
    if (own >= no_chance && 2 * own > cuts.size()) {
        return in_already;
    }
    Workbook next = workbook;
    Cuts& others = next.shop.others;
    int number = most_shops + 1; // the least that is free, or is of this very shop
    for (int shop = 1; shop <= most_shops; ++shop) {
        const Cuts kept = of_shop(others, shop);
        const Known known = kept.empty() ? Known::no : known_as(cuts, kept);
        if (known == Known::older) {
            return in_already;
        }
        if (known == Known::newer) {
            others.erase(std::remove_if(others.begin(), others.end(),
                                        [&](const tune::SharedCut& cut) { return cut.shop == shop; }),
                         others.end());
        }
        number = kept.empty() || known == Known::newer ? std::min(number, shop) : number;
    }
    if (others.size() + cuts.size() > most_cuts || number > most_shops) {
        return Fault{"shop.others", words::others::NoRoom{.most = static_cast<int>(most_cuts)}};
    }
    for (tune::SharedCut& cut : cuts) {
        cut.shop = number;
        others.push_back(cut);
    }
    return next;
}

bool looks_like_cuts(std::string_view json) {
    const std::size_t quote = json.find('"');
    return quote != std::string_view::npos && json.substr(quote + 1).starts_with(version_key);
}

} // namespace torchside::document
