// Many links, read back and damaged. usage: torchside_links ROUNDS DAMAGED
//
// Packs and opens ROUNDS random workbooks, and opens DAMAGED links of jobs and quotes: half with letters changed, added
// or lost, half damaged inside a frame whose checksum fits. Then as many texts made of a sealed quote and an unsealed one
// (property/forged_link.hpp). Prints what was found and ends with 1 when a workbook came back other than it went, when
// something out of range was taken, or when a seal was right while another quote was open.
#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/link/link.hpp"
#include "core/schema/intent.hpp"
#include "tests/core/said.hpp"
#include "tests/property/forged_link.hpp"
#include "tests/property/link_bytes.hpp"
#include "tests/property/random_quote.hpp"
#include "tests/property/random_workbook.hpp"

namespace {

using namespace torchside;
using namespace torchside::document;

long round_trips(long rounds) {
    test::Rng rng(11);
    long failed = 0;
    for (long i = 0; i < rounds; ++i) {
        Workbook w = test::random_workbook(rng);
        const auto back = open_job_link(job_link(w));
        test::forget_own(w.shop);
        failed += back && test::same(w, back.value()) ? 0 : 1;
    }
    return failed;
}

struct Tally {
    long opened = 0;
    long refused = 0;
    long wrong = 0;
};

template <class T>
void count(const Outcome<T>& read, bool in_range, Tally& tally) {
    if (read) {
        ++tally.opened;
        tally.wrong += in_range ? 0 : 1;
        return;
    }
    ++tally.refused;
    const Fault& fault = read.fault();
    tally.wrong += fault.field.empty() || test::said(fault.text).find(", accepted is ") == std::string::npos ||
                           (fault.field + test::said(fault.text)).find('\n') != std::string::npos
                       ? 1
                       : 0;
}

void open_both(const std::string& text, Tally& tally) {
    if (text.starts_with("q=")) {
        const auto quote = open_quote_link(text);
        count(quote, quote && !check_quote(quote.value()), tally);
    } else {
        const auto job = open_job_link(text);
        count(job, job && !check(job.value()), tally);
    }
}

struct Forged {
    long tried = 0;
    long refused = 0;
    long genuine = 0;
    long fooled = 0;

    void look(const test::SealedPair& pair, const std::string& text) {
        const test::Seen seen = test::seen(pair, text);
        ++tried;
        refused += seen == test::Seen::refused ? 1 : 0;
        genuine += seen == test::Seen::genuine ? 1 : 0;
        fooled += seen == test::Seen::fooled ? 1 : 0;
    }
};

/// All rows of one to five pieces, and random ones up to the number that is wanted.
Forged forge(long wanted) {
    test::Rng rng(13);
    Forged found;
    const test::SealedPair first = test::sealed_pair(rng, 28);
    std::size_t rows = 1;
    for (int pieces = 1; pieces <= 5 && found.tried < wanted; ++pieces) {
        rows *= test::forged_pieces;
        for (std::size_t row = 0; row < rows; ++row) {
            found.look(first, test::forged_row(first, row, pieces));
        }
    }
    while (found.tried < wanted) {
        const test::SealedPair pair = test::sealed_pair(rng, rng.chance(0.5) ? 24 : 28);
        for (int i = 0; i < 1000; ++i) {
            found.look(pair, test::forged(pair, rng));
        }
    }
    return found;
}

} // namespace

int main(int argc, char** argv) {
    const long rounds = argc > 1 ? std::atol(argv[1]) : 100000;
    const long wanted = argc > 2 ? std::atol(argv[2]) : 1000000;
    const long failed = round_trips(rounds);
    std::printf("%ld workbooks as links and back, %ld came back different\n", rounds, failed);
    test::Rng rng(12);
    Tally letters;
    Tally inside;
    std::string link;
    std::string bytes;
    for (long i = 0; i < wanted / 2; ++i) {
        if (i % 100 == 0) {
            Workbook w = test::random_workbook(rng);
            w.shop.tests.resize(std::min<std::size_t>(w.shop.tests.size(), 3));
            link = i % 200 == 0 ? job_link(w) : quote_link(test::random_quote(rng));
            bytes = test::link_bytes(link);
            bytes.resize(bytes.size() - 4);
        }
        open_both(test::damaged(link, rng), letters);
        open_both(test::checked_link(link[0], test::damaged(bytes, rng)), inside);
    }
    for (const auto& [name, t] : {std::pair{"letters", letters}, std::pair{"inside", inside}}) {
        std::printf("damaged %s: %ld opened, %ld refused, %ld wrong\n", name, t.opened, t.refused, t.wrong);
    }
    const Forged forged = forge(wanted);
    std::printf("%ld forged texts: %ld refused, %ld genuine, %ld showed another quote under a right seal\n",
                forged.tried, forged.refused, forged.genuine, forged.fooled);
    return failed + letters.wrong + inside.wrong + forged.fooled == 0 && forged.genuine > 0 ? 0 : 1;
}
