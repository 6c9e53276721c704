// What is new: in a version that waits, and in the one that runs; and the quiet way to install the page.
#include "generated/words/manners.hpp"
#include "generated/words/news.hpp"
#include "generated/words/notice.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/panel.hpp"
#include "web/screens/screens.hpp"

namespace torchside::web {
namespace {

Word kept_words(const App& app) {
    return !app.store().refused() && !app.store().left_alone() ? words::notice::update_kept
                                                               : words::notice::update_unkept;
}

} // namespace

void update_strip(App& app, Rect& rest) {
    Ui& ui = app.ui();
    std::string about = app.notices().update_news;
    if (ui.low()) {
        about.clear(); // its panel has them
    }
    about += about.empty() ? "" : " ";
    about += app.word(kept_words(app));
    const std::string_view title = app.word(words::notice::update);
    const Rect strip = rest.take_bottom(link_height(ui, title, about, rest.w));
    ui.pen().hline(strip.x, strip.right(), strip.y, ui.tokens().rule, 1);
    if (link_row(ui, "notice/update", strip, title, about, Mark::back)) {
        platform::use_update();
    }
}

void install_row(Body& body, const char* id) {
    if (body.app.notices().may_install &&
        body.row(id, words::manners::install, words::manners::install_about, Mark::kept)) {
        platform::install();
    }
}

void news_panel(App& app, PanelAt at) {
    panel(app, at, "news", words::news::title, [&](Body& body) {
        if (app.notices().update_ready) {
            body.heading("news/offer", words::news::offer);
            body.text("news/offered", app.notices().update_news.empty() ? Label(words::news::offered)
                                                                        : Label(app.notices().update_news));
            body.gap(8);
            body.note("news/kept", kept_words(app));
            body.gap(10);
            if (body.button("news/update", words::notice::update, Look::main)) {
                platform::use_update();
            }
            body.gap(8);
        }
        body.heading("news/here", words::news::here);
        body.text("news/first", words::news::first);
        body.gap(8);
        body.text("news/second", words::news::second);
        body.gap(16);
        body.rule();
        install_row(body, "news/install");
        body.gap(16);
    });
}

} // namespace torchside::web
