#include "web/screens/find/find_index.hpp"

#include <algorithm>
#include <utility>

#include "core/codec/decimal.hpp"
#include "core/codec/fold.hpp"
#include "core/quantity/sort_rows.hpp"
#include "core/quote/quote.hpp"
#include "core/schema/fields.hpp"
#include "core/stock/properties.hpp"
#include "core/stock/thickness.hpp"
#include "generated/words/change.hpp"
#include "generated/words/chart.hpp"
#include "generated/words/find.hpp"
#include "generated/words/kept.hpp"
#include "generated/words/rows.hpp"
#include "generated/words/settings.hpp"
#include "generated/words/title.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/shop/shop_sections.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tables.hpp"
#include "web/screens/verdicts.hpp"

namespace torchside::web {
namespace {

using Kind = Findable::Kind;

/// Where the fields of these paths stand, for those that no section of the shop has.
struct FieldPlace {
    std::string_view path; // and all below it
    Page page;
    std::string_view panel;
};
constexpr FieldPlace field_places[] = {
    {"job.name", Page::quote, "terms"},
    {"job.quote.", Page::quote, "terms"},
    {"shop.contact", Page::quote, "terms"},
    {"job.price.outside_quote_each", Page::quote, "costs"},
    {"job.price.", Page::quote, "rates"},
    {"shop.rates.", Page::quote, "rates"},
    {"shop.wear.set_price", Page::quote, "rates"},
    {"shop.wear.now.", Page::quote, "wear"},
    {"job.quantity", Page::part, "shape"},
    {"job.run_offs", Page::part, "plate"},
    {"job.sheet.", Page::part, "plate"},
    {"shop.air.", Page::shop, "air"},
    {"shop.circuit.", Page::shop, "circuit"},
};

/// What people type who do not know what a panel is called here.
struct OtherWords {
    std::string_view panel;
    Word words;
};
constexpr OtherWords other_words[] = {
    {"read", words::find::also_read},   {"stock", words::find::also_stock}, {"circuit", words::find::also_circuit},
    {"air", words::find::also_air},     {"wear", words::find::also_wear},   {"coupon", words::find::also_coupon},
    {"plate", words::find::also_plate}, {"rates", words::find::also_rates}, {"send", words::find::also_send},
};

class Index {
public:
    explicit Index(App& app) : app_(app) {}

    std::vector<Findable> take() {
        acts();
        places();
        figures_and_checks();
        stocks();
        jobs();
        section_fields();
        other_fields(document::workbook_fields(), "");
        return std::move(all_);
    }

private:
    [[nodiscard]] std::string word(Word w) const { return std::string(app_.word(w)); }
    [[nodiscard]] std::string at(Page page, std::string_view panel) const {
        return app_.say(words::find::At{.panel = panel, .place = row_of(page).name.in(app_.speech().language)});
    }
    [[nodiscard]] std::string title_of(std::string_view panel) const {
        for (const PanelRow& row : panels()) {
            if (row.name == panel) {
                return word(row.title);
            }
        }
        return {};
    }

    void acts() {
        const std::string now = word(words::find::act);
        if (app_.worksheet().settings) {
            all_.push_back({Kind::copy, word(words::settings::copy), now, Mark::chart});
        }
        all_.push_back({Kind::print_card, word(words::find::print_card), now, Mark::quote});
        all_.push_back({Kind::print_chart, word(words::chart::print), now, Mark::chart});
        all_.push_back({Kind::backup, word(words::kept::save), now, Mark::kept});
        for (const Table table : {Table::log, Table::chart, Table::jobs}) {
            all_.push_back({Kind::table,
                            word(table_name(table)),
                            word(words::rows::csv_about),
                            Mark::chart,
                            Page::cut,
                            {},
                            std::to_string(static_cast<int>(table))});
        }
    }

    void places() {
        for (const PageRow& page : pages()) {
            all_.push_back({Kind::page, std::string(app_.word(page.name)), {}, page.mark, page.page});
        }
        for (const PanelRow& panel : panels()) {
            if (panel.title != Word{}) {
                const PageRow& page = row_of(panel.page);
                all_.push_back({Kind::panel, word(panel.title), std::string(app_.word(page.name)), page.mark, page.page,
                                std::string(panel.name)});
                for (const OtherWords& other : other_words) {
                    if (other.panel == panel.name) {
                        all_.back().also = word(other.words);
                    }
                }
            }
        }
        for (const ShopSection& section : shop_sections()) {
            if (title_of(section.panel).empty()) { // else it is a panel of its own, and there already
                all_.push_back({Kind::panel, word(section.title), std::string(app_.word(row_of(Page::shop).name)),
                                section.mark, Page::shop, section.panel});
            }
        }
    }

    void figures_and_checks() {
        for (const Figure& figure : figures()) {
            if (app_.worksheet().settings) {
                all_.push_back({Kind::panel, word(figure.name), word(words::find::figure), Mark::cut, Page::cut,
                                "figure/" + std::string(figure.key)});
            }
        }
        for (const Verdict& verdict : verdicts(app_)) {
            all_.push_back({Kind::panel, verdict.sentence, word(words::find::check), Mark::cut, Page::cut,
                            verdict.panel, verdict.code});
        }
    }

    void stocks() {
        for (const Metal metal : all_metals) {
            all_.push_back({Kind::metal,
                            app_.say(stock::name(metal)),
                            word(words::find::metal),
                            Mark::cut,
                            Page::cut,
                            {},
                            std::string(stock::key(metal))});
        }
        const Metal metal = app_.book().job.material;
        for (const stock::Chip& chip : stock::chips(metal, app_.units().system)) {
            all_.push_back({Kind::plate,
                            show_plate(chip.thickness, metal, app_.units()).whole(),
                            word(words::find::plate),
                            Mark::cut,
                            Page::cut,
                            {},
                            codec::decimal_text(chip.thickness.in(mm))});
        }
    }

    void jobs() {
        constexpr std::size_t most = 50; // as many as their list shows
        const Job& job = app_.book().job;
        if (!job.name.empty()) {
            all_.push_back({Kind::panel, job.name, word(words::find::job), Mark::part, Page::part, {}, "job"});
        }
        const auto& issued = app_.book().shop.issued;
        for (std::size_t i = 0; i < std::min(issued.size(), most); ++i) {
            const price::IssuedQuote& quote = issued[issued.size() - 1 - i];
            const std::string number = app_.say(document::number_words(quote.number, quote.revision));
            const std::string name =
                number.empty() || quote.part_name.empty() ? number + quote.part_name : number + ", " + quote.part_name;
            if (!name.empty()) {
                all_.push_back({Kind::panel, name, word(words::find::quote), Mark::quote, Page::quote, "issued",
                                std::to_string(i)});
            }
        }
    }

    void section_fields() {
        for (const ShopSection& section : shop_sections()) {
            for (const PathLabel& field : section.fields) {
                all_.push_back({Kind::field, std::string(app_.word(field.label)), at(Page::shop, word(section.title)),
                                section.mark, Page::shop, section.panel, field.path});
            }
        }
    }

    /// A field that has no label of its own in a table is called by its meaning.
    void other_fields(document::Fields fields, const std::string& above) {
        for (const document::Field& field : fields) {
            const std::string path = above + (above.empty() ? "" : ".") + std::string(field.key);
            if (field.info.kind == document::FieldKind::object) {
                other_fields(*field.children, path);
                continue;
            }
            for (const FieldPlace& place : field_places) {
                if (path == place.path || (place.path.ends_with('.') && path.starts_with(place.path))) {
                    std::string name = word(field.info.meaning);
                    name = name.substr(0, name.find('.')); // its first sentence
                    all_.push_back({Kind::field, name, at(place.page, title_of(place.panel)), row_of(place.page).mark,
                                    place.page, std::string(place.panel), path});
                    break;
                }
            }
        }
    }

    App& app_;
    std::vector<Findable> all_;
};

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (c & '\x80') != 0;
}

/// A word of `text` begins with `part`.
bool has_word(std::string_view text, std::string_view part) {
    for (std::size_t at = text.find(part); at != std::string_view::npos; at = text.find(part, at + 1)) {
        if (at == 0 || !is_letter(text[at - 1])) {
            return true;
        }
    }
    return false;
}

bool has_all(std::string_view text, std::string_view typed) {
    while (!typed.empty()) {
        const std::size_t end = std::min(typed.find(' '), typed.size());
        if (end > 0 && !has_word(text, typed.substr(0, end))) {
            return false;
        }
        typed.remove_prefix(std::min(end + 1, typed.size()));
    }
    return true;
}

struct Ranked {
    Findable found;
    int rank;
};

} // namespace

std::string Findable::id() const {
    constexpr const char* kinds[] = {"page",        "panel",      "field", "metal",  "plate",
                                     "print_chart", "print_card", "copy",  "backup", "table"};
    std::string out = std::string("find/") + kinds[static_cast<int>(kind)];
    for (const std::string* part : {&panel, &target}) {
        if (!part->empty()) {
            out += '/' + *part;
        }
    }
    return kind == Kind::page ? out + '/' + std::to_string(static_cast<int>(page)) : out;
}

std::vector<Findable> all_findable(App& app) {
    return Index(app).take();
}

std::vector<Findable> find(App& app, std::string_view typed) {
    const std::string wanted = codec::folded(typed);
    std::vector<Ranked> ranked;
    for (Findable& one : all_findable(app)) {
        if (wanted.find_first_not_of(' ') == std::string::npos) {
            if (one.kind == Kind::page || one.kind >= Kind::print_chart) {
                ranked.push_back({std::move(one), 0});
            }
            continue;
        }
        const std::string name = codec::folded(one.name);
        if (has_all(name + ' ' + codec::folded(one.where) + ' ' + codec::folded(one.also), wanted)) {
            ranked.push_back({std::move(one), name.starts_with(wanted) ? 0 : has_all(name, wanted) ? 1 : 2});
        }
    }
    sort_rows(ranked, [](const Ranked& a, const Ranked& b) { return a.rank < b.rank; });
    std::vector<Findable> out;
    for (Ranked& one : ranked) {
        out.push_back(std::move(one.found));
    }
    return out;
}

void open_found(App& app, const Findable& found) {
    app.go(found.page);
    switch (found.kind) {
    case Kind::page:
        break;
    case Kind::panel:
        app.open(found.panel);
        break;
    case Kind::field: {
        app.open(found.panel);
        const auto info = document::field(found.target);
        if (info && info->kind != document::FieldKind::flag && info->kind != document::FieldKind::word) {
            edit_entry(app, found.target);
        }
        app.ui().show("field/" + found.target);
        break;
    }
    case Kind::metal:
        app.take(document::set(app.book(), "job.material", std::string_view(found.target)),
                 app.say(words::change::Choice{.to = std::string_view(found.name), .what = words::title::metal}));
        break;
    case Kind::plate:
        app.set("job.thickness_mm", codec::read_decimal(found.target), words::title::thickness);
        break;
    case Kind::print_chart:
        app.print_chart();
        break;
    case Kind::print_card:
        app.keep_now();
        platform::print();
        break;
    case Kind::copy:
        copy_settings(app);
        break;
    case Kind::backup:
        save_backup(app);
        break;
    case Kind::table:
        save_table(app, static_cast<Table>(found.target.front() - '0'));
        break;
    }
}

void open_find(App& app) {
    app.open("find");
    app.ui().start_edit("find/text", "");
}

} // namespace torchside::web
