// The library's OpenGL backend for the page, word for word, but for its questions. Around every drawing it
// asks what the graphics are set to, and afterwards sets them back. In a browser each such question waits
// until the graphics process has done all that it was given before: at the start of the page the shaders and
// the letters, a tenth of the whole wait. Here the backend is the only one that counts on what is set, so
// they are answered at once: as by a context that was just made. To that it sets everything back;
// platform_web.cpp sets what it needs itself. (The library's example page in tests/bench keeps the backend as
// it is.)
// And but for the letters' texture: it is white, only its opacity differs, so it goes over in two bytes a
// pixel instead of four; and of it only what was drawn since the last time.
#include <GLES2/gl2.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

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

// A shader that is not as the browser wants it draws nothing, asked or not: the backend would only write a
// line that nobody reads.
void went_well(GLuint, GLenum what, GLint* answer) {
    *answer = what == GL_INFO_LOG_LENGTH ? 0 : GL_TRUE;
}

int height_given = 0;  // of the letters' texture; 0 while it has no pixels

}  // namespace

#define glGetIntegerv as_new
#define glIsEnabled enabled_as_new
#define glGetShaderiv went_well
#define glGetProgramiv went_well
// Where it asks for the pixels, and where it hands them over.
#define GetTexDataAsRGBA32(pixels, width, height) IsBuilt(), *(pixels) = nullptr, *(width) = *(height) = 0
#define glTexImage2D(target, level, kept_as, width, height, border, format, type, pixels) height_given = 0
#define sscanf read_version
#include "imgui_impl_opengl3.cpp"
#undef glTexImage2D
#undef sscanf
#undef glGetShaderiv
#undef glGetProgramiv

namespace platform {

// White, and how much of it: a byte each.
void letters_drawn(int x, int y, int width, int height) {  // declared in platform.h
    const ImGui_ImplOpenGL3_Data* backend = ImGui_ImplOpenGL3_GetBackendData();
    if (backend == nullptr || backend->FontTexture == 0) return;
    const ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    glBindTexture(GL_TEXTURE_2D, backend->FontTexture);
    if (atlas.TexHeight != height_given) {
        height_given = atlas.TexHeight;
        glTexImage2D(GL_TEXTURE_2D, 0, GL_LUMINANCE_ALPHA, atlas.TexWidth, atlas.TexHeight, 0,
                     GL_LUMINANCE_ALPHA, GL_UNSIGNED_BYTE, nullptr);
    }
    std::vector<std::uint16_t> white(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    std::uint16_t* to = white.data();
    for (int row = y; row < y + height; ++row) {
        const unsigned char* from =
            atlas.TexPixelsAlpha8 + static_cast<std::ptrdiff_t>(row) * atlas.TexWidth + x;
        for (int i = 0; i < width; ++i)
            *to++ = static_cast<std::uint16_t>(0xFF | from[i] << 8);
    }
    glPixelStorei(GL_UNPACK_ALIGNMENT, sizeof(std::uint16_t));
    glTexSubImage2D(GL_TEXTURE_2D, 0, x, y, width, height, GL_LUMINANCE_ALPHA, GL_UNSIGNED_BYTE,
                    white.data());
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);  // as it was
    glBindTexture(GL_TEXTURE_2D, 0);
}

}  // namespace platform
