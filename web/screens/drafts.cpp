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

std::string draft_words(const App& app) {
    std::string out;
    for (const Draft& d : app.drafts.all()) {
        if (!d.path.empty()) {
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
    const std::string text = draft_words(app);
    const std::string_view way = app.word(words::entry::touch_to_correct);
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
