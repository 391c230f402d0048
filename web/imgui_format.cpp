// See imgui_format.h. In the page the library formats by it.
#include "imgui_format.h"

#include <algorithm>
#include <cassert>
#include <cstdint>

#include "imgui.h"
#include "imgui_internal.h"

namespace imgui_format {
namespace {

struct Out {
    char* at;
    std::size_t room;  // with the zero at the end
    int length = 0;    // as if there was room for everything
    void put(char c) {
        if (static_cast<std::size_t>(length) + 1 < room) at[length] = c;
        ++length;
    }
};

void put_number(Out& out, std::uintptr_t value, unsigned base, int places, char fill) {
    char digits[24];
    int count = 0;
    for (; value > 0 || count == 0; value /= base)
        digits[count++] = "0123456789ABCDEF"[value % base];
    for (int i = count; i < places; ++i)
        out.put(fill);
    while (count > 0)
        out.put(digits[--count]);
}

}  // namespace

int print(char* buffer, std::size_t room, const char* format, std::va_list values) {
    Out out{buffer, buffer != nullptr ? room : 0};
    for (const char* at = format; *at != 0; ++at) {
        if (*at != '%') {
            out.put(*at);
            continue;
        }
        char fill = ' ';
        int places = 0, most = -1;
        if (*++at == '0') fill = *at++;
        while (*at >= '0' && *at <= '9')
            places = places * 10 + (*at++ - '0');
        if (at[0] == '.' && at[1] == '*') {
            most = va_arg(values, int);
            at += 2;
        }
        if (*at == 's') {
            const char* text = va_arg(values, const char*);
            for (int i = 0; text[i] != 0 && i != most; ++i)
                out.put(text[i]);
        } else if (*at == 'd') {
            const int value = va_arg(values, int);
            if (value < 0) out.put('-');
            put_number(out, value < 0 ? 0u - static_cast<unsigned>(value) : static_cast<unsigned>(value), 10,
                       places, fill);
        } else if (*at == 'u' || *at == 'X') {
            put_number(out, va_arg(values, unsigned), *at == 'X' ? 16 : 10, places, fill);
        } else if (*at == 'p') {
            put_number(out, reinterpret_cast<std::uintptr_t>(va_arg(values, void*)), 16, places, fill);
        } else if (*at == 'c') {
            out.put(static_cast<char>(va_arg(values, int)));
        } else {
            assert(*at == '%');
            out.put('%');
        }
    }
    if (buffer != nullptr) buffer[std::min(out.length, static_cast<int>(room) - 1)] = 0;
    return out.length;
}

}  // namespace imgui_format

#ifdef IMGUI_DISABLE_DEFAULT_FORMAT_FUNCTIONS

int ImFormatStringV(char* buffer, size_t room, const char* format, va_list values) {
    const int length = imgui_format::print(buffer, room, format, values);
    return buffer != nullptr ? std::min(length, static_cast<int>(room) - 1) : length;
}

int ImFormatString(char* buffer, size_t room, const char* format, ...) {
    va_list values;
    va_start(values, format);
    const int written = ImFormatStringV(buffer, room, format, values);
    va_end(values);
    return written;
}

// In place of sscanf within the library: nothing is read.
extern "C" int imgui_reads_nothing(const char*, const char*, ...) {
    return 0;
}

#endif
