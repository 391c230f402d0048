// The tests' side of platform.h: what a browser would have done is pushed in by hand, what the program asked
// of the browser can be read back. Time stands still until advance().
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "web/platform.h"

namespace platform::native {

struct Saved {
    std::string name, mime, text;
};

struct Shared {
    std::string title, address;
};

void start_over();                         // as if the page had been opened anew; the store is kept
void push(Event event);                    // fills in the time when it is 0
Window& window();                          // to be changed by tests
void advance(double ms);                   // a wake that falls due asks for its frame
void set_utc(const std::string& instant);  // "2026-11-25T12:00:00Z", also sets today()

bool frame_wanted();                   // a step was asked for and not made yet
bool take_wanted_frame();              // true: one was; call the step for it
void settle(void (*step)(bool draw));  // steps until none is wanted; at most 60

std::map<std::string, std::string>& store();
// As another window of this browser does; it is not told of (some browsers do not), but found at the next
// save.
void write_next_door(const std::string& key, const std::string& text);
enum class Storage { works, full, refuses };
void set_storage(Storage how);

struct Line {  // drawn by draw_line() and not dropped again
    std::string text;
    LineLook look;
    std::uint32_t rgb = 0;
};
void set_words(std::vector<std::string> words);  // that word_ends() knows; none: it knows nothing
const std::map<std::uintptr_t, Line>& lines();
int lines_drawn();  // ever
int lines_measured();
// The letters' texture as a graphics card would have it, a byte a pixel; empty until some are handed over.
std::vector<unsigned char>& letters();

const std::string& mirror();  // what set_mirror() got last
int mirrors();                // how many times
std::vector<std::string>& copied();
std::vector<Shared>& shared();
std::vector<Saved>& saved_files();
std::vector<Saved>& printed();
const Saved& shown_paper();  // its title as name; empty when none is shown
int drawn();                 // frames handed to draw()
int font_changes();
int files_asked_for();  // open_file() calls
int pages_saved();
bool back_guard();
int asked_to_keep();  // ask_to_keep() calls
bool kept_awake();
int rung();  // ring() calls while the bell was wanted
bool update_taken();
std::uint32_t focus_asked_for();  // the last focus_node()

}  // namespace platform::native
