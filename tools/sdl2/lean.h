/* What of SDL2 the page's build of it leaves out, put before each of its files by tools/setup (-include).
 *
 * The page takes pointer, touch, wheel and resize events from SDL. Keys, fullscreen, pointer lock and leaving the page are
 * the page's own (web/page/js): their handlers are not registered, so the browser's side of them is not in the page. */
#ifndef TORCHSIDE_SDL2_LEAN_H
#define TORCHSIDE_SDL2_LEAN_H

#include <emscripten.h>
#include <emscripten/html5.h>
#include <stdlib.h>

#undef emscripten_set_keydown_callback
#undef emscripten_set_keyup_callback
#undef emscripten_set_keypress_callback
#undef emscripten_set_pointerlockchange_callback
#undef emscripten_set_fullscreenchange_callback
#undef emscripten_set_beforeunload_callback
#define emscripten_set_keydown_callback(target, data, capture, callback) ((void)(callback))
#define emscripten_set_keyup_callback(target, data, capture, callback) ((void)(callback))
#define emscripten_set_keypress_callback(target, data, capture, callback) ((void)(callback))
#define emscripten_set_pointerlockchange_callback(target, data, capture, callback) ((void)(callback))
#define emscripten_set_fullscreenchange_callback(target, data, capture, callback) ((void)(callback))
#define emscripten_set_beforeunload_callback(data, callback) ((void)(callback))

/* Fullscreen is asked for by the browser's own menu; the pointer is never locked; the title is the page's; the screen's size
 * matters to windows that move on it. Together these would bring the compiler's whole browser layer. */
#define emscripten_request_fullscreen_strategy(target, defer, strategy) EMSCRIPTEN_RESULT_NOT_SUPPORTED
#define emscripten_exit_fullscreen() EMSCRIPTEN_RESULT_NOT_SUPPORTED
#define emscripten_request_pointerlock(target, defer) EMSCRIPTEN_RESULT_NOT_SUPPORTED
#define emscripten_exit_pointerlock() EMSCRIPTEN_RESULT_NOT_SUPPORTED
#define emscripten_set_window_title(title) ((void)(title))
#define emscripten_get_screen_size(width, height) (*(width) = *(height) = 4096)

/* A page has no environment: hints come from the program alone, and none of those in use is a number. */
#define getenv(name) ((char*)0)
#define atoi(text) 0
#define atof(text) 0.0

#endif
