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
    std::string out = std::string(stock::name(job.material)) + ", " +
                      show_plate(job.thickness, job.material, units).whole() + ", " + show(job.current).whole() + '\n';
    const auto put = [&](const char* name, const std::string& value, const std::string& range) {
        out += std::string(name) + ": " + value;
        out += range.empty() ? "\n" : " (likely " + range + ", 8 in 10)\n";
    };
    const auto length = [&](const char* name, const Estimate<Length>& e) {
        put(name, show(e.value, units).whole(), show_range(e, units));
    };
    put("Feed", show_feed(s.feed.value, app.book().shop).whole(), show_range(s.feed, units));
    put("Arc volts", show(s.arc.value).whole(), show_range(s.arc));
    length("Pierce height", s.pierce_height);
    put("Pierce delay", s.pierce_delay ? show(s.pierce_delay->value).whole() : "none, start at the edge",
        s.pierce_delay ? show_range(*s.pierce_delay) : "");
    length("Kerf", s.kerf);
    length("Lead-in", s.lead_in);
    put("Smallest hole", show_least_hole(s, units).whole(), show_range(s.min_hole, units));
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
