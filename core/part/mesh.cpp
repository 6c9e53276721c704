#include "core/part/mesh.hpp"

#include <cmath>
#include <numbers>

#include "core/quantity/field_unit.hpp"
#include "generated/words/part_size.hpp"

namespace torchside::part {
namespace {

constexpr double least_pitch = 1.0, most_pitch = 500.0;

bool pitch_fits(Length pitch) {
    return pitch.in(mm) >= least_pitch && pitch.in(mm) <= most_pitch;
}
bool opening_fits(Length opening, Length pitch) {
    return opening.in(mm) > 0.0 && opening < pitch;
}

} // namespace

Outcome<MeshCrossings> crossings_of(const Mesh& m) {
    const auto wrong_pitch = [](const char* field) {
        return Fault{field, words::part_size::Pitch{.high = words::high_end(most_pitch, FieldUnit::mm),
                                                    .low = words::low_end(least_pitch, FieldUnit::mm)}};
    };
    if (m.kind == MeshKind::solid) {
        return MeshCrossings{};
    }
    if (!pitch_fits(m.pitch)) {
        return wrong_pitch("job.mesh.pitch_mm");
    }
    if (!opening_fits(m.opening, m.pitch)) {
        return Fault{"job.mesh.opening_mm", words::part_size::opening};
    }
    if (m.kind != MeshKind::perforated && !pitch_fits(m.pitch_2)) {
        return wrong_pitch("job.mesh.pitch_2_mm");
    }
    if (m.kind != MeshKind::perforated && !opening_fits(m.opening_2, m.pitch_2)) {
        return Fault{"job.mesh.opening_2_mm", words::part_size::opening};
    }
    const double p = m.pitch.in(mm);
    const double o = m.opening.in(mm);
    const double q = m.pitch_2.in(mm);
    const double r = m.opening_2.in(mm);
    double for_each = p * q; // area that one opening takes
    double edge = 2.0 * (o + r);
    double open = o * r;
    if (m.kind == MeshKind::expanded) {
        for_each *= 0.5;
        edge = 2.0 * std::sqrt(o * o + r * r);
        open *= 0.5;
    } else if (m.kind == MeshKind::perforated) {
        for_each = 0.5 * std::numbers::sqrt3 * p * p;
        edge = std::numbers::pi * o;
        open = 0.25 * std::numbers::pi * o * o;
    }
    return MeshCrossings{1000.0 * edge / (for_each * std::numbers::pi), open / for_each};
}

Mesh usual(MeshKind kind) {
    switch (kind) {
    case MeshKind::grating:
        return {kind, {34.3, mm}, {29.3, mm}, {76.2, mm}, {70.2, mm}};
    case MeshKind::perforated:
        return {kind, {14, mm}, {10, mm}};
    case MeshKind::solid:
    case MeshKind::expanded:
        break;
    }
    return {kind};
}

} // namespace torchside::part
