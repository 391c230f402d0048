// What a host must offer the program, and the one queue through which everything arrives: pointer, keys, the
// mirror's clicks and texts, stored records, files, links. Two halves: platform_web.cpp (browser) and
// platform_native.cpp (tests: no window, a store in memory). The platform knows nothing of recipes and calls
// nobody but the step given to run().
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

struct ImDrawData;

namespace platform {

enum class Kind {
    // hand and keys; positions in CSS pixels from the top left of the canvas, times in ms
    pointer_down,
    pointer_move,
    pointer_up,
    pointer_cancel,
    wheel,     // y: CSS pixels to scroll by, x likewise
    key_down,  // text: KeyboardEvent.key; only when no native field has the focus
    // the mirror
    node_click,   // node
    node_focus,   // node: DOM focus came here (keyboard, screen reader or our own focus_node)
    node_blur,    // node: focus left; a field's text is final
    node_input,   // node, text: the whole text of the field
    node_enter,   // node: Enter or the phone's next/done key in a field (shift: backwards)
    node_escape,  // node may be 0: Escape, or the browser's back
    node_menu,    // node: context menu key or long press by assistive means
    // the window
    resized,      // look at window()
    preferences,  // colour scheme, motion, contrast, size of letters changed: look at window()
    hidden,       // the page is being hidden: save now
    context_lost,
    context_restored,
    letters_changed,  // letters that draw_line() would use have arrived: draw anew what it drew
    // storage
    stored,           // key, text: one stored record, for each key, after load_stored()
    stored_all,       // all were sent
    saved,            // key
    save_failed,      // key, text: "full", "refused", or "changed": another tab wrote it, other_tab follows
    storage_refused,  // storage can't be used at all; nothing will be kept
    other_tab,        // key, text: another tab wrote this record, "" where it took it away
    // from outside
    fragment,      // text: what stood after '#' in the address at start or on change
    pasted,        // text: pasted while no field had the focus
    file_opened,   // key: file name, text: contents
    file_refused,  // key: file name, text: "too_large" or "unreadable"
    copied,
    copy_failed,
    page_update,     // a new version of the hosted page is ready
    storage_stands,  // text "yes": the browser has agreed to keep what is stored; "no": it has not
    awake,           // text "yes": the screen stays lit as was wished; "no": the browser cannot, or does not
};

enum class Pointer { mouse, touch, pen };

struct Event {
    Kind kind{};
    double x = 0, y = 0, time_ms = 0;
    Pointer pointer = Pointer::mouse;
    int pointer_id = 0;
    std::uint32_t node = 0;
    bool shift = false, control = false;  // control: Ctrl, or Command on a Mac
    std::string key, text;
};

// What the person's system asks every page to be drawn in (forced colours): 0xRRGGBB, named as CSS names
// them.
struct SystemColours {
    std::uint32_t canvas = 0xFFFFFF, canvas_text = 0, link_text = 0x0000EE, button_face = 0xFFFFFF,
                  button_text = 0, button_border = 0, field = 0xFFFFFF, field_text = 0, highlight = 0x0000FF,
                  highlight_text = 0xFFFFFF, gray_text = 0x6D6D6D;
};

struct Window {
    float width = 0, height = 0;                                             // CSS pixels of the canvas
    float pixel_ratio = 1;                                                   // device pixels per CSS pixel
    float inset_top = 0, inset_right = 0, inset_bottom = 0, inset_left = 0;  // safe areas
    float keyboard = 0;        // height that the phone's keyboard covers at the bottom
    float text_scale = 1;      // size of letters that the person has set, to the usual one
    bool touch_first = false;  // the main pointer is coarse
    bool prefers_dark = false, reduced_motion = false, more_contrast = false, forced_colours = false;
    SystemColours system;        // hold where colours are forced
    bool decimal_comma = false;  // the browser's number format
    bool from_disk = false;      // opened from a file
    bool installed = false;      // started from the home screen, in a window of its own
    std::string address;         // the page's own address without '#'
    std::string language;        // "en-GB"
};

// step(draw): take_events(), run the program once; draw==false inside the handler of a gesture or key, so
// that what must happen within the gesture (raising the keyboard, copying) does; a drawn step follows by
// itself.
void run(void (*step)(bool draw));
std::vector<Event> take_events();
const Window& window();
void request_frame();             // ask for one more step; none is made otherwise
void request_wake(double in_ms);  // one step after this time (the earliest wins, until the next step)
double now_ms();                  // monotonic
std::string now_utc();            // 2026-11-25T12:00:00Z
std::string today();              // 2026-11-25, local
std::uint64_t chance();           // for ids

// drawing
void draw(ImDrawData* data);                              // clears to the data's own background and draws
void fonts_changed();                                     // the font atlas was rebuilt
void letters_drawn(int x, int y, int width, int height);  // the texture of its letters changed there
void set_page_colours(
    bool dark, std::uint32_t background_rgb, std::uint32_t ink_rgb, std::uint32_t field_rgb,
    std::uint32_t accent_rgb);  // for the page around, the native field and the browser's bar
void set_page_letters(float body, float figure);  // the em in CSS pixels, for the native field
void set_page_language(std::string_view language,
                       std::string_view title);  // "en"; what the mirror's texts are in

// A line of text in the host's own letters, for what the font lacks. Measured in CSS pixels; drawn into a
// texture in whole device pixels, in its own colours where the letters have some. Text: UTF-8, well formed.
struct LineLook {
    float size = 0;  // of the em, CSS pixels
    bool strong = false, right_to_left = false;
};
struct LinePicture {
    std::uintptr_t texture = 0;                    // 0: could not be drawn now
    int left = 0, top = 0, width = 0, height = 0;  // device pixels, from the line's left end and its baseline
};
// Bytes at which words end, for scripts whose words only a dictionary tells apart; none where the host has
// none.
std::vector<std::size_t> word_ends(const std::string& text);
float measure_line(const std::string& text, const LineLook& look);
LinePicture draw_line(const std::string& text, const LineLook& look, std::uint32_t rgb);
void drop_picture(std::uintptr_t texture);

// the mirror (format in mirror.cpp); focusing a field's node inside a gesture raises the phone's keyboard
void set_mirror(const std::string& packed);
void focus_node(std::uint32_t node, bool select_all);
void blur_node();

// storage: answers arrive as stored/stored_all and saved/save_failed. Keys carry the program's prefix
// already.
void load_stored(std::string_view prefix);
void save(std::string_view key, std::string_view text);
void remove(std::string_view key);

// Asks the browser to keep what is stored when room runs short; some ask the person. Answers storage_stands.
void ask_to_keep();
// Wishes the screen to stay lit, or no longer. Answers awake.
void keep_awake(bool on);
// Wishes to be able to ring soon, or no longer: browsers allow it only once the page was touched.
void want_bell(bool on);
void ring();  // heard where the browser lets it be

// outside
void copy_text(std::string_view text);  // answers copied / copy_failed
bool can_share();
void share(std::string_view title, std::string_view address);  // the phone's share sheet
void open_file();                                              // answers file_opened
void save_file(std::string_view name, std::string_view mime, std::string_view text);
// A paper as engine/documents makes them, through the browser's dialog; where there is none, as a file.
void print_paper(std::string_view name, std::string_view html);
// A paper to be read over what is drawn: shown, laid at a place (CSS pixels; within the open sheet's dialog),
// hidden. Escape within it arrives as node_escape.
void show_paper(std::string_view title, std::string_view html);
void place_paper(float left, float top, float width, float height);
void hide_paper();
void save_page();  // this page as one file
void clear_fragment();
void push_back_guard(bool on);  // on: the browser's back arrives as node_escape instead of leaving the page
void take_update();             // reload into the new version

}  // namespace platform
