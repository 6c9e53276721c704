// The app: one workbook, its worksheet, where the user is, and the one door through which a screen changes anything.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/document/intent.hpp"
#include "core/worksheet/chart.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/tuning.hpp"
#include "core/worksheet/worksheet.hpp"
#include "web/kit/canvas.hpp"
#include "web/kit/fonts.hpp"
#include "web/kit/ui.hpp"
#include "web/screens/keeper.hpp"
#include "web/screens/links.hpp"
#include "web/screens/opening.hpp"

namespace torchside::web {

enum class Place { cut, tune, part, quote, shop };
enum class ChartFigure { feed, arc, pierce_delay, kerf };

class App {
public:
    App();

    // --- for platform/main.cpp
    /// Build the screen and give back its picture, in device pixels.
    ImDrawData* frame(const Fonts& fonts, float density, Rect screen, double now);
    /// Without WebGL nothing is drawn, but the mirror is built and every control in it works.
    void frame_without_canvas(double now);
    void pointer_down(Point p, double now) { ui_.gesture.down(p, now, ui_.tree(), ui_.regions); }
    void pointer_move(Point p, double now) { ui_.gesture.move(p, now, ui_.regions); }
    void pointer_up(Point p, double now);
    void wheel(Point p, Point by) { ui_.gesture.wheel(p, by, ui_.regions); }
    void pinch(Point a, Point b) { ui_.gesture.pinch(a, b, ui_.regions); }
    void notice(std::string_view kind, std::string_view text);
    /// A backup file the user picked: it replaces the workbook, or is refused with the reason and nothing changes.
    void open_file(std::string_view text);
    /// What the page is to print now: the chart where it is open or was asked for, else a card of the job.
    [[nodiscard]] std::string to_print();
    [[nodiscard]] Ui& ui() { return ui_; }
    [[nodiscard]] const Ui& ui() const { return ui_; }
    [[nodiscard]] const Tokens& tokens() const;

    // --- for the screens
    [[nodiscard]] const Workbook& book() const { return book_; }
    [[nodiscard]] const Worksheet& sheet() const { return sheet_; }
    [[nodiscard]] const Chart& chart();
    [[nodiscard]] const Outcome<Tuning>& tuning();
    /// The cut under scratch, and what it says.
    [[nodiscard]] SeenCut seen() const;
    [[nodiscard]] const Outcome<tune::CutReading>& reading();
    /// The coupon under scratch.
    [[nodiscard]] const Outcome<tune::Coupon>& coupon();
    [[nodiscard]] bool metric() const { return book_.shop.display.units == UnitSystem::metric; }
    /// A sentence of core's in the user's units.
    [[nodiscard]] std::string said(std::string_view text) const;
    [[nodiscard]] bool wide() const { return columns_ > 1; }

    [[nodiscard]] Place place() const { return place_; }
    /// The sheet that is open over (or beside) the place, "" for none: "stock", "figure/feed", "machine", ...
    [[nodiscard]] const std::string& open_sheet() const { return open_sheet_; }
    void go(Place place);
    void open(std::string_view sheet);
    void close() { open(""); }
    /// Back: leaves a field, then a sheet, then the place.
    void back();

    /// Prints the chart, whatever is open.
    void print_chart();

    /// Intents. Each gives a new workbook, which is evaluated and kept, or leaves all as it was and says why in
    /// refusal().
    bool set(std::string_view path, const document::Scalar& value);
    bool take(Outcome<Workbook> changed);
    /// Why the last entry was not taken; empty when it was.
    [[nodiscard]] const std::string& refusal() const { return refusal_; }
    void refuse(std::string_view why) { refusal_ = why; }
    /// The app's own keypad, or the system's keyboard for this field.
    bool system_keyboard = false;
    ChartFigure chart_figure = ChartFigure::feed;
    std::optional<std::size_t> contour; // of the part, that is measured
    std::optional<std::size_t> look_at; // which of the part's problems to enlarge
    Opening opening;                    // a drawing that is being read
    /// Read off instruments to work settings out from; kept while the app is open, in no workbook.
    struct Scratch {
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
        std::optional<double> square, hole;
        std::array<std::optional<double>, 4> angle{};
        std::optional<double> cut_feed, reading_v, low_v, low_mm, high_v, high_mm, upper_kohm, lower_kohm, input_kohm;
    };
    Scratch scratch;
    Links links;
    bool own_link = false; // the link shown is the job's, for one's own devices, not the customer's
    bool show_qr = false;
    std::optional<Workbook> incoming; // what a job link brought: shown, and kept only when the user says so
    std::optional<Workbook> replaced; // what was there before it was kept

    struct Notices {
        bool update_ready = false;
        bool offline_ready = false;
        bool other_tab = false;
    };
    [[nodiscard]] const Notices& notices() const { return notices_; }
    [[nodiscard]] const Keeper& keeper() const { return keeper_; }

private:
    void build(Pen& pen, Rect screen, double now);
    void publish();
    void take_route(std::string_view fragment);

    Workbook book_;
    PartMemo part_memo_; // before the sheet: a big drawing is not compensated again at every edit
    Worksheet sheet_;
    std::optional<Chart> chart_; // worked out when first looked at
    std::optional<Outcome<Tuning>> tuning_;
    std::optional<Outcome<tune::CutReading>> reading_;
    SeenCut read_; // what reading_ is of
    std::optional<Outcome<tune::Coupon>> coupon_;
    tune::CouponKind coupon_kind_ = tune::CouponKind::ladder;
    Keeper keeper_;
    Canvas canvas_;
    Ui ui_;
    Place place_ = Place::cut;
    std::string open_sheet_;
    std::string refusal_;
    int columns_ = 1;
    Notices notices_;
    std::string published_; // what the page was last told, so that it is told only of changes
    std::string announced_;
    const Tokens* announced_theme_ = nullptr;
    bool printing_chart_ = false;
};

} // namespace torchside::web
