// The entries of a table of words as they lie packed in the program: sorted by key, and looked up where they
// lie. A thousand texts that are not copied at every start of the page, of which it says a tenth.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace words {

class Packed {
  public:
    struct Text {
        std::string_view key, other, one;  // as words::Entry
    };
    // Nothing where these are not packed entries. The bytes are looked into from then on: they must stay.
    static std::optional<Packed> over(std::string_view bytes);

    // Appends an entry to packed ones whose keys come before its own.
    static void append(std::string& bytes, const Text& text);

    std::size_t size() const { return starts_.size(); }
    Text operator[](std::size_t place) const;
    std::optional<Text> find(std::string_view key) const;

  private:
    std::string_view bytes_;
    std::vector<std::uint32_t> starts_;
};

}  // namespace words
