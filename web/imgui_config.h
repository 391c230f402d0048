// Included by the library before anything of its own where it becomes part of the page: what of it the page
// does without. (What is switched off by a name alone stands in imgui.cmake.)
#pragma once

// A broken promise ends the program as before, but does not bring its own wording along: 20 kB of texts.
#define IM_ASSERT(what) ((what) ? (void)0 : __builtin_trap())

// Names of windows and lists are all that it puts together: imgui_format.cpp does that without the C
// library's way to print fractions.
#define IMGUI_DISABLE_DEFAULT_FORMAT_FUNCTIONS
