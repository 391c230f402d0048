// Heads and payloads of the three kinds in use. Every length is held against what is left before anything is
// taken.
#include "cbor.h"

#include <optional>
#include <utility>

#include "shorthand.h"
#include "utf8.h"

namespace cbor {
namespace {

constexpr unsigned kInteger = 0, kPacked = 2, kText = 3, kArray = 4;  // major types, RFC 8949 section 3.1

}  // namespace

void Writer::head(unsigned kind, std::uint64_t value) {
    const unsigned top = kind << 5;
    if (value < 24) {
        bytes_ += static_cast<char>(top | static_cast<unsigned>(value));
        return;
    }
    unsigned width = 0;  // log2 of the bytes that follow
    if (value > 0xFFu) width = 1;
    if (value > 0xFFFFu) width = 2;
    if (value > 0xFFFFFFFFu) width = 3;
    bytes_ += static_cast<char>(top | (24 + width));
    for (int shift = (8 << width) - 8; shift >= 0; shift -= 8)
        bytes_ += static_cast<char>((value >> shift) & 0xFFu);
}

void Writer::integer(std::uint64_t value) {
    head(kInteger, value);
}
void Writer::array(std::uint64_t count) {
    head(kArray, count);
}
void Writer::text(std::string_view utf8) {
    if (texts_ == Texts::packed) {
        const std::string packed = shorthand::pack(utf8);
        if (packed.size() < utf8.size()) {
            head(kPacked, packed.size());
            bytes_ += packed;
            return;
        }
    }
    head(kText, utf8.size());
    bytes_ += utf8;
}

void Reader::fail(result::Code code) {
    if (failed_) return;
    failed_ = true;
    error_ = {code, "byte " + std::to_string(at_ + 1), ""};
}

std::uint64_t Reader::head(unsigned kind) {
    if (failed_) return 0;
    if (at_end()) return fail(result::Code::link_truncated), 0;
    const unsigned first = static_cast<unsigned char>(bytes_[at_]);
    if (first >> 5 != kind) return fail(result::Code::link_content), 0;
    const unsigned info = first & 31u;
    if (info < 24) {
        ++at_;
        return info;
    }
    // 28 to 30 are reserved; 31 would be a length that is told later, which the canonical form does not have.
    if (info > 27) return fail(info == 31 ? result::Code::link_not_canonical : result::Code::link_content), 0;
    const std::size_t width = std::size_t{1} << (info - 24);
    if (bytes_.size() - at_ - 1 < width) return fail(result::Code::link_truncated), 0;
    std::uint64_t value = 0;
    for (std::size_t i = 1; i <= width; ++i)
        value = (value << 8) | static_cast<unsigned char>(bytes_[at_ + i]);
    constexpr std::uint64_t kSmallest[] = {24, 0x100, 0x10000, 0x100000000};
    if (value < kSmallest[info - 24]) return fail(result::Code::link_not_canonical), 0;
    at_ += 1 + width;
    return value;
}

std::uint64_t Reader::integer() {
    return head(kInteger);
}

std::string Reader::text(std::size_t most_bytes) {
    const bool packed = texts_ == Texts::packed && next_is(kPacked);
    const std::uint64_t length = head(packed ? kPacked : kText);
    if (failed_) return "";
    if (packed) {
        if (length > bytes_.size() - at_) return fail(result::Code::link_truncated), "";
        const std::string_view code = bytes_.substr(at_, static_cast<std::size_t>(length));
        std::optional<std::string> text = shorthand::unpack(code, most_bytes);
        if (!text || !utf8::valid(*text)) return fail(result::Code::link_content), "";
        at_ += code.size();
        return std::move(*text);
    }
    return std::string(plain(length, most_bytes));
}

std::string_view Reader::view(std::size_t most_bytes) {
    const std::uint64_t length = head(kText);
    return failed_ ? "" : plain(length, most_bytes);
}

std::string_view Reader::plain(std::uint64_t length, std::size_t most_bytes) {
    if (length > most_bytes) return fail(result::Code::link_content), "";
    if (length > bytes_.size() - at_) return fail(result::Code::link_truncated), "";
    const std::string_view text = bytes_.substr(at_, static_cast<std::size_t>(length));
    if (!utf8::valid(text)) return fail(result::Code::link_content), "";
    at_ += text.size();
    return text;
}

std::uint64_t Reader::array(std::uint64_t most_items) {
    const std::uint64_t count = head(kArray);
    if (failed_) return 0;
    if (count > most_items) return fail(result::Code::link_content), 0;
    if (count > bytes_.size() - at_)
        return fail(result::Code::link_truncated), 0;  // an item takes a byte at least
    return count;
}

bool Reader::next_is(unsigned kind) const {
    return !failed_ && !at_end() && static_cast<unsigned char>(bytes_[at_]) >> 5 == kind;
}

bool Reader::next_is_text() const {
    return next_is(kText) || (texts_ == Texts::packed && next_is(kPacked));
}

}  // namespace cbor
