// How core says no: an Outcome<T> is a T or a Fault. Nothing in core throws across its edge.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace torchside {

/// What is wrong with one input. `field` is its path in the workbook ("job.thickness_mm"); `text` says what is wrong
/// and what is accepted, as one sentence fit to be shown to the user. `ask` is the same for whoever types it into a
/// field: only what to enter, in his units ("Enter 0.3 to 150 mm."); empty where no field is meant.
struct Fault {
    std::string field;
    std::string text;
    std::string ask{};
};

template <class T>
class [[nodiscard]] Outcome {
public:
    Outcome(T value) : held_(std::move(value)) {}
    Outcome(Fault fault) : held_(std::move(fault)) {}

    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }

    /// Only when ok(); anything else is a programming error.
    [[nodiscard]] const T& value() const { return *std::get_if<0>(&held_); }
    [[nodiscard]] T& value() { return *std::get_if<0>(&held_); }
    [[nodiscard]] const Fault& fault() const { return *std::get_if<1>(&held_); }

private:
    std::variant<T, Fault> held_;
};

} // namespace torchside
