// Elements are closed by the writer, in the order they were opened; text is escaped on the way in and there
// is no way around it.
#include "markup.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "utf8.h"
#include "writing.h"

namespace markup {
namespace {

constexpr std::array<std::string_view, 6> kVoid{"br", "col", "hr", "img", "link", "meta"};

bool is_void(std::string_view element) {
    return std::find(kVoid.begin(), kVoid.end(), element) != kVoid.end();
}

bool is_name(std::string_view name) {
    return !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
    });
}

std::string tag(std::string_view element, const Attributes& attributes) {
    assert(is_name(element));
    std::string out = "<" + std::string(element);
    for (const auto& [name, value] : attributes) {
        assert(is_name(name));
        out += ' ';
        out += name;
        out += "=\"";
        out += escape(value);
        out += '"';
    }
    return out + ">";
}

}  // namespace

std::string escape(std::string_view plain) {
    std::string out;
    out.reserve(plain.size());
    for (std::size_t at = 0; at < plain.size();) {
        const std::size_t length = utf8::length_at(plain, at);
        const char c = plain[at];
        const bool control = length == 1 && ((c >= 0 && c < 0x20 && c != '\n' && c != '\t') || c == 0x7F);
        if (length == 0 || control) {
            out += "\xEF\xBF\xBD";  // U+FFFD: a page must not hold such a character
        } else if (c == '&') {
            out += "&amp;";
        } else if (c == '<') {
            out += "&lt;";
        } else if (c == '>') {
            out += "&gt;";
        } else if (c == '"') {
            out += "&quot;";
        } else if (c == '\'') {
            out += "&#39;";
        } else {
            out += plain.substr(at, length);
        }
        at += length == 0 ? 1 : length;
    }
    return out;
}

void Writer::open(std::string_view element, const Attributes& attributes) {
    assert(!is_void(element));
    out_ += tag(element, attributes);
    open_.emplace_back(element);
}

void Writer::close() {
    assert(!open_.empty());
    out_ += "</" + open_.back() + ">\n";
    open_.pop_back();
}

// What runs from right to left says so itself, or the figures and signs beside it would change places.
void Writer::text(std::string_view plain) {
    const bool apart = writing::has_right_to_left(plain);
    out_ += apart ? "<bdi>" + escape(plain) + "</bdi>" : escape(plain);
}

void Writer::leaf(std::string_view element, std::string_view plain, const Attributes& attributes) {
    if (is_void(element)) {
        assert(plain.empty());
        out_ += tag(element, attributes) + "\n";
        return;
    }
    Attributes all = attributes;
    if (writing::has_right_to_left(plain)) all.emplace_back("dir", "auto");
    open(element, all);
    out_ += escape(plain);
    close();
}

void Writer::style(std::string_view css) {
    assert(css.find('<') == std::string_view::npos);
    out_ += "<style>";
    out_ += css;
    out_ += "</style>\n";
}

std::string Writer::finish() {
    while (!open_.empty())
        close();
    return std::move(out_);
}

}  // namespace markup
