// What of Dear ImGui the page leaves out (its IMGUI_USER_CONFIG). We draw with its lists, fonts and OpenGL backend only.
#pragma once

#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS

// Settings files are never read here, and their reader would bring the whole of scanf: 6 KB of what a phone loads.
#include <stdio.h>
#define sscanf(...) 0
