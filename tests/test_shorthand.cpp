// Texts in shorthand: shorter, exact, and one form only.
#include <string>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/checksum.h"
#include "engine/shorthand.h"

namespace test_shorthand {

TEST_CASE("shorthand: what a maker writes takes about half its bytes and comes back") {
    for (const std::string text :
         {"Melt the waxes first, then the butters, in the water bath; hold until all is clear.",
          "Warm the oils to the same heat and pour them in slowly, stirring with the glass rod.",
          "Helianthus Annuus Seed Oil", "own_marigold_oil"}) {
        const std::string packed = shorthand::pack(text);
        CHECK(packed.size() <= text.size() * 6 / 10);
        CHECK(shorthand::unpack(packed, text.size()).value() == text);
    }
    CHECK(shorthand::pack("").empty());
    CHECK(shorthand::unpack("", 0).value().empty());
}

TEST_CASE("shorthand: any bytes come back, whatever the language") {
    chance::Generator chance(2026);
    for (int round = 0; round < 2000; ++round) {
        std::string text;
        for (std::uint64_t length = chance.below(60); length > 0; --length)
            text += static_cast<char>(chance.below(round % 2 == 0 ? 256 : 96) + (round % 2 == 0 ? 0 : 32));
        CHECK(shorthand::unpack(shorthand::pack(text), text.size()).value() == text);
    }
}

TEST_CASE("shorthand: bytes that are no text, and texts that are too long, are refused") {
    const std::string packed = shorthand::pack("Stir until clear.");
    CHECK_FALSE(shorthand::unpack(packed, 16).has_value());
    CHECK_FALSE(shorthand::unpack(std::string(3, '\xFF'), 100).has_value());
    CHECK_FALSE(shorthand::unpack(packed + '\xFF', 100).has_value());
    chance::Generator chance(7);
    for (int round = 0; round < 5000; ++round) {  // no bytes do harm
        std::string bytes;
        for (std::uint64_t length = chance.below(40); length > 0; --length)
            bytes += static_cast<char>(chance.below(256));
        if (const auto text = shorthand::unpack(bytes, 500)) CHECK(text->size() <= 500);
    }
}

TEST_CASE("shorthand: the table is whole and never changes, because links are for ever") {
    REQUIRE(shorthand::kLengths.size() == shorthand::kSymbolCount);
    std::string all(shorthand::kLengths);
    std::uint64_t kraft = 0;  // in parts of 2^-15
    for (const char length : shorthand::kLengths) {
        REQUIRE(length > 'a');
        REQUIRE(length <= 'a' + 15);
        kraft += std::uint64_t{1} << (15 - (length - 'a'));
    }
    CHECK(kraft == std::uint64_t{1} << 15);
    for (std::size_t i = 0; i < shorthand::kFragmentCount; ++i) {
        const std::string_view fragment = shorthand::kFragments[i];
        CHECK(fragment.size() >= 2);
        CHECK(fragment.size() <= shorthand::kLongestFragment);
        if (i > 0) CHECK(shorthand::kFragments[i - 1] < fragment);
        all += '\n';
        all += fragment;
    }
    CHECK(checksum::crc32(all) == 0x9628d27du);
}

}  // namespace test_shorthand
