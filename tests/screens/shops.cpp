#include "tests/screens/shops.hpp"

#include <fstream>
#include <sstream>

#include "core/document/workbook_file.hpp"
#include "tests/property/random_workbook.hpp"
#include "web/screens/shop_sections.hpp"

namespace torchside::web {
namespace {

constexpr Place places[] = {Place::cut, Place::tune, Place::part, Place::quote, Place::shop};

/// Every sheet that a place or a row opens, save the shop's sections, which name themselves.
constexpr const char* sheets[] = {"stock",
                                  "chart",
                                  "circuit",
                                  "log",
                                  "air",
                                  "reach",
                                  "shape",
                                  "time",
                                  "safety",
                                  "costs",
                                  "breaks",
                                  "wear",
                                  "rates",
                                  "terms",
                                  "send",
                                  "incoming",
                                  "plate",
                                  "read",
                                  "coupon",
                                  "log/0",
                                  "figure/feed",
                                  "figure/arc",
                                  "figure/kerf",
                                  "figure/pierce_height",
                                  "figure/pierce_delay",
                                  "figure/lead_in",
                                  "figure/min_hole"};

/// Words that a person typed are their own: screens are asked for what the app says.
void without_own_words(Workbook& book) {
    book.shop.name.clear();
    book.shop.contact.clear();
    book.job.name.clear();
    book.job.quote.note.clear();
    book.job.quote.number.clear();
    book.shop.controller = {};
    book.shop.rates.currency = "USD";
}

} // namespace

std::vector<NamedBook> many_books(int random) {
    std::ifstream file(TORCHSIDE_SOURCE_DIR "/assets/demo.json");
    std::ostringstream text;
    text << file.rdbuf();
    std::vector<NamedBook> out;
    out.push_back({"example", document::read_workbook(text.str()).value()});
    out.push_back({"empty", Workbook{}});
    test::Rng rng(11);
    for (int i = 0; i < random; ++i) {
        out.push_back({"random " + std::to_string(i), test::random_workbook(rng)});
        without_own_words(out.back().book);
    }
    return out;
}

void look_everywhere(Person& person, const Workbook& book, const std::function<void(const std::string& where)>& look) {
    App& app = person.app();
    app.take(Workbook(book), "Another shop opened");
    for (const Place place : places) {
        app.go(place);
        person.look();
        look("place " + std::to_string(static_cast<int>(place)));
    }
    app.go(Place::cut);
    // What only shows once something was measured.
    App::Scratch& s = app.scratch;
    s.cut.kerf_top = 1.9, s.cut.kerf_bottom = 1.2, s.cut.lag = 2, s.cut.arc = 131, s.cut.height = 1.8;
    s.low_mm = 1.5, s.low_v = 120, s.high_mm = 2.1, s.high_v = 125;
    s.square = 48.4, s.hole = 11.8;
    for (App::Scratch::Leg& leg : s.heights) {
        leg.arc = 130, leg.kerf_top = 1.9, leg.kerf_bottom = 1.5;
    }
    std::vector<std::string> all(std::begin(sheets), std::end(sheets));
    for (const ShopSection& section : shop_sections()) {
        all.emplace_back(section.sheet);
    }
    for (const std::string& sheet : all) {
        if (sheet == "log/0" && app.book().shop.tests.empty()) {
            continue;
        }
        const bool chart = sheet == "chart", coupon = sheet == "coupon";
        app.open(sheet);
        for (int i = 0; i < (chart || coupon ? 4 : 1); ++i) {
            app.chart_figure = static_cast<ChartFigure>(chart ? i : 0);
            app.scratch.coupon = static_cast<tune::CouponKind>(coupon ? i : 0);
            person.look();
            look(sheet + (i > 0 ? " " + std::to_string(i) : ""));
        }
    }
    app.close();
}

} // namespace torchside::web
