// QR codes read back by another program (zbar), as modules and as the picture that papers hold.
#include <sstream>
#include <string>

#include "doctest/doctest.h"
#include "engine/documents_paper.h"
#include "engine/qr.h"
#include "engine/share_code.h"
#include "shipped.h"
#include "zbar.h"

namespace test_qr {

namespace {

const std::string kAddress = "https://hollow-lane.example/tarebench/";

std::string letters(std::size_t bytes) {
    std::string text;
    for (unsigned n = 1; text.size() < bytes; n = n * 75 % 65537)
        text += "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"[n % 64];
    return text;
}

// Back from the lines of a paper's picture to modules.
qr::Code drawn(const std::string& html) {
    const auto after = [&](const std::string& what) { return html.find(what) + what.size(); };
    qr::Code code;
    code.side =
        std::stoi(html.substr(html.find(' ', html.find(' ', after("viewbox=\"")) + 1))) - 2 * qr::kQuiet;
    code.dark.resize(static_cast<std::size_t>(code.side * code.side));
    std::istringstream path(html.substr(after(" d=\"")));
    int x = 0, y = 0;
    for (char deed = 0; path >> deed && deed != '"';) {
        int across = 0, down = 0;
        path >> across;
        if (deed != 'h') path >> down;
        if (deed == 'M') x = across, y = down;
        if (deed == 'm') x += across, y += down;
        for (; deed == 'h' && across > 0; --across)
            code.dark[static_cast<std::size_t>(y * code.side + x++)] = true;
    }
    return code;
}

}  // namespace

TEST_CASE("qr: a text comes back from its code") {
    const auto code = qr::of("https://hollow-lane.example/#AbC-_123");
    REQUIRE(code);
    CHECK(code->side == 29);  // version 3 takes 42 bytes
    CHECK(zbar::read(*code) == "https://hollow-lane.example/#AbC-_123");
}

TEST_CASE("qr: the version is the smallest that takes it, and beyond version 25 there is none") {
    // ISO/IEC 18004, table 7, level M, bytes: versions 1, 10, 20, 25.
    CHECK(qr::of(letters(14))->side == 21);
    CHECK(qr::of(letters(15))->side == 25);
    CHECK(qr::of(letters(213))->side == 57);
    CHECK(qr::of(letters(214))->side == 61);
    CHECK(qr::of(letters(qr::kEasyBytes))->side == 97);
    CHECK(qr::of(letters(qr::kEasyBytes + 1))->side == 101);
    CHECK(qr::of(letters(qr::kMostBytes))->side == 117);
    CHECK_FALSE(qr::of(letters(qr::kMostBytes + 1)));
    CHECK_FALSE(qr::of(letters(1'000'000)));
    CHECK_FALSE(qr::of(""));
}

TEST_CASE("qr: the longest text is read back too, and one that is no letters") {
    CHECK(zbar::read(*qr::of(letters(qr::kMostBytes))) == letters(qr::kMostBytes));
    const std::string odd = "</script>'\"&<>\xE2\x80\xAE \xD7\x90";
    CHECK(zbar::read(*qr::of(odd)) == odd);
}

TEST_CASE("qr: every shipped recipe's link comes back from its code, and the recipe from the link") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const auto coded = share_code::of(recipe, shipped::presets().catalogue, kAddress);
        REQUIRE(coded);
        MESSAGE(stem, ": ", coded->address.size(), " bytes, ", coded->code.side, " modules, extent ",
                static_cast<int>(coded->extent));
        const auto read = zbar::read(coded->code);
        REQUIRE(read);
        CHECK(*read == coded->address);
        CHECK(read->rfind(kAddress + "#", 0) == 0);
        const auto back = share::read(*read, shipped::presets().catalogue);
        REQUIRE(back);
        CHECK(*back == share::cut_to(coded->extent, recipe));
    }
}

TEST_CASE("qr: the picture in a paper shows the same modules") {
    for (const std::size_t bytes : {10u, 100u, 997u}) {
        const qr::Code code = *qr::of(letters(bytes));
        markup::Writer html;
        documents_paper::code(html, code, "Code");
        const qr::Code back = drawn(html.finish());
        CHECK(back == code);
        CHECK(zbar::read(back) == letters(bytes));
    }
}

TEST_CASE("qr: what does not fit is left out of the code, notes before steps, and then there is none") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    const auto extent = [&] {
        const auto coded = share_code::of(recipe, shipped::presets().catalogue, kAddress);
        return coded ? static_cast<int>(coded->extent) : -1;
    };
    recipe.notes = letters(3000);
    CHECK(extent() != 0);
    recipe.steps = {{"", letters(900), {}}};
    CHECK(extent() == 2);
    while (recipe.formula.lines.size() < formula::kMostLines) {
        formula::Line line;
        line.name = letters(60) + std::to_string(recipe.formula.lines.size());
        line.phase = "A";
        recipe.formula.lines.insert(recipe.formula.lines.begin(), line);
    }
    CHECK(extent() == -1);
}

}  // namespace test_qr
