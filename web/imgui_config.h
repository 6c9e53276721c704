// What of Dear ImGui the page leaves out (its IMGUI_USER_CONFIG). We draw with its lists and fonts only.
#pragma once

#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS

// Nothing that is used formats or scans text; printf and scanf would be 12 KB of what a phone loads.
#define IMGUI_DISABLE_DEFAULT_FORMAT_FUNCTIONS
