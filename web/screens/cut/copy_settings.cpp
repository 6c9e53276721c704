// The figures of Cut as text: for a message, a job sheet or the controller's notes.
#include "core/stock/properties.hpp"
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
        const std::string range = show_range(figure, s, units);
        out += app.say(figure.name) + ": " + show(figure, s, app.book().shop).whole();
        out += range.empty() ? "\n" : " (likely " + range + ", 8 in 10)\n";
    }
    return out;
}

} // namespace

void copy_settings(Body& column) {
    if (column.app.worksheet().settings &&
        column.row("cut/copy", "Copy settings as text", "All figures of this cut", Mark::chart)) {
        platform::copy(settings_text(column.app));
    }
}

} // namespace torchside::web
