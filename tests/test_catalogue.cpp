// Finding things in a catalogue, on a small one made here; the shipped one is in test_presets.cpp.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/catalogue.h"

namespace test_catalogue {

namespace {

catalogue::Ingredient make(const char* id, std::uint32_t number, const char* name, const char* inci_eu) {
    catalogue::Ingredient one;
    one.id = id;
    one.number = number;
    one.name = name;
    one.inci["eu"] = inci_eu;
    return one;
}

catalogue::Catalogue shelf() {
    catalogue::Catalogue shelf;
    shelf.ingredients = {make("almond", 10, "Sweet almond oil", "Prunus Amygdalus Dulcis Oil"),
                         make("beeswax_yellow", 1, "Beeswax, yellow", "Cera Alba"),
                         make("calendula", 90, "Souci à l'huile", "Calendula Officinalis Flower Extract"),
                         make("candelilla", 3, "Candelilla wax", "Euphorbia Cerifera Cera"),
                         make("water", 0, "Water, distilled", "Aqua")};
    catalogue::Container tin;
    tin.id = "tin_30ml";
    tin.number = 11;
    shelf.containers = {tin};
    catalogue::Product salve;
    salve.id = "salve";
    salve.number = 3;
    shelf.products = {salve};
    shelf.sources = {{"a_paper", "A paper", "", "", "", source::Standing::document},
                     {"memory", "Recalled", "", "", "", source::Standing::memory}};
    return shelf;
}

std::vector<std::string> ids(const std::vector<const catalogue::Ingredient*>& found) {
    std::vector<std::string> ids;
    for (const auto* one : found)
        ids.push_back(one->id);
    return ids;
}

using Ids = std::vector<std::string>;

}  // namespace

TEST_CASE("an ingredient is found by its id and by its link number") {
    const catalogue::Catalogue all = shelf();
    REQUIRE(catalogue::find_ingredient(all, "beeswax_yellow") != nullptr);
    CHECK(catalogue::find_ingredient(all, "beeswax_yellow")->name == "Beeswax, yellow");
    CHECK(catalogue::find_ingredient(all, 3u)->id == "candelilla");
}

TEST_CASE("link number 0 is water, and a number nobody has finds nothing") {
    const catalogue::Catalogue all = shelf();
    CHECK(catalogue::find_ingredient(all, 0u)->id == "water");
    CHECK(catalogue::find_ingredient(all, 77u) == nullptr);
}

TEST_CASE("an id that is near but not the same finds nothing") {
    const catalogue::Catalogue all = shelf();
    for (const char* id : {"", "beeswax", "beeswax_yellow ", "Beeswax_yellow", "zzz"})
        CHECK(catalogue::find_ingredient(all, id) == nullptr);
    CHECK(catalogue::find_ingredient(catalogue::Catalogue{}, "water") == nullptr);
}

TEST_CASE("containers, product kinds and sources are found the same way") {
    const catalogue::Catalogue all = shelf();
    CHECK(catalogue::find_container(all, "tin_30ml") == catalogue::find_container(all, 11u));
    CHECK(catalogue::find_container(all, "tin_31ml") == nullptr);
    CHECK(catalogue::find_product(all, "salve") == catalogue::find_product(all, 3u));
    CHECK(catalogue::find_product(all, 4u) == nullptr);
    CHECK(catalogue::find_source(all, "memory")->title == "Recalled");
    CHECK(catalogue::find_source(all, "hearsay") == nullptr);
}

TEST_CASE("search puts the whole name first, then starts, then starts of words, then the inside of words") {
    catalogue::Catalogue all = shelf();
    all.ingredients = {make("a", 1, "Soapwort", "X"), make("b", 2, "Yellow wort", "X"),
                       make("c", 3, "Wort oil", "X"), make("d", 4, "Wort", "X")};
    CHECK(ids(catalogue::search(all, "wort", 9)) == Ids{"d", "c", "b", "a"});
}

TEST_CASE("search reads name, id and INCI name without regard to ASCII case or spaces around") {
    const catalogue::Catalogue all = shelf();
    CHECK(ids(catalogue::search(all, " CERA ", 9)) == Ids{"beeswax_yellow", "candelilla"});
    CHECK(ids(catalogue::search(all, "aqua", 9)) == Ids{"water"});
    CHECK(ids(catalogue::search(all, "beeswax_y", 9)) == Ids{"beeswax_yellow"});
}

TEST_CASE("search finds an oil by its plant, which the declaration may still call by an older name") {
    catalogue::Catalogue all = shelf();
    all.ingredients[3].botanical = "Salvia rosmarinus";
    CHECK(ids(catalogue::search(all, "salvia ros", 9)) == Ids{"candelilla"});
    CHECK(ids(catalogue::search(all, "rosmarinus", 9)) == Ids{"candelilla"});
}

TEST_CASE("search takes letters beyond ASCII as parts of words") {
    const catalogue::Catalogue all = shelf();
    CHECK(ids(catalogue::search(all, "à l", 9)) == Ids{"calendula"});
    CHECK(catalogue::search(all, "ß", 9).empty());
}

TEST_CASE("search for nothing offers everything, and no more than was asked for") {
    const catalogue::Catalogue all = shelf();
    CHECK(catalogue::search(all, "", 99).size() == 5);
    CHECK(ids(catalogue::search(all, "  ", 2)) == Ids{"almond", "beeswax_yellow"});
    CHECK(catalogue::search(all, "e", 0).empty());
    CHECK(catalogue::search(all, "petroleum", 9).empty());
}

TEST_CASE("own ingredients are laid over the shipped ones and leave them as they are") {
    const catalogue::Catalogue all = shelf();
    const catalogue::Ingredient infused = make("calendula_in_almond", 5, "Calendula in almond oil", "X");
    const catalogue::Ingredient mine = make("almond", 10, "Almond from our own trees", "X");
    const catalogue::Catalogue laid = catalogue::with_own(all, {infused, mine});

    REQUIRE(laid.ingredients.size() == 6);
    CHECK(laid.ingredients[2].id == "calendula");
    CHECK(catalogue::find_ingredient(laid, "calendula_in_almond")->own);
    CHECK(catalogue::find_ingredient(laid, "almond")->name == "Almond from our own trees");
    CHECK(catalogue::find_ingredient(all, "almond")->name == "Sweet almond oil");
}

TEST_CASE("an own ingredient has no link number, so it never answers to one") {
    const catalogue::Catalogue laid = catalogue::with_own(shelf(), {make("aaa", 3, "A wax of ours", "X")});
    CHECK(catalogue::find_ingredient(laid, 0u)->id == "water");
    CHECK(catalogue::find_ingredient(laid, 3u)->id == "candelilla");
}

}  // namespace test_catalogue
