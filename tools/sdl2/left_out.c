/* Stands in for the files of SDL2 that the page does not use: tools/setup takes SDL_NAME.c out of the library for each
 * "SDL_NAME.c:" below, and puts this in. What only they used is then left out of the page too. */
#include <SDL.h>

/* SDL_error.c: SDL_log.c: SDL_assert.c: error texts and the log; nothing reads them. */
int SDL_SetError(const char* format, ...) {
    (void)format;
    return -1;
}
int SDL_Error(SDL_errorcode code) {
    (void)code;
    return -1;
}
const char* SDL_GetError(void) {
    return "";
}
void SDL_ClearError(void) {}
void SDL_LogInit(void) {}
void SDL_LogQuit(void) {}
void SDL_Log(const char* format, ...) {
    (void)format;
}
void SDL_AssertionsQuit(void) {}

/* SDL_thread.c: a page has one. */
SDL_TLSID SDL_TLSCreate(void) {
    return 1;
}
void* SDL_TLSGet(SDL_TLSID id) {
    (void)id;
    return NULL;
}
int SDL_TLSSet(SDL_TLSID id, const void* value, void(SDLCALL* destructor)(void*)) {
    (void)id, (void)value, (void)destructor;
    return 0;
}
void SDL_TLSCleanup(void) {}

/* SDL_surface.c: pictures in memory, of which there are none to free. */
void SDL_FreeSurface(SDL_Surface* surface) {
    (void)surface;
}

/* SDL_gesture.c: the kit has its own gestures. */
int SDL_GestureAddTouch(SDL_TouchID touch) {
    (void)touch;
    return 0;
}
int SDL_GestureDelTouch(SDL_TouchID touch) {
    (void)touch;
    return 0;
}
void SDL_GestureProcessEvent(SDL_Event* event) {
    (void)event;
}
void SDL_GestureQuit(void) {}

/* SDL_emscriptenmouse.c: the style sheet has the cursor. */
void Emscripten_InitMouse(void) {}
void Emscripten_FiniMouse(void) {}

/* SDL_emscriptenframebuffer.c: windows painted by the processor. */
int Emscripten_CreateWindowFramebuffer(void* device, SDL_Window* window, Uint32* format, void** pixels, int* pitch) {
    (void)device, (void)window, (void)format, (void)pixels, (void)pitch;
    return -1;
}
int Emscripten_UpdateWindowFramebuffer(void* device, SDL_Window* window, const SDL_Rect* rects, int count) {
    (void)device, (void)window, (void)rects, (void)count;
    return -1;
}
void Emscripten_DestroyWindowFramebuffer(void* device, SDL_Window* window) {
    (void)device, (void)window;
}

/* SDL_quit.c: signals; a page gets none. */
int SDL_QuitInit(void) {
    return 0;
}
void SDL_QuitQuit(void) {}
void SDL_SendPendingSignalEvents(void) {}
int SDL_SendQuit(void) {
    return 0;
}

/* SDL_keyboard.c: keys reach the app through the mirror. */
int SDL_KeyboardInit(void) {
    return 0;
}
void SDL_KeyboardQuit(void) {}
void SDL_ResetKeyboard(void) {}
SDL_Window* SDL_GetKeyboardFocus(void) {
    return NULL;
}
void SDL_SetKeyboardFocus(SDL_Window* window) {
    (void)window;
}
SDL_Keymod SDL_GetModState(void) {
    return KMOD_NONE;
}
int SDL_SendKeyboardKey(Uint8 state, SDL_Scancode scancode) {
    (void)state, (void)scancode;
    return 0;
}
int SDL_SendKeyboardKeyAndKeycode(Uint8 state, SDL_Scancode scancode, SDL_Keycode keycode) {
    (void)state, (void)scancode, (void)keycode;
    return 0;
}
void SDL_ReleaseAutoReleaseKeys(void) {}
SDL_bool SDL_HardwareKeyboardKeyPressed(void) {
    return SDL_FALSE;
}
int SDL_SendKeyboardText(const char* text) {
    (void)text;
    return 0;
}
