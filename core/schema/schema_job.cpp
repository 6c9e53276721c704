// Every key of "job", and the two top keys: name, unit, range and meaning.
#include <iterator>

#include "core/drawing/problems.hpp"
#include "core/schema/fields.hpp"
#include "core/schema/words.hpp"
#include "generated/words/ask.hpp"
#include "generated/words/field_job.hpp"

namespace torchside::document {

namespace {

using namespace words::field_job;

constexpr KeyUnit<LengthKind> in_mm{mm, FieldUnit::mm};
constexpr KeyUnit<DurationKind> in_min{minute, FieldUnit::minute};
constexpr KeyUnit<CurrentKind> in_a{ampere, FieldUnit::ampere};

constexpr Field finding_table[] = {
    required(word<&part::Finding::code>("code", found_words, finding_code)),
    required(number<&part::Finding::x>("x_mm", in_mm, -1e6, 1e6, finding_x_mm)),
    required(number<&part::Finding::y>("y_mm", in_mm, -1e6, 1e6, finding_y_mm)),
    number<&part::Finding::size>("size_mm", in_mm, 0, 1e6, finding_size_mm),
};
constexpr Fields finding_fields = finding_table;
static_assert(std::size(found_words) == static_cast<std::size_t>(part::Found::last) + 1);
constexpr int most_findings = static_cast<int>(std::size(found_words) * drawing::most_kept);

constexpr Field part_table[] = {
    word<&part::PartSpec::shape>("shape", shape_words, part_shape),
    number<&part::PartSpec::length>("length_mm", in_mm, 1, 10000, part_length_mm),
    number<&part::PartSpec::width>("width_mm", in_mm, 1, 10000, part_width_mm),
    number<&part::PartSpec::outside>("outside_mm", in_mm, 1, 10000, part_outside_mm),
    number<&part::PartSpec::inside>("inside_mm", in_mm, 0, 10000, part_inside_mm),
    number<&part::PartSpec::hole>("hole_mm", in_mm, 0, 1000, part_hole_mm),
    whole<&part::PartSpec::holes>("holes", 0, 200, part_holes),
    number<&part::PartSpec::hole_circle>("hole_circle_mm", in_mm, 0, 10000, part_hole_circle_mm),
    number<&part::PartSpec::hole_edge>("hole_edge_mm", in_mm, 0, 5000, part_hole_edge_mm),
    number<&part::PartSpec::corner>("corner_mm", in_mm, 0, 5000, part_corner_mm),
    number<&part::PartSpec::leg>("leg_mm", in_mm, 1, 5000, part_leg_mm),
    number<&part::PartSpec::inner_corner>("inner_corner_mm", in_mm, 0, 5000, part_inner_corner_mm),
    number<&part::PartSpec::slot_length>("slot_length_mm", in_mm, 0, 10000, part_slot_length_mm),
    number<&part::PartSpec::slot_width>("slot_width_mm", in_mm, 0, 1000, part_slot_width_mm),
    text<&part::PartSpec::drawing_name>("drawing_name", 0, 120, part_drawing_name),
    outline<&part::PartSpec::drawing>("drawing", part_drawing),
    list<&part::PartSpec::findings>("findings", &finding_fields, 0, most_findings, part_findings),
};
constexpr Fields part_fields = part_table;

constexpr Field mesh_table[] = {
    word<&part::Mesh::kind>("kind", mesh_words, mesh_kind),
    number<&part::Mesh::pitch>("pitch_mm", in_mm, 1, 500, mesh_pitch_mm),
    number<&part::Mesh::opening>("opening_mm", in_mm, 0.1, 499.9, mesh_opening_mm),
    number<&part::Mesh::pitch_2>("pitch_2_mm", in_mm, 1, 500, mesh_pitch_2_mm),
    number<&part::Mesh::opening_2>("opening_2_mm", in_mm, 0.1, 499.9, mesh_opening_2_mm),
};
constexpr Fields mesh_fields = mesh_table;

constexpr Field sheet_table[] = {
    number<&part::StockSheet::width>("width_mm", in_mm, 10, 20000, sheet_width_mm),
    number<&part::StockSheet::height>("height_mm", in_mm, 10, 20000, sheet_height_mm),
    number<&part::StockSheet::margin>("margin_mm", in_mm, 0, 1000, sheet_margin_mm),
    number<&part::StockSheet::spacing>("spacing_mm", in_mm, 0, 1000, sheet_spacing_mm),
};
constexpr Fields sheet_fields = sheet_table;

constexpr Field price_table[] = {
    number<&price::JobPrice::setup>("setup_min", in_min, 0, 10000, price_setup_min),
    plain<&price::JobPrice::material_per_kg>("material_per_kg", FieldUnit::money_per_kg, 0, 1e6, price_material_per_kg),
    plain<&price::JobPrice::scrap_share>("scrap_share", FieldUnit::share, 0, 0.9, price_scrap_share),
    blank(words::ask::blank_scrap,
          plain<&price::JobPrice::waste_per_part>("waste_per_part", FieldUnit::share, 0, 9, price_waste_per_part)),
    number<&price::JobPrice::handling>("handling_min", in_min, 0, 1000, price_handling_min),
    plain<&price::JobPrice::margin>("margin", FieldUnit::share, 0, 0.9, price_margin),
    blank(words::ask::blank_comparison, plain<&price::JobPrice::outside_quote_each>(
                                            "outside_quote_each", FieldUnit::money, 0, 1e9, price_outside_quote_each)),
};
constexpr Fields price_fields = price_table;

constexpr Field quote_table[] = {
    text<&price::QuoteTerms::number>("number", 0, 20, quote_number),
    whole<&price::QuoteTerms::valid_days>("valid_days", 1, 365, quote_valid_days, FieldUnit::days),
    blank(words::ask::blank_tax, plain<&price::QuoteTerms::tax>("tax", FieldUnit::share, 0, 0.5, quote_tax)),
    text<&price::QuoteTerms::note>("note", 0, 200, quote_note),
    blank(words::ask::blank_language, text<&price::QuoteTerms::language>("language", 0, 8, quote_language)),
};
constexpr Fields quote_fields = quote_table;

constexpr Field job_table[] = {
    text<&Job::name>("name", 0, 60, job_name),
    word<&Job::material>("material", metal_words, job_material),
    number<&Job::thickness>("thickness_mm", in_mm, 0.3, 150, job_thickness_mm),
    number<&Job::current>("current_a", in_a, 5, 200, job_current_a),
    word<&Job::torch>("torch", torch_words, job_torch),
    whole<&Job::quantity>("quantity", 1, 100000, job_quantity),
    object<&Job::mesh>("mesh", &mesh_fields, job_mesh),
    plain<&Job::gaps_per_m>("gaps_per_m", FieldUnit::per_metre, 0, 500, job_gaps_per_m),
    whole<&Job::run_offs>("run_offs", 0, 200, job_run_offs),
    object<&Job::part>("part", &part_fields, job_part),
    object<&Job::stock_sheet>("sheet", &sheet_fields, job_sheet),
    object<&Job::price>("price", &price_fields, job_price),
    object<&Job::quote>("quote", &quote_fields, job_quote),
};

constexpr Field workbook_table[] = {
    object<&Workbook::shop>("shop", &shop_fields, workbook_shop),
    object<&Workbook::job>("job", &job_fields, workbook_job),
};

} // namespace

constinit const Fields job_fields = job_table;

Fields workbook_fields() {
    return workbook_table;
}

} // namespace torchside::document
