// Every key of "shop": name, unit, range and meaning. The defaults are the member initialisers of the structs.
#include "core/schema/fields.hpp"
#include "core/schema/words.hpp"

namespace torchside::document {

namespace {

constexpr KeyUnit<LengthKind> in_mm{mm, FieldUnit::mm}, in_m{metre, FieldUnit::metre};
constexpr KeyUnit<SpeedKind> in_mm_min{mm_min, FieldUnit::mm_min};
constexpr KeyUnit<AccelerationKind> in_mm_s2{mm_s2, FieldUnit::mm_s2};
constexpr KeyUnit<DurationKind> in_s{second, FieldUnit::second}, in_min{minute, FieldUnit::minute};
constexpr KeyUnit<CurrentKind> in_a{ampere, FieldUnit::ampere};
constexpr KeyUnit<VoltageKind> in_v{volt, FieldUnit::volt};
constexpr KeyUnit<GradientKind> in_v_mm{volt_per_mm, FieldUnit::volt_per_mm};
constexpr KeyUnit<ApparentPowerKind> in_va{volt_ampere, FieldUnit::volt_ampere};
constexpr KeyUnit<PressureKind> in_bar{bar, FieldUnit::bar};
constexpr KeyUnit<VolumeKind> in_l{litre, FieldUnit::litre};
constexpr KeyUnit<FlowKind> in_l_min{litre_min, FieldUnit::litre_min};

constexpr int phase_counts[] = {1, 3};
constexpr int run_gauges[] = {2, 3, 4, 6, 8, 10, 12, 14};
constexpr int cord_gauges[] = {2, 4, 6, 8, 10, 12, 14, 16, 18};

constexpr Field nozzle_table[] = {
    required(number<&Nozzle::rated>("rated_current_a", in_a, 10, 200, "Current the nozzle is made for.")),
    blank("take it from the current",
          number<&Nozzle::bore>("bore_mm", in_mm, 0.4, 4, "Diameter of the nozzle's hole.")),
};
constexpr Fields nozzle_fields = nozzle_table;

constexpr Field machine_table[] = {
    number<&Machine::max_current>("max_current_a", in_a, 10, 200, "Largest output current of the machine."),
    number<&Machine::min_current>("min_current_a", in_a, 5, 200, "Smallest output current of the machine."),
    plain<&Machine::duty_cycle>("duty_cycle", FieldUnit::share, 0.05, 1,
                                "Share of ten minutes the machine may cut at its duty current."),
    number<&Machine::duty_current>("duty_current_a", in_a, 5, 200, "Output current the duty cycle is rated at."),
    plain<&Machine::efficiency>("efficiency", FieldUnit::share, 0.5, 0.98, "Output power over input power."),
    plain<&Machine::power_factor>("power_factor", FieldUnit::none, 0.4, 1, "Power factor of the input."),
    flag<&Machine::power_factor_corrected>("power_factor_corrected", "The machine corrects its power factor."),
    choice<&Machine::phases>("phases", phase_counts, "Phases of the supply."),
    number<&Machine::idle_input>("idle_input_a", in_a, 0, 20, "Input current with the arc off."),
    blank(
        "work it out from the output",
        number<&Machine::plate_i1max>("plate_i1max_a", in_a, 1, 300, "Rated largest supply current on the nameplate.")),
    blank("work it out from the duty cycle",
          number<&Machine::plate_i1eff>("plate_i1eff_a", in_a, 1, 300,
                                        "Rated effective supply current on the nameplate.")),
    flag<&Machine::clockwise_swirl>("clockwise_swirl",
                                    "The gas swirls clockwise seen from above: the right face of travel is square."),
    list<&Machine::nozzles>("nozzles", &nozzle_fields, 1, 8, "Nozzles in the shop."),
};
constexpr Fields machine_fields = machine_table;

constexpr Field height_control_table[] = {
    plain<&HeightControl::divider_ratio>("divider_ratio", FieldUnit::none, 1, 100,
                                         "Arc volts for each volt at the controller; 1 is a raw tap."),
    number<&HeightControl::input_limit>("input_limit_v", in_v, 1, 1000, "Most the controller's input stands."),
    blank("use our estimate",
          number<&HeightControl::gradient>("gradient_v_mm", in_v_mm, 0.5, 20,
                                           "How volts rise with height, measured on this machine.")),
    blank("use the usual height",
          number<&HeightControl::cut_height>("cut_height_mm", in_mm, 0.5, 6, "Height this shop cuts at.")),
    number<&HeightControl::touch_off>("touch_off_s", in_s, 0, 60,
                                      "From one arc off to the torch at pierce height: lift, find the plate."),
};
constexpr Fields height_control_fields = height_control_table;

constexpr Field table_table[] = {
    number<&Table::max_feed>("max_feed_mm_min", in_mm_min, 100, 50000, "Fastest cutting feed of the table."),
    number<&Table::acceleration>("acceleration_mm_s2", in_mm_s2, 10, 20000, "Acceleration of the slower axis."),
    number<&Table::corner_tolerance>("corner_tolerance_mm", in_mm, 0.005, 2, "How far the path may round a corner."),
    number<&Table::rapid>("rapid_mm_min", in_mm_min, 100, 100000, "Feed between cuts."),
    flag<&Table::water>("water", "Water stands under the plate."),
};
constexpr Fields table_fields = table_table;

constexpr Field controller_table[] = {
    program_word<&Controller::torch_on>("torch_on", 1, "Word that lights the torch."),
    program_word<&Controller::torch_off>("torch_off", 1, "Word that puts the torch out."),
    program_word<&Controller::height_on>("height_on", 0, "Word that starts the height control; empty without one."),
    program_word<&Controller::height_off>("height_off", 0, "Word that holds the height control."),
    word<&Controller::dwell>("dwell_unit", dwell_words, "Unit of P after G4: seconds or milliseconds."),
    flag<&Controller::z_words>("z_words", "Programs hold heights; off when the controller sets them by itself."),
    number<&Controller::safe_height>("safe_height_mm", in_mm, 5, 100, "Height of the torch between cuts."),
    word<&Controller::units>("units", unit_words, "Units of a program; none: those on screen."),
};
constexpr Fields controller_fields = controller_table;

constexpr Field circuit_table[] = {
    number<&supply::Circuit::line>("line_v", in_v, 100, 480, "Voltage of the supply."),
    number<&supply::Circuit::breaker>("breaker_a", in_a, 10, 100, "Rating of the breaker."),
    word<&supply::Circuit::breaker_rule>("breaker_rule", breaker_words, "Standard and curve the breaker is made to."),
    choice<&supply::Circuit::run_awg>("run_awg", run_gauges, "Copper gauge of the fixed wiring.", FieldUnit::awg),
    blank("use the gauge",
          plain<&supply::Circuit::run_mm2>("run_mm2", FieldUnit::mm2, 1, 70,
                                           "Copper section of the fixed wiring; it goes before the gauge.")),
    number<&supply::Circuit::run>("run_m", in_m, 0, 200, "Length of the fixed wiring, panel to outlet."),
    flag<&supply::Circuit::marked_75c>("marked_75c",
                                       "The fixed wiring's cable and both its terminals bear the 75 °C mark."),
    plain<&supply::Circuit::ambient_c>("ambient_c", FieldUnit::celsius, -20, 55, "Air temperature around the wires."),
    blank("leave the plug out", word<&supply::Circuit::plug>("plug", plug_words, "Plug and socket at the outlet.")),
    blank("run without a cord", choice<&supply::Circuit::cord_awg>(
                                    "cord_awg", cord_gauges, "Copper gauge of the extension cord.", FieldUnit::awg)),
    blank("use the gauge",
          plain<&supply::Circuit::cord_mm2>("cord_mm2", FieldUnit::mm2, 0.5, 16,
                                            "Copper section of the extension cord; it goes before the gauge.")),
    number<&supply::Circuit::cord>("cord_m", in_m, 0, 100, "Length of the extension cord."),
    number<&supply::Circuit::other_load>("other_load_a", in_a, 0, 100, "Current of everything else on this circuit."),
    blank("keep the compressor off this circuit",
          plain<&supply::Circuit::compressor_motor_hp>("compressor_motor_hp", FieldUnit::horsepower, 0.5, 10,
                                                       "Motor of the compressor, when it runs on this circuit too.")),
    blank("feed it from the panel",
          number<&supply::Circuit::generator>("generator_va", in_va, 500, 200000,
                                              "Rating of the generator that feeds it instead of the panel.")),
    flag<&supply::Circuit::dedicated>("dedicated", "The circuit was wired for this machine alone."),
};
constexpr Fields circuit_fields = circuit_table;

constexpr Field air_table[] = {
    number<&air::AirSystem::compressor>("compressor_l_min", in_l_min, 10, 5000, "Free air the compressor delivers."),
    number<&air::AirSystem::receiver>("receiver_l", in_l, 1, 5000, "Size of the air tank."),
    number<&air::AirSystem::cut_in>("cut_in_bar", in_bar, 1, 16, "Tank pressure at which the compressor starts."),
    number<&air::AirSystem::cut_out>("cut_out_bar", in_bar, 1, 16, "Tank pressure at which the compressor stops."),
    number<&air::AirSystem::hose_bore>("hose_bore_mm", in_mm, 4, 50, "Inside diameter of the air hose."),
    number<&air::AirSystem::hose>("hose_m", in_m, 0, 200, "Length of the air hose."),
    number<&air::AirSystem::torch>("torch_l_min", in_l_min, 20, 1000, "Free air the torch uses while it cuts."),
    number<&air::AirSystem::torch_pressure>("torch_bar", in_bar, 2, 10,
                                            "Pressure the machine wants at its inlet while air flows."),
    number<&air::AirSystem::post_flow>("post_flow_s", in_s, 0, 60, "Air that flows on after the arc goes out."),
    plain<&air::AirSystem::intake_c>("intake_c", FieldUnit::celsius, -20, 50, "Air temperature at the compressor."),
    plain<&air::AirSystem::humidity>("humidity", FieldUnit::share, 0, 1, "Relative humidity at the compressor."),
    plain<&air::AirSystem::duty>("compressor_duty", FieldUnit::share, 0.1, 1,
                                 "Share of the time the compressor may run, by its manual."),
};
constexpr Fields air_fields = air_table;

constexpr Field set_table[] = {
    required(whole<&wear::ConsumableSet::starts>("starts", 0, 100000, "Arc starts the set made.")),
    required(number<&wear::ConsumableSet::arc>("arc_min", in_min, 0, 10000, "Minutes of arc the set made.")),
    word<&wear::ConsumableSet::ended>("ended", ended_words, "Worn out, or pulled while still good."),
};
constexpr Fields set_fields = set_table;

constexpr Field in_use_table[] = {
    whole<&wear::InUse::starts>("starts", 0, 100000, "Arc starts on the set in the torch."),
    number<&wear::InUse::arc>("arc_min", in_min, 0, 10000, "Minutes of arc on the set in the torch."),
};
constexpr Fields in_use_fields = in_use_table;

constexpr Field wear_table[] = {
    list<&wear::WearLog::sets>("sets", &set_fields, 0, 200, "Consumable sets that are used up."),
    plain<&wear::WearLog::set_price>("set_price", FieldUnit::money, 0, 1e6, "Price of one nozzle and electrode."),
    object<&wear::WearLog::now>("now", &in_use_fields, "The set in the torch."),
};
constexpr Fields wear_fields = wear_table;

constexpr Field rates_table[] = {
    text<&price::Rates::currency>("currency", 3, 3, "Three-letter code of the currency (ISO 4217)."),
    plain<&price::Rates::labour_per_h>("labour_per_h", FieldUnit::money, 0, 1e6, "Labor for one hour."),
    plain<&price::Rates::machine_per_h>("machine_per_h", FieldUnit::money, 0, 1e6,
                                        "Table and machine for one hour, consumables and energy apart."),
    plain<&price::Rates::energy_per_kwh>("energy_per_kwh", FieldUnit::money, 0, 1e6, "Price of one kilowatt hour."),
    plain<&price::Rates::compressor_kw_m3_min>("compressor_kw_m3_min", FieldUnit::kw_per_m3_min, 3, 20,
                                               "Power the compressor takes for the air it delivers."),
    plain<&price::Rates::minimum_charge>("minimum_charge", FieldUnit::money, 0, 1e9,
                                         "Least price of a job, before tax."),
};
constexpr Fields rates_fields = rates_table;

constexpr Field test_table[] = {
    required(word<&tune::TestCut::material>("material", metal_words, "Metal that was cut.")),
    required(number<&tune::TestCut::thickness>("thickness_mm", in_mm, 0.3, 150, "Thickness that was cut.")),
    required(number<&tune::TestCut::current>("current_a", in_a, 5, 200, "Current it was cut at.")),
    blank("leave it out", number<&tune::TestCut::feed>("feed_mm_min", in_mm_min, 10, 50000, "Feed it was cut at.")),
    word<&tune::TestCut::verdict>("verdict", verdict_words, "What the cut showed about the feed."),
    blank("leave it out",
          number<&tune::TestCut::kerf_top>("kerf_top_mm", in_mm, 0.1, 15, "Kerf width at the top of the plate.")),
    blank("leave it out", number<&tune::TestCut::kerf_bottom>("kerf_bottom_mm", in_mm, 0.1, 15,
                                                              "Kerf width at the bottom of the plate.")),
    blank("leave it out", number<&tune::TestCut::arc>("arc_v", in_v, 20, 400, "Arc voltage at the torch.")),
    blank("leave it out",
          number<&tune::TestCut::cut_height>("cut_height_mm", in_mm, 0, 20, "Height of the torch while cutting.")),
    blank("leave it out", number<&tune::TestCut::pierce_delay>("pierce_delay_s", in_s, 0, 20, "Pierce delay.")),
    word<&tune::TestCut::pierce>("pierce", pierce_words, "What the pierce showed about its delay."),
    blank("count the nozzle this shop would use",
          number<&tune::TestCut::nozzle>("nozzle_a", in_a, 10, 200, "Rated current of the nozzle that cut it.")),
    flag<&tune::TestCut::worn>("worn", "Nozzle or electrode was worn: kept, but not learned from."),
};
constexpr Fields test_fields = test_table;

constexpr Field display_table[] = {
    word<&Display::units>("units", unit_words, "Units shown first."),
    word<&Display::theme>("theme", theme_words, "Paper for daylight, night for a dark bay."),
    flag<&Display::glove>("glove", "Larger targets for gloved hands."),
    flag<&Display::number_keys>("number_keys", "The keys 1 to 5 open the places."),
};
constexpr Fields display_fields = display_table;

constexpr Field old_key_table[] = {
    text<&price::OldKey::seal_key>("seal_key", 0, 64, "Key that sealed quotes once, 64 hex digits."),
};
constexpr Fields old_key_fields = old_key_table;

constexpr Field issued_table[] = {
    text<&price::IssuedQuote::number>("number", 0, 20, "The shop's own number of the quote."),
    whole<&price::IssuedQuote::revision>("revision", 0, 99, "Times it was changed after it was first handed out."),
    text<&price::IssuedQuote::part_name>("part_name", 0, 60, "What the customer calls the part."),
    plain<&price::IssuedQuote::to_pay>("to_pay", FieldUnit::money, 0, 2e12, "Price of all parts with tax."),
    text<&price::IssuedQuote::currency>("currency", 3, 3, "Three-letter code of the currency (ISO 4217)."),
    whole<&price::IssuedQuote::issued_day>("issued_day", 0, 60000, "Day of issue, days since 1970-01-01.",
                                           FieldUnit::days),
    whole<&price::IssuedQuote::valid_days>("valid_days", 1, 365, "Days it is valid from the day of issue.",
                                           FieldUnit::days),
    text<&price::IssuedQuote::ending>("ending", 0, 8, "Last letters of its link without the seal."),
    text<&price::IssuedQuote::seal>("seal", 0, 28, "Letters of its seal; none when it was not sealed."),
};
constexpr Fields issued_fields = issued_table;

constexpr Field shop_table[] = {
    text<&Shop::name>("name", 0, 60, "Name of the shop, for the customer's page."),
    text<&Shop::contact>("contact", 0, 120, "Telephone or address for the customer's page."),
    blank("take the one the supply points to",
          word<&Shop::country>("country", country_words, "Country whose wiring rules and safety limits speak.")),
    object<&Shop::machine>("machine", &machine_fields, "The plasma power source."),
    object<&Shop::height_control>("height_control", &height_control_fields, "Torch height control by arc voltage."),
    object<&Shop::table>("table", &table_fields, "The cutting table."),
    object<&Shop::controller>("controller", &controller_fields, "Words of the table's controller, for programs."),
    object<&Shop::circuit>("circuit", &circuit_fields, "The circuit that feeds the machine."),
    object<&Shop::air>("air", &air_fields, "Compressor, tank and hose."),
    object<&Shop::wear>("wear", &wear_fields, "What the consumables lasted so far."),
    object<&Shop::rates>("rates", &rates_fields, "What an hour and a kilowatt hour cost."),
    list<&Shop::tests>("tests", &test_fields, 0, 500, "Test cuts made in this shop."),
    object<&Shop::display>("display", &display_fields, "How the screens show it."),
    text<&Shop::public_url>("public_url", 0, 200,
                            "Where a customer opens your links: an https address. Leave blank to use this page's own."),
    flag<&Shop::example>("example", "The example shop: nothing of it can be sent to a customer."),
    text<&Shop::seal_key>("seal_key", 0, 64, "Key that seals quotes, 64 hex digits; made on the device."),
    list<&Shop::old_keys>("old_keys", &old_key_fields, 0, 20, "Keys that sealed quotes before."),
    list<&Shop::issued>("issued", &issued_fields, 0, 500, "Quotes that were handed out, oldest first."),
};

} // namespace

constinit const Fields shop_fields = shop_table;

} // namespace torchside::document
