// torchside link, torchside open: a job or its quote as a link, and back.
#include "core/link/link.hpp"

#include <ctime>

#include "core/codec/utf8.hpp"
#include "core/quote/date.hpp"
#include "core/store/workbook_file.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tools/cli/command.hpp"

namespace torchside::cli {

namespace {

std::string today() { // core has no clock; a command may ask for one
    const std::time_t now = std::time(nullptr);
    char text[16] = "";
    if (const std::tm* here = std::localtime(&now)) {
        std::strftime(text, sizeof text, "%Y-%m-%d", here);
    }
    return text;
}

Outcome<std::string> quote_of(const Workbook& workbook, const Words& words, const Language& language) {
    const std::string typed = words.option("--date").value_or(today());
    const auto day = document::read_day(typed);
    if (!day) {
        return Fault{"--date", words::cli::NoDay{.typed = '"' + codec::one_line(typed) + '"'}};
    }
    const Worksheet sheet = evaluate(workbook);
    if (!sheet.price || !sheet.part) {
        return Fault{"job", words::cli::no_price};
    }
    return document::quote_link(
               document::make_quote(workbook, sheet.part->outline, *sheet.price, *day, language.code)) +
           '\n';
}

} // namespace

Outcome<std::string> run_link(const Arguments& arguments, const Language& language) {
    const bool job = !arguments.empty() && arguments[0] == "job";
    if (!job && (arguments.empty() || arguments[0] != "quote")) {
        return Fault{"KIND", words::cli::link_kind};
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
    return job ? Outcome(document::job_link(workbook.value()) + '\n')
               : quote_of(workbook.value(), words.value(), language);
}

Outcome<std::string> run_open(const Arguments& arguments, const Language&) {
    const auto words = Words::sort(arguments, 1, {}, words::cli::a_link);
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
