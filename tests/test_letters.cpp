// The letters' texture: what is handed over of it, a little at a time, is all that was drawn in it.
#include "web/letters.h"

#include <cstdint>
#include <string>
#include <vector>

#include "hand.h"

namespace test_letters {

using hand::FirstVisit;

namespace {

std::vector<unsigned char> drawn() {
    const ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    const auto size = static_cast<std::size_t>(atlas.TexWidth) * static_cast<std::size_t>(atlas.TexHeight);
    return {atlas.TexPixelsAlpha8, atlas.TexPixelsAlpha8 + size};
}

void lose_the_context() {
    platform::native::letters().clear();
    hand::push(platform::Kind::context_restored);
    hand::settle();
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "letters: a graphics card that has lost its texture is given all of it again") {
    lose_the_context();
    CHECK(platform::native::letters() == drawn());
}

TEST_CASE_FIXTURE(FirstVisit, "letters: what a screen has that none before it had is handed over with it") {
    lose_the_context();
    const std::vector<unsigned char> before = drawn();
    app::tell(app, "\u00c6\u00d8\u00c5 \u00fe\u00f0 \u0152 \u00bf\u00a1 \u2013 \u20ac");
    hand::push(platform::Kind::preferences);
    hand::settle();
    CHECK(drawn() != before);
    CHECK(platform::native::letters() == drawn());
}

TEST_CASE_FIXTURE(FirstVisit, "letters: a texture that had to become higher is handed over whole") {
    platform::native::window().text_scale = 2;
    platform::native::window().pixel_ratio = 3;
    hand::push(platform::Kind::preferences);
    hand::settle();
    const int height = ImGui::GetIO().Fonts->TexHeight;
    std::string many;
    for (std::uint32_t letter = 0xC0; letter <= 0x17F; ++letter)
        many += {static_cast<char>(0xC0 | letter >> 6), static_cast<char>(0x80 | (letter & 0x3F))};
    app::tell(app, many);
    hand::push(platform::Kind::preferences);
    hand::settle();
    CHECK(ImGui::GetIO().Fonts->TexHeight > height);
    CHECK(platform::native::letters() == drawn());
}

}  // namespace test_letters
