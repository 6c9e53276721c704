// The only way a screen, a link or a test changes a workbook: a small value that says what to change. The answer is a
// new workbook with every field still in range, or a Fault that names the field and what it accepts; the workbook that
// came in is never half changed.
//
//   auto next = set(workbook, "job.thickness_mm", 8);
//   auto next = set(workbook, "job.material", "stainless");
//   auto next = set(workbook, "shop.circuit.cord_awg", nullptr);            // not given
//   auto next = apply(workbook, {{"job.thickness_mm", 8}, {"job.current_a", 50}});
//   auto next = add(workbook, cut);                                         // a row to the log
//   auto next = remove(workbook, "shop.tests[3]");
#pragma once

#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/supply/usual.hpp"
#include "core/words/outcome.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside::document {

/// One value of the workbook as the file holds it: a number in the key's unit, a flag, a word or text, or nothing.
struct Scalar {
    enum class Type { none, number, flag, text };
    Type type = Type::none;
    double number = 0.0; // a flag is 0 or 1
    std::string text{};

    Scalar() = default;
    Scalar(std::nullptr_t) {}
    Scalar(double v) : type(Type::number), number(v) {}
    Scalar(int v) : type(Type::number), number(v) {}
    Scalar(bool v) : type(Type::flag), number(v ? 1.0 : 0.0) {}
    Scalar(std::string_view v) : type(Type::text), text(v) {}
    Scalar(const char* v) : type(Type::text), text(v) {}

    friend bool operator==(const Scalar&, const Scalar&) = default;
};

struct Change {
    std::string_view path;
    Scalar value;
};

/// The value a path holds; none when the path names no single value, or a list entry that is not there.
[[nodiscard]] std::optional<Scalar> get(const Workbook& workbook, std::string_view path);

/// The value a path has when it is not given (for a list's entry: when the entry is new).
[[nodiscard]] std::optional<Scalar> default_of(std::string_view path);

[[nodiscard]] Outcome<Workbook> set(const Workbook& workbook, std::string_view path, const Scalar& value);

/// All of the changes or none of them; rules between two fields are judged once, at the end.
[[nodiscard]] Outcome<Workbook> apply(const Workbook& workbook, std::initializer_list<Change> changes);

/// The part is this drawing, with what reading it found; a long name is cut.
[[nodiscard]] Outcome<Workbook> set_drawing(const Workbook& workbook, std::string_view name,
                                            std::shared_ptr<const part::Outline> outline,
                                            std::vector<part::Finding> findings);

/// The part is a shape by its sizes: the word of "job.part.shape". A drawing goes, and what was found in it.
[[nodiscard]] Outcome<Workbook> choose_shape(const Workbook& workbook, std::string_view shape);

/// A new last entry of a list.
[[nodiscard]] Outcome<Workbook> add(const Workbook& workbook, const tune::TestCut& cut);
[[nodiscard]] Outcome<Workbook> add(const Workbook& workbook, const wear::ConsumableSet& set);
[[nodiscard]] Outcome<Workbook> add(const Workbook& workbook, const Nozzle& nozzle);

/// The set in the torch goes to the log, a new one is in use. A Fault when the old one never made an arc.
[[nodiscard]] Outcome<Workbook> log_change(const Workbook& workbook, wear::Ended ended);

/// Some parts of the job are cut: the set in the torch gets their starts and minutes, run-offs counted as wear does.
/// `sheet` is the workbook's own; a Fault when it has no path.
[[nodiscard]] Outcome<Workbook> log_cut(const Workbook& workbook, const Worksheet& sheet, int parts);

/// Voltage, breaker, wiring and phases together. An outlet that is usual was not wired for this machine alone. A
/// chosen country that has no such breaker gives way to the one the supply points to.
[[nodiscard]] Outcome<Workbook> use_supply(const Workbook& workbook, const supply::UsualSupply& supply);

/// The plug at the outlet; none: wired in, or not known.
[[nodiscard]] Outcome<Workbook> use_plug(const Workbook& workbook, std::optional<supply::Plug> plug);

/// Takes one entry out of a list: "shop.tests[3]".
[[nodiscard]] Outcome<Workbook> remove(const Workbook& workbook, std::string_view path);

/// Puts one entry's description back to its defaults, or a whole object: "shop.circuit", "job".
[[nodiscard]] Outcome<Workbook> reset(const Workbook& workbook, std::string_view path);

/// What is out of range in a workbook that was put together in memory; none when every field is as the schema says.
[[nodiscard]] std::optional<Fault> check(const Workbook& workbook);

} // namespace torchside::document
