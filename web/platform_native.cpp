// The platform without a window, for tests: see platform_native.h. Answers arrive as they do in the browser,
// through the queue, and DOM focus is kept as a browser would keep it (focusing one node takes it from the
// other). It draws nothing: draw() only counts.
#include "web/platform_native.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "engine/writing.h"
#include "imgui.h"

namespace platform {

namespace {

struct Host {
    std::vector<Event> queue;
    Window window;
    double now_ms = 1000;
    std::string utc = "2026-11-25T12:00:00Z";
    bool wanted = false;
    std::optional<double> wake_ms;
    std::uint64_t chance = 0;
    std::map<std::string, std::string> store;
    std::map<std::string, std::string> next_door;  // written there and not seen here yet
    native::Storage storage = native::Storage::works;
    std::string mirror;
    int mirrors = 0;
    std::vector<std::string> copied;
    std::vector<native::Shared> shared;
    std::vector<native::Saved> files, printed;
    native::Saved shown;  // the paper that is being read
    std::map<std::uintptr_t, native::Line> lines;
    std::vector<std::string> words;
    int lines_drawn = 0, lines_measured = 0;
    std::vector<unsigned char> letters;
    int drawn = 0, font_changes = 0, files_asked_for = 0, pages_saved = 0;
    int asked_to_keep = 0;
    bool back_guard = false, update_taken = false, awake = false, bell = false;
    int rung = 0;
    std::uint32_t focus = 0, focus_asked_for = 0;
};

Window phone() {
    Window w;
    w.width = 360;
    w.height = 640;
    w.pixel_ratio = 2;
    w.touch_first = true;
    w.from_disk = true;
    w.address = "file:///tarebench.html";
    w.language = "en-GB";
    return w;
}

Host fresh() {
    Host made;
    made.window = phone();
    return made;
}

Host& host() {
    static Host the_one = fresh();
    return the_one;
}

void push_kind(Kind kind, std::string key = {}, std::string text = {}) {
    Event event;
    event.kind = kind;
    event.key = std::move(key);
    event.text = std::move(text);
    native::push(std::move(event));
}

}  // namespace

void run(void (*step)(bool draw)) {
    push_kind(Kind::resized);
    request_frame();
    native::settle(step);
}

std::vector<Event> take_events() {
    return std::exchange(host().queue, {});
}

const Window& window() {
    return host().window;
}

void request_frame() {
    host().wanted = true;
}

void request_wake(double in_ms) {
    const double at = host().now_ms + std::max(0.0, in_ms);
    if (!host().wake_ms || at < *host().wake_ms) host().wake_ms = at;
}

double now_ms() {
    return host().now_ms;
}

std::string now_utc() {
    return host().utc;
}

std::string today() {
    return host().utc.substr(0, 10);
}

std::uint64_t chance() {
    // Different each time and the same in every run (splitmix64, public domain constants).
    std::uint64_t z = (host().chance += 0x9e3779b97f4a7c15u);
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
}

void draw(ImDrawData*) {
    host().drawn += 1;
}

void fonts_changed() {
    host().font_changes += 1;
    host().letters.clear();
}

void letters_drawn(int x, int y, int width, int height) {
    const ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    const auto at = [&](int row) {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(atlas.TexWidth) +
               static_cast<std::size_t>(x);
    };
    const auto size = static_cast<std::size_t>(atlas.TexWidth) * static_cast<std::size_t>(atlas.TexHeight);
    if (host().letters.size() != size) host().letters.assign(size, 0);
    for (int row = y; row < y + height; ++row)
        std::copy_n(atlas.TexPixelsAlpha8 + at(row), width,
                    host().letters.begin() + static_cast<std::ptrdiff_t>(at(row)));
}

// Each letter as wide as most are, wide ones twice that: the same on every machine.
namespace {
float width_of(const std::string& text, const LineLook& look) {
    float ems = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = writing::letter_end(text, at);
        ems += writing::is_wide(text.substr(at, end - at)) ? 1.0f : 0.5f;
        at = end;
    }
    return ems * look.size;
}
}  // namespace

std::vector<std::size_t> word_ends(const std::string& text) {
    std::vector<std::size_t> ends;
    for (std::size_t at = 0; !host().words.empty() && at < text.size(); ends.push_back(at)) {
        std::size_t longest = writing::letter_end(text, at) - at;
        for (const std::string& word : host().words)
            if (text.compare(at, word.size(), word) == 0) longest = std::max(longest, word.size());
        at += longest;
    }
    return ends;
}

float measure_line(const std::string& text, const LineLook& look) {
    host().lines_measured += 1;
    return width_of(text, look);
}

LinePicture draw_line(const std::string& text, const LineLook& look, std::uint32_t rgb) {
    const float ratio = window().pixel_ratio;
    host().lines[static_cast<std::uintptr_t>(++host().lines_drawn)] = {text, look, rgb};
    LinePicture picture;
    picture.texture = static_cast<std::uintptr_t>(host().lines_drawn);
    picture.top = static_cast<int>(-look.size * ratio);
    picture.width = static_cast<int>(std::ceil(width_of(text, look) * ratio));
    picture.height = static_cast<int>(1.3f * look.size * ratio);
    return picture;
}

void drop_picture(std::uintptr_t texture) {
    host().lines.erase(texture);
}

void set_page_colours(bool, std::uint32_t, std::uint32_t, std::uint32_t, std::uint32_t) {}
void set_page_letters(float, float) {}

void set_page_language(std::string_view, std::string_view) {}

void set_mirror(const std::string& packed) {
    host().mirror = packed;
    host().mirrors += 1;
}

void focus_node(std::uint32_t node, bool) {
    host().focus_asked_for = node;
    if (host().focus == node) return;
    blur_node();
    if (node == 0) return;
    Event event;
    event.kind = Kind::node_focus;
    event.node = node;
    native::push(std::move(event));
}

void blur_node() {
    if (host().focus == 0) return;
    Event event;
    event.kind = Kind::node_blur;
    event.node = host().focus;
    native::push(std::move(event));
}

void load_stored(std::string_view prefix) {
    if (host().storage == native::Storage::refuses) {
        push_kind(Kind::storage_refused);
    } else {
        for (const auto& [key, text] : host().store) {
            if (key.compare(0, prefix.size(), prefix) == 0) push_kind(Kind::stored, key, text);
        }
    }
    push_kind(Kind::stored_all);
}

void save(std::string_view key, std::string_view text) {
    const std::string base(key.substr(0, key.size() - 1));  // of its two turns
    bool changed = false;
    for (const char* turn : {"a", "b"}) {
        const auto found = host().next_door.find(base + turn);
        if (found == host().next_door.end()) continue;
        if (!std::exchange(changed, true)) push_kind(Kind::save_failed, std::string(key), "changed");
        push_kind(Kind::other_tab, found->first, found->second);
        host().next_door.erase(found);
    }
    if (changed) return;
    switch (host().storage) {
        case native::Storage::works:
            host().store[std::string(key)] = std::string(text);
            push_kind(Kind::saved, std::string(key));
            return;
        case native::Storage::full:
            push_kind(Kind::save_failed, std::string(key), "full");
            return;
        case native::Storage::refuses:
            push_kind(Kind::save_failed, std::string(key), "refused");
            return;
    }
}

void remove(std::string_view key) {
    if (host().storage != native::Storage::refuses) host().store.erase(std::string(key));
}

void copy_text(std::string_view text) {
    host().copied.emplace_back(text);
    push_kind(Kind::copied);
}

bool can_share() {
    return true;
}

void share(std::string_view title, std::string_view address) {
    host().shared.push_back({std::string(title), std::string(address)});
}

void open_file() {
    host().files_asked_for += 1;
}

void save_file(std::string_view name, std::string_view mime, std::string_view text) {
    host().files.push_back({std::string(name), std::string(mime), std::string(text)});
}

void print_paper(std::string_view name, std::string_view html) {
    host().printed.push_back({std::string(name), "text/html", std::string(html)});
}

void show_paper(std::string_view title, std::string_view html) {
    host().shown = {std::string(title), "text/html", std::string(html)};
}

void place_paper(float, float, float, float) {}

void hide_paper() {
    host().shown = {};
}

void save_page() {
    host().pages_saved += 1;
}

void clear_fragment() {}

void push_back_guard(bool on) {
    host().back_guard = on;
}

void ask_to_keep() {
    host().asked_to_keep += 1;
}

void keep_awake(bool on) {
    host().awake = on;
}

void want_bell(bool on) {
    host().bell = on;
}

void ring() {
    host().rung += host().bell;
}

void take_update() {
    host().update_taken = true;
}

namespace native {

void start_over() {
    auto store = std::move(host().store);
    host() = fresh();
    host().store = std::move(store);
}

void push(Event event) {
    if (event.time_ms == 0) event.time_ms = host().now_ms;
    if (event.kind == Kind::node_focus) host().focus = event.node;
    if (event.kind == Kind::node_blur && host().focus == event.node) host().focus = 0;
    host().queue.push_back(std::move(event));
    request_frame();
}

Window& window() {
    return host().window;
}

void advance(double ms) {
    host().now_ms += ms;
    if (host().wake_ms && *host().wake_ms <= host().now_ms) {
        host().wake_ms.reset();
        request_frame();
    }
}

void set_utc(const std::string& instant) {
    host().utc = instant;
}

bool frame_wanted() {
    return host().wanted;
}

bool take_wanted_frame() {
    if (!std::exchange(host().wanted, false)) return false;
    return true;
}

void settle(void (*step)(bool draw)) {
    for (int frame = 0; frame < 60 && take_wanted_frame(); ++frame) {
        advance(16);
        step(true);
    }
}

std::map<std::string, std::string>& store() {
    return host().store;
}

void write_next_door(const std::string& key, const std::string& text) {
    host().store[key] = host().next_door[key] = text;
}

void set_storage(Storage how) {
    host().storage = how;
}

void set_words(std::vector<std::string> words) {
    host().words = std::move(words);
}

const std::map<std::uintptr_t, Line>& lines() {
    return host().lines;
}

std::vector<unsigned char>& letters() {
    return host().letters;
}

int lines_drawn() {
    return host().lines_drawn;
}

int lines_measured() {
    return host().lines_measured;
}

const std::string& mirror() {
    return host().mirror;
}

int mirrors() {
    return host().mirrors;
}

std::vector<std::string>& copied() {
    return host().copied;
}

std::vector<Shared>& shared() {
    return host().shared;
}

std::vector<Saved>& saved_files() {
    return host().files;
}
std::vector<Saved>& printed() {
    return host().printed;
}
const Saved& shown_paper() {
    return host().shown;
}

int drawn() {
    return host().drawn;
}

int font_changes() {
    return host().font_changes;
}

int files_asked_for() {
    return host().files_asked_for;
}

int pages_saved() {
    return host().pages_saved;
}

bool back_guard() {
    return host().back_guard;
}

int asked_to_keep() {
    return host().asked_to_keep;
}

bool kept_awake() {
    return host().awake;
}

int rung() {
    return host().rung;
}

bool update_taken() {
    return host().update_taken;
}

std::uint32_t focus_asked_for() {
    return host().focus_asked_for;
}

}  // namespace native

}  // namespace platform
