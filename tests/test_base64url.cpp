// base64url against the vectors of RFC 4648, and what the strict reading refuses.
#include <string>

#include "doctest/doctest.h"
#include "engine/base64url.h"
#include "engine/chance.h"

namespace test_base64url {

using result::Code;

TEST_CASE("base64url: the vectors of RFC 4648 section 10, without padding") {
    const std::pair<const char*, const char*> kRows[] = {
        {"", ""},           {"f", "Zg"},          {"fo", "Zm8"},         {"foo", "Zm9v"},
        {"foob", "Zm9vYg"}, {"fooba", "Zm9vYmE"}, {"foobar", "Zm9vYmFy"}};
    for (const auto& [plain, letters] : kRows) {
        CHECK(base64url::encode(plain) == letters);
        CHECK(base64url::decode(letters).value() == plain);
    }
}

TEST_CASE("base64url: the example of RFC 4648 section 9 in the letters of section 5") {
    CHECK(base64url::encode("\x14\xFB\x9C\x03\xD9\x7E") == "FPucA9l-");
    CHECK(base64url::encode("\xFB\xFF\xFE") == "-__-");
    CHECK(base64url::decode("-__-").value() == "\xFB\xFF\xFE");
}

TEST_CASE("base64url: letters of another alphabet are refused with their place") {
    for (const char* text : {"Zm9+", "Zm9/", "Zm9=", "Zm9 ", "Zm9\n", "Zm9\xC3"}) {
        INFO("text: ", std::string(text));
        CHECK(base64url::decode(text).error() == result::Error{Code::link_altered, "character 4", ""});
    }
    CHECK(base64url::decode(std::string("Z\0m9", 4)).error().place == "character 2");
}

TEST_CASE("base64url: a single letter over is no whole byte") {
    CHECK(base64url::decode("Z").error().code == Code::link_truncated);
    CHECK(base64url::decode("Zm9vY").error().code == Code::link_truncated);
}

TEST_CASE("base64url: stray bits in the last letter are refused, so one text has one meaning") {
    CHECK(base64url::decode("Zg").ok());
    CHECK(base64url::decode("Zh").error() == result::Error{Code::link_not_canonical, "character 2", ""});
    CHECK(base64url::decode("Zm9").error().code == Code::link_not_canonical);
}

TEST_CASE("base64url: random bytes come back") {
    chance::Generator chance(4648);
    for (int round = 0; round < 2000; ++round) {
        std::string bytes(chance.below(40), '\0');
        for (char& byte : bytes)
            byte = static_cast<char>(chance.below(256));
        const std::string letters = base64url::encode(bytes);
        CHECK(letters.size() == (bytes.size() * 8 + 5) / 6);
        CHECK(base64url::decode(letters).value() == bytes);
    }
}

}  // namespace test_base64url
