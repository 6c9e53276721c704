// Whatever a control does to the workbook, one touch of Undo takes back, to the letter, and one of Redo brings again.
#include <catch2/catch_test_macros.hpp>
#include <set>

#include "core/store/workbook_file.hpp"
#include "tests/screens/person.hpp"

using namespace torchside::web;
using torchside::document::write_workbook;

namespace {

constexpr const char* places[] = {"place/cut", "place/tune", "place/part", "place/quote", "place/shop"};

/// A panel, and what stands in the app when it is looked at.
struct Spot {
    std::string place, panel;
};

std::string written(Person& p) {
    return write_workbook(p.app().book());
}

void stand(Person& p, const Spot& spot) {
    p.touch_id(spot.place);
    p.app().open(spot.panel);
    p.look();
}

std::vector<std::string> controls(Person& p) {
    std::vector<std::string> ids;
    for (const Node& n : p.app().ui().tree().nodes()) {
        const bool way = n.id.starts_with("place/") || n.id.starts_with("change/") || n.id.ends_with("/close");
        if (is_control(n.role) && !way && n.role != Role::textbox) {
            ids.push_back(n.id);
        }
    }
    return ids;
}

/// Something to read and to log: without it half the panels have nothing to change.
void prepare(Person& p) {
    auto& s = p.app().scratch.inputs;
    s.cut.signs = torchside::tune::touched({}, torchside::tune::Sign::dross_none);
    s.clean = {false, true, true, true, false, false, false, false, false};
    s.heights[1].square = s.heights[2].square = true;
    s.square = 48.6;
    s.hole = 21.4;
    s.reading_v = 2.7;
    s.low_mm = 1.5, s.low_v = 120, s.high_mm = 2.5, s.high_v = 126;
}

/// Touches one control of a fresh app; true when that changed the workbook.
bool undone_exactly(const Spot& spot, const std::string& id, torchside::tune::CouponKind coupon) {
    browser() = {};
    Person p;
    prepare(p);
    p.app().scratch.inputs.coupon = coupon;
    stand(p, spot);
    if (p.node(id) == nullptr) {
        return false;
    }
    const std::string before = written(p);
    const auto clean = p.app().scratch.inputs.clean;
    const auto square = p.app().scratch.inputs.square;
    p.touch_id(id);
    const std::string after = written(p);
    if (after == before) {
        return false;
    }
    if (id == "first/start" || id == "shop/start") {
        return false; // marks the usual answers on a sheet that nobody has filled; each question is skipped by itself
    }
    INFO(spot.place << " " << spot.panel << ": " << id);
    REQUIRE(p.app().change() != nullptr);
    CHECK(p.app().change()->name.size() > 4);
    p.touch("Undo");
    CHECK(written(p) == before);
    if (id != "coupon/kind") {
        CHECK(p.app().scratch.inputs.clean == clean);
        CHECK(p.app().scratch.inputs.square == square);
    }
    p.touch("Redo");
    CHECK(written(p) == after);
    p.touch("Undo");
    CHECK(written(p) == before);
    return true;
}

} // namespace

TEST_CASE("every control that changes the workbook is undone to the letter") {
    constexpr const char* panels[] = {"",        "stock",   "chart",  "circuit", "air",        "log",
                                      "log/0",   "reach",   "shape",  "plate",   "costs",      "breaks",
                                      "wear",    "rates",   "terms",  "send",    "read",       "coupon",
                                      "machine", "nozzles", "height", "table",   "controller", "screen"};
    using Kind = torchside::tune::CouponKind;
    int changed = 0;
    std::set<std::string> done;
    for (const char* place : places) {
        for (const char* panel : panels) {
            for (const Kind coupon : {Kind::ladder, Kind::heights, Kind::kerf}) {
                if (coupon != Kind::ladder && std::string_view(panel) != "coupon") {
                    continue;
                }
                browser() = {};
                Person p;
                prepare(p);
                p.app().scratch.inputs.coupon = coupon;
                const Spot spot{place, panel};
                stand(p, spot);
                for (const std::string& id : controls(p)) {
                    // A panel is the same over every place: once is enough.
                    const std::string what = id + '@' + (*panel == '\0' ? place : panel) + std::to_string(int(coupon));
                    if (done.insert(what).second) {
                        changed += undone_exactly(spot, id, coupon) ? 1 : 0;
                    }
                }
            }
        }
    }
    CHECK(changed > 120); // or the walk has lost its way
}

TEST_CASE("what is typed in one field is one change, named by its label and both values") {
    browser() = {};
    Person p;
    const std::string before = written(p);
    p.app().open("stock");
    p.look();
    p.touch_id("stock/thickness");
    for (const char* text : {"1", "12", "12.", "12.5"}) {
        p.app().ui().enter("stock/thickness", text, false);
        p.look();
    }
    p.app().ui().enter("stock/thickness", "12.5", true);
    p.look();
    REQUIRE(p.app().change() != nullptr);
    CHECK(p.app().change()->name == "Thickness 6 → 12.5 mm");
    CHECK(p.text().find("Thickness 6 → 12.5 mm") != std::string::npos);
    p.touch("Undo");
    CHECK(written(p) == before);
    CHECK(p.text().find("Undone: Thickness 6 → 12.5 mm") != std::string::npos);
}

TEST_CASE("typing the same field a second time is a second change; back to what it was is none") {
    browser() = {};
    Person p;
    p.app().open("stock");
    p.look();
    p.type("Current", "40");
    p.type("Current", "30");
    CHECK(p.app().change()->name == "Current 40 → 30 A");
    p.touch_id("stock/current");
    for (const char* text : {"2", "25", "3", "30"}) {
        p.app().ui().enter("stock/current", text, false);
        p.look();
    }
    CHECK(p.app().change() == nullptr);
}

TEST_CASE("the bar stays one step on and goes with the second") {
    browser() = {};
    keep_shop();
    Person p;
    p.touch_id("place/tune");
    p.app().open("log");
    p.look();
    p.touch_id("log/0/out");
    CHECK(p.app().change()->name == "Cut deleted from the log");
    p.touch_id("place/cut");
    CHECK(p.named("Undo") != nullptr);
    p.touch_id("place/quote");
    CHECK(p.named("Undo") == nullptr);
}

TEST_CASE("a backup that was opened can be undone, and a seal that was made meanwhile stays") {
    const std::string key(64, 'b');
    browser() = {};
    Person p;
    const std::string before = written(p);
    auto other = p.app().book();
    other.job.name = "Another";
    p.app().open_file(write_workbook(other));
    p.look();
    CHECK(p.app().change() == nullptr); // it is asked first
    CHECK(p.text().find("Another, now none") != std::string::npos);
    p.touch("Use this backup");
    CHECK(p.app().change()->name == "Opened a backup");
    p.app().set_beside("shop.seal_key", std::string_view(key));
    p.look();
    p.touch("Undo");
    CHECK(p.app().book().job.name != "Another");
    CHECK(p.app().book().shop.seal_key == key);
    p.app().set_beside("shop.seal_key", "");
    CHECK(written(p) == before);
}

TEST_CASE("a chart cell and a job from a link are undone") {
    browser() = {};
    Person p;
    const std::string before = written(p);
    p.app().open("chart");
    p.look();
    p.touch_id("chart/1/0/use");
    REQUIRE(p.app().change() != nullptr);
    CHECK(p.app().change()->name.starts_with("Chart: "));
    p.touch("Undo");
    CHECK(written(p) == before);
    auto other = p.app().book();
    other.job.name = "Another";
    p.app().scratch.incoming.book = other;
    p.app().open("incoming");
    p.look();
    p.touch("Keep as my job");
    CHECK(p.app().change()->name == "Job from a link");
    p.touch("Undo");
    CHECK(written(p) == before);
}

TEST_CASE("what was read off a cut goes with it, and comes back by Undo") {
    browser() = {};
    Person p;
    prepare(p);
    auto& s = p.app().scratch.inputs;
    s.cut_feed = 1500;
    p.touch_id("place/cut");
    p.touch("Thickness");
    p.touch_id("stock/plate/8");
    CHECK_FALSE(s.reading_v);
    CHECK_FALSE(s.cut_feed);
    CHECK(s.cut.signs == torchside::tune::Signs());
    CHECK(s.low_v == 120.0); // the table's own gradient is no matter of the plate
    p.touch("Undo");
    CHECK(s.reading_v == 2.7);
    CHECK(s.cut_feed == 1500.0);
    p.touch("Redo");
    CHECK_FALSE(s.reading_v);
    p.touch("Undo");
    // Typed, figure by figure, and given up.
    p.app().set("job.current_a", torchside::document::Scalar(30.0), {}, App::By::typing);
    p.app().set("job.current_a", torchside::document::Scalar(40.0), {}, App::By::typing);
    CHECK_FALSE(s.reading_v);
    p.app().undo();
    CHECK(s.reading_v == 2.7);
}
