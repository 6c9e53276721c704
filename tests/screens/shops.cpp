#include "tests/screens/shops.hpp"

#include <catch2/catch_test_macros.hpp>
#include <fstream>
#include <iterator>
#include <sstream>

#include "core/store/workbook_file.hpp"
#include "tests/property/random_workbook.hpp"
#include "web/screens/shop/shop_sections.hpp"

using namespace std::string_view_literals;

namespace torchside::web {
namespace {

constexpr Page places[] = {Page::cut, Page::tune, Page::part, Page::quote, Page::shop};

/// Every panel that a place or a row opens, save the shop's sections, which name themselves.
constexpr const char* panel_names[] = {"stock",
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
                                       "issued",
                                       "send",
                                       "incoming",
                                       "tabs",
                                       "start",
                                       "start/2",
                                       "start/3",
                                       "start/4",
                                       "wear/0",
                                       "plate",
                                       "read",
                                       "coupon",
                                       "log/0",
                                       "figure/feed",
                                       "figure/arc",
                                       "figure/kerf",
                                       "figure/pierce_height",
                                       "figure/pierce_delay",
                                       "figure/cut_height",
                                       "figure/pressure",
                                       "figure/post_flow",
                                       "figure/lead_in",
                                       "figure/min_hole",
                                       "find",
                                       "keys",
                                       "news"};

/// Words that a person typed are their own: screens are asked for what the app says.
void without_own_words(Workbook& book) {
    book.shop.name.clear();
    book.shop.contact.clear();
    book.job.name.clear();
    book.job.quote.note.clear();
    book.job.quote.number.clear();
    for (price::IssuedQuote& row : book.shop.issued) {
        row.number = "Q-118";
        row.part_name = row.part_name.empty() ? "" : "Base plate";
        row.currency = "USD";
    }
    book.shop.controller = {};
    book.shop.rates.currency = "USD";
}

/// What stands on the screen only after something was done: a change that can be taken back, what was typed and not taken,
/// a question.
void look_at_changes(Person& person, const Workbook& book, const std::function<void(const std::string& where)>& look) {
    App& app = person.app();
    for (const double volts : {120.0, 400.0}) {
        app.open("circuit");
        app.scratch.asked_line_v = volts;
        person.look();
        REQUIRE(person.node("supply/ask") != nullptr);
        look("circuit, asked");
        app.open("");
    }
    app.scratch.asked_line_v.reset();
    app.open("stock");
    person.look();
    person.app().ui().stop_edit();
    app.set("job.thickness_mm", book.job.thickness.in(mm) < 50 ? 55.0 : 6.0, "Thickness"sv);
    person.look();
    REQUIRE(person.node("change/undo") != nullptr);
    look("stock, changed");
    app.open("rates");
    app.set("shop.rates.labour_per_h", 12.5, "Labor, per hour"sv);
    person.look();
    look("rates, changed");
    const auto refused = [&](const char* panel, const char* field, const char* text) {
        app.open(panel);
        person.look();
        app.ui().start_edit(field, text);
        app.ui().enter(field, text, false);
        person.look();
        look(std::string(panel) + ", being typed");
        app.ui().enter(field, text, true);
        person.look();
        look(std::string(panel) + ", not taken");
        app.ui().stop_edit();
        person.look();
        look(std::string(panel) + ", left");
        REQUIRE(app.drafts.find(field) != nullptr);
        app.go(Page::quote);
        person.look();
        REQUIRE(person.node("draft") != nullptr);
        look("a draft waits");
    };
    refused("rates", "field/job.price.material_per_kg", "9e9");
    refused("stock", "stock/thickness", "9999");
    refused("air", "field/shop.air.hose_m", "99999");
    app.drafts = {};
    app.set("job.current_a", book.job.current.in(ampere) < 30 ? 31.0 : 20.0, "Current"sv);
    if (app.change() != nullptr) {
        app.undo();
    }
    app.close();
    person.look();
    look("taken back");
}

/// What is said of the user's work only when something is amiss with it, and what is asked before any of it is replaced.
void look_at_storage(Person& person, const Workbook& book, const std::function<void(const std::string& where)>& look) {
    App& app = person.app();
    Workbook other = book;
    other.job.quantity = book.job.quantity == 7 ? 8 : 7;
    other.shop.seal_key = std::string(64, 'c');
    for (const auto from : {Incoming::From::backup, Incoming::From::damaged}) {
        app.bring(other, from);
        app.scratch.incoming.lost = 12;
        person.look();
        look(from == Incoming::From::backup ? "a backup" : "damaged work");
    }
    app.scratch.incoming.book.reset();
    app.clash = App::Clash{other, book, {"job.quantity", "shop.tests", "shop.contact"}};
    app.go(Page::cut);
    person.look();
    look("changed in two tabs");
    app.open("tabs");
    person.look();
    look("tabs, asked");
    app.clash.reset();
    app.go(Page::cut);
    person.look();
}

} // namespace

std::vector<NamedBook> many_books(int random) {
    std::ifstream file(TORCHSIDE_SOURCE_DIR "/assets/demo.json");
    std::ostringstream text;
    text << file.rdbuf();
    std::vector<NamedBook> out;
    out.push_back({"example", document::read_workbook(text.str()).value()});
    out.push_back({"with quotes handed out", out.front().book});
    for (const int revision : {0, 1}) {
        out.back().book.shop.issued.push_back({out.back().book.job.quote.number, revision,
                                               "A part of another name than this one", 2e6, "USD",
                                               20700 + 50 * revision, 60, "abcdefgh", revision == 0 ? "" : "1AAAAA"});
    }
    out.push_back({"marked example", out.front().book});
    out.back().book.shop.example = true;
    out.push_back({"empty", Workbook{}});
    test::Rng rng(11);
    for (int i = 0; i < random; ++i) {
        out.push_back({"random " + std::to_string(i), test::random_workbook(rng)});
        without_own_words(out.back().book);
    }
    return out;
}

std::string word_file(std::string_view code) {
    std::ifstream file(std::string(TORCHSIDE_WORDS_DIR "/words_") + std::string(code) + ".bin", std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void look_everywhere(Person& person, const Workbook& book, const std::function<void(const std::string& where)>& look) {
    App& app = person.app();
    app.take(Workbook(book), "Another shop opened"sv);
    for (const Page page : places) {
        app.go(page);
        person.look();
        look("place " + std::to_string(static_cast<int>(page)));
    }
    app.go(Page::cut);
    // What only shows once something was measured.
    ToolInputs& s = app.scratch.inputs;
    s.cut.kerf_top = 1.9, s.cut.kerf_bottom = 1.2, s.cut.lag = 2, s.cut.arc = 131, s.cut.height = 1.8;
    s.low_mm = 1.5, s.low_v = 120, s.high_mm = 2.1, s.high_v = 125;
    s.square = 48.4, s.hole = 11.8, s.kerf_square = 48.4, s.reading_v = 140;
    s.upper_kohm = 510, s.lower_kohm = 10, s.input_kohm = 100;
    for (ToolInputs::Leg& leg : s.heights) {
        leg.arc = 130, leg.kerf_top = 1.9, leg.kerf_bottom = 1.5;
    }
    std::vector<std::string> all(std::begin(panel_names), std::end(panel_names));
    for (const ShopSection& section : shop_sections()) {
        all.emplace_back(section.panel);
    }
    for (const std::string& panel : all) {
        if ((panel == "log/0" && app.book().shop.tests.empty()) ||
            (panel == "wear/0" && app.book().shop.wear.sets.empty())) {
            continue;
        }
        const bool chart = panel == "chart", coupon = panel == "coupon";
        app.open(panel);
        for (int i = 0; i < (chart || coupon ? 4 : 1); ++i) {
            app.scratch.chart_figure = static_cast<ChartFigure>(chart ? i : 0);
            app.scratch.inputs.coupon = static_cast<tune::CouponKind>(coupon ? i : 0);
            person.look();
            look(panel + (i > 0 ? " " + std::to_string(i) : ""));
        }
        if (chart || panel.starts_with("figure/")) { // what stands behind "?"
            app.scratch.explains = app.scratch.derives = app.scratch.chart_key = true;
            person.look();
            look(panel + ", explained");
        }
    }
    app.close();
    look_at_changes(person, book, look);
    look_at_storage(person, book, look);
}

} // namespace torchside::web
