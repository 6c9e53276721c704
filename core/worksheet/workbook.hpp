// The workbook: all that a shop and a job are, and the only input of evaluate(). Saved as JSON by core/store, whose
// schema holds the range and the meaning of every key. A default-made Workbook is valid: it is the default shop.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/air/air_system.hpp"
#include "core/gear/country.hpp"
#include "core/gear/machine.hpp"
#include "core/part/part_spec.hpp"
#include "core/price/issued_quote.hpp"
#include "core/price/quote_terms.hpp"
#include "core/price/rates.hpp"
#include "core/quantity/unit_system.hpp"
#include "core/stock/metal.hpp"
#include "core/supply/circuit.hpp"
#include "core/tune/shared_cut.hpp"
#include "core/tune/test_cut.hpp"
#include "core/wear/wear_log.hpp"

namespace torchside {

enum class Theme { automatic, paper, night }; // "auto" in the workbook
enum class TorchHold { table, hand_standoff, hand_drag };

struct Display {
    UnitSystem units = UnitSystem::metric;
    Theme theme = Theme::automatic;
    std::string language{};  // up to 8 letters, code of ISO 639: "es"; empty: the browser's, where there is a table
    bool glove = false;      // larger targets
    bool number_keys = true; // 1 to 5 open the places; off for whoever speaks to the machine or brushes keys
    bool sound = true;       // countdowns at the table beep
    bool vibration = true;   // and are felt
};

struct Shop {
    std::string name{};               // up to 60 letters
    std::string contact{};            // up to 120 letters: what the customer may call or write to
    std::optional<Country> country{}; // whose rules speak; none: the one the supply points to (country.hpp)
    Machine machine{};
    HeightControl height_control{};
    Table table{};
    Controller controller{};
    supply::Circuit circuit{};
    air::AirSystem air{};
    wear::WearLog wear{};
    price::Rates rates{};
    std::vector<tune::TestCut> tests{}; // 0..500
    std::vector<tune::SharedCut>
        others{}; // 0..500: cuts of other shops, taken in; stay on this device and in its backup
    Display display{};
    std::string public_url{}; // up to 200 letters: where a customer opens this page; empty: where it stands
    bool example = false;     // the invented shop that comes with the page, never in a link: nothing of it may be sent
    // What follows stays on this device and in its backup, never in a link.
    std::string seal_key{};                   // 64 hex digits, or empty: seals quotes
    std::vector<price::OldKey> old_keys{};    // 0..20, oldest first: what they sealed is still known
    std::vector<price::IssuedQuote> issued{}; // 0..500, oldest first: quotes that were handed out
};

struct Job {
    std::string name{}; // up to 60 letters: what the customer calls the part
    Metal material = Metal::mild_steel;
    Length thickness{6, mm};
    Current current{45, ampere};
    TorchHold torch = TorchHold::table;
    int quantity = 24;
    part::Mesh mesh{};
    double gaps_per_m = 0.0; // gaps that the user counted in a metre of cut; 0: as the mesh says
    int run_offs = 0;        // cuts of one part on which the arc runs off the plate's edge
    part::PartSpec part{};
    part::StockSheet stock_sheet{};
    price::JobPrice price{};
    price::QuoteTerms quote{};
};

struct Workbook {
    Shop shop{};
    Job job{};
};

} // namespace torchside
