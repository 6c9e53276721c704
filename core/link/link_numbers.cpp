#include "core/link/link_numbers.hpp"

namespace torchside::document {

namespace {

// The first 24 take one byte, the others two: those of the log and of a plain part come first.
constexpr std::string_view keys[] = {
    // 0
    "shop",
    "job",
    "material",
    "thickness_mm",
    "current_a",
    "feed_mm_min",
    "verdict",
    "kerf_top_mm",
    // 8
    "kerf_bottom_mm",
    "arc_v",
    "cut_height_mm",
    "pierce_delay_s",
    "pierce",
    "starts",
    "arc_min",
    "ended",
    // 16
    "quantity",
    "part",
    "price",
    "length_mm",
    "width_mm",
    "hole_mm",
    "name",
    "tests",
    // 24
    "holes",
    "hole_edge_mm",
    "corner_mm",
    "outside_mm",
    "inside_mm",
    "hole_circle_mm",
    "slot_length_mm",
    "slot_width_mm",
    // 32
    "shape",
    "torch",
    "quote",
    "setup_min",
    "material_per_kg",
    "margin",
    "outside_quote_each",
    "number",
    // 40
    "valid_days",
    "tax",
    "note",
    "contact",
    "machine",
    "height_control",
    "table",
    "circuit",
    // 48
    "air",
    "wear",
    "rates",
    "display",
    "max_current_a",
    "min_current_a",
    "duty_cycle",
    "duty_current_a",
    // 56
    "efficiency",
    "power_factor",
    "power_factor_corrected",
    "phases",
    "idle_input_a",
    "plate_i1max_a",
    "plate_i1eff_a",
    "nozzles",
    // 64
    "rated_current_a",
    "bore_mm",
    "divider_ratio",
    "input_limit_v",
    "gradient_v_mm",
    "max_feed_mm_min",
    "acceleration_mm_s2",
    "corner_tolerance_mm",
    // 72
    "rapid_mm_min",
    "water",
    "line_v",
    "breaker_a",
    "breaker_rule",
    "run_awg",
    "run_mm2",
    "run_m",
    // 80
    "cord_awg",
    "cord_m",
    "other_load_a",
    "compressor_motor_hp",
    "generator_va",
    "dedicated",
    "compressor_l_min",
    "receiver_l",
    // 88
    "cut_in_bar",
    "cut_out_bar",
    "hose_bore_mm",
    "hose_m",
    "torch_l_min",
    "torch_bar",
    "post_flow_s",
    "intake_c",
    // 96
    "humidity",
    "sets",
    "set_price",
    "now",
    "currency",
    "labour_per_h",
    "machine_per_h",
    "energy_per_kwh",
    // 104
    "nozzle_a",
    "worn",
    "units",
    "theme",
    "glove",
    // 109: of the quote that a customer gets
    "part_name",
    "shop_name",
    "issued_day",
    "price_each",
    "price_total",
    "tax_amount",
    "to_pay",
    "tolerance_mm",
    // 117
    "leg_mm",
    "inner_corner_mm",
    "scrap_share",
    "waste_per_part",
    "handling_min",
    "gaps_per_m",
    "run_offs",
    "touch_off_s",
    // 125
    "controller",
    "torch_on",
    "torch_off",
    "height_on",
    "height_off",
    "dwell_unit",
    "z_words",
    "safe_height_mm",
    // 133
    "compressor_kw_m3_min",
    "minimum_charge",
    "clockwise_swirl",
    "drawing_name",
    "drawing",
    "sheet",
    "height_mm",
    "margin_mm",
    // 141
    "spacing_mm",
    "findings",
    "code",
    "x_mm",
    "y_mm",
    "size_mm",
    "mesh",
    "kind",
    // 149
    "pitch_mm",
    "opening_mm",
    "pitch_2_mm",
    "opening_2_mm",
    // 153
    "public_url",
    "country",
    "marked_75c",
    "ambient_c",
    "plug",
    "cord_mm2",
    "compressor_duty",
    "number_keys",
    "revision",
    "low_voltage",
    "i1max_a",
    "i1eff_a",
    "start",
    "start_lag_s",
    "waits_for_transfer",
    "language",
    "sound",
    "vibration",
};

} // namespace

std::optional<unsigned> link_number(std::string_view key) {
    for (unsigned i = 0; i < sizeof keys / sizeof *keys; ++i) {
        if (keys[i] == key) {
            return i;
        }
    }
    return {};
}

} // namespace torchside::document
