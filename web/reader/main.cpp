// The reader's module: it reads one drawing in a worker of the browser (web/page/js/reader.js), so that the app stays
// awake. No screen, no glue.
#include <memory>
#include <string>
#include <vector>

#include "core/drawing/drawing.hpp"
#include "core/drawing/wire.hpp"
#include "core/words/say.hpp"
#include "core/words/word_file.hpp"

#define TORCHSIDE_EXPORT extern "C" __attribute__((used, visibility("default")))

extern "C" __attribute__((import_module("env"), import_name("torchside_progress"))) int
torchside_progress(double share);

namespace {

using namespace torchside;

struct Held {
    std::string text;                  // the drawing
    std::unique_ptr<WordFile> words{}; // of the reader's language; none: English
    std::string fault;                 // why it could not be read; empty when it was
    std::vector<double> row{};         // what was read
};

Held& held() {
    static Held one;
    return one;
}

const Language& language() {
    return held().words ? held().words->language() : readers_english();
}

} // namespace

/// Where the worker writes the drawing's bytes.
TORCHSIDE_EXPORT char* torchside_room(unsigned bytes) {
    held().text.assign(bytes, '\0');
    return held().text.data();
}

/// What was written there is the table of words to say faults in; what is none changes nothing.
TORCHSIDE_EXPORT void torchside_words() {
    held().words = WordFile::read("-", held().text);
}

/// Reads it. `unit`: a DrawingUnit, or below 0 for what the drawing says. How many numbers there are to take; 0 when it
/// was refused.
TORCHSIDE_EXPORT unsigned torchside_read(int unit) {
    drawing::ReadSettings settings;
    if (unit >= 0) {
        settings.unit = static_cast<drawing::DrawingUnit>(unit);
    }
    settings.progress.tell = [](void*, double share) { return torchside_progress(share) != 0; };
    const auto drawing = drawing::read_drawing(held().text, settings);
    held().text.clear();
    held().text.shrink_to_fit();
    held().fault = drawing ? "" : say(drawing.fault().text, Speech(language(), UnitSystem::metric));
    held().row = drawing ? drawing::pack(drawing.value()) : std::vector<double>{};
    return static_cast<unsigned>(held().row.size());
}

TORCHSIDE_EXPORT const double* torchside_numbers() {
    return held().row.data();
}

TORCHSIDE_EXPORT const char* torchside_fault() {
    return held().fault.c_str();
}
