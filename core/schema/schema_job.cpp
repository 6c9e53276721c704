// Every key of "job", and the two top keys: name, unit, range and meaning.
#include <iterator>

#include "core/drawing/problems.hpp"
#include "core/schema/fields.hpp"
#include "core/schema/words.hpp"

namespace torchside::document {

namespace {

constexpr KeyUnit<LengthKind> in_mm{mm, FieldUnit::mm};
constexpr KeyUnit<DurationKind> in_min{minute, FieldUnit::minute};
constexpr KeyUnit<CurrentKind> in_a{ampere, FieldUnit::ampere};

constexpr Field finding_table[] = {
    required(word<&part::Finding::code>("code", found_words, "What was found in the drawing.")),
    required(number<&part::Finding::x>("x_mm", in_mm, -1e6, 1e6, "Where it is, along x.")),
    required(number<&part::Finding::y>("y_mm", in_mm, -1e6, 1e6, "Where it is, along y.")),
    number<&part::Finding::size>("size_mm", in_mm, 0, 1e6, "The gap or the length it is about; 0 for none."),
};
constexpr Fields finding_fields = finding_table;
static_assert(std::size(found_words) == static_cast<std::size_t>(part::Found::last) + 1);
constexpr int most_findings = static_cast<int>(std::size(found_words) * drawing::most_kept);

constexpr Field part_table[] = {
    word<&part::PartSpec::shape>("shape", shape_words, "Shape of the part."),
    number<&part::PartSpec::length>("length_mm", in_mm, 1, 10000,
                                    "Length of a plate, gusset, slotted plate or bracket."),
    number<&part::PartSpec::width>("width_mm", in_mm, 1, 10000, "Width of a plate, gusset, slotted plate or bracket."),
    number<&part::PartSpec::outside>("outside_mm", in_mm, 1, 10000, "Outside diameter of a disc, ring or flange."),
    number<&part::PartSpec::inside>("inside_mm", in_mm, 0, 10000, "Bore of a ring or flange."),
    number<&part::PartSpec::hole>("hole_mm", in_mm, 0, 1000, "Diameter of the holes; 0 for none."),
    whole<&part::PartSpec::holes>("holes", 0, 200, "How many holes."),
    number<&part::PartSpec::hole_circle>("hole_circle_mm", in_mm, 0, 10000, "Diameter of a flange's bolt circle."),
    number<&part::PartSpec::hole_edge>("hole_edge_mm", in_mm, 0, 5000,
                                       "Center of a hole of a plate or bracket to the nearest edges."),
    number<&part::PartSpec::corner>("corner_mm", in_mm, 0, 5000,
                                    "Radius of the corners; of a bracket: of its outside corners."),
    number<&part::PartSpec::leg>("leg_mm", in_mm, 1, 5000, "Width of a bracket's legs."),
    number<&part::PartSpec::inner_corner>("inner_corner_mm", in_mm, 0, 5000, "Radius of a bracket's inside corner."),
    number<&part::PartSpec::slot_length>("slot_length_mm", in_mm, 0, 10000, "Overall length of the slot."),
    number<&part::PartSpec::slot_width>("slot_width_mm", in_mm, 0, 1000, "Width of the slot."),
    text<&part::PartSpec::drawing_name>("drawing_name", 0, 120, "What the drawing's file is called."),
    outline<&part::PartSpec::drawing>("drawing", "Outline of a drawn part; null: to be opened again, or none."),
    list<&part::PartSpec::findings>("findings", &finding_fields, 0, most_findings,
                                    "What reading the drawing found, and where."),
};
constexpr Fields part_fields = part_table;

constexpr Field mesh_table[] = {
    word<&part::Mesh::kind>("kind", mesh_words, "Solid plate, expanded metal, bar grating or perforated plate."),
    number<&part::Mesh::pitch>("pitch_mm", in_mm, 1, 500,
                               "Center to center: long way of a mesh, bearing bars, or holes."),
    number<&part::Mesh::opening>("opening_mm", in_mm, 0.1, 499.9, "Clear opening of the same: less than its pitch."),
    number<&part::Mesh::pitch_2>("pitch_2_mm", in_mm, 1, 500, "Center to center: short way of a mesh, or cross bars."),
    number<&part::Mesh::opening_2>("opening_2_mm", in_mm, 0.1, 499.9, "Clear opening of those: less than its pitch."),
};
constexpr Fields mesh_fields = mesh_table;

constexpr Field sheet_table[] = {
    number<&part::StockSheet::width>("width_mm", in_mm, 10, 20000, "One side of the sheet."),
    number<&part::StockSheet::height>("height_mm", in_mm, 10, 20000, "The sheet's other side."),
    number<&part::StockSheet::margin>("margin_mm", in_mm, 0, 1000, "Left free at the sheet's edges."),
    number<&part::StockSheet::spacing>("spacing_mm", in_mm, 0, 1000, "Left between parts: two leads and their kerfs."),
};
constexpr Fields sheet_fields = sheet_table;

constexpr Field price_table[] = {
    number<&price::JobPrice::setup>("setup_min", in_min, 0, 10000, "Minutes to set up the job."),
    plain<&price::JobPrice::material_per_kg>("material_per_kg", FieldUnit::money_per_kg, 0, 1e6,
                                             "Price of the plate by weight."),
    plain<&price::JobPrice::scrap_share>("scrap_share", FieldUnit::share, 0, 0.9,
                                         "Share of the plate bought that does not become parts."),
    blank("go by the scrap", plain<&price::JobPrice::waste_per_part>(
                                 "waste_per_part", FieldUnit::share, 0, 9,
                                 "Plate wasted for each part, in parts' masses; goes before the share.")),
    number<&price::JobPrice::handling>("handling_min", in_min, 0, 1000, "A person's minutes for each part."),
    plain<&price::JobPrice::margin>("margin", FieldUnit::share, 0, 0.9,
                                    "Share of the price that is left over after cost."),
    blank("skip the comparison",
          plain<&price::JobPrice::outside_quote_each>("outside_quote_each", FieldUnit::money, 0, 1e9,
                                                      "What a cutting service asks for one.")),
};
constexpr Fields price_fields = price_table;

constexpr Field quote_table[] = {
    text<&price::QuoteTerms::number>("number", 0, 20, "The shop's own number of the quote."),
    whole<&price::QuoteTerms::valid_days>("valid_days", 1, 365, "Days the quote holds from the day it is issued.",
                                          FieldUnit::days),
    blank("print no tax line",
          plain<&price::QuoteTerms::tax>("tax", FieldUnit::share, 0, 0.5, "Share added to the price as tax.")),
    text<&price::QuoteTerms::note>("note", 0, 200, "A line to the customer."),
};
constexpr Fields quote_fields = quote_table;

constexpr Field job_table[] = {
    text<&Job::name>("name", 0, 60, "What the customer calls the part."),
    word<&Job::material>("material", metal_words, "Metal to cut."),
    number<&Job::thickness>("thickness_mm", in_mm, 0.3, 150, "Thickness of the plate."),
    number<&Job::current>("current_a", in_a, 5, 200, "Current to cut at."),
    word<&Job::torch>("torch", torch_words, "Torch on the table, or in the hand with or without standoff."),
    whole<&Job::quantity>("quantity", 1, 100000, "How many parts."),
    object<&Job::mesh>("mesh", &mesh_fields, "How the plate is made."),
    plain<&Job::gaps_per_m>("gaps_per_m", FieldUnit::per_metre, 0, 500,
                            "Gaps counted along a cut; 0: as the openings' sizes say."),
    whole<&Job::run_offs>("run_offs", 0, 200, "Cuts of one part on which the arc runs off the plate's edge."),
    object<&Job::part>("part", &part_fields, "The part to cut."),
    object<&Job::stock_sheet>("sheet", &sheet_fields, "The sheet that parts are cut from."),
    object<&Job::price>("price", &price_fields, "The priced side of the job."),
    object<&Job::quote>("quote", &quote_fields, "What the quote says beside the price."),
};

constexpr Field workbook_table[] = {
    object<&Workbook::shop>("shop", &shop_fields, "What stands in the shop and what was learned in it."),
    object<&Workbook::job>("job", &job_fields, "What is to be cut."),
};

} // namespace

constinit const Fields job_fields = job_table;

Fields workbook_fields() {
    return workbook_table;
}

} // namespace torchside::document
