// The library's OpenGL backend for the page, word for word, but for its questions. Around every drawing it
// asks what the graphics are set to, and afterwards sets them back. In a browser each such question waits
// until the graphics process has done all that it was given before: at the start of the page the shaders and
// the letters, a tenth of the whole wait. Here the backend is the only one that counts on what is set, so
// they are answered at once: as by a context that was just made. To that it sets everything back;
// platform_web.cpp sets what it needs itself. (The library's example page in tests/bench keeps the backend as
// it is.)
#include <GLES2/gl2.h>

#include <algorithm>

namespace {

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

}  // namespace

#define glGetIntegerv as_new
#define glIsEnabled enabled_as_new
#include "imgui_impl_opengl3.cpp"
