// The language that a customer reads: chosen, carried by the link, spoken by the page.
#include <catch2/catch_test_macros.hpp>
#include <regex>

#include "core/link/link.hpp"
#include "core/part/shapes.hpp"
#include "core/quote/date.hpp"
#include "core/quote/quote_html.hpp"
#include "core/words/languages.hpp"
#include "core/words/word_file.hpp"
#include "generated/language_list.hpp"
#include "generated/words/customer.hpp"
#include "generated/words/metal.hpp"
#include "generated/words/stock.hpp"

using namespace torchside;
using namespace torchside::document;

namespace {

Workbook workbook() {
    Workbook w;
    w.shop.name = "Taller";
    w.job.name = "Base";
    w.job.quote.number = "Q-118";
    w.job.quantity = 24;
    w.job.thickness = Length{6.35, mm};
    return w;
}

Quote quote_of(const Workbook& w, std::string_view spoken = {}) {
    price::Report report;
    report.each = {113514};
    report.total = {24 * 113514};
    report.to_pay = report.total;
    const auto outline = part::make_outline(w.job.part);
    return make_quote(w, outline.value(), report, 20782, spoken);
}

} // namespace

TEST_CASE("a quote speaks the job's language, else the shop's, else the one that is spoken") {
    Workbook w = workbook();
    CHECK(quote_of(w).language.empty());
    CHECK(quote_of(w, "es").language == "es");
    CHECK(quote_of(w, "en").language.empty()); // what a page speaks by itself is not said
    w.shop.display.language = "en-GB";
    CHECK(quote_of(w, "es").language == "en-GB");
    w.job.quote.language = "es";
    CHECK(quote_of(w, "en").language == "es");
    w.job.quote.language = "en";
    CHECK(quote_of(w, "es").language.empty());
}

TEST_CASE("a link carries the language, and one without it is in English") {
    Workbook w = workbook();
    const std::string plain = quote_link(quote_of(w));
    w.job.quote.language = "es";
    const std::string spanish = quote_link(quote_of(w));
    CHECK(open_quote_link(plain).value().language.empty());
    CHECK(open_quote_link(spanish).value().language == "es");
    CHECK(spanish.size() <= plain.size() + 8);
    const auto job = open_job_link(job_link(w));
    CHECK(job.value().job.quote.language == "es");
}

TEST_CASE("a customer's page in another language has its words, decimals, thousands and months") {
    Workbook w = workbook();
    w.job.quote.language = "es";
    const Quote q = quote_of(w);
    const std::string page = quote_html(q, *language_of("es"), 20782);
    for (const char* text : {"Cotización Q-118", "25 nov 2026", "Acero dulce", "6,35 mm", "1.135,14", "27.243,36",
                             "Por pieza, sin impuestos", "24 piezas, sin impuestos"}) {
        INFO(text);
        CHECK(page.find(text) != std::string::npos);
    }
    static const std::regex left("[> ](the|and|of|quote|estimate|before|part|price)[ <.,]", std::regex::icase);
    CHECK_FALSE(std::regex_search(page, left));
    CHECK(quote_file(q, *language_of("es"), "").find("<html lang=\"es\"") != std::string::npos);
    const std::string own = quote_html(q, english(), 20782);
    CHECK(own.find("1,135.14") != std::string::npos);
    CHECK(own.find("6.35 mm") != std::string::npos);
}

TEST_CASE("the customer's own small table says what the whole one does") {
    Workbook w = workbook();
    w.job.material = Metal::aluminium;
    const Quote q = quote_of(w);
    CHECK(quote_html(q, customers_english(), 20782) == quote_html(q, english(), 20782));
    CHECK(quote_html(q, *language_of("en-GB"), 20782).find("Aluminium") != std::string::npos);
    CHECK(quote_html(q, english(), 20782).find("Aluminum") != std::string::npos);
}

TEST_CASE("one and several are told apart in every language") {
    for (const std::string_view code : language_words) {
        const Speech speech(*language_of(code), UnitSystem::metric);
        const auto pieces = [&](int count) { return say(words::customer::Pieces{.count = count}, speech); };
        INFO(code);
        CHECK(pieces(1).substr(1) != pieces(2).substr(1));
        CHECK(pieces(0).substr(1) == pieces(2).substr(1));
        CHECK(pieces(21).substr(2) == pieces(2).substr(1)); // by the whole number, not by its end
    }
}

TEST_CASE("British English is the American table with other spellings") {
    const Language& british = *language_of("en-GB");
    CHECK(std::string(phrase(words::metal::galvanized, british)) == "Galvanised");
    CHECK(std::string(phrase(words::stock::gaps_meter, british)) == "Gaps in a metre of cut");
    CHECK(std::string(phrase(words::metal::stainless, british)) ==
          std::string(phrase(words::metal::stainless, english())));
    CHECK(Speech(british, UnitSystem::metric).units.decimal == '.');
}
