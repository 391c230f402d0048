// The part of CBOR that links use, against the examples of RFC 8949 appendix A; the other kinds must be
// refused.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/cbor.h"
#include "engine/chance.h"

namespace test_cbor {

using result::Code;

namespace {

std::string bytes_of(const std::string& hex) {
    std::string out;
    for (std::size_t i = 0; i + 1 < hex.size(); i += 2)
        out += static_cast<char>(std::stoi(hex.substr(i, 2), nullptr, 16));
    return out;
}

Code refusal(cbor::Reader& reader) {
    REQUIRE(reader.failed());
    return reader.error().code;
}

}  // namespace

TEST_CASE("cbor: unsigned integers are written and read as in RFC 8949 appendix A") {
    const std::pair<std::uint64_t, const char*> kRows[] = {{0, "00"},
                                                           {1, "01"},
                                                           {10, "0a"},
                                                           {23, "17"},
                                                           {24, "1818"},
                                                           {25, "1819"},
                                                           {100, "1864"},
                                                           {1000, "1903e8"},
                                                           {1000000, "1a000f4240"},
                                                           {1000000000000, "1b000000e8d4a51000"},
                                                           {UINT64_MAX, "1bffffffffffffffff"}};
    for (const auto& [value, hex] : kRows) {
        cbor::Writer writer;
        writer.integer(value);
        CHECK(writer.bytes() == bytes_of(hex));
        cbor::Reader reader(writer.bytes());
        CHECK(reader.integer() == value);
        CHECK(reader.at_end());
        CHECK_FALSE(reader.failed());
    }
}

TEST_CASE("cbor: texts are written and read as in RFC 8949 appendix A") {
    const std::pair<const char*, const char*> kRows[] = {{"", "60"},
                                                         {"a", "6161"},
                                                         {"IETF", "6449455446"},
                                                         {"\"\\", "62225c"},
                                                         {"\xC3\xBC", "62c3bc"},
                                                         {"\xE6\xB0\xB4", "63e6b0b4"},
                                                         {"\xF0\x90\x85\x91", "64f0908591"}};
    for (const auto& [text, hex] : kRows) {
        cbor::Writer writer;
        writer.text(text);
        CHECK(writer.bytes() == bytes_of(hex));
        cbor::Reader reader(writer.bytes());
        CHECK(reader.next_is_text());
        CHECK(reader.text(80) == text);
        CHECK(reader.at_end());
    }
}

TEST_CASE("cbor: arrays are written and read as in RFC 8949 appendix A") {
    cbor::Writer writer;
    writer.array(3);  // [1, [2, 3], [4, 5]]
    writer.integer(1);
    writer.array(2);
    writer.integer(2);
    writer.integer(3);
    writer.array(2);
    writer.integer(4);
    writer.integer(5);
    CHECK(writer.bytes() == bytes_of("8301820203820405"));
    cbor::Reader reader(writer.bytes());
    CHECK(reader.array(10) == 3);
    CHECK(reader.integer() == 1);
    CHECK(reader.array(10) == 2);

    cbor::Writer long_one;  // [1, 2, … 25]
    long_one.array(25);
    for (std::uint64_t i = 1; i <= 25; ++i)
        long_one.integer(i);
    CHECK(long_one.bytes() == bytes_of("98190102030405060708090a0b0c0d0e0f101112131415161718181819"));

    const std::string none = bytes_of("80");
    cbor::Reader empty(none);
    CHECK(empty.array(0) == 0);
    CHECK(empty.at_end());
}

TEST_CASE("cbor: the other kinds of RFC 8949 appendix A are refused, whatever is asked for") {
    const char* kOthers[] = {"20",
                             "29",
                             "3863",
                             "3903e7",
                             "f90000",
                             "f93c00",
                             "fb3ff199999999999a",
                             "fa47c35000",
                             "f4",
                             "f5",
                             "f6",
                             "f7",
                             "40",
                             "4401020304",
                             "a0",
                             "a201020304",
                             "a26161016162820203",
                             "c074323031332d30332d32315432303a30343a30305a",
                             "c11a514b67b0",
                             "d74401020304",
                             "1c",
                             "1e"};
    for (const char* hex : kOthers) {
        INFO("hex: ", std::string(hex));
        const std::string bytes = bytes_of(hex);
        cbor::Reader integer(bytes), text(bytes), array(bytes);
        integer.integer();
        text.text(100);
        array.array(100);
        CHECK(refusal(integer) == Code::link_content);
        CHECK(refusal(text) == Code::link_content);
        CHECK(refusal(array) == Code::link_content);
    }
}

TEST_CASE("cbor: only shortest heads and told lengths are read (RFC 8949 section 4.2.1)") {
    for (const char* hex : {"1800", "1817", "190018", "1900ff", "1a0000ffff", "1b00000000ffffffff", "1f"}) {
        INFO("hex: ", std::string(hex));
        const std::string bytes = bytes_of(hex);
        cbor::Reader reader(bytes);
        reader.integer();
        CHECK(refusal(reader) == Code::link_not_canonical);
    }
    for (const char* hex : {"7801"
                            "61",
                            "7f6161ff"}) {
        const std::string bytes = bytes_of(hex);
        cbor::Reader reader(bytes);
        reader.text(80);
        CHECK(refusal(reader) == Code::link_not_canonical);
    }
    for (const char* hex : {"980101", "9f01ff"}) {
        const std::string bytes = bytes_of(hex);
        cbor::Reader reader(bytes);
        reader.array(80);
        CHECK(refusal(reader) == Code::link_not_canonical);
    }
}

TEST_CASE("cbor: what ends too early is called truncated") {
    for (const char* hex : {"", "18", "19ff", "1affffff", "1bffffffffffffff"}) {
        const std::string bytes = bytes_of(hex);
        cbor::Reader reader(bytes);
        reader.integer();
        CHECK(refusal(reader) == Code::link_truncated);
    }
    const std::string text = bytes_of("6449455"), array = bytes_of("8301");
    cbor::Reader short_text(text), short_array(array);
    short_text.text(80);
    short_array.array(80);
    CHECK(refusal(short_text) == Code::link_truncated);
    CHECK(refusal(short_array) == Code::link_truncated);
}

TEST_CASE("cbor: a length over the bound is refused before anything is taken") {
    const std::string text = bytes_of("7bffffffffffffffff61"), array = bytes_of("9bffffffffffffffff01");
    cbor::Reader long_text(text), long_array(array);
    long_text.text(80);
    long_array.array(100);
    CHECK(refusal(long_text) == Code::link_content);
    CHECK(refusal(long_array) == Code::link_content);
}

TEST_CASE("cbor: texts that are not UTF-8 are refused") {
    // An overlong slash, half a surrogate pair, beyond U+10FFFF, a lone tail, a tail missing.
    for (const char* hex : {"62c0af", "63eda080", "64f4908080", "6180", "61c3"}) {
        INFO("hex: ", std::string(hex));
        const std::string bytes = bytes_of(hex);
        cbor::Reader reader(bytes);
        reader.text(80);
        CHECK(refusal(reader) == Code::link_content);
    }
}

TEST_CASE("cbor: after the first failure everything reads as nothing and the failure stays") {
    const std::string bytes = bytes_of("f60102");
    cbor::Reader reader(bytes);
    CHECK(reader.integer() == 0);
    const result::Error first = reader.error();
    CHECK(first.place == "byte 1");
    CHECK(reader.integer() == 0);
    CHECK(reader.text(80).empty());
    CHECK(reader.array(80) == 0);
    CHECK_FALSE(reader.next_is_text());
    CHECK(reader.error() == first);
}

TEST_CASE("cbor: random integers take the fewest bytes and come back") {
    chance::Generator chance(8949);
    for (int round = 0; round < 5000; ++round) {
        const std::uint64_t value = chance.next() >> chance.below(64);
        cbor::Writer writer;
        writer.integer(value);
        const std::size_t expected = value < 24            ? 1
                                     : value < 0x100       ? 2
                                     : value < 0x10000     ? 3
                                     : value < 0x100000000 ? 5
                                                           : 9;
        CHECK(writer.bytes().size() == expected);
        cbor::Reader reader(writer.bytes());
        CHECK(reader.integer() == value);
    }
}

}  // namespace test_cbor
