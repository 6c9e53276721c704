// Another voltage comes with another breaker and other wires: the sheet asks, and one touch takes them together.
#include <catch2/catch_test_macros.hpp>

#include "tests/screens/person.hpp"

using namespace std::string_view_literals;
using namespace torchside;
using namespace torchside::web;

namespace {

struct AtCircuit {
    Person person;
    AtCircuit() : person((browser() = {}, 360.0F), 740.0F) {
        REQUIRE(person.app().take(Workbook{}, "A book"sv));
        person.touch_id("place/shop");
        person.touch("Circuit");
    }
    [[nodiscard]] const supply::Circuit& circuit() { return person.app().book().shop.circuit; }
};

} // namespace

TEST_CASE("120 V asks for what belongs to it before anything changes") {
    AtCircuit at;
    at.person.touch("120 V");
    CHECK(at.circuit().line == Voltage{240, volt});
    CHECK(at.person.text().find("120 V usually comes on another breaker and wire") != std::string::npos);
    at.person.touch("20 A, 12 AWG");
    CHECK(at.circuit().line == Voltage{120, volt});
    CHECK(at.circuit().breaker == Current{20, ampere});
    CHECK(at.circuit().run_awg == 12);
    CHECK(at.person.named("Keep 20 A, 12 AWG") == nullptr);
}

TEST_CASE("one touch on the voltage that was left brings back its breaker, its wires and the current") {
    AtCircuit at;
    const Current before = at.person.app().book().job.current;
    at.person.touch("120 V");
    at.person.touch("20 A, 12 AWG");
    REQUIRE(at.person.app().set("job.current_a", 25.0, "Current"sv));
    at.person.look();
    at.person.touch("240 V");
    CHECK(at.circuit().line == Voltage{240, volt});
    CHECK(at.circuit().breaker == Current{30, ampere});
    CHECK(at.circuit().run_awg == 10);
    CHECK(at.person.app().book().job.current == before);
    CHECK(at.person.text().find("usually comes on") == std::string::npos);
    at.person.touch("120 V"); // and there again, as it was there
    CHECK(at.circuit().breaker == Current{20, ampere});
    CHECK(at.person.app().book().job.current == Current{25, ampere});
    at.person.touch("Undo");
    CHECK(at.circuit().line == Voltage{240, volt});
}

TEST_CASE("what is there can be kept at another voltage") {
    AtCircuit at;
    at.person.touch("120 V");
    at.person.touch("Keep 30 A, 10 AWG");
    CHECK(at.circuit().line == Voltage{120, volt});
    CHECK(at.circuit().breaker == Current{30, ampere});
    CHECK(at.circuit().run_awg == 10);
}

TEST_CASE("a typed voltage asks too, an unusual one is taken as it is") {
    AtCircuit at;
    at.person.type("Voltage", "400");
    at.person.touch("16 A, 2.5 mm²");
    CHECK(at.circuit().line == Voltage{400, volt});
    CHECK(at.circuit().run_mm2 == 2.5);
    CHECK(at.person.app().book().shop.machine.phases == 3);
    at.person.type("Voltage", "277");
    CHECK(at.circuit().line == Voltage{277, volt});
    CHECK(at.circuit().breaker == Current{16, ampere});
    at.person.type("Voltage", "600");
    CHECK(at.circuit().line == Voltage{277, volt});
    CHECK(at.person.text().find("480") != std::string::npos); // what is accepted is said
}

TEST_CASE("a question about the supply that is left unanswered is forgotten") {
    AtCircuit at;
    at.person.touch("120 V");
    at.person.touch("Close");
    at.person.touch("Circuit");
    CHECK(at.circuit().line == Voltage{240, volt});
    CHECK(at.person.text().find("usually comes on") == std::string::npos);
}

TEST_CASE("the circuit sheet says what can be cut there") {
    AtCircuit at;
    const auto& there = at.person.app().worksheet().there;
    REQUIRE(there);
    CHECK(at.person.text().find("the most here: clean cut up to") != std::string::npos);
    CHECK(there->current <= Current{at.person.app().worksheet().circuit.highest_current->in(ampere), ampere});
    at.person.touch("120 V");
    at.person.touch("15 A, 14 AWG");
    CHECK_FALSE(at.person.app().worksheet().there);
    CHECK(at.person.text().find("Nothing can be cut on this circuit") != std::string::npos);
}

TEST_CASE("on 120 V the machine's rating there is asked, used and said") {
    AtCircuit at;
    at.person.touch("120 V");
    at.person.touch("20 A, 12 AWG");
    CHECK(at.person.text().find("Assumed: your machine's rating at 120 V isn't entered.") != std::string::npos);
    CHECK(at.person.named("Nameplate I1max at 120 V") == nullptr); // asked once there is a rating
    at.person.type("Largest current at 120 V", "20");
    CHECK(at.person.app().book().shop.machine.low_voltage.max_current == Current{20, ampere});
    at.person.type("Nameplate I1max at 120 V", "22");
    CHECK(at.person.text().find("It draws 22 A (I1max) at its rated 20 A") != std::string::npos);
    CHECK(at.person.text().find("of arc, then") != std::string::npos); // pauses
    CHECK(at.person.text().find("For 45 A use 240 V, 50 A, 6 AWG.") != std::string::npos);
    at.person.touch("240 V"); // 20 A on 12 AWG is usual there too: nothing is asked
    CHECK(at.person.text().find("Machine at about 120 V") == std::string::npos);
}
