// The part of CBOR (RFC 8949) a recipe link needs: unsigned integers, UTF-8 text, arrays, and nothing else;
// with packed texts, a text that is shorter so stands as a byte string in shorthand. Only the one canonical
// form is read (section 4.2.1: shortest heads, definite lengths); JSON libraries read more than that, which
// is why this small reader is ours.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "result.h"

namespace cbor {

enum class Texts { plain, packed };

class Writer {
  public:
    explicit Writer(Texts texts = Texts::plain) : texts_(texts) {}
    void integer(std::uint64_t value);
    void text(std::string_view utf8);
    void array(std::uint64_t count);  // then `count` items
    const std::string& bytes() const { return bytes_; }

  private:
    void head(unsigned kind, std::uint64_t value);
    Texts texts_;
    std::string bytes_;
};

// Reads item by item; the first failure stays (link_truncated, link_not_canonical, link_content) and every
// later read gives 0, "" or an empty array, so a caller may check once at the end.
class Reader {
  public:
    explicit Reader(std::string_view bytes, Texts texts = Texts::plain) : bytes_(bytes), texts_(texts) {}
    std::uint64_t integer();
    std::string text(std::size_t most_bytes);
    std::string_view view(std::size_t most_bytes);  // of a plain text, where it lies
    std::uint64_t array(std::uint64_t most_items);
    bool next_is_text() const;
    bool at_end() const { return at_ == bytes_.size(); }
    bool failed() const { return failed_; }
    const result::Error& error() const { return error_; }

  private:
    std::uint64_t head(unsigned kind);
    std::string_view plain(std::uint64_t length, std::size_t most_bytes);
    void fail(result::Code code);
    bool next_is(unsigned kind) const;
    std::string_view bytes_;
    Texts texts_;
    std::size_t at_ = 0;
    bool failed_ = false;
    result::Error error_;
};

}  // namespace cbor
