// What the screen library asks of a formatter, and no more: texts, whole numbers, places that are filled up.
// The C library's own, for all kinds of numbers, is eight kilobytes of the page; and to read figures with it,
// which the library does in a settings file that is switched off, another ten.
#pragma once

#include <cstdarg>
#include <cstddef>

namespace imgui_format {

// As vsnprintf, for %s %.*s %d %u %X %p %c %%. With no buffer: how long it would be.
int print(char* buffer, std::size_t room, const char* format, std::va_list values);

}  // namespace imgui_format
