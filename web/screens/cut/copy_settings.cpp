// The figures of Cut as text: for a message, a job sheet or the controller's notes.
#include "core/stock/properties.hpp"
#include "generated/words/figure_about.hpp"
#include "generated/words/settings.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/body.hpp"
#include "web/screens/screens.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

std::string settings_text(const App& app) {
    const Job& job = app.book().job;
    const cut::Settings& s = *app.worksheet().settings;
    const UnitSystem units = app.book().shop.display.units;
    std::string out = app.say(stock::name(job.material)) + ", " +
                      show_plate(job.thickness, job.material, units).whole() + ", " + show(job.current).whole() + '\n';
    for (const Figure& figure : figures()) {
        const std::string range = show_range(app, figure, s);
        const std::string shown = show(app, figure, s).whole();
        out += app.say(figure.name) + ": ";
        out += range.empty() ? shown : app.say(words::figure_about::Likely{.figure = shown, .range = range});
        out += '\n';
    }
    return out;
}

} // namespace

void copy_settings(Body& column) {
    if (column.app.worksheet().settings &&
        column.row("cut/copy", words::settings::copy, words::settings::copy_about, Mark::chart)) {
        platform::copy(settings_text(column.app));
    }
}

} // namespace torchside::web
