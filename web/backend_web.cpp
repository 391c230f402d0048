// The library's OpenGL backend for the page, word for word, but for its questions. Around every drawing it
// asks what the graphics are set to, and afterwards sets them back. In a browser each such question waits
// until the graphics process has done all that it was given before: at the start of the page the shaders and
// the letters, a tenth of the whole wait. Here the backend is the only one that counts on what is set, so
// they are answered at once: as by a context that was just made. To that it sets everything back;
// platform_web.cpp sets what it needs itself. (The library's example page in tests/bench keeps the backend as
// it is.)
// And but for the letters' texture: it is white, only its opacity differs, so it goes over in two bytes a
// pixel instead of four; and later, what of it was drawn since.
#include <GLES2/gl2.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <memory>

#include "imgui.h"

namespace {

// The number in "#version 100", all that is read there; the C library's reader of everything is three
// kilobytes of the page.
int read_version(const char* text, const char*, int* version) {
    while (*text != 0 && (*text < '0' || *text > '9'))
        ++text;
    for (*version = 0; *text >= '0' && *text <= '9'; ++text)
        *version = *version * 10 + (*text - '0');
    return 1;
}

// What glGetIntegerv says of a new context (OpenGL ES 2.0.25, tables 6.2 to 6.20), for all that the backend
// asks. The sizes of viewport and scissors are zero there until the first picture.
void as_new(GLenum what, GLint* answer) {
    switch (what) {
        case GL_VIEWPORT:
        case GL_SCISSOR_BOX:
            std::fill_n(answer, 4, 0);
            break;
        case GL_ACTIVE_TEXTURE:
            *answer = GL_TEXTURE0;
            break;
        case GL_BLEND_SRC_RGB:
        case GL_BLEND_SRC_ALPHA:
            *answer = GL_ONE;
            break;
        case GL_BLEND_EQUATION_RGB:
        case GL_BLEND_EQUATION_ALPHA:
            *answer = GL_FUNC_ADD;
            break;
        default:  // nothing bound, no program in use; blending with GL_ZERO
            *answer = 0;
            break;
    }
}

GLboolean enabled_as_new(GLenum) {
    return GL_FALSE;
}

int height_given = 0;

// White, and how much of it: a byte each.
void give_rows(const ImFontAtlas& atlas, int first, int count) {
    const auto width = static_cast<std::size_t>(atlas.TexWidth);
    const std::size_t pixels = width * static_cast<std::size_t>(count);
    const unsigned char* from = atlas.TexPixelsAlpha8 + width * static_cast<std::size_t>(first);
    const std::unique_ptr<std::uint16_t[]> white(new std::uint16_t[pixels]);
    for (std::size_t i = 0; i < pixels; ++i)
        white[i] = static_cast<std::uint16_t>(0xFF | from[i] << 8);
    glTexSubImage2D(GL_TEXTURE_2D, 0, 0, first, atlas.TexWidth, count, GL_LUMINANCE_ALPHA, GL_UNSIGNED_BYTE,
                    white.get());
}

// A new texture is empty: given is what is drawn in it.
void give_all(const ImFontAtlas& atlas) {
    height_given = atlas.TexHeight;
    glTexImage2D(GL_TEXTURE_2D, 0, GL_LUMINANCE_ALPHA, atlas.TexWidth, atlas.TexHeight, 0, GL_LUMINANCE_ALPHA,
                 GL_UNSIGNED_BYTE, nullptr);
    std::size_t end = static_cast<std::size_t>(atlas.TexWidth) * static_cast<std::size_t>(atlas.TexHeight);
    while (end > 0 && atlas.TexPixelsAlpha8[end - 1] == 0)
        --end;
    give_rows(atlas, 0, (static_cast<int>(end) + atlas.TexWidth - 1) / atlas.TexWidth);
}

}  // namespace

#define glGetIntegerv as_new
#define glIsEnabled enabled_as_new
// Where it asks for the pixels, and where it hands them over.
#define GetTexDataAsRGBA32(pixels, width, height) IsBuilt(), *(pixels) = nullptr, *(width) = *(height) = 0
#define glTexImage2D(target, level, kept_as, width, height, border, format, type, pixels) give_all(*io.Fonts)
#define sscanf read_version
#include "imgui_impl_opengl3.cpp"
#undef glTexImage2D
#undef sscanf

namespace platform {

void letters_drawn(int first_row, int rows) {  // declared in platform.h
    const ImGui_ImplOpenGL3_Data* backend = ImGui_ImplOpenGL3_GetBackendData();
    if (backend == nullptr || backend->FontTexture == 0) return;
    const ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    glBindTexture(GL_TEXTURE_2D, backend->FontTexture);
    if (atlas.TexHeight != height_given)
        give_all(atlas);
    else
        give_rows(atlas, first_row, rows);
    glBindTexture(GL_TEXTURE_2D, 0);
}

}  // namespace platform
