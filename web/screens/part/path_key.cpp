#include "web/screens/part/path_key.hpp"

#include <algorithm>
#include <vector>

#include "generated/words/picture.hpp"

namespace torchside::web {
namespace {

constexpr float margin = 14;
constexpr float sign_w = 20;
constexpr float apart = 8;

struct Entry {
    Word name;
    void (*draw)(const Pen& pen, const Tokens& t, Point c);
};

void pierce(const Pen& pen, const Tokens& t, Point c) {
    pen.disc(c, 4, t.accent);
}

void edge_start(const Pen& pen, const Tokens& t, Point c) {
    pen.ring(c, 4, t.accent, 1.5F);
}

void lead(const Pen& pen, const Tokens& t, Point c) {
    pen.hline(c.x - 8, c.x + 8, c.y, t.accent, 1.5F);
}

void way(const Pen& pen, const Tokens& t, Point c) {
    pen.hline(c.x - 8, c.x + 8, c.y, t.ink, 2);
    pen.triangle({c.x + 6, c.y}, {c.x - 5, c.y - 5}, {c.x - 5, c.y + 5}, t.ink);
}

void slow(const Pen& pen, const Tokens& t, Point c) {
    pen.hline(c.x - 8, c.x + 8, c.y, t.caution, 7);
    pen.hline(c.x - 8, c.x + 8, c.y, t.ink, 2);
}

std::vector<Entry> entries(const App& app) {
    const auto& runs = app.worksheet().part->path.runs;
    std::vector<Entry> out;
    if (runs.empty()) {
        return out;
    }
    const auto from_edge = [](const part::Run& run) { return run.edge_start; };
    if (!std::all_of(runs.begin(), runs.end(), from_edge)) {
        out.push_back({words::picture::key_pierce, pierce});
    }
    if (std::any_of(runs.begin(), runs.end(), from_edge)) {
        out.push_back({words::picture::key_edge, edge_start});
    }
    out.push_back({words::picture::key_lead, lead});
    out.push_back({words::picture::key_way, way});
    if (const auto& time = app.worksheet().time; time && !time->slow.empty()) {
        out.push_back({words::picture::key_slow, slow});
    }
    return out;
}

/// In as many lines as they need; returns the height used.
float lay(const App& app, const std::vector<Entry>& all, Rect place, bool draw) {
    const Pen& pen = app.ui().pen();
    const float line = Pen::line_height(Type::label) + 4;
    float x = place.x;
    float y = place.y;
    for (const Entry& entry : all) {
        const std::string_view name = app.word(entry.name);
        const float w = sign_w + pen.width(Type::label, name);
        if (x > place.x && x + w > place.right()) {
            x = place.x;
            y += line;
        }
        if (draw) {
            entry.draw(pen, app.tokens(), {x + 8, y + line / 2});
            pen.text(Type::label, {x + sign_w, y + 2}, app.tokens().ink, name);
        }
        x += w + apart;
    }
    return all.empty() ? 0 : y + line - place.y;
}

} // namespace

float path_key_height(const App& app, float room) {
    const float used = lay(app, entries(app), {0, 0, room - margin, 0}, false);
    return used > 0 ? used + 8 : 0;
}

void path_key(App& app, Rect place) {
    if (place.h <= 0) {
        return;
    }
    lay(app, entries(app), {place.x + margin, place.y + 4, place.w - margin, place.h}, true);
    app.ui().node("part/key", Role::text, place, words::picture::key);
}

} // namespace torchside::web
