// The app: one workbook, its worksheet, where the user is, and the one door through which a screen changes anything.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/schema/intent.hpp"
#include "core/words/say.hpp"
#include "core/worksheet/chart.hpp"
#include "core/worksheet/coupons.hpp"
#include "core/worksheet/tuning.hpp"
#include "core/worksheet/worksheet.hpp"
#include "web/kit/canvas.hpp"
#include "web/kit/fonts.hpp"
#include "web/kit/marks.hpp"
#include "web/kit/ui.hpp"
#include "web/screens/changes.hpp"
#include "web/screens/drafts.hpp"
#include "web/screens/part/drawing_import.hpp"
#include "web/screens/quote/links.hpp"
#include "web/screens/workbook_store.hpp"

namespace torchside::web {

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
    /// How large the fonts of the next frame are to be built.
    [[nodiscard]] float word_scale() const { return book_.shop.display.glove ? glove_scale : 1.0F; }

    // --- for the screens
    [[nodiscard]] const Workbook& book() const { return book_; }
    [[nodiscard]] const Worksheet& worksheet() const { return worksheet_; }
    /// What the log has taught.
    [[nodiscard]] const ShopModel& model() const { return model_; }
    [[nodiscard]] const Chart& chart();
    [[nodiscard]] const Outcome<Tuning>& tuning();
    /// The cut under scratch, and what it says.
    [[nodiscard]] SeenCut seen() const;
    [[nodiscard]] const Outcome<tune::CutDiagnosis>& reading();
    /// The coupon under scratch.
    [[nodiscard]] const Outcome<tune::Coupon>& coupon();
    [[nodiscard]] bool metric() const { return book_.shop.display.units == UnitSystem::metric; }
    /// A label, a heading, in the user's language.
    [[nodiscard]] std::string_view word(Label label) const { return label.in(speech().language); }
    /// What core has to say, in the user's units.
    [[nodiscard]] std::string say(const Text& text) const;
    [[nodiscard]] std::vector<std::string> say_all(const std::vector<Text>& texts) const;
    [[nodiscard]] Speech speech() const { return book_.shop.display.units; }
    [[nodiscard]] bool wide() const { return columns_ > 1; }

    [[nodiscard]] Page page() const { return page_; }
    /// The panel that is open over (or beside) the place, "" for none: "stock", "figure/feed", "machine", ...
    [[nodiscard]] const std::string& open_panel() const { return open_panel_; }
    void go(Page page);
    void open(std::string_view panel);
    void close() { open(""); }
    /// Back: leaves a field, then a panel, then the place.
    void back();

    /// Prints the chart, whatever is open.
    void print_chart();

    /// Intents (changes.cpp). Each gives a new workbook, which is evaluated and kept, or leaves all as it was and says
    /// why in refusal(). What was there before stays at hand, with the name of the change: "Thickness 6 → 8 mm".
    bool take(Outcome<Workbook> changed, Label name);
    /// One value; `label` is what its field is called. All that is typed in one field without leaving it is one change.
    enum class By { touch, typing };
    bool set(std::string_view path, const document::Scalar& value, Label label, By by = By::touch);
    /// What hangs on the value that was just typed: part of that change, undone with it.
    void add(Outcome<Workbook> changed);
    /// Rows for the log out of scratch: undone, what was measured is back on its panel too.
    bool log(Outcome<Workbook> changed, Label name);
    /// Takes one entry out of a list.
    bool remove(std::string_view path, Label name);
    /// A value that the app itself puts beside what the user does: no change of his, and undoing one leaves it there.
    void set_beside(std::string_view path, const document::Scalar& value);
    /// A quote was handed out: into the list, undone or not.
    void note_issued(const Links::Row& row);

    /// The last change, until the next one or until the user has gone two steps on: one step of undo, and undone, of
    /// redo.
    [[nodiscard]] const Change* change() const { return change_ ? &*change_ : nullptr; }
    void undo();
    /// Back to what a field held before it was typed into, when the letters typed since are not taken after all.
    void put_back(std::string_view path);
    /// Why the workbook would not take this value, in words for whoever types it; empty when it would.
    [[nodiscard]] std::string would_refuse(std::string_view path, const document::Scalar& value) const;
    Drafts drafts; // what was typed and not taken
    /// The user gives up what he typed into this field.
    void drop_draft(std::string_view id);
    /// Why the last entry was not taken; empty when it was.
    [[nodiscard]] const std::string& refusal() const { return refusal_; }
    void refuse(Label why) { refusal_ = word(why); }
    /// The app's own keypad, or the system's keyboard for this field.
    bool system_keyboard = false;
    /// False too where there are keys and no finger.
    [[nodiscard]] bool own_keypad() const;
    ChartFigure chart_figure = ChartFigure::feed;
    std::optional<std::size_t> contour; // of the part, that is measured
    std::optional<std::size_t> look_at; // which of the part's problems to enlarge
    DrawingImport drawing;              // a drawing that is being read
    std::optional<double> asked_line_v; // a voltage that is chosen, but not yet what belongs to it
    using Scratch = web::Scratch;
    Scratch scratch;
    Links links;
    bool show_qr = false;
    bool asks_new_key = false;
    /// What a job link or a file brought, or what could be read of damaged work: shown, and taken only when the user
    /// says so.
    enum class From { link, backup, damaged };
    std::optional<Workbook> incoming;
    From incoming_from = From::link;
    int incoming_lost = 0;     // of damaged work: entries that could not be read
    bool incoming_key = false; // its seal key is to be taken too
    bool letting_go = false;   // of work that cannot be read: the user is asked once more
    void bring(Workbook book, From from);
    /// Of work that cannot be read: what can, to be taken over.
    void rescue();
    /// Nothing of it is wanted: the next change takes its place.
    void let_go();

    /// This tab and another one changed the same entries: theirs hold until the user says otherwise.
    struct Clash {
        Workbook theirs, mine;
        std::vector<std::string> paths;
    };
    std::optional<Clash> clash;
    void settle_clash(bool mine);

    /// What has just been done, in a few words: shown in a line above the places and spoken, until the next thing is done.
    void say(std::string_view what, Sign sign = Sign::holds);
    [[nodiscard]] const std::string& said() const { return said_; }
    [[nodiscard]] Sign said_sign() const { return said_sign_; }

    struct Notices {
        bool update_ready = false;
        bool offline_ready = false;
        bool may_be_cleared = false; // the browser did not promise to keep what is kept
    };
    [[nodiscard]] const Notices& notices() const { return notices_; }
    [[nodiscard]] const WorkbookStore& store() const { return store_; }

private:
    void build(Pen& pen, Rect screen, double now);
    void publish();
    void say_of_file(std::string_view why);
    void take_route(std::string_view fragment);
    void adopt(Workbook next);
    void hold(Workbook next);
    void take_theirs();
    void step_on();
    void drop_stale();

    Workbook book_;
    std::string written_; // book_ as a file, once there was a change; what is the same to the letter is no change
    std::optional<Change> change_;
    ShopModel model_;    // before what asks it: fitted anew when the log, a nozzle or the gradient has changed
    PartMemo part_memo_; // before the worksheet: a big drawing is not compensated again at every edit
    Worksheet worksheet_;
    bool stale_ = false;         // what follows is of the workbook before
    bool building_ = false;      // and is being drawn
    std::optional<Chart> chart_; // worked out when first looked at
    ChartInputs chart_inputs_;   // what chart_ is of
    std::optional<Outcome<Tuning>> tuning_;
    std::optional<Outcome<tune::CutDiagnosis>> reading_;
    SeenCut read_; // what reading_ is of
    std::optional<Outcome<tune::Coupon>> coupon_;
    tune::CouponKind coupon_kind_ = tune::CouponKind::ladder;
    WorkbookStore store_;
    bool theirs_wait_ = false; // another tab's work, until nothing is being typed
    Canvas canvas_;
    Ui ui_;
    Page page_ = Page::cut;
    std::string open_panel_;
    std::string refusal_;
    std::string said_;
    Sign said_sign_ = Sign::holds;
    int columns_ = 1;
    Notices notices_;
    std::string published_; // what the page was last told, so that it is told only of changes
    std::string announced_;
    const Tokens* announced_theme_ = nullptr;
    bool printing_chart_ = false;
};

} // namespace torchside::web
