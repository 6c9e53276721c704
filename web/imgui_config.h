// What of Dear ImGui the page leaves out (its IMGUI_USER_CONFIG). We draw with its lists, fonts and OpenGL backend
// only.
#pragma once

#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS

// The backend reads its shader version, "#version 100", by sscanf; the whole of scanf would be 6 KB of what a phone
// loads. This reads one whole number behind the format's leading text, which is all that is ever asked of it here:
// settings files, the other user, are not read.
#include <stdio.h>

inline int read_whole_number(const char*, const char*, ...) {
    return 0;
}

inline int read_whole_number(const char* text, const char* format, int* number, ...) {
    while (*format != '\0' && *format != '%') {
        if (*text++ != *format++) {
            return 0;
        }
    }
    const char* const first = text;
    *number = 0;
    while (*text >= '0' && *text <= '9') {
        *number = *number * 10 + (*text++ - '0');
    }
    return text > first ? 1 : 0;
}
#define sscanf read_whole_number
