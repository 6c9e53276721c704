// torchside link, torchside open: a job or its quote as a link, and back.
#include "core/document/link.hpp"

#include "core/document/date.hpp"
#include "core/document/utf8.hpp"
#include "core/document/workbook_file.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tools/cli/command.hpp"

namespace torchside::cli {

namespace {

Outcome<std::string> quote_of(const Workbook& workbook, const Words& words) {
    const auto typed = words.option("--date");
    const auto day = typed ? document::read_day(*typed) : std::nullopt;
    if (!day) {
        return Fault{"--date", (typed ? '"' + document::one_line(*typed) + "\" is no day" : "missing") +
                                   ", accepted is the day of issue such as 2026-11-25"};
    }
    const Worksheet sheet = evaluate(workbook);
    if (!sheet.price || !sheet.part) {
        return Fault{"job", "has no price, accepted is a part that can be cut: see the warnings of the worksheet"};
    }
    return document::quote_link(document::make_quote(workbook, sheet.part->outline, *sheet.price, *day)) + '\n';
}

} // namespace

Outcome<std::string> run_link(const Arguments& arguments) {
    const bool job = !arguments.empty() && arguments[0] == "job";
    if (!job && (arguments.empty() || arguments[0] != "quote")) {
        return Fault{"KIND", "missing or unknown, accepted is job or quote"};
    }
    const Arguments rest(arguments.begin() + 1, arguments.end());
    const auto words = job ? Words::sort(rest, 1, {}) : Words::sort(rest, 1, {"--date"});
    if (!words) {
        return words.fault();
    }
    const auto workbook = load_workbook(words.value().file(0));
    if (!workbook) {
        return workbook.fault();
    }
    return job ? Outcome(document::job_link(workbook.value()) + '\n') : quote_of(workbook.value(), words.value());
}

Outcome<std::string> run_open(const Arguments& arguments) {
    const auto words = Words::sort(arguments, 1, {});
    if (!words) {
        return words.fault();
    }
    const std::string& text = words.value().file(0);
    const auto kind = document::link_kind(text);
    if (!kind) {
        return kind.fault();
    }
    if (kind.value() == document::LinkKind::quote) {
        const auto quote = document::open_quote_link(text);
        return quote ? Outcome(document::write_quote(quote.value())) : Outcome<std::string>(quote.fault());
    }
    const auto workbook = document::open_job_link(text);
    return workbook ? Outcome(document::write_workbook(workbook.value())) : Outcome<std::string>(workbook.fault());
}

} // namespace torchside::cli
