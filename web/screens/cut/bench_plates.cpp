#include "web/screens/cut/bench_plates.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "core/stock/properties.hpp"
#include "generated/words/bench.hpp"
#include "web/screens/cut/bench_counts.hpp"
#include "web/screens/job_cuts.hpp"
#include "web/screens/show.hpp"

namespace torchside::web {
namespace {

using Plate = Bench::Plate;

constexpr std::size_t most_plates = 9;

Plate plate_of(const Job& job) {
    return {job.material, job.thickness, job.current};
}

/// What is the same stock to the log is the same plate here.
bool same(const Plate& a, const Plate& b) {
    tune::TestCut cut;
    cut.material = a.material;
    cut.thickness = a.thickness;
    cut.current = a.current;
    return is_stock(cut, b.material, b.thickness, b.current);
}

Outcome<Workbook> with(const Workbook& book, const Plate& plate) {
    return document::apply(book, {{"job.material", stock::key(plate.material)},
                                  {"job.thickness_mm", plate.thickness.in(mm)},
                                  {"job.current_a", plate.current.in(ampere)}});
}

const Plate& there(App& app, int by) {
    const auto& plates = app.scratch.bench.plates;
    const std::size_t count = plates.size();
    return plates[(plate_of_job(app) + (by < 0 ? count - 1 : 1)) % count];
}

std::string said(const App& app, const Plate& plate) {
    return app.say(words::bench::Plate{.current = show(plate.current, app.units()).whole(),
                                       .metal = stock::name(plate.material),
                                       .thickness = show_plate(plate.thickness, plate.material, app.units()).whole()});
}

} // namespace

void gather_plates(App& app) {
    const Workbook& book = app.book();
    std::vector<Plate> plates{plate_of(book.job)};
    for (auto cut = book.shop.tests.rbegin(); cut != book.shop.tests.rend() && plates.size() < most_plates; ++cut) {
        const Plate plate{cut->material, cut->thickness, cut->current};
        const bool known = std::any_of(plates.begin(), plates.end(), [&](const Plate& p) { return same(p, plate); });
        if (!known && plate.current <= book.shop.machine.max_current && with(book, plate).ok()) {
            plates.push_back(plate);
        }
    }
    app.scratch.bench.plates = std::move(plates);
}

std::size_t plate_of_job(App& app) {
    auto& plates = app.scratch.bench.plates;
    const Plate here = plate_of(app.book().job);
    const auto found =
        std::find_if(plates.begin(), plates.end(), [&](const Plate& plate) { return same(plate, here); });
    if (found == plates.end()) {
        plates.insert(plates.begin(), here);
        return 0;
    }
    return static_cast<std::size_t>(found - plates.begin());
}

void step_plate(App& app, int by) {
    const Plate to = there(app, by);
    if (app.take(with(app.book(), to), said(app, to))) {
        drop_pierce(app);
    }
}

std::string plate_words(App& app, int by) {
    return by == 0 ? said(app, plate_of(app.book().job)) : said(app, there(app, by));
}

} // namespace torchside::web
