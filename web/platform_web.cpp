// The browser half of platform.h. What a browser can only be told in its own language stands in
// shell/lib_<noun>.js and is called here as shell_…(); what comes back enters through the exported
// platform_…() functions and joins the queue. No script text in here. The GL context, its loss and its return
// are handled here, by the library's own header.
//
// What works where (desktop builds were driven by tests; phones by their browsers' documentation and reports
// only):
//   [x] pointer, wheel, keys, mirror, storage, links, copy, opening and saving files: Chromium, Firefox,
//   WebKitGTK [x] all of it from a file on disk; there without page_update, which needs a server [x]
//   one-finger scrolling and taps by touch: Chromium, Firefox (WebKitGTK: only with touches made by
//   script) [x] WebGL 2, or WebGL 1 where there is no 2; a lost context is rebuilt [x] the phone's keyboard,
//   raised inside the handler of the gesture: Chromium; iOS by design, not tried on a device [ ] file opened
//   on iOS: no script runs there, index.html says what to do [ ] share(): not on desktop Linux (can_share()
//   is false); iOS and Android have it [ ] other_tab by event: not in WebKitGTK, therefore every save looks
//   first whether the record is still ours [ ] push_back_guard: a browser may skip an entry that was pushed
//   without a gesture
#include <GLES2/gl2.h>
#include <emscripten/emscripten.h>
#include <emscripten/html5.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <iterator>
#include <utility>

#include "imgui.h"
#include "imgui_impl_opengl3.h"
#include "web/platform.h"

extern "C" {
void shell_request_frame();
void shell_step();
void shell_request_wake(double in_ms);
void shell_watch_window();
void shell_watch_hand();
void shell_watch_keys();
void shell_watch_outside();
void shell_watch_update();
void shell_running();
void shell_cannot_draw();
void shell_new_canvas();
void shell_page_colours(int dark, std::uint32_t background, std::uint32_t ink, std::uint32_t field,
                        std::uint32_t accent);
void shell_page_letters(float body, float figure);
void shell_page_language(const char* language, const char* title);
void shell_page_font(const unsigned char* bytes, std::uint32_t size, int weight);
int shell_word_ends(const char* text, int* ends, int most);
float shell_measure_line(const char* text, float size, int weight, int right_to_left);
int shell_lay_line(const char* text, float size, int weight, int right_to_left, std::uint32_t rgb, int* box);
void shell_paint_line();
void shell_set_mirror(const char* packed);
void shell_focus_node(std::uint32_t node, int select_all);
void shell_blur_node();
void shell_load_stored(const char* prefix);
void shell_save(const char* key, const char* text);
void shell_remove(const char* key);
void shell_copy(const char* text);
int shell_can_share();
void shell_share(const char* title, const char* address);
void shell_open_file();
void shell_save_file(const char* name, const char* mime, const char* text);
void shell_print(const char* name, const char* html);
void shell_show_paper(const char* title, const char* html);
void shell_place_paper(float left, float top, float width, float height);
void shell_hide_paper();
void shell_save_page();
void shell_clear_fragment();
void shell_back_guard(int on);
void shell_ask_to_keep();
void shell_keep_awake(int on);
void shell_want_bell(int on);
void shell_ring();
void shell_take_update();
int shell_local_date();
void shell_now_utc(char* text);
std::uint32_t shell_chance();
}

namespace platform {

namespace {

constexpr double kWaitForContextMs =
    3000;  // our choice; a context that returns does so within a second or two

constexpr int kPlainWeight = 400, kStrongWeight = 600;

struct Host {
    std::vector<Event> queue;
    Window window;
    bool measured = false;
    int pixels_x = 0, pixels_y = 0;  // the canvas's own size
    void (*step)(bool draw) = nullptr;
    EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = 0;
    bool lost = false;
    bool objects = false;  // the backend's shaders and texture are made
    bool unseen = false;   // nothing is drawn now
    bool font_given = false, strong_font_given = false;
    std::uint32_t background = 0xF7F2E8;
    std::uint32_t colours[5] = {};
};

Host& host() {
    static Host the_one;
    return the_one;
}

bool make_context() {
    EmscriptenWebGLContextAttributes wish;
    emscripten_webgl_init_context_attributes(&wish);
    wish.alpha = wish.depth = wish.stencil = wish.antialias = false;
    wish.enableExtensionsByDefault = false;  // of thirty, one is used, without WebGL 2
    for (const int version : {2, 1}) {
        wish.majorVersion = version;
        host().context = emscripten_webgl_create_context("#canvas", &wish);
        if (host().context <= 0) continue;
        if (version == 1) emscripten_webgl_enable_OES_vertex_array_object(host().context);
        return emscripten_webgl_make_context_current(host().context) == EMSCRIPTEN_RESULT_SUCCESS;
    }
    return false;
}

void push_kind(Kind kind) {
    Event event;
    event.kind = kind;
    event.time_ms = now_ms();
    host().queue.push_back(std::move(event));
    request_frame();
}

// Shaders and texture are made with the first atlas, not with the library's own font before it.
void make_objects() {
    host().objects = !ImGui::GetIO().Fonts->Fonts.empty() && ImGui_ImplOpenGL3_CreateDeviceObjects();
}

void listen_for_loss();

// Some phones lose a context and never give it back: a new canvas gets a new one. Nothing is lost with the
// old one but its picture.
void on_still_lost(void*) {
    Host& h = host();
    if (!h.lost) return;
    emscripten_webgl_destroy_context(h.context);
    h.context = 0;
    shell_new_canvas();
    if (!make_context()) {
        shell_cannot_draw();
        return;
    }
    h.lost = false;
    make_objects();
    listen_for_loss();
    push_kind(Kind::context_restored);
}

// Returning true tells the browser that the context is wanted back.
EM_BOOL on_context_lost(int, const void*, void*) {
    host().lost = true;
    ImGui_ImplOpenGL3_DestroyDeviceObjects();  // now, while the browser takes it silently
    emscripten_set_timeout(on_still_lost, kWaitForContextMs, nullptr);
    push_kind(Kind::context_lost);
    return true;
}

EM_BOOL on_context_restored(int, const void*, void*) {
    host().lost = false;
    make_objects();
    push_kind(Kind::context_restored);
    return true;
}

void listen_for_loss() {
    emscripten_set_webglcontextlost_callback("#canvas", nullptr, false, on_context_lost);
    emscripten_set_webglcontextrestored_callback("#canvas", nullptr, false, on_context_restored);
}

std::string owned(char* text) {
    std::string copy = text ? text : "";
    std::free(text);
    return copy;
}

}  // namespace

void run(void (*step)(bool draw)) {
    window();
    if (!make_context() || !ImGui_ImplOpenGL3_Init("#version 100")) {
        shell_cannot_draw();
        return;
    }
    if (!ImGui::GetIO().Fonts->Fonts.empty()) fonts_changed();
    listen_for_loss();
    host().step = step;
    shell_watch_hand();
    shell_watch_keys();
    shell_watch_outside();
    shell_watch_update();
    shell_running();
    shell_step();  // at once: what is kept has been loaded
}

std::vector<Event> take_events() {
    return std::exchange(host().queue, {});
}

const Window& window() {
    if (!host().measured) {
        host().measured = true;
        shell_watch_window();
    }
    return host().window;
}

void request_frame() {
    shell_request_frame();
}

void request_wake(double in_ms) {
    shell_request_wake(in_ms);
}

double now_ms() {
    return emscripten_get_now();
}

// Asked for in every step, and slow to write down. (By the C library it would be slower still: its own way
// brings eight kilobytes of script along, which ask for the names of time zones.)
std::string now_utc() {
    static std::time_t last = 0;
    static char text[sizeof "2026-11-25T12:00:00Z"];
    const std::time_t now = std::time(nullptr);
    if (std::exchange(last, now) != now) shell_now_utc(text);
    return text;
}

std::string today() {
    const int date = shell_local_date();  // 20261125
    const std::string digits = std::to_string(date);
    return digits.substr(0, digits.size() - 4) + "-" + digits.substr(digits.size() - 4, 2) + "-" +
           digits.substr(digits.size() - 2);
}

std::uint64_t chance() {
    const std::uint64_t high = shell_chance();
    return high << 32 | shell_chance();
}

void draw(ImDrawData* data) {
    Host& h = host();
    if (h.lost || !h.objects || h.unseen || data->DisplaySize.x <= 0 || data->DisplaySize.y <= 0) return;
    // Size times ratio is cut to whole pixels in the backend; a ratio such as 2.625 must not lose the last
    // one.
    data->FramebufferScale = {(static_cast<float>(h.pixels_x) + 0.25f) / data->DisplaySize.x,
                              (static_cast<float>(h.pixels_y) + 0.25f) / data->DisplaySize.y};
    glViewport(0, 0, h.pixels_x, h.pixels_y);
    const auto part = [&](int shift) { return static_cast<float>(h.background >> shift & 0xffu) / 255.0f; };
    glClearColor(part(16), part(8), part(0), 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(data);
}

void fonts_changed() {
    Host& h = host();
    const ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    // The native field is set in the same letters: those of the atlas's first font.
    if (!h.font_given && !atlas.ConfigData.empty()) {
        h.font_given = true;
        shell_page_font(static_cast<const unsigned char*>(atlas.ConfigData[0].FontData),
                        static_cast<std::uint32_t>(atlas.ConfigData[0].FontDataSize), kPlainWeight);
    }
    if (h.context <= 0 || h.lost) return;
    // At once: what is drawn from now on carries the texture's name.
    if (h.objects) {
        ImGui_ImplOpenGL3_DestroyFontsTexture();
        ImGui_ImplOpenGL3_CreateFontsTexture();
    } else {
        make_objects();
    }
}

namespace {
// The strong letters are given to the browser once it is to draw with them: those of the atlas's second font.
int weight_of(const LineLook& look) {
    Host& h = host();
    const ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    if (look.strong && !h.strong_font_given && atlas.ConfigData.Size > 1) {
        h.strong_font_given = true;
        shell_page_font(static_cast<const unsigned char*>(atlas.ConfigData[1].FontData),
                        static_cast<std::uint32_t>(atlas.ConfigData[1].FontDataSize), kStrongWeight);
    }
    return look.strong ? kStrongWeight : kPlainWeight;
}
}  // namespace

std::vector<std::size_t> word_ends(const std::string& text) {
    std::vector<int> ends(text.size());
    const int found = shell_word_ends(text.c_str(), ends.data(), static_cast<int>(ends.size()));
    return {ends.begin(), ends.begin() + found};
}

float measure_line(const std::string& text, const LineLook& look) {
    const float ratio = window().pixel_ratio;
    return shell_measure_line(text.c_str(), look.size * ratio, weight_of(look), look.right_to_left) / ratio;
}

LinePicture draw_line(const std::string& text, const LineLook& look, std::uint32_t rgb) {
    LinePicture picture;
    if (host().context <= 0 || host().lost) return picture;
    int box[4] = {};
    if (!shell_lay_line(text.c_str(), look.size * window().pixel_ratio, weight_of(look), look.right_to_left,
                        rgb, box))
        return picture;
    picture.left = box[0];
    picture.top = box[1];
    picture.width = box[2];
    picture.height = box[3];
    GLuint texture = 0;
    glGenTextures(1, &texture);
    glBindTexture(GL_TEXTURE_2D, texture);
    for (const GLenum what : {GL_TEXTURE_MIN_FILTER, GL_TEXTURE_MAG_FILTER})
        glTexParameteri(GL_TEXTURE_2D, what, GL_NEAREST);  // drawn pixel for pixel
    for (const GLenum what : {GL_TEXTURE_WRAP_S, GL_TEXTURE_WRAP_T})
        glTexParameteri(GL_TEXTURE_2D, what, GL_CLAMP_TO_EDGE);
    shell_paint_line();
    glBindTexture(GL_TEXTURE_2D, 0);
    picture.texture = texture;
    return picture;
}

void drop_picture(std::uintptr_t texture) {
    const auto name = static_cast<GLuint>(texture);
    glDeleteTextures(1, &name);
}

void set_page_colours(bool dark, std::uint32_t background_rgb, std::uint32_t ink_rgb, std::uint32_t field_rgb,
                      std::uint32_t accent_rgb) {
    const std::uint32_t wished[] = {dark ? 1u : 0u, background_rgb, ink_rgb, field_rgb, accent_rgb};
    if (std::equal(std::begin(wished), std::end(wished), host().colours)) return;
    std::copy(std::begin(wished), std::end(wished), host().colours);
    host().background = background_rgb;
    shell_page_colours(dark, background_rgb, ink_rgb, field_rgb, accent_rgb);
}

void set_page_letters(float body, float figure) {
    shell_page_letters(body, figure);
}

void set_page_language(std::string_view language, std::string_view title) {
    shell_page_language(std::string(language).c_str(), std::string(title).c_str());
}

void set_mirror(const std::string& packed) {
    shell_set_mirror(packed.c_str());
}

void focus_node(std::uint32_t node, bool select_all) {
    shell_focus_node(node, select_all);
}

void blur_node() {
    shell_blur_node();
}

void load_stored(std::string_view prefix) {
    shell_load_stored(std::string(prefix).c_str());
}

void save(std::string_view key, std::string_view text) {
    shell_save(std::string(key).c_str(), std::string(text).c_str());
}

void remove(std::string_view key) {
    shell_remove(std::string(key).c_str());
}

void copy_text(std::string_view text) {
    shell_copy(std::string(text).c_str());
}

bool can_share() {
    return shell_can_share() != 0;
}

void share(std::string_view title, std::string_view address) {
    shell_share(std::string(title).c_str(), std::string(address).c_str());
}

void open_file() {
    shell_open_file();
}

void save_file(std::string_view name, std::string_view mime, std::string_view text) {
    shell_save_file(std::string(name).c_str(), std::string(mime).c_str(), std::string(text).c_str());
}

void print_paper(std::string_view name, std::string_view html) {
    shell_print(std::string(name).c_str(), std::string(html).c_str());
}

void show_paper(std::string_view title, std::string_view html) {
    shell_show_paper(std::string(title).c_str(), std::string(html).c_str());
}

void place_paper(float left, float top, float width, float height) {
    shell_place_paper(left, top, width, height);
}

void hide_paper() {
    shell_hide_paper();
}

void save_page() {
    shell_save_page();
}

void clear_fragment() {
    shell_clear_fragment();
}

void push_back_guard(bool on) {
    shell_back_guard(on);
}

void ask_to_keep() {
    shell_ask_to_keep();
}

void keep_awake(bool on) {
    static bool wished = false;
    if (std::exchange(wished, on) != on) shell_keep_awake(on);
}

void want_bell(bool on) {
    static bool wished = false;
    if (std::exchange(wished, on) != on) shell_want_bell(on);
}

void ring() {
    shell_ring();
}

void take_update() {
    shell_take_update();
}

}  // namespace platform

// ---- what the shell calls --------------------------------------------------------------------------------

extern "C" {

// Room for a text that goes into one of the functions below, which frees it.
EMSCRIPTEN_KEEPALIVE char* platform_room(std::uint32_t bytes) {
    return static_cast<char*>(std::malloc(bytes));
}

// flags: 1 shift, 2 control or command
EMSCRIPTEN_KEEPALIVE void platform_push(int kind, double x, double y, double time_ms, int pointer,
                                        int pointer_id, std::uint32_t node, int flags, char* key,
                                        char* text) {
    platform::Event event;
    event.kind = static_cast<platform::Kind>(kind);
    event.x = x;
    event.y = y;
    event.time_ms = time_ms;
    event.pointer = static_cast<platform::Pointer>(pointer);
    event.pointer_id = pointer_id;
    event.node = node;
    event.shift = (flags & 1) != 0;
    event.control = (flags & 2) != 0;
    event.key = platform::owned(key);
    event.text = platform::owned(text);
    platform::host().queue.push_back(std::move(event));
}

// how: 0 and 1 are step(false) and step(true); 2 is like 1, but draws nothing, for who measures the rest.
EMSCRIPTEN_KEEPALIVE void platform_step(int how) {
    platform::Host& h = platform::host();
    if (!h.step) return;
    h.unseen = how == 2;
    h.step(how != 0);
    h.unseen = false;
}

// which: in the order of platform::SystemColours; all of them before platform_window()
EMSCRIPTEN_KEEPALIVE void platform_system_colour(std::uint32_t which, std::uint32_t rgb) {
    platform::SystemColours& s = platform::host().window.system;
    std::uint32_t* const all[] = {&s.canvas,      &s.canvas_text,    &s.link_text, &s.button_face,
                                  &s.button_text, &s.button_border,  &s.field,     &s.field_text,
                                  &s.highlight,   &s.highlight_text, &s.gray_text};
    if (which < std::size(all)) *all[which] = rgb;
}

// flags: 1 touch first, 2 dark, 4 reduced motion, 8 more contrast, 16 forced colours, 32 decimal comma, 64
// from disk, 128 installed
EMSCRIPTEN_KEEPALIVE void platform_window(int pixels_x, int pixels_y, float ratio, float top, float right,
                                          float bottom, float left, float keyboard, float text_scale,
                                          int flags, char* address, char* language) {
    platform::Host& h = platform::host();
    platform::Window& w = h.window;
    h.pixels_x = pixels_x;
    h.pixels_y = pixels_y;
    w.pixel_ratio = ratio > 0 ? ratio : 1;
    w.width = static_cast<float>(pixels_x) / w.pixel_ratio;
    w.height = static_cast<float>(pixels_y) / w.pixel_ratio;
    w.inset_top = top;
    w.inset_right = right;
    w.inset_bottom = bottom;
    w.inset_left = left;
    w.keyboard = keyboard;
    w.text_scale = text_scale;
    w.touch_first = (flags & 1) != 0;
    w.prefers_dark = (flags & 2) != 0;
    w.reduced_motion = (flags & 4) != 0;
    w.more_contrast = (flags & 8) != 0;
    w.forced_colours = (flags & 16) != 0;
    w.decimal_comma = (flags & 32) != 0;
    w.from_disk = (flags & 64) != 0;
    w.installed = (flags & 128) != 0;
    w.address = platform::owned(address);
    w.language = platform::owned(language);
}

}  // extern "C"
