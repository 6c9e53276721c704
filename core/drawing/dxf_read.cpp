#include "core/drawing/dxf_read.hpp"

#include "core/drawing/refused.hpp"

namespace torchside::drawing {

bool DxfReader::refuse(const Text& what, std::size_t line) {
    if (fault_.text.empty()) {
        fault_ = refused(at_line(what, line));
    }
    return false;
}

bool DxfReader::refuse_pair() {
    return refuse(pairs_.fault() != Word{} ? pairs_.fault() : words::drawing_fault::no_pair, pairs_.line());
}

bool DxfReader::need(Word what) {
    if (pairs_.next()) {
        return true;
    }
    if (pairs_.fault() != Word{}) {
        return refuse_pair();
    }
    return refuse(words::drawing_fault::EndsIn{.what = what}, pairs_.line());
}

bool DxfReader::read() {
    while (need(words::drawing_fault::in_drawing)) {
        if (pairs_.is(0, "EOF")) {
            if (!drawn_) {
                return refuse(words::drawing_fault::no_entities, pairs_.line());
            }
            return true;
        }
        if (!pairs_.is(0, "SECTION")) {
            return refuse(words::drawing_fault::no_section, pairs_.line());
        }
        if (!section()) {
            return false;
        }
    }
    return false;
}

bool DxfReader::section() {
    if (!need(words::drawing_fault::in_section_head)) {
        return false;
    }
    if (pairs_.code() != 2) {
        return refuse(words::drawing_fault::no_section_name, pairs_.line());
    }
    const std::string_view name = pairs_.value();
    if (name == "HEADER") {
        return header();
    }
    if (name == "TABLES") {
        return tables();
    }
    if (name == "BLOCKS") {
        return blocks();
    }
    if (name == "ENTITIES") {
        if (drawn_) {
            return refuse(words::drawing_fault::second_entities, pairs_.line());
        }
        drawn_ = true;
        choose_unit();
        hidden_layers_.sort();
        block_names_.sort();
        const double scale = unit_mm(sketch_.unit);
        return entities(size_, {scale, 0, 0, scale, 0, 0}, 0);
    }
    return skip_section();
}

bool DxfReader::skip_section() {
    while (need(words::drawing_fault::in_section)) {
        if (pairs_.is(0, "ENDSEC")) {
            return true;
        }
    }
    return false;
}

bool DxfReader::header() {
    std::string_view variable;
    while (need(words::drawing_fault::in_header)) {
        if (pairs_.is(0, "ENDSEC")) {
            return true;
        }
        if (pairs_.code() == 0) {
            return refuse(words::drawing_fault::header_open, pairs_.line());
        }
        if (pairs_.code() == 9) {
            variable = pairs_.value();
        } else if (pairs_.code() == 70 && (variable == "$INSUNITS" || variable == "$MEASUREMENT")) {
            std::int32_t n = 0;
            if (!pairs_.integer(n)) {
                return refuse_pair();
            }
            (variable == "$INSUNITS" ? insert_units_ : measurement_) = n;
        }
    }
    return false;
}

void DxfReader::choose_unit() {
    constexpr struct {
        int code;
        DrawingUnit unit;
    } units[] = {
        {1, DrawingUnit::inch},  {2, DrawingUnit::foot}, {4, DrawingUnit::mm},    {5, DrawingUnit::cm},
        {6, DrawingUnit::metre}, {9, DrawingUnit::mil},  {10, DrawingUnit::yard}, {13, DrawingUnit::micron},
        {14, DrawingUnit::dm},   {21, DrawingUnit::foot}}; // the survey foot, 2 parts in a million more: nothing on a plate
    // Many programs leave $MEASUREMENT as it was: it is a hint, not an answer.
    sketch_.unit = measurement_ == 0 ? DrawingUnit::inch : DrawingUnit::mm;
    for (const auto& [code, unit] : units) {
        if (code == insert_units_) {
            sketch_.unit = unit;
            sketch_.unit_known = true;
        }
    }
    if (settings_.unit) {
        sketch_.unit = *settings_.unit;
        sketch_.unit_known = true;
    }
}

bool DxfReader::tables() {
    if (!need(words::drawing_fault::in_tables)) {
        return false;
    }
    while (!pairs_.is(0, "ENDSEC")) {
        if (pairs_.is(0, "LAYER")) {
            if (!layer()) {
                return false;
            }
        } else if (!need(words::drawing_fault::in_tables)) {
            return false;
        }
    }
    return true;
}

bool DxfReader::layer() {
    std::string_view name;
    std::int32_t flags = 0, colour = 0;
    while (need(words::drawing_fault::in_layer)) {
        if (pairs_.code() == 0) {
            if ((flags & 1) != 0 || colour < 0) { // frozen, off
                hidden_layers_.add(name, 0);
            }
            return true;
        }
        if (pairs_.code() == 2) {
            name = pairs_.value();
        } else if ((pairs_.code() == 70 && !pairs_.integer(flags)) ||
                   (pairs_.code() == 62 && !pairs_.integer(colour))) {
            return refuse_pair();
        }
    }
    return false;
}

bool DxfReader::blocks() {
    while (need(words::drawing_fault::in_blocks)) {
        if (pairs_.is(0, "ENDSEC")) {
            return true;
        }
        if (pairs_.is(0, "SECTION") || pairs_.is(0, "EOF")) {
            return refuse(words::drawing_fault::blocks_open, pairs_.line());
        }
        if (pairs_.is(0, "BLOCK") && !block()) {
            return false;
        }
    }
    return false;
}

// Remembers where its entities are; they are drawn when it is inserted.
bool DxfReader::block() {
    Block found;
    bool head = true;
    while (need(words::drawing_fault::in_block)) {
        if (pairs_.code() == 0) {
            if (head) {
                found.begin = pairs_.pair_place();
                head = false;
            }
            if (pairs_.value() == "ENDBLK") {
                found.end = pairs_.pair_place();
                block_names_.add(found.name, static_cast<std::uint32_t>(blocks_.size()));
                blocks_.push_back(found);
                return true;
            }
            if (pairs_.value() == "BLOCK" || pairs_.value() == "ENDSEC") {
                return refuse(words::drawing_fault::block_open, pairs_.line());
            }
        } else if (head && pairs_.code() == 2) {
            found.name = pairs_.value();
        } else if (head && ((pairs_.code() == 10 && !pairs_.real(found.base.x)) ||
                            (pairs_.code() == 20 && !pairs_.real(found.base.y)))) {
            return refuse_pair();
        }
    }
    return false;
}

} // namespace torchside::drawing
