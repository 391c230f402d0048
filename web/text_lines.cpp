// See text_lines.h. Leans on the library's count of frames to forget what is seen no more.
#include "text_lines.h"

#include <algorithm>
#include <cfloat>
#include <cstdint>
#include <cstring>
#include <map>
#include <tuple>
#include <utility>
#include <vector>

#include "engine/utf8.h"
#include "engine/writing.h"
#include "imgui.h"
#include "letters.h"
#include "picture_text.h"
#include "platform.h"

namespace text_lines {
namespace {

constexpr std::size_t kMostKept = 300;  // texts
constexpr std::size_t kLongest = 400;   // bytes; so long a line never fits
constexpr std::string_view kEllipsis = "\xE2\x80\xA6";

struct Part {  // of the text that was broken
    std::size_t start, size;
    bool pictured, right_to_left;
};
struct Broken {
    std::vector<Part> parts;
    int seen = 0;  // in this frame
};
using Key = std::tuple<std::string, theme::Type, float>;

// A text in letters of the font. Nearly all that a frame shows was shown by the one before.
struct Plain {
    struct Part {
        std::size_t start, size;
        float width;
    };
    std::string words;
    theme::Type type{};
    float room = -1;
    std::vector<Part> parts;  // none: nothing stands here
};
constexpr std::size_t kPlainPlaces = 1024;

struct State {
    std::map<Key, Broken> kept;
    float ratio = 0;
    std::vector<Plain> plain;  // each text has one place
    int fonts_built = 0;
};
State state;

float font_width(std::string_view words, theme::Type type) {
    ImFont* font = theme::font(type);
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0, words.data(), words.data() + words.size()).x;
}

// Of a text that is looked at once: how much of it has room.
float trial_width(std::string_view words, theme::Type type, bool right_to_left) {
    return picture_text::needed(words, type) ? picture_text::measure(words, type, right_to_left)
                                             : font_width(words, type);
}

// The last of `ends` (rising) up to which the words have room; nothing when not even the first has.
std::size_t last_that_fits(std::string_view words, const std::vector<std::size_t>& ends, theme::Type type,
                           bool right_to_left, float room) {
    std::size_t fits = 0, beyond = ends.size() + 1;  // counted from 1
    while (fits + 1 < beyond) {
        const std::size_t middle = (fits + beyond) / 2;
        if (trial_width(words.substr(0, ends[middle - 1]), type, right_to_left) <= room)
            fits = middle;
        else
            beyond = middle;
    }
    return fits == 0 ? 0 : ends[fits - 1];
}

std::vector<std::size_t> letter_ends(std::string_view words) {
    std::vector<std::size_t> ends;
    for (std::size_t at = 0; at < words.size();)
        ends.push_back(at = writing::letter_end(words, at));
    return ends;
}

// Longest start of `words` that has room, in whole letters, at least one.
std::size_t fitting(std::string_view words, theme::Type type, bool right_to_left, float room) {
    const std::vector<std::size_t> ends = letter_ends(words);
    if (ends.empty()) return 0;
    return std::max(ends.front(), last_that_fits(words, ends, type, right_to_left, room));
}

// Where a line may end: before a space, or between letters that need none.
std::vector<std::size_t> line_ends(std::string_view words) {
    std::vector<std::size_t> ends, known;
    if (writing::words_unmarked(words)) known = platform::word_ends(std::string(words));
    const auto within_word = [&](std::size_t start, std::size_t at) {
        return !known.empty() && writing::words_unmarked(words.substr(start, at - start)) &&
               !std::binary_search(known.begin(), known.end(), at);
    };
    for (std::size_t at = 0, start = 0; at < words.size();) {
        start = at;
        at = words[at] == ' ' ? at + 1 : writing::letter_end(words, at);
        const bool space = at < words.size() && words[at] == ' ' && words[at - 1] != ' ';
        if (space || (writing::may_break(words, at) && !within_word(start, at))) ends.push_back(at);
    }
    return ends;
}

// One paragraph with letters that the font lacks.
void break_paragraph(std::string_view words, theme::Type type, float room, std::size_t start,
                     std::vector<Part>& parts) {
    const bool right_to_left = writing::right_to_left(words);
    const auto take = [&](std::size_t size) {
        const std::string_view line = words.substr(0, size);
        const bool pictured = right_to_left || picture_text::needed(line, type);
        if (!pictured) letters::need(*theme::font(type), line);
        parts.push_back({start, size, pictured, right_to_left});
    };
    while (room > 0 && trial_width(words, type, right_to_left) > room) {
        std::size_t size = last_that_fits(words, line_ends(words), type, right_to_left, room);
        if (size == 0) size = fitting(words.substr(0, words.find(' ')), type, right_to_left, room);
        if (size == 0) break;  // begins with a space and has room for nothing
        take(size);
        while (size < words.size() && words[size] == ' ')
            ++size;
        words.remove_prefix(size);
        start += size;
    }
    take(words.size());
}

// One paragraph in letters of the font. The words before a space are measured one after the other: there are
// few.
void each_plain(std::string_view line, theme::Type type, float room,
                const std::function<void(const Line&)>& take) {
    float whole = 0;
    while (room > 0 && (line.size() > kLongest || (whole = font_width(line, type)) > room)) {
        std::size_t fits = 0;
        for (std::size_t space = line.find(' '); space != line.npos; space = line.find(' ', space + 1)) {
            if (font_width(line.substr(0, space), type) > room) break;
            fits = space;
        }
        const std::size_t end =
            fits > 0
                ? fits
                : fitting(utf8::start_within(line.substr(0, line.find(' ')), kLongest), type, false, room);
        take({line.substr(0, end), font_width(line.substr(0, end), type)});
        line.remove_prefix(std::min(line.size(), end + (end < line.size() && line[end] == ' ' ? 1 : 0)));
    }
    take({line, room > 0 ? whole : font_width(line, type)});
}

std::size_t plain_place(std::string_view words, theme::Type type, float room) {
    std::uint64_t mark = words.size() * 31 + static_cast<std::uint64_t>(type);
    const auto stir = [&](std::uint64_t part) {
        mark = (mark ^ part) * 0x9E3779B97F4A7C15u;
        mark ^= mark >> 29;
    };
    stir(static_cast<std::uint64_t>(static_cast<std::int64_t>(room * 8)));
    for (std::size_t at = 0; at < words.size(); at += 8) {
        std::uint64_t part = 0;
        std::memcpy(&part, words.data() + at, std::min<std::size_t>(8, words.size() - at));
        stir(part);
    }
    return mark % kPlainPlaces;
}

std::vector<Part> broken(std::string_view words, theme::Type type, float width) {
    std::vector<Part> parts;
    for (std::size_t start = 0;;) {
        const std::size_t end = std::min(words.find('\n', start), words.size());
        const std::string_view paragraph = words.substr(start, end - start);
        if (picture_text::needed(paragraph, type))
            break_paragraph(paragraph, type, width, start, parts);
        else
            each_plain(paragraph, type, width, [&](const Line& line) {
                letters::need(*theme::font(type), line.words);
                parts.push_back({static_cast<std::size_t>(line.words.data() - words.data()),
                                 line.words.size(), false, false});
            });
        if (end == words.size()) return parts;
        start = end + 1;
    }
}

const std::vector<Part>& kept_parts(std::string_view words, theme::Type type, float width) {
    const int frame = ImGui::GetFrameCount();
    if (const float ratio = platform::window().pixel_ratio; ratio != state.ratio) {
        state.kept.clear();
        state.ratio = ratio;
    }
    Key key(std::string(words), type, width);
    auto found = state.kept.find(key);
    if (found == state.kept.end()) {
        if (state.kept.size() >= kMostKept)
            std::erase_if(state.kept, [&](const auto& one) { return one.second.seen < frame - 1; });
        found = state.kept.emplace(std::move(key), Broken{broken(words, type, width), 0}).first;
    }
    found->second.seen = frame;
    return found->second.parts;
}

}  // namespace

void each(std::string_view words, theme::Type type, float width,
          const std::function<void(const Line&)>& take) {
    if (state.plain.empty() || state.fonts_built != theme::fonts_built()) {
        state.plain.assign(kPlainPlaces, {});
        state.fonts_built = theme::fonts_built();
    }
    Plain& place = state.plain[plain_place(words, type, width)];
    Plain known;  // not in its place meanwhile: whoever takes the lines may ask for others
    if (!place.parts.empty() && place.type == type && place.room == width && place.words == words) {
        known = std::exchange(place, {});
    } else if (picture_text::needed(words, type)) {
        for (const Part& part : kept_parts(words, type, width))
            take({words.substr(part.start, part.size), 0, part.pictured, part.right_to_left});
        return;
    } else {
        letters::need(*theme::font(type), words);
        known = {std::string(words), type, width, {}};
        for (std::size_t start = 0;; ++start) {
            const std::size_t end = std::min(words.find('\n', start), words.size());
            each_plain(words.substr(start, end - start), type, width, [&](const Line& line) {
                known.parts.push_back({static_cast<std::size_t>(line.words.data() - words.data()),
                                       line.words.size(), line.width});
            });
            if (end == words.size()) break;
            start = end;
        }
    }
    for (const Plain::Part& part : known.parts)
        take({words.substr(part.start, part.size), part.width});
    place = std::move(known);
}

float width(const Line& line, theme::Type type) {
    return line.pictured ? picture_text::width(line.words, type, line.right_to_left) : line.width;
}

std::string cut(std::string_view words, theme::Type type, float width) {
    words = words.substr(0, words.find('\n'));
    const bool right_to_left = picture_text::needed(words, type) && writing::right_to_left(words);
    const float room = width - font_width(kEllipsis, type);
    return std::string(words.substr(0, fitting(words, type, right_to_left, room))) + std::string(kEllipsis);
}

void start_over() {
    state.kept.clear();
    state.plain.clear();
    picture_text::start_over();
}

}  // namespace text_lines
