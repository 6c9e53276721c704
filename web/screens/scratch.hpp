// What is on the screens and in no workbook: what was typed for a tool, what a panel has asked, what came from outside and
// was not taken yet. It goes with the app.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/tune/coupon.hpp"
#include "core/tune/signs.hpp"
#include "core/worksheet/workbook.hpp"
#include "web/screens/cut/bench.hpp"
#include "web/screens/part/drawing_import.hpp"

namespace torchside::web {

/// Read off instruments and typed, to work settings out from. Undo brings back those that a row of the log was made of.
struct ToolInputs {
    struct Cut { // that is read, in mm and V
        tune::Signs signs;
        std::optional<double> kerf_top, kerf_bottom, left_deg, right_deg, lag, height, arc;
    };
    Cut cut;
    // The coupon on show, and what it measured.
    tune::CouponKind coupon = tune::CouponKind::ladder;
    std::array<bool, 9> clean{};
    struct Leg { // of a height ladder, in mm and V
        bool square = false;
        std::optional<double> arc, kerf_top, kerf_bottom;
    };
    std::array<Leg, 9> heights{};
    std::size_t leg = 0; // of them, that is measured
    struct Start {       // what hangs on the largest current while that is typed
        bool duty_follows = false;
        double job_a = 0, least_a = 0;
    } start;
    std::optional<double> square, hole, kerf_square;
    std::array<std::optional<double>, 4> angle{};
    std::optional<double> cut_feed, reading_v, low_v, low_mm, high_v, high_mm, upper_kohm, lower_kohm, input_kohm;

    /// Another metal, plate or current: what was read off the cut before says nothing of it.
    void forget_cut() {
        cut = {};
        cut_feed.reset();
        reading_v.reset();
    }
};

/// What a job link or a file brought, or what could be read of damaged work: shown, and taken only when the user says so.
struct Incoming {
    enum class From { link, backup, damaged };
    std::optional<Workbook> book{};
    From from = From::link;
    int lost = 0;          // of damaged work: entries that could not be read
    bool with_key = false; // its seal key is to be taken too
};

/// The size of a shape that its picture shows, and what it was, and to which scale, when a finger took its end.
struct SizeOnShow {
    std::string path{}; // "job.part.length_mm"
    double was = 0;
    double px_mm = 0; // 0: no finger has it
    double x0 = 0, y0 = 0;
};

enum class ChartFigure { feed, arc, pierce_delay, kerf };

/// The supply as it was at a voltage, with the current that was cut at there: one touch on the voltage brings it back.
struct SupplyLeft {
    supply::Circuit circuit;
    int phases = 1;
    Current job_current;
};

struct Scratch {
    ToolInputs inputs;
    std::vector<SupplyLeft> supplies_left; // one for each voltage that was on show
    std::optional<Workbook> before_start;  // what Start my shop began with: whoever skips a question is left with it
    Incoming incoming;
    std::vector<tune::SharedCut> cuts; // of another shop, as a file brought them
    DrawingImport drawing;             // a drawing that is being read
    Bench bench;                       // the screen at the table, and what it counts
    ChartFigure chart_figure = ChartFigure::feed;
    bool system_keyboard = false; // for the field under edit, in the place of the app's own keypad

    std::optional<std::size_t> contour{}; // of the part, that is measured
    std::optional<std::size_t> look_at{}; // which of the part's problems to enlarge
    SizeOnShow size;

    // What a panel has asked and nobody has answered.
    std::optional<double> asked_line_v{}; // a voltage that is chosen, but not yet what belongs to it
    std::string copied{};                 // which figure, until the page says that it is
    std::string find{};                   // typed to find something
    bool said_saved = false;              // once
    bool show_qr = false;                 // what is shown to a customer was asked for
    bool asks_new_key = false;
    bool letting_go = false; // of work that cannot be read: the user is asked once more
    bool explains = false;   // what the figure is
    bool chart_key = false;  // what the marks of the chart mean
    bool derives = false;    // by which formula, and from where

    /// A panel was left: its questions go with it. What was typed for the tools stays.
    void reset() {
        asked_line_v.reset();
        find.clear();
        show_qr = asks_new_key = letting_go = explains = chart_key = derives = false;
    }
    /// The part has another outline: what was chosen in the one before means nothing.
    void forget_contours() {
        contour.reset();
        look_at.reset();
        size = {};
    }
};

} // namespace torchside::web
