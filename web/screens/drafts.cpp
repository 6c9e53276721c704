#include "web/screens/drafts.hpp"

#include <algorithm>

#include "generated/words/entry.hpp"
#include "web/screens/body.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {

const Draft* Drafts::find(std::string_view id) const {
    const auto it = std::find_if(all_.begin(), all_.end(), [&](const Draft& d) { return d.id == id; });
    return it == all_.end() ? nullptr : &*it;
}

void Drafts::keep(Draft draft) {
    for (Draft& d : all_) {
        if (d.id == draft.id) {
            d = std::move(draft);
            return;
        }
    }
    all_.push_back(std::move(draft));
}

void Drafts::drop(std::string_view id) {
    std::erase_if(all_, [&](const Draft& d) { return d.id == id; });
}

void Drafts::drop_path(std::string_view path) {
    std::erase_if(all_, [&](const Draft& d) { return path.empty() ? d.path.empty() : d.path.starts_with(path); });
}

void Drafts::settle(const Workbook& book) {
    std::erase_if(all_, [&](const Draft& d) { return !d.path.empty() && document::get(book, d.path) != d.stands; });
}

const Draft* Drafts::first() const {
    const auto it = std::find_if(all_.begin(), all_.end(), [](const Draft& d) { return !d.path.empty(); });
    return it == all_.end() ? nullptr : &*it;
}

namespace {

constexpr char cell = '\x1f'; // nobody types these two
constexpr char row = '\x1e';

/// Up to the next such sign, which is taken off as well.
std::string take_until(std::string_view& rest, char end) {
    const std::size_t at = std::min(rest.find(end), rest.size());
    std::string out(rest.substr(0, at));
    rest.remove_prefix(std::min(at + 1, rest.size()));
    return out;
}

} // namespace

std::string Drafts::packed() const {
    std::string out;
    for (const Draft& d : all_) {
        if (d.path.empty()) {
            continue; // what scratch holds goes with the page
        }
        for (const std::string& part : {d.id, d.label, d.text, d.path, d.panel}) {
            out += part;
            out += cell;
        }
        out += static_cast<char>('0' + static_cast<int>(d.page));
        out += row;
    }
    return out;
}

void Drafts::unpack(std::string_view packed, const Workbook& book) {
    while (!packed.empty()) {
        const std::string line = take_until(packed, row);
        std::string_view rest = line;
        Draft d;
        for (std::string* part : {&d.id, &d.label, &d.text, &d.path, &d.panel}) {
            *part = take_until(rest, cell);
        }
        const auto stands = document::get(book, d.path);
        const auto page = static_cast<std::size_t>(rest.empty() ? 0 : rest.front() - '0');
        if (stands && page < pages().size()) {
            d.stands = *stands;
            d.page = static_cast<Page>(page);
            d.insisted = true;
            keep(std::move(d));
        }
    }
}

std::string draft_words(const App& app, std::size_t most) {
    std::string out;
    for (const Draft& d : app.drafts.all()) {
        if (!d.path.empty() && most > 0) {
            --most;
            const bool text = d.stands.type == document::Scalar::Type::text && !d.stands.text.empty();
            out += out.empty() ? "" : " ";
            out += text ? app.say(words::entry::NotTakenText{.field = d.label})
                        : app.say(words::entry::NotTaken{.field = d.label,
                                                         .value = value_words(app, d.path, d.stands, app.book())});
        }
    }
    return out;
}

void open_draft(App& app) {
    const Draft draft = *app.drafts.first();
    app.go(draft.page);
    app.open(draft.panel);
    app.ui().start_edit(draft.id, draft.text);
}

bool draft_in_sight(const App& app) {
    return app.drafts.first()->page == app.page() && app.drafts.first()->panel == panel_on_show(app);
}

void draft_bar(App& app, Rect& rest) {
    std::string text = draft_words(app);
    const std::string_view way = app.word(words::entry::touch_to_correct);
    if (verdict_height(app.ui(), text, way, rest.w) > 0.4F * rest.h) { // one after the other, or they hide the places
        text = draft_words(app, 1);
    }
    const Rect bar = rest.take_bottom(verdict_height(app.ui(), text, way, rest.w));
    app.ui().pen().hline(bar.x, bar.right(), bar.y, app.ui().tokens().rule, 1);
    if (verdict_row(app.ui(), "draft", bar, Sign::caution, text, way)) {
        open_draft(app);
    }
}

void draft_caution(Body& body) {
    if (body.app.drafts.first() == nullptr) {
        return;
    }
    body.sign("drafts", Sign::caution, draft_words(body.app));
    body.gap(10);
    if (body.button("send/correct", words::entry::correct)) {
        open_draft(body.app);
    }
    body.gap(12);
}

} // namespace torchside::web
