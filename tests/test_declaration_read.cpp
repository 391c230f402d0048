// A finished list read back: headings, brackets, water in several languages, slips, "may contain", and what
// is no list at all.
#include <algorithm>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/declaration.h"
#include "engine/declaration_read.h"
#include "shipped.h"
#include "support.h"

namespace test_declaration_read {

using declaration_read::Item;
using declaration_read::Reading;
using market::Market;
using Names = std::vector<std::string>;

namespace {

const catalogue::Catalogue& shelf() {
    return shipped::presets().catalogue;
}

const pasted_names::Matcher& matcher() {
    static const pasted_names::Matcher made(shelf());
    return made;
}

Reading read(std::string_view text) {
    return declaration_read::read(text, matcher());
}

Names written(const Reading& reading) {
    Names names;
    for (const Item& item : reading.items)
        names.push_back(item.written);
    return names;
}

// Whether the item is this ingredient, or offered among a few that share the name.
bool means(const Item& item, const std::string& id) {
    return item.ingredient == id ||
           std::find(item.offered.begin(), item.offered.end(), id) != item.offered.end();
}

}  // namespace

TEST_CASE("a list is read in its order, from the words that stand before it") {
    const Reading reading = read(
        "INGREDIENTS: Butyrospermum Parkii (Shea) Butter, Cera Alba, Ricinus Communis Seed Oil, Tocopherol.");
    CHECK(reading.heading == "INGREDIENTS");
    REQUIRE(reading.items.size() == 4);
    CHECK(reading.items[0].ingredient == "shea");
    CHECK(reading.items[0].exact);
    CHECK(reading.items[1].ingredient.empty());  // yellow or white
    CHECK(reading.items[1].exact);
    CHECK(means(reading.items[1], "beeswax_yellow"));
    CHECK(means(reading.items[1], "beeswax_white"));
    CHECK(reading.items[2].ingredient == "castor");
    CHECK(reading.items[3].ingredient == "tocopherol");
}

TEST_CASE("headings of several languages go, and a list without one is read as well") {
    for (const char* heading :
         {"Ingredients: ", "Ingr\xC3\xA9\x64ients : ", "Ingredients / Ingr\xC3\xA9\x64ients: ", "INCI: ",
          "Zutaten: ", "Inhaltsstoffe (INCI): ", "Ingredienti: ", "Ingredientes: ", "",
          "Balm for winter. Ingredients: "})
        CHECK((written(read(std::string(heading) + "Aqua, Glycerin")) == Names{"Aqua", "Glycerin"}));
}

TEST_CASE("water is known in several languages and under all of its names at once") {
    for (const char* water :
         {"Water", "Aqua", "Eau", "Wasser", "Acqua", "Agua", "AQUA", "Aqua (Water)", "Water (Aqua)",
          "Aqua/Water/Eau", "Aqua / Water / Eau", "Purified water", "Aqua (Water, Eau)"}) {
        const Reading reading = read(std::string("Glycerin, ") + water + ", Tocopherol");
        CAPTURE(water);
        REQUIRE(reading.items.size() >= 3);
        CHECK(reading.items[1].ingredient == "water");
    }
}

TEST_CASE("brackets within a name stay, brackets behind parfum are its parts") {
    const Reading reading = read(
        "Helianthus Annuus (Sunflower) Seed Oil, Parfum (Limonene, Linalool), "
        "Simmondsia Chinensis (Jojoba) Seed Oil");
    CHECK(written(reading) == Names{"Helianthus Annuus (Sunflower) Seed Oil", "Parfum", "Limonene",
                                    "Linalool", "Simmondsia Chinensis (Jojoba) Seed Oil"});
    CHECK_FALSE(reading.items[1].within);
    CHECK(reading.items[2].within);
    CHECK(reading.items[3].within);
    CHECK(reading.items[4].ingredient == "jojoba");
}

TEST_CASE("what only some shades hold stands behind a mark") {
    for (const char* mark : {"may contain: ", "May contain ", "+/- ", "\xC2\xB1 ", "peut contenir : ",
                             "may contain/peut contenir ", "Kann enthalten: ", "+/- may contain: "}) {
        CAPTURE(mark);
        for (const bool bracket : {false, true}) {
            const std::string text = std::string("Cera Alba, Mica") + (bracket ? " [" : ", ") + mark +
                                     "CI 77891, CI 77947" + (bracket ? "]" : "");
            const Reading reading = read(text);
            CHECK(written(reading) == Names{"Cera Alba", "Mica", "CI 77891", "CI 77947"});
            REQUIRE(reading.items.size() == 4);
            CHECK_FALSE(reading.items[1].may_contain);
            CHECK(reading.items[2].may_contain);
            CHECK(reading.items[3].may_contain);
            CHECK(reading.items[2].ingredient == "titanium_dioxide");
        }
    }
}

TEST_CASE("a slip of a letter is offered, never taken") {
    const Reading reading = read("Butyrospermum Parkii Buter, Tocoferol, Glycerrin");
    REQUIRE(reading.items.size() == 3);
    CHECK(reading.items[0].ingredient.empty());
    CHECK(means(reading.items[0], "shea"));
    CHECK(reading.items[2].ingredient.empty());
    CHECK(means(reading.items[2], "glycerin"));
    CHECK_FALSE(reading.items[2].exact);
}

TEST_CASE("marks, footnotes and shares are taken off a name") {
    const Reading reading = read(
        "Olea Europaea Fruit Oil*, Shea Butter 20%, Zinc Oxide (nano), Coconut oil (12,5 %)\n"
        "* from organic farming, certified");
    CHECK(reading.items.at(0).ingredient == "olive");
    CHECK(reading.items.at(0).written == "Olea Europaea Fruit Oil");
    CHECK(reading.items.at(1).ingredient == "shea");
    CHECK(reading.items.at(1).percent == quantity::percent(20));
    CHECK(reading.items.at(2).nano);
    CHECK(reading.items.at(2).ingredient == "zinc_oxide");
    CHECK(reading.items.at(3).percent == quantity::Percent{125'000});
    CHECK(reading.items.at(3).ingredient == "coconut");
}

TEST_CASE("lines part names in a list without commas, and wrap them in one with") {
    CHECK(written(read("Ingredients:\nAqua\nGlycerin\nTocopherol")) ==
          Names{"Aqua", "Glycerin", "Tocopherol"});
    CHECK(written(read("Aqua, Butyrospermum\nParkii Butter,\nTocopherol")) ==
          Names{"Aqua", "Butyrospermum Parkii Butter", "Tocopherol"});
    CHECK(written(read("Aqua; Glycerin | Tocopherol \xC2\xB7 Squalane")) ==
          Names{"Aqua", "Glycerin", "Tocopherol", "Squalane"});
    CHECK(written(read("1,2-Hexanediol, Caprylic/Capric Triglyceride")) ==
          Names{"1,2-Hexanediol", "Caprylic/Capric Triglyceride"});
}

TEST_CASE("a declaration that is read back names the same in the same order, in every market") {
    chance::Generator chance(4);
    for (int i = 0; i < 120; ++i) {
        const formula::Formula formula = support::random_formula(chance, shelf());
        const auto& [market, id] = market::kAll[chance.below(market::kAll.size())];
        declaration::Wish wish;
        wish.market = market;
        if (chance.below(3) == 0) wish.colours = {"mica", "titanium_dioxide"};
        if (chance.below(3) == 0) wish.nano = {"zinc_oxide"};
        if (chance.below(4) == 0) wish.may_contain = {"mica"};
        const auto made = declaration::of(formula, shelf(), {}, wish);
        if (!made || !declaration::complete(*made)) continue;
        const std::string text = declaration::text(*made);
        CAPTURE(text);
        const Reading back = read(text);
        REQUIRE(back.items.size() == made->items.size());
        for (std::size_t at = 0; at < back.items.size(); ++at) {
            std::string name = made->items[at].name;  // its apostrophe is read as the straight one
            if (const auto curly = name.find("\xE2\x80\x99"); curly != std::string::npos)
                name.replace(curly, 3, "'");
            CHECK(back.items[at].written == name);
            CHECK(back.items[at].nano == (made->items[at].nano && market::as_in_europe(market)));
            for (const std::string& from : made->items[at].from)
                if (declaration::names_of(*catalogue::find_ingredient(shelf(), from), shelf(), market)
                        .names.size() == 1)
                    CHECK(means(back.items[at], from));
        }
    }
}

TEST_CASE("what is no list, or meant to do harm, is read within bounds and nothing breaks") {
    CHECK(read("").items.empty());
    CHECK(read(", , ; ,,").items.empty());
    CHECK(read(std::string(100'000, '(')).items.size() <= declaration_read::kMostItems);
    CHECK(read(std::string(100'000, ',')).items.empty());
    std::string nested;
    for (int i = 0; i < 3000; ++i)
        nested += "(+/- a, ";
    CHECK(read(nested).items.size() <= declaration_read::kMostItems);
    std::string many;
    for (int i = 0; i < 2000; ++i)
        many += "Aqua,";
    const Reading cut = read(many);
    CHECK(cut.items.size() == declaration_read::kMostItems);
    CHECK(cut.cut);
    CHECK(read(std::string(50'000, 'a')).cut);
    CHECK(read(std::string(300, 'a')).items.empty());
    CHECK(read(std::string(300, 'a')).aside.size() == 1);
    CHECK(read("Aqua\xFF\xC0, Gly\0cerin").items.size() <= 2);
    chance::Generator chance(8);
    static constexpr std::string_view kBits[] = {"Aqua",        ",",  "(", ")",      "[", "]",        "+/-",
                                                 " ",           "\n", "%", "20",     "*", "\xC2\xB1", "\xFF",
                                                 "may contain", ":",  "/", "(nano)", "."};
    for (int i = 0; i < 1500; ++i) {
        std::string text;
        for (std::uint64_t bits = chance.below(40); bits > 0; --bits)
            text += kBits[chance.below(std::size(kBits))];
        const Reading reading = read(text);
        for (const Item& item : reading.items)
            CHECK_FALSE(item.written.empty());
    }
}

}  // namespace test_declaration_read
