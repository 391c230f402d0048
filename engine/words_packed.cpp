// See words_packed.h. An entry is its key, the text, and where there is one the form for a count of one; each
// ends with a zero byte, the text before another form with a byte of 1.
#include "words_packed.h"

namespace words {
namespace {

constexpr char kEnd = '\0', kOneFollows = '\1';

std::string_view until(std::string_view bytes, std::size_t at, char end) {
    return bytes.substr(at, bytes.find(end, at) - at);
}

}  // namespace

void Packed::append(std::string& bytes, const Text& text) {
    ((bytes += text.key) += kEnd) += text.other;
    if (!text.one.empty()) (bytes += kOneFollows) += text.one;
    bytes += kEnd;
}

std::optional<Packed> Packed::over(std::string_view bytes) {
    Packed packed;
    packed.bytes_ = bytes;
    std::string_view last;
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t key_end = bytes.find(kEnd, at);
        const std::size_t end = key_end == bytes.npos ? key_end : bytes.find(kEnd, key_end + 1);
        if (end == bytes.npos) return std::nullopt;
        const std::string_view key = bytes.substr(at, key_end - at);
        if (key <= last) return std::nullopt;
        last = key;
        packed.starts_.push_back(static_cast<std::uint32_t>(at));
        at = end + 1;
    }
    return packed;
}

Packed::Text Packed::operator[](std::size_t place) const {
    const std::string_view key = until(bytes_, starts_[place], kEnd);
    const std::string_view forms = until(bytes_, starts_[place] + key.size() + 1, kEnd);
    const std::string_view other = forms.substr(0, forms.find(kOneFollows));
    return {key, other, other.size() < forms.size() ? forms.substr(other.size() + 1) : std::string_view()};
}

std::optional<Packed::Text> Packed::find(std::string_view key) const {
    std::size_t low = 0, high = starts_.size();
    while (low < high) {
        const std::size_t middle = (low + high) / 2;
        const std::size_t start = starts_[middle];
        const int order = bytes_.compare(start, key.size(), key);
        if (order == 0 && bytes_[start + key.size()] == kEnd) return (*this)[middle];
        if (order < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return std::nullopt;
}

}  // namespace words
