// The page's entry: one SDL window on the canvas, one WebGL context, and a frame drawn only when something asked for
// it.
#include <SDL.h>
#include <emscripten.h>
#include <imgui.h>
#include <memory>
#include <string>

#include "web/platform/painter.hpp"
#include "web/platform/platform.hpp"
#include "web/screens/app.hpp"

namespace torchside::web {
namespace {

SDL_Window* window = nullptr;
std::unique_ptr<App> app;
Fonts fonts;
float built_density = 0;
float built_scale = 0;
bool built_accents = false;
float built_far = 0;

/// The fonts are not those that the screen wants now.
bool other_fonts() {
    return app->word_scale() != built_scale || app->accents() != built_accents || app->far_scale() != built_far;
}

Point window_size() {
    int w = 0;
    int h = 0;
    SDL_GetWindowSize(window, &w, &h);
    return {static_cast<float>(w), static_cast<float>(h)};
}

/// One finger points; two, of which the second came later, pinch. A finger that stays when the other goes begins
/// nothing.
void hand_on_finger(const SDL_TouchFingerEvent& event, double now) {
    static SDL_FingerID fingers[2];
    static Point places[2];
    static int count = 0;
    const Point size = window_size();
    const Point place{event.x * size.x, event.y * size.y};
    const int known = count > 0 && event.fingerId == fingers[0]   ? 0
                      : count > 1 && event.fingerId == fingers[1] ? 1
                                                                  : -1;
    if (event.type == SDL_FINGERDOWN && count < 2) {
        fingers[count] = event.fingerId;
        places[count] = place;
        ++count;
    } else if (known < 0) {
        return;
    }
    if (event.type == SDL_FINGERUP) {
        count = 0;
        app->pointer_up(place, now);
    } else if (count == 2) {
        places[known < 0 ? 1 : known] = place;
        app->pinch(places[0], places[1]);
    } else if (event.type == SDL_FINGERDOWN) {
        app->pointer_down(place, now);
    } else {
        app->pointer_move(place, now);
    }
}

void hand_on(const SDL_Event& event) {
    const double now = event.common.timestamp;
    switch (event.type) {
    case SDL_FINGERDOWN:
    case SDL_FINGERMOTION:
    case SDL_FINGERUP:
        hand_on_finger(event.tfinger, now);
        break;
    case SDL_MOUSEBUTTONDOWN:
        if (event.button.button == SDL_BUTTON_LEFT) {
            app->pointer_down({static_cast<float>(event.button.x), static_cast<float>(event.button.y)}, now);
        }
        break;
    case SDL_MOUSEMOTION:
        if ((event.motion.state & SDL_BUTTON_LMASK) != 0) {
            app->pointer_move({static_cast<float>(event.motion.x), static_cast<float>(event.motion.y)}, now);
        }
        break;
    case SDL_MOUSEBUTTONUP:
        if (event.button.button == SDL_BUTTON_LEFT) {
            app->pointer_up({static_cast<float>(event.button.x), static_cast<float>(event.button.y)}, now);
        }
        break;
    case SDL_MOUSEWHEEL: {
        int x = 0;
        int y = 0;
        SDL_GetMouseState(&x, &y);
        app->wheel({static_cast<float>(x), static_cast<float>(y)},
                   {event.wheel.preciseX * 60.0F, -event.wheel.preciseY * 60.0F});
        break;
    }
    default:
        break;
    }
}

/// Events are pushed inside the browser's handlers: each is given the time of the browser's own event, for several may
/// wait for one frame, and asks for that frame. The poll sentinel would ask for ever; a mouse that only wanders changes
/// nothing.
int wake_on_event(void*, SDL_Event* event) {
    event->common.timestamp = static_cast<Uint32>(platform::event_ms());
    const bool wandering = event->type == SDL_MOUSEMOTION && event->motion.state == 0;
    if (event->type != SDL_POLLSENTINEL && !wandering) {
        platform::request_frame();
    }
    return 1;
}

void frame() {
    SDL_Event event;
    while (SDL_PollEvent(&event) != 0) {
        hand_on(event);
    }
    const float density = platform::density();
    if (density != built_density || other_fonts()) {
        built_density = density;
        built_scale = app->word_scale();
        built_accents = app->accents();
        built_far = app->far_scale();
        fonts.build(density, built_scale, built_accents, built_far);
        painter::take(font_atlas());
    }
    int pixels_w = 0;
    int pixels_h = 0;
    SDL_GetWindowSizeInPixels(window, &pixels_w, &pixels_h);
    const Rect screen{0, 0, static_cast<float>(pixels_w) / density, static_cast<float>(pixels_h) / density};
    const ImDrawData* picture = app->frame(fonts, density, screen, platform::now_ms());
    painter::paint(*picture, app->tokens().ground.rgb);
    if (other_fonts()) { // gloves were put on or off, another language
        platform::request_frame();
    }
}

/// The window, its size and its events are SDL's; the context comes from the browser itself, by the painter: SDL's way
/// to it, EGL, is a quarter of SDL.
bool open_window() {
    SDL_SetHint(SDL_HINT_TOUCH_MOUSE_EVENTS, "0");
    if (SDL_Init(SDL_INIT_VIDEO) != 0) {
        return false;
    }
    window = SDL_CreateWindow("Torchside", 0, 0, 360, 740, SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI);
    return window != nullptr && painter::open();
}

} // namespace
} // namespace torchside::web

using torchside::web::app;
namespace platform = torchside::web::platform;

extern "C" {

EMSCRIPTEN_KEEPALIVE void torchside_frame() {
    if (torchside::web::window != nullptr) {
        torchside::web::frame();
    } else {
        app->frame_without_canvas(platform::now_ms());
    }
}
EMSCRIPTEN_KEEPALIVE void torchside_activate(const char* id) {
    app->ui().activate(id);
    platform::request_frame();
}
/// What a field's input says now: 0 while it is typed, 1 when the user is done, 2 when he went elsewhere, 3 to drop it.
EMSCRIPTEN_KEEPALIVE void torchside_enter(const char* id, const char* text, int how) {
    if (how == 3) {
        app->drop_draft(id);
    } else if (how == 2) {
        app->ui().leave(id, text);
    } else {
        app->ui().enter(id, text, how == 1);
    }
    platform::request_frame();
}
EMSCRIPTEN_KEEPALIVE void torchside_focus(const char* id) {
    app->ui().focus(id);
    platform::request_frame();
}
EMSCRIPTEN_KEEPALIVE void torchside_hover(const char* id) {
    app->ui().hover(id);
    platform::request_frame();
}
EMSCRIPTEN_KEEPALIVE void torchside_back() {
    app->back();
    platform::request_frame();
}
EMSCRIPTEN_KEEPALIVE void torchside_file(const char*, const char* text) {
    app->open_file(text);
    platform::request_frame();
}
EMSCRIPTEN_KEEPALIVE void torchside_drawing(const char* kind, const char* text, double number) {
    torchside::web::drawing_news(*app, kind, text, number);
    platform::request_frame();
}
/// The control under a point of the canvas, scrolled and covered as it is drawn; empty when there is none.
EMSCRIPTEN_KEEPALIVE const char* torchside_at(double x, double y) {
    static std::string id;
    const torchside::web::Node* node = app->ui().tree().control_at({static_cast<float>(x), static_cast<float>(y)});
    id = node != nullptr ? node->id : std::string();
    return id.c_str();
}
/// What is to be printed, as HTML.
EMSCRIPTEN_KEEPALIVE const char* torchside_paper() {
    static std::string html;
    html = app->to_print();
    return html.c_str();
}
EMSCRIPTEN_KEEPALIVE void torchside_notice(const char* kind, const char* text) {
    app->notice(kind, text);
    const std::string_view is(kind);
    if (is != "keep" &&
        (is != "kept" || app->change() != nullptr)) { // that all is well shows beside the last change alone
        platform::request_frame();
    }
}
}

int main() {
    IMGUI_CHECKVERSION();
    app = std::make_unique<torchside::web::App>();
    if (torchside::web::open_window()) {
        SDL_AddEventWatch(torchside::web::wake_on_event, nullptr);
    } else {
        torchside::web::window = nullptr; // no WebGL: the mirror, shown as a plain page, is the app
    }
    platform::request_frame();
    emscripten_exit_with_live_runtime();
}
