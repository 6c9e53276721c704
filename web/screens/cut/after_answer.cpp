// What Cut ends with: its figures as text, for a message, a job sheet or the controller's notes, and ways on.
#include "core/stock/properties.hpp"
#include "generated/words/figure_about.hpp"
#include "generated/words/manners.hpp"
#include "generated/words/settings.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/body.hpp"
#include "web/screens/find/find_index.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"
#include "web/screens/tables.hpp"

namespace torchside::web {
namespace {

std::string settings_text(const App& app) {
    const Job& job = app.book().job;
    const cut::Settings& s = *app.worksheet().settings;
    const Units units = app.units();
    std::string out = app.say(stock::name(job.material)) + ", " +
                      show_plate(job.thickness, job.material, units).whole() + ", " + show(job.current, units).whole() +
                      '\n';
    for (const Figure& figure : figures()) {
        const std::string range = show_range(app, figure, s);
        const std::string shown = show(app, figure, s).whole();
        out += app.say(figure.name) + ": ";
        out += range.empty() ? shown : app.say(words::figure_about::Likely{.figure = shown, .range = range});
        out += '\n';
        if (figure.key == "pierce_delay" && s.dwell) {
            out += app.say(words::figure_about::dwell) + ": " + show(*s.dwell, units).whole() + '\n';
        }
    }
    return out;
}

} // namespace

void copy_settings(App& app) {
    platform::copy(settings_text(app));
}

bool copy_figure(App& app, std::string_view id) {
    constexpr std::string_view tile = "cut/";
    const Figure* figure = id.starts_with(tile) ? figure_of(id.substr(tile.size())) : nullptr;
    if (figure == nullptr || !app.worksheet().settings) {
        return false;
    }
    const cut::Settings& s = *app.worksheet().settings;
    app.scratch.copied = app.say(figure->name) + ' ' + show(app, *figure, s).whole();
    platform::copy(show(app, *figure, s).whole());
    return true;
}

void after_answer(Body& column) {
    App& app = column.app;
    if (!app.wide() && column.row("cut/chart", words::settings::chart, words::settings::chart_about, Mark::chart)) {
        app.open("chart");
    }
    if (app.worksheet().settings) {
        if (column.row("cut/copy", words::settings::copy, words::settings::copy_about, Mark::chart)) {
            copy_settings(app);
        }
        if (platform::can_share() &&
            column.row("cut/share", words::manners::share_settings, words::settings::copy_about, Mark::screen)) {
            platform::share_text(app.book().shop.name, settings_text(app));
        }
    }
    table_row(column, Table::chart);
    find_row(column, "cut/find");
    install_row(column, "cut/install");
}

} // namespace torchside::web
