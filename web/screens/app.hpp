// The app: one workbook, and the one door through which a screen changes it. Beside the workbook stand three parts: where the
// user is (Navigation), what is on the screens and in no workbook (Scratch), and what follows from the workbook (Derived).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/schema/intent.hpp"
#include "core/words/say.hpp"
#include "web/kit/canvas.hpp"
#include "web/kit/fonts.hpp"
#include "web/kit/marks.hpp"
#include "web/kit/ui.hpp"
#include "web/screens/changes.hpp"
#include "web/screens/cut/recent_stocks.hpp"
#include "web/screens/derived.hpp"
#include "web/screens/drafts.hpp"
#include "web/screens/navigation.hpp"
#include "web/screens/quote/links.hpp"
#include "web/screens/save_delay.hpp"
#include "web/screens/scratch.hpp"
#include "web/screens/spoken.hpp"
#include "web/screens/workbook_store.hpp"

namespace torchside::web {

class App {
public:
    App();

    // --- for platform/main.cpp
    /// Build the screen and give back its picture, in device pixels.
    ImDrawData* frame(const Fonts& fonts, float density, Rect screen, double now);
    /// Without WebGL nothing is drawn, but the mirror is built and every control in it works.
    void frame_without_canvas(double now);
    void pointer_down(Point p, double now);
    void pointer_move(Point p, double now);
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

    /// How much larger than for an arm's length figures are: 0 but at the table.
    [[nodiscard]] float far_scale() const { return scratch.bench.on ? scratch.bench.scale : 0; }
    /// Whether every size of type needs accented letters.
    [[nodiscard]] bool accents() const { return spoken_.accents(); }

    // --- for the screens
    [[nodiscard]] const Workbook& book() const { return book_; }
    [[nodiscard]] const Worksheet& worksheet() const { return derived_.worksheet(); }
    /// What the log has taught.
    [[nodiscard]] const ShopModel& model() const { return derived_.model(); }
    [[nodiscard]] const Chart& chart();
    [[nodiscard]] const Outcome<Tuning>& tuning();
    /// What the cut that was typed into the tools says.
    [[nodiscard]] const Outcome<tune::CutDiagnosis>& diagnosis();
    /// The coupon that was chosen in the tools.
    [[nodiscard]] const Outcome<tune::Coupon>& coupon();
    [[nodiscard]] bool metric() const { return units().metric(); }
    /// The user's units, and how numbers are written in his language.
    [[nodiscard]] Units units() const { return speech().units; }
    /// A label, a heading, in the user's language.
    [[nodiscard]] std::string_view word(Label label) const { return label.in(speech().language); }
    /// What core has to say, in the user's units.
    [[nodiscard]] std::string say(const Text& text) const;
    [[nodiscard]] std::vector<std::string> say_all(const std::vector<Text>& texts) const;
    [[nodiscard]] Speech speech() const { return {spoken_.language(), book_.shop.display.units}; }
    /// What a customer's page is said in.
    [[nodiscard]] Speech speech_for(const document::Quote& quote) {
        return {spoken_.other(quote.language), quote.units};
    }
    [[nodiscard]] bool wide() const { return navigation_.wide(); }
    [[nodiscard]] Navigation::Widths widths() const { return navigation_.widths(); }
    /// A column's edge goes so far to the right, or with none back to where it usually is; remembered on this device.
    void move_edge(std::string_view id, std::optional<float> by);

    [[nodiscard]] Page page() const { return navigation_.page(); }
    /// The panel that is open over (or beside) the page, "" for none: "stock", "figure/feed", "machine", ...
    [[nodiscard]] const std::string& open_panel() const { return navigation_.panel(); }
    /// Whatever leaves a panel leaves the field under edit, and what the panel had asked, too.
    void go(Page page);
    void open(std::string_view panel);
    void close() { open(""); }
    /// Leaves a field, then a panel, then the page.
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
    /// The app's own keypad, not the system's keyboard. False too where there are keys and no finger.
    [[nodiscard]] bool own_keypad() const;

    Scratch scratch;
    Links links;

    /// What came from outside is shown, to be taken or not.
    void bring(Workbook book, Incoming::From from);
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
        std::string update_news{}; // what it brings, in its own words
        bool may_install = false;
        bool offline_ready = false;
        bool may_be_cleared = false; // the browser did not promise to keep what is kept
    };
    [[nodiscard]] const Notices& notices() const { return notices_; }
    [[nodiscard]] const WorkbookStore& store() const { return store_; }
    /// All that was changed lies in the browser.
    [[nodiscard]] bool all_kept() const { return !save_delay_.waits() && !store_.busy() && !store_.refused(); }
    /// The phone says it when the last change has brought a warning; once for each.
    void feel_warnings();
    /// What the user worked with before, newest first, the job's own left out.
    [[nodiscard]] std::vector<Stock> recent_stocks() { return recent_.others(book_.job); }
    /// A change is kept soon after it was made (SaveDelay). What is about to leave this page, or may end it, keeps it now.
    void keep_now();

private:
    bool hear_manners(std::string_view kind, std::string_view text);
    void say_copied();
    [[nodiscard]] bool can_pull() const;
    void build(Pen& pen, Rect screen, double now);
    void publish();
    void say_of_file(std::string_view why);
    void take_route(std::string_view fragment);
    void adopt(Workbook next);
    void give_up();
    void hold(Workbook next);
    void keep_soon();
    bool accepted(const Outcome<Workbook>& changed);
    void step_to(Workbook next, Label name);
    void take_theirs();
    void put_together(std::optional<document::Merged> merged);
    void put_late(std::string_view found);
    void ask_of(document::Merged& merged);
    void step_on();
    void left();

    Workbook book_;
    std::optional<Change> change_;
    Derived derived_;
    Spoken spoken_;
    SaveDelay save_delay_;
    WorkbookStore store_;
    bool theirs_wait_ = false; // another tab's work, until nothing is being typed
    Canvas canvas_;
    Ui ui_;
    Navigation navigation_;
    std::string refusal_;
    std::string said_;
    Sign said_sign_ = Sign::holds;
    Notices notices_;
    std::string published_; // what the page was last told, so that it is told only of changes
    std::string announced_; // and the address
    const Tokens* announced_theme_ = nullptr;
    bool printing_chart_ = false;
    RecentStocks recent_;
    std::optional<std::vector<std::string>> warned_; // before the last change, until it was looked at
    std::string edge_;                               // of a column, that a pointer drags
    float edge_at_ = 0;
};

} // namespace torchside::web
