// Every key of "shop": name, unit, range and meaning. The defaults are the member initialisers of the structs.
#include <algorithm>
#include <iterator>

#include "core/schema/fields.hpp"
#include "core/schema/words.hpp"
#include "generated/words/ask.hpp"
#include "generated/words/field_shop.hpp"

namespace torchside::document {

namespace {

using namespace words::field_shop;

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
    required(number<&Nozzle::rated>("rated_current_a", in_a, 10, 200, nozzle_rated_current_a)),
    blank(words::ask::blank_bore, number<&Nozzle::bore>("bore_mm", in_mm, 0.4, 4, nozzle_bore_mm)),
};
constexpr Fields nozzle_fields = nozzle_table;

constexpr Field low_voltage_table[] = {
    blank(words::ask::blank_low_current,
          number<&LowVoltage::max_current>("max_current_a", in_a, 5, 200, low_voltage_max_current_a)),
    blank(words::ask::blank_low_duty,
          plain<&LowVoltage::duty_cycle>("duty_cycle", FieldUnit::share, 0.05, 1, low_voltage_duty_cycle)),
    blank(words::ask::blank_low_duty_current,
          number<&LowVoltage::duty_current>("duty_current_a", in_a, 5, 200, low_voltage_duty_current_a)),
    blank(words::ask::blank_i1max, number<&LowVoltage::i1max>("i1max_a", in_a, 1, 300, low_voltage_i1max_a)),
    blank(words::ask::blank_i1eff, number<&LowVoltage::i1eff>("i1eff_a", in_a, 1, 300, low_voltage_i1eff_a)),
};
constexpr Fields low_voltage_fields = low_voltage_table;

constexpr Field machine_table[] = {
    number<&Machine::max_current>("max_current_a", in_a, 10, 200, machine_max_current_a),
    number<&Machine::min_current>("min_current_a", in_a, 5, 200, machine_min_current_a),
    plain<&Machine::duty_cycle>("duty_cycle", FieldUnit::share, 0.05, 1, machine_duty_cycle),
    number<&Machine::duty_current>("duty_current_a", in_a, 5, 200, machine_duty_current_a),
    plain<&Machine::efficiency>("efficiency", FieldUnit::share, 0.5, 0.98, machine_efficiency),
    plain<&Machine::power_factor>("power_factor", FieldUnit::none, 0.4, 1, machine_power_factor),
    flag<&Machine::power_factor_corrected>("power_factor_corrected", machine_power_factor_corrected),
    choice<&Machine::phases>("phases", phase_counts, machine_phases),
    number<&Machine::idle_input>("idle_input_a", in_a, 0, 20, machine_idle_input_a),
    blank(words::ask::blank_i1max, number<&Machine::plate_i1max>("plate_i1max_a", in_a, 1, 300, machine_plate_i1max_a)),
    blank(words::ask::blank_i1eff, number<&Machine::plate_i1eff>("plate_i1eff_a", in_a, 1, 300, machine_plate_i1eff_a)),
    or_null(object<&Machine::low_voltage>("low_voltage", &low_voltage_fields, machine_low_voltage)),
    flag<&Machine::clockwise_swirl>("clockwise_swirl", machine_clockwise_swirl),
    word<&Machine::start>("start", start_words, machine_start),
    blank(words::ask::blank_lag, number<&Machine::start_lag>("start_lag_s", in_s, 0, 10, machine_start_lag_s)),
    flag<&Machine::waits_for_transfer>("waits_for_transfer", machine_waits_for_transfer),
    list<&Machine::nozzles>("nozzles", &nozzle_fields, 1, 8, machine_nozzles),
};
constexpr Fields machine_fields = machine_table;

constexpr Field height_control_table[] = {
    plain<&HeightControl::divider_ratio>("divider_ratio", FieldUnit::none, 1, 100, height_control_divider_ratio),
    number<&HeightControl::input_limit>("input_limit_v", in_v, 1, 1000, height_control_input_limit_v),
    blank(words::ask::blank_gradient,
          number<&HeightControl::gradient>("gradient_v_mm", in_v_mm, 0.5, 20, height_control_gradient_v_mm)),
    blank(words::ask::blank_height,
          number<&HeightControl::cut_height>("cut_height_mm", in_mm, 0.5, 6, height_control_cut_height_mm)),
    number<&HeightControl::touch_off>("touch_off_s", in_s, 0, 60, height_control_touch_off_s),
};
constexpr Fields height_control_fields = height_control_table;

constexpr Field table_table[] = {
    number<&Table::max_feed>("max_feed_mm_min", in_mm_min, 100, 50000, table_max_feed_mm_min),
    number<&Table::acceleration>("acceleration_mm_s2", in_mm_s2, 10, 20000, table_acceleration_mm_s2),
    number<&Table::corner_tolerance>("corner_tolerance_mm", in_mm, 0.005, 2, table_corner_tolerance_mm),
    number<&Table::rapid>("rapid_mm_min", in_mm_min, 100, 100000, table_rapid_mm_min),
    flag<&Table::water>("water", table_water),
};
constexpr Fields table_fields = table_table;

constexpr Field controller_table[] = {
    program_word<&Controller::torch_on>("torch_on", 1, controller_torch_on),
    program_word<&Controller::torch_off>("torch_off", 1, controller_torch_off),
    program_word<&Controller::height_on>("height_on", 0, controller_height_on),
    program_word<&Controller::height_off>("height_off", 0, controller_height_off),
    word<&Controller::dwell>("dwell_unit", dwell_words, controller_dwell_unit),
    flag<&Controller::z_words>("z_words", controller_z_words),
    number<&Controller::safe_height>("safe_height_mm", in_mm, 5, 100, controller_safe_height_mm),
    word<&Controller::units>("units", unit_words, controller_units),
};
constexpr Fields controller_fields = controller_table;

constexpr Field circuit_table[] = {
    number<&supply::Circuit::line>("line_v", in_v, 100, 480, circuit_line_v),
    number<&supply::Circuit::breaker>("breaker_a", in_a, 10, 100, circuit_breaker_a),
    word<&supply::Circuit::breaker_rule>("breaker_rule", breaker_words, circuit_breaker_rule),
    choice<&supply::Circuit::run_awg>("run_awg", run_gauges, circuit_run_awg, FieldUnit::awg),
    blank(words::ask::blank_section,
          plain<&supply::Circuit::run_mm2>("run_mm2", FieldUnit::mm2, 1, 70, circuit_run_mm2)),
    number<&supply::Circuit::run>("run_m", in_m, 0, 200, circuit_run_m),
    flag<&supply::Circuit::marked_75c>("marked_75c", circuit_marked_75c),
    plain<&supply::Circuit::ambient_c>("ambient_c", FieldUnit::celsius, -20, 55, circuit_ambient_c),
    blank(words::ask::blank_plug, word<&supply::Circuit::plug>("plug", plug_words, circuit_plug)),
    blank(words::ask::blank_cord,
          choice<&supply::Circuit::cord_awg>("cord_awg", cord_gauges, circuit_cord_awg, FieldUnit::awg)),
    blank(words::ask::blank_section,
          plain<&supply::Circuit::cord_mm2>("cord_mm2", FieldUnit::mm2, 0.5, 16, circuit_cord_mm2)),
    number<&supply::Circuit::cord>("cord_m", in_m, 0, 100, circuit_cord_m),
    number<&supply::Circuit::other_load>("other_load_a", in_a, 0, 100, circuit_other_load_a),
    blank(words::ask::blank_compressor,
          plain<&supply::Circuit::compressor_motor_hp>("compressor_motor_hp", FieldUnit::horsepower, 0.5, 10,
                                                       circuit_compressor_motor_hp)),
    blank(words::ask::blank_generator,
          number<&supply::Circuit::generator>("generator_va", in_va, 500, 200000, circuit_generator_va)),
    flag<&supply::Circuit::dedicated>("dedicated", circuit_dedicated),
};
constexpr Fields circuit_fields = circuit_table;

constexpr Field air_table[] = {
    number<&air::AirSystem::compressor>("compressor_l_min", in_l_min, 10, 5000, air_compressor_l_min),
    number<&air::AirSystem::receiver>("receiver_l", in_l, 1, 5000, air_receiver_l),
    number<&air::AirSystem::cut_in>("cut_in_bar", in_bar, 1, 16, air_cut_in_bar),
    number<&air::AirSystem::cut_out>("cut_out_bar", in_bar, 1, 16, air_cut_out_bar),
    number<&air::AirSystem::hose_bore>("hose_bore_mm", in_mm, 4, 50, air_hose_bore_mm),
    number<&air::AirSystem::hose>("hose_m", in_m, 0, 200, air_hose_m),
    number<&air::AirSystem::torch>("torch_l_min", in_l_min, 20, 1000, air_torch_l_min),
    number<&air::AirSystem::torch_pressure>("torch_bar", in_bar, 2, 10, air_torch_bar),
    number<&air::AirSystem::post_flow>("post_flow_s", in_s, 0, 60, air_post_flow_s),
    plain<&air::AirSystem::intake_c>("intake_c", FieldUnit::celsius, -20, 50, air_intake_c),
    plain<&air::AirSystem::humidity>("humidity", FieldUnit::share, 0, 1, air_humidity),
    plain<&air::AirSystem::duty>("compressor_duty", FieldUnit::share, 0.1, 1, air_compressor_duty),
};
constexpr Fields air_fields = air_table;

constexpr Field set_table[] = {
    required(whole<&wear::ConsumableSet::starts>("starts", 0, 100000, set_starts)),
    required(number<&wear::ConsumableSet::arc>("arc_min", in_min, 0, 10000, set_arc_min)),
    word<&wear::ConsumableSet::ended>("ended", ended_words, set_ended),
};
constexpr Fields set_fields = set_table;

constexpr Field in_use_table[] = {
    whole<&wear::InUse::starts>("starts", 0, 100000, in_use_starts),
    number<&wear::InUse::arc>("arc_min", in_min, 0, 10000, in_use_arc_min),
};
constexpr Fields in_use_fields = in_use_table;

constexpr Field wear_table[] = {
    list<&wear::WearLog::sets>("sets", &set_fields, 0, 200, wear_sets),
    plain<&wear::WearLog::set_price>("set_price", FieldUnit::money, 0, 1e6, wear_set_price),
    object<&wear::WearLog::now>("now", &in_use_fields, wear_now),
};
constexpr Fields wear_fields = wear_table;

constexpr Field rates_table[] = {
    text<&price::Rates::currency>("currency", 3, 3, rates_currency),
    plain<&price::Rates::labour_per_h>("labour_per_h", FieldUnit::money, 0, 1e6, rates_labour_per_h),
    plain<&price::Rates::machine_per_h>("machine_per_h", FieldUnit::money, 0, 1e6, rates_machine_per_h),
    plain<&price::Rates::energy_per_kwh>("energy_per_kwh", FieldUnit::money, 0, 1e6, rates_energy_per_kwh),
    plain<&price::Rates::compressor_kw_m3_min>("compressor_kw_m3_min", FieldUnit::kw_per_m3_min, 3, 20,
                                               rates_compressor_kw_m3_min),
    plain<&price::Rates::minimum_charge>("minimum_charge", FieldUnit::money, 0, 1e9, rates_minimum_charge),
};
constexpr Fields rates_fields = rates_table;

constexpr Field test_table[] = {
    required(word<&tune::TestCut::material>("material", metal_words, test_material)),
    required(number<&tune::TestCut::thickness>("thickness_mm", in_mm, 0.3, 150, test_thickness_mm)),
    required(number<&tune::TestCut::current>("current_a", in_a, 5, 200, test_current_a)),
    blank(words::ask::blank_left_out,
          number<&tune::TestCut::feed>("feed_mm_min", in_mm_min, 10, 50000, test_feed_mm_min)),
    word<&tune::TestCut::verdict>("verdict", verdict_words, test_verdict),
    blank(words::ask::blank_left_out,
          number<&tune::TestCut::kerf_top>("kerf_top_mm", in_mm, 0.1, 15, test_kerf_top_mm)),
    blank(words::ask::blank_left_out,
          number<&tune::TestCut::kerf_bottom>("kerf_bottom_mm", in_mm, 0.1, 15, test_kerf_bottom_mm)),
    blank(words::ask::blank_left_out, number<&tune::TestCut::arc>("arc_v", in_v, 20, 400, test_arc_v)),
    blank(words::ask::blank_left_out,
          number<&tune::TestCut::cut_height>("cut_height_mm", in_mm, 0, 20, test_cut_height_mm)),
    blank(words::ask::blank_left_out,
          number<&tune::TestCut::pierce_delay>("pierce_delay_s", in_s, 0, 20, test_pierce_delay_s)),
    word<&tune::TestCut::pierce>("pierce", pierce_words, test_pierce),
    blank(words::ask::blank_nozzle, number<&tune::TestCut::nozzle>("nozzle_a", in_a, 10, 200, test_nozzle_a)),
    flag<&tune::TestCut::worn>("worn", test_worn),
    blank(words::ask::blank_starts, plain<&tune::TestCut::starts>("starts", FieldUnit::none, 0, 100000, test_starts)),
};
constexpr Fields test_fields = test_table;

// A cut of another shop: the same keys by the same rules, with the bore in place of this shop's nozzle.
constexpr Field of_test(std::string_view key) {
    for (const Field& field : test_table) {
        if (field.key == key) {
            return field;
        }
    }
    return {}; // refused below
}

template <auto M>
constexpr Field in_cut(std::string_view key) {
    Field f = of_test(key);
    f.member = [](const void* row) -> const void* { return &(static_cast<const tune::SharedCut*>(row)->cut.*M); };
    return f;
}

constexpr Field shared_cut_table[] = {
    in_cut<&tune::TestCut::material>("material"),
    in_cut<&tune::TestCut::thickness>("thickness_mm"),
    in_cut<&tune::TestCut::current>("current_a"),
    blank(words::ask::blank_bore, number<&tune::SharedCut::bore>("bore_mm", in_mm, 0.4, 4, nozzle_bore_mm)),
    in_cut<&tune::TestCut::feed>("feed_mm_min"),
    in_cut<&tune::TestCut::verdict>("verdict"),
    in_cut<&tune::TestCut::kerf_top>("kerf_top_mm"),
    in_cut<&tune::TestCut::kerf_bottom>("kerf_bottom_mm"),
    in_cut<&tune::TestCut::arc>("arc_v"),
    in_cut<&tune::TestCut::cut_height>("cut_height_mm"),
    in_cut<&tune::TestCut::pierce_delay>("pierce_delay_s"),
    in_cut<&tune::TestCut::pierce>("pierce"),
    whole<&tune::SharedCut::shop>("shop", 1, 99, other_shop), // last: in the workbook only, never in a file
};
static_assert(std::none_of(std::begin(shared_cut_table), std::end(shared_cut_table),
                           [](const Field& f) { return f.key.empty() || f.scalar == nullptr; }));
constexpr Fields other_fields = shared_cut_table;

constexpr Field display_table[] = {
    word<&Display::units>("units", unit_words, display_units),
    word<&Display::theme>("theme", theme_words, display_theme),
    text<&Display::language>("language", 0, 8, display_language),
    flag<&Display::glove>("glove", display_glove),
    flag<&Display::number_keys>("number_keys", display_number_keys),
    flag<&Display::sound>("sound", display_sound),
    flag<&Display::vibration>("vibration", display_vibration),
};
constexpr Fields display_fields = display_table;

constexpr Field old_key_table[] = {
    text<&price::OldKey::seal_key>("seal_key", 0, 64, old_key_seal_key),
};
constexpr Fields old_key_fields = old_key_table;

constexpr Field issued_table[] = {
    text<&price::IssuedQuote::number>("number", 0, 20, issued_number),
    whole<&price::IssuedQuote::revision>("revision", 0, 99, issued_revision),
    text<&price::IssuedQuote::part_name>("part_name", 0, 60, issued_part_name),
    plain<&price::IssuedQuote::to_pay>("to_pay", FieldUnit::money, 0, 2e12, issued_to_pay),
    text<&price::IssuedQuote::currency>("currency", 3, 3, issued_currency),
    whole<&price::IssuedQuote::issued_day>("issued_day", 0, 60000, issued_issued_day, FieldUnit::days),
    whole<&price::IssuedQuote::valid_days>("valid_days", 1, 365, issued_valid_days, FieldUnit::days),
    text<&price::IssuedQuote::ending>("ending", 0, 8, issued_ending),
    text<&price::IssuedQuote::seal>("seal", 0, 28, issued_seal),
};
constexpr Fields issued_fields = issued_table;

constexpr Field shop_table[] = {
    text<&Shop::name>("name", 0, 60, shop_name),
    text<&Shop::contact>("contact", 0, 120, shop_contact),
    blank(words::ask::blank_country, word<&Shop::country>("country", country_words, shop_country)),
    object<&Shop::machine>("machine", &machine_fields, shop_machine),
    object<&Shop::height_control>("height_control", &height_control_fields, shop_height_control),
    object<&Shop::table>("table", &table_fields, words::field_shop::shop_table),
    object<&Shop::controller>("controller", &controller_fields, shop_controller),
    object<&Shop::circuit>("circuit", &circuit_fields, shop_circuit),
    object<&Shop::air>("air", &air_fields, shop_air),
    object<&Shop::wear>("wear", &wear_fields, shop_wear),
    object<&Shop::rates>("rates", &rates_fields, shop_rates),
    list<&Shop::tests>("tests", &test_fields, 0, 500, shop_tests),
    list<&Shop::others>("others", &other_fields, 0, 500, shop_others),
    object<&Shop::display>("display", &display_fields, shop_display),
    text<&Shop::public_url>("public_url", 0, 200, shop_public_url),
    flag<&Shop::example>("example", shop_example),
    text<&Shop::seal_key>("seal_key", 0, 64, shop_seal_key),
    list<&Shop::old_keys>("old_keys", &old_key_fields, 0, 20, shop_old_keys),
    list<&Shop::issued>("issued", &issued_fields, 0, 500, shop_issued),
};

} // namespace

constinit const Fields shop_fields = shop_table;
constinit const Fields shared_cut_fields = Fields(shared_cut_table).first(std::size(shared_cut_table) - 1);

} // namespace torchside::document
