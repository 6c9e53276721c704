// Published cuts beside what is said of them: rows that a fit used are in no summary.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

#include "core/tune/posterior.hpp"
#include "core/worksheet/evidence.hpp"

using namespace torchside;
using Catch::Matchers::WithinRel;

TEST_CASE("every published row is compared, or listed as one that cannot be") {
    const Evidence e = evidence();
    for (const Published& row : published_cuts()) {
        const bool compared =
            std::any_of(e.compared.begin(), e.compared.end(), [&](const Compared& c) { return c.row == &row; });
        const bool listed = std::find(e.not_compared.begin(), e.not_compared.end(), &row) != e.not_compared.end();
        INFO(row.id);
        CHECK(compared != listed);
        CHECK(static_cast<std::size_t>(row.source) < published_sources().size());
    }
    CHECK(published_cuts().size() == 70);
}

TEST_CASE("what a fit used is marked and in no summary") {
    const Evidence e = evidence();
    REQUIRE(e.summaries.size() == 3);
    for (const EvidenceSummary& s : e.summaries) {
        double bias = 0.0;
        double square = 0.0;
        int rows = 0;
        int inside = 0;
        int fitted = 0;
        for (const Compared& c : e.compared) {
            if (c.what != s.what) {
                continue;
            }
            if (c.fitted) {
                ++fitted;
                continue;
            }
            ++rows;
            bias += c.ln_error;
            square += c.ln_error * c.ln_error;
            inside += c.inside ? 1 : 0;
        }
        CHECK(s.rows == rows);
        CHECK(s.fitted == fitted);
        if (rows == 0) {
            continue;
        }
        CHECK_THAT(s.bias, WithinRel(bias / rows, 1e-12));
        CHECK_THAT(s.rms, WithinRel(std::sqrt(square / rows), 1e-12));
        CHECK_THAT(s.coverage, WithinRel(static_cast<double>(inside) / rows, 1e-12));
    }
    CHECK(e.summaries[0].fitted == 14); // the handbook rows taught the balance
    CHECK(e.summaries[1].fitted == 42); // one torch's kerfs, which the ratio was chosen by
    CHECK(e.summaries[1].rows == 0);
    CHECK(e.summaries[2].rows > 0); // volts taught nothing
    CHECK(e.summaries[2].fitted == 0);
}

TEST_CASE("what is said of a published kerf is what a shop without a log is told: 110 A, 1.2156 mm") {
    const Evidence e = evidence();
    const auto c = std::find_if(e.compared.begin(), e.compared.end(), [](const Compared& row) {
        return row.row->id == "S235U01" && row.what == Measured::kerf;
    });
    REQUIRE(c != e.compared.end());
    cut::CutSetup plate;
    plate.current = Current{110, ampere};
    plate.bore = cut::bore(plate, cut::small_air_torch(plate.metal));
    const Estimate<Length> told = tune::kerf(tune::learn({}, Machine{}), plate);
    CHECK(c->ours.value == told.value.in(mm));
    CHECK(c->published == 1.2156);
    CHECK_THAT(c->ln_error, WithinRel(std::log(told.value.in(mm) / 1.2156), 1e-12));
}
