// Contrast of every pair of colours that the widgets put on one another, in all four palettes. Formula and
// limits: WCAG 2.2, definitions "relative luminance" and "contrast ratio"; success criteria 1.4.3
// (text, 4.5:1) and 1.4.11 (edges and marks, 3:1); where more contrast is wished for 1.4.6 (text, 7:1),
// and 4.5:1 for edges. What is disabled is left out, as it is there. Where the system forces its colours,
// every pair is one that the system means for one another.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <string>
#include <utility>

#include "doctest/doctest.h"
#include "web/theme.h"

namespace test_theme {

using theme::Colours;

namespace {

double luminance(std::uint32_t rgb) {
    const auto part = [&](int shift) {
        const double c = static_cast<double>(rgb >> shift & 255u) / 255;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(16) + 0.7152 * part(8) + 0.0722 * part(0);
}

double contrast(std::uint32_t a, std::uint32_t b) {
    const double one = luminance(a), other = luminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

std::uint32_t laid_over(std::uint32_t ground, std::uint32_t veil, double opacity) {
    std::uint32_t mixed = 0;
    for (const int shift : {16, 8, 0}) {
        const double low = ground >> shift & 255u, high = veil >> shift & 255u;
        mixed |= static_cast<std::uint32_t>(std::lround(low + (high - low) * opacity)) << shift;
    }
    return mixed;
}

struct Pair {
    const char* what;
    std::uint32_t Colours::*ink;
    std::uint32_t Colours::*ground;
};

constexpr Pair kTexts[] = {
    {"ink on paper", &Colours::ink, &Colours::paper},
    {"ink on card", &Colours::ink, &Colours::card},
    {"ink on caution_ground", &Colours::ink, &Colours::caution_ground},
    {"ink on stop_ground", &Colours::ink, &Colours::stop_ground},
    {"ink_soft on paper", &Colours::ink_soft, &Colours::paper},
    {"ink_soft on card", &Colours::ink_soft, &Colours::card},
    {"ink_soft on caution_ground", &Colours::ink_soft, &Colours::caution_ground},
    {"ink_soft on stop_ground", &Colours::ink_soft, &Colours::stop_ground},
    {"link on paper", &Colours::link, &Colours::paper},
    {"link on card", &Colours::link, &Colours::card},
    {"heading on paper", &Colours::heading, &Colours::paper},
    {"on_chosen on chosen", &Colours::on_chosen, &Colours::chosen},
    {"on_button on button", &Colours::on_button, &Colours::button},
    {"on_field on field", &Colours::on_field, &Colours::field},
    {"on_field_soft on field", &Colours::on_field_soft, &Colours::field},
    {"on_accent on accent", &Colours::on_accent, &Colours::accent},
    {"on_accent_soft on accent_soft", &Colours::on_accent_soft, &Colours::accent_soft},
    {"caution on paper", &Colours::caution, &Colours::paper},
    {"caution on card", &Colours::caution, &Colours::card},
    {"caution on caution_ground", &Colours::caution, &Colours::caution_ground},
    {"stop on paper", &Colours::stop, &Colours::paper},
    {"stop on card", &Colours::stop, &Colours::card},
    {"stop on stop_ground", &Colours::stop, &Colours::stop_ground},
    {"paper on ink", &Colours::paper, &Colours::ink},  // the message at the foot
};
constexpr Pair kEdges[] = {
    {"edge on paper", &Colours::edge, &Colours::paper},
    {"edge on card", &Colours::edge, &Colours::card},
    {"accent on paper", &Colours::accent, &Colours::paper},  // a filled button
    {"link on paper", &Colours::link, &Colours::paper},      // a field being edited, where one is
    {"link on card", &Colours::link, &Colours::card},
    {"accent on card", &Colours::accent, &Colours::card},
    {"accent on accent_soft", &Colours::accent, &Colours::accent_soft},  // the edge of what is chosen
    {"stop on card", &Colours::stop, &Colours::card},                    // a field that can't be read
};

template <class Check>
void in_all_palettes(Check check) {
    for (const bool dark : {false, true})
        for (const bool more : {false, true}) {
            CAPTURE(dark);
            CAPTURE(more);
            check(theme::palette(dark, more), more);
        }
}

}  // namespace

TEST_CASE("black on white has a contrast of 21, grey #777777 on white one of 4.48") {
    CHECK(contrast(0x000000, 0xFFFFFF) == doctest::Approx(21));
    CHECK(contrast(0xFFFFFF, 0x000000) == doctest::Approx(21));
    CHECK(contrast(0x123456, 0x123456) == doctest::Approx(1));
    CHECK(contrast(0x777777, 0xFFFFFF) == doctest::Approx(4.48).epsilon(0.002));
}

TEST_CASE("every text stands out from its ground by 4.5 to 1, by 7 to 1 where more is wished for") {
    in_all_palettes([](const Colours& c, bool more) {
        for (const Pair& pair : kTexts) {
            CAPTURE(pair.what);
            CHECK(contrast(c.*pair.ink, c.*pair.ground) >= (more ? 7 : 4.5));
        }
    });
}

TEST_CASE("every edge and mark stands out by 3 to 1, by 4.5 to 1 where more is wished for") {
    in_all_palettes([](const Colours& c, bool more) {
        for (const Pair& pair : kEdges) {
            CAPTURE(pair.what);
            CHECK(contrast(c.*pair.ink, c.*pair.ground) >= (more ? 4.5 : 3));
        }
        if (more) CHECK(contrast(c.hairline, c.paper) >= 4.5);
        if (more) CHECK(contrast(c.hairline, c.card) >= 4.5);
    });
}

TEST_CASE("words on a button stay readable while a mouse is over it") {
    constexpr double kVeil = 0.06;  // of ink, see widget_button.cpp
    in_all_palettes([](const Colours& c, bool) {
        const std::pair<std::uint32_t, std::uint32_t> buttons[] = {{c.on_accent, c.accent},
                                                                   {c.ink, c.card},
                                                                   {c.stop, c.card},
                                                                   {c.accent, c.paper},
                                                                   {c.on_accent_soft, c.accent_soft}};
        for (const auto& [ink, ground] : buttons) {
            CAPTURE(ink);
            CHECK(contrast(ink, laid_over(ground, c.ink, kVeil)) >= 4.5);
        }
    });
}

TEST_CASE("with more contrast no text or edge stands out less than without") {
    for (const bool dark : {false, true}) {
        const Colours plain = theme::palette(dark, false), more = theme::palette(dark, true);
        for (const Pair& pair : kTexts) {
            CAPTURE(pair.what);
            CHECK(contrast(more.*pair.ink, more.*pair.ground) >=
                  contrast(plain.*pair.ink, plain.*pair.ground));
        }
        CHECK(contrast(more.edge, more.paper) > contrast(plain.edge, plain.paper));
    }
}

TEST_CASE("stop and caution differ from the accent by more than their lightness") {
    // Colour is never alone, but where it is there it has to be another one: red leads in one, blue or green
    // in the other.
    in_all_palettes([](const Colours& c, bool) {
        const auto red = [](std::uint32_t rgb) { return rgb >> 16 & 255u; };
        const auto blue = [](std::uint32_t rgb) { return rgb & 255u; };
        CHECK(red(c.stop) > blue(c.stop));
        CHECK(red(c.caution) > blue(c.caution));
        CHECK(red(c.accent) < blue(c.accent));
    });
}

// Invented, each unlike the others: yellow on black, as some contrast themes are.
constexpr platform::SystemColours kSystem{0x000000, 0xFFFF00, 0x00FFFF, 0x101010, 0xFFFF10, 0xFFFF20,
                                          0x202020, 0xFFFF30, 0x0000A0, 0xFFFFFF, 0x00FF00};

TEST_CASE("where the system forces its colours, every ink is on the ground it is meant for") {
    using System = platform::SystemColours;
    using Meant = std::pair<std::uint32_t, std::uint32_t>;
    const System& s = kSystem;
    const Meant meant[] = {{s.canvas_text, s.canvas},      {s.link_text, s.canvas},
                           {s.button_text, s.button_face}, {s.field_text, s.field},
                           {s.canvas, s.canvas_text},  // the message at the foot
                           {s.highlight_text, s.highlight}};
    const Colours c = theme::palette(kSystem);
    for (const Pair& pair : kTexts) {
        CAPTURE(pair.what);
        const bool is_meant = std::find(std::begin(meant), std::end(meant),
                                        Meant(c.*pair.ink, c.*pair.ground)) != std::end(meant);
        CHECK(is_meant);
    }
    CHECK(c.edge == s.button_border);
    CHECK(c.faint == s.gray_text);
}

}  // namespace test_theme
