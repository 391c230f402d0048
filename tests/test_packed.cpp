// The shipped presets as the program carries them: packed when it is built, out of the JSON that read_presets
// judged.
#include <string>

#include "doctest/doctest.h"
#include "engine/checksum.h"
#include "engine/store.h"
#include "presets_data.h"
#include "shipped.h"

namespace test_packed {

namespace {

// `body` under the checksum that makes it look whole.
std::string sealed(const std::string& body) {
    const std::uint32_t sum = checksum::crc32(body);
    std::string bytes;
    for (const int shift : {24, 16, 8, 0})
        bytes += static_cast<char>(sum >> shift & 0xFFu);
    return bytes + body;
}

}  // namespace

TEST_CASE("the program carries exactly what stands in the presets' JSON") {
    const auto judged = store::read_presets(shipped::files());
    const auto carried = store::unpack_presets(presets_data::kPacked);
    REQUIRE(judged);
    REQUIRE(carried);
    CHECK(carried->catalogue == judged->catalogue);
    CHECK(carried->words == judged->words);
    CHECK(carried->recipes == judged->recipes);
}

TEST_CASE("packed presets are the same bytes whoever packs them") {
    CHECK(store::pack_presets(shipped::presets()) == presets_data::kPacked);
}

TEST_CASE("figures of any size and sign, and what is not known, come back as they were") {
    store::Presets presets;
    catalogue::Ingredient one;
    one.id = "smallest";
    one.number = 0xFFFFFFFFu;
    one.melting_c = {{{INT64_MIN, INT64_MAX}, "memory", source::Standing::memory}};
    one.iodine_value = {{{-1, 1}, "", source::Standing::document}};
    one.density = {{{{9640}, std::nullopt}, "memory", source::Standing::estimate}};
    one.vegan = false;
    presets.catalogue.ingredients = {one, {}};
    const std::string bytes = store::pack_presets(presets);
    const auto back = store::unpack_presets(bytes);
    REQUIRE(back);
    CHECK(*back == presets);
}

TEST_CASE("packed presets that were cut off or changed anywhere are refused") {
    const std::string whole(presets_data::kPacked);
    for (const std::size_t kept :
         {std::size_t{0}, std::size_t{3}, std::size_t{4}, std::size_t{5}, whole.size() / 2, whole.size() - 1})
        CHECK(store::unpack_presets(whole.substr(0, kept)).error().code == result::Code::checksum_wrong);
    for (std::size_t at = 0; at < whole.size(); at += 997) {
        std::string changed = whole;
        changed[at] = static_cast<char>(changed[at] ^ 1);
        CHECK_MESSAGE(!store::unpack_presets(changed), at);
    }
    CHECK_FALSE(store::unpack_presets(whole + '\0'));
}

TEST_CASE("packed presets of another form, or that end early under a checksum that fits, are refused") {
    const std::string body = store::pack_presets({}).substr(4);
    REQUIRE(store::unpack_presets(sealed(body)));
    CHECK_FALSE(store::unpack_presets(sealed('\3' + body.substr(1))));
    CHECK_FALSE(store::unpack_presets(sealed(body + body)));
    const std::string whole = std::string(presets_data::kPacked).substr(4);
    for (std::size_t kept = 0; kept < whole.size(); kept += kept < 100 ? 1 : 9973)
        CHECK_MESSAGE(!store::unpack_presets(sealed(whole.substr(0, kept))), kept);
    for (std::size_t at = 1; at < whole.size(); at += 9973) {  // a letter or a figure may come out as another
        std::string changed = whole;
        changed[at] = static_cast<char>(0xFF);
        const std::string bytes = sealed(changed);
        const auto read = store::unpack_presets(bytes);
        CHECK_MESSAGE((!read || !(*read == shipped::presets())), at);
    }
}

}  // namespace test_packed
