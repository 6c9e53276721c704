#include "web/screens/tune/cut_words.hpp"

#include "core/stock/properties.hpp"
#include "generated/words/log.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {

Word verdict_words(tune::Verdict verdict) {
    return verdict == tune::Verdict::clean      ? words::log::clean
           : verdict == tune::Verdict::too_fast ? words::log::too_fast
                                                : words::log::too_slow;
}

std::string stock_words(const App& app, const tune::TestCut& cut) {
    const Units units = app.units();
    return app.say(stock::name(cut.material)) + ", " + show_plate(cut.thickness, cut.material, units).whole() + ", " +
           show(cut.current, units).whole();
}

} // namespace torchside::web
