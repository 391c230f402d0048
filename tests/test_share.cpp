// Links: everything of a recipe goes there and back, a usual one is short, and what is not whole is refused
// with the reason that helps. Longer runs over random recipes are in test_round_trips.cpp.
#include <sstream>
#include <string>

#include "doctest/doctest.h"
#include "engine/base64url.h"
#include "engine/share.h"
#include "sealed_link.h"
#include "shipped.h"
#include "support.h"

namespace test_share {

using result::Code;
using sealed_link::link_of;
using sealed_link::link_with;
using sealed_link::sealed;

namespace {

const catalogue::Catalogue& shelf() {
    static const catalogue::Catalogue made = support::shelf();
    return made;
}

workspace::Recipe salve() {
    workspace::Recipe recipe;
    recipe.title = "Potting-shed hand salve";
    recipe.formula = support::formula_of(
        {support::line("wax", 160000), support::line("shea", 120000), support::rest("sunflower", "B")});
    recipe.batch = support::containers({{"tin", 8, quantity::Mass{250000}, {}}}, 100);
    return recipe;
}

Code refusal(std::string_view link) {
    const auto read = share::read(link, shelf());
    REQUIRE_FALSE(read.ok());
    return read.error().code;
}

// Twelve lines with the dearest numbers a link may have to carry: link numbers of two bytes, percents of two
// decimals over 2.55, a rest line, two phases with both temperatures, a title of 20 letters, containers,
// loss, division.
struct Worst {
    catalogue::Catalogue catalogue;
    workspace::Recipe recipe;
};
Worst worst(std::uint32_t first_number, std::uint32_t container_number, std::int64_t count) {
    Worst made;
    made.recipe.title = "Frost-line butter 20";
    made.recipe.product = "bath_oil";
    catalogue::Product product;
    product.id = "bath_oil";
    product.number = 17;
    made.catalogue.products = {product};
    made.catalogue.containers = {
        support::container("jar", container_number, 60 * decimal::kOne, 55 * decimal::kOne)};
    std::vector<formula::Line> lines;
    for (std::uint32_t i = 0; i < 12; ++i) {
        std::string id = "ingredient_";
        id += static_cast<char>('a' + i);
        made.catalogue.ingredients.push_back(
            support::ingredient(id, first_number + i, id, "liquid_oil", catalogue::Phase::oil, 9200));
        lines.push_back(
            support::line(id, (300 + 11 * static_cast<std::int64_t>(i)) * 100, i < 11 ? "A" : "B"));
    }
    lines[4] = support::rest("ingredient_e");
    made.recipe.formula = support::formula_of(lines);
    for (formula::Phase& phase : made.recipe.formula.phases) {
        phase.hold_c = 75 * decimal::kOne;
        phase.add_below_c = 40 * decimal::kOne;
    }
    made.recipe.batch = support::containers({{"jar", count, {}, {}}}, 100);
    made.recipe.batch.loss = quantity::percent(5);
    return made;
}

}  // namespace

TEST_CASE("share: a recipe becomes a short text and comes back the same") {
    const std::string link = share::write(salve(), shelf()).value();
    CHECK(link[0] == '#');
    CHECK(link.size() <= 80);
    CHECK(share::read(link, shelf()).value() == salve());
}

TEST_CASE("share: twelve lines, a title of 20 letters and the batch take at most 150 characters") {
    for (const auto& [number, container, count] :
         {std::tuple{24u, 24u, 14}, std::tuple{58u, 21u, 14}, std::tuple{200u, 200u, 96}}) {
        const Worst made = worst(number, container, count);
        REQUIRE(made.recipe.title.size() == 20);
        const std::string link = share::write(made.recipe, made.catalogue).value();
        MESSAGE("characters after the sign: ", link.size() - 1);
        CHECK(link.size() - 1 <= 150);
        CHECK(share::read(link, made.catalogue).value() == made.recipe);
    }
}

TEST_CASE("share: twelve lines of the shipped catalogue are as short") {
    const catalogue::Catalogue& catalogue = shipped::presets().catalogue;
    workspace::Recipe recipe = worst(24, 24, 14).recipe;
    std::size_t at = 0;
    for (const catalogue::Ingredient& one : catalogue.ingredients)
        if (one.number >= 24 && at < 12) recipe.formula.lines[at++].ingredient = one.id;
    REQUIRE(at == 12);
    recipe.batch.containers[0].id = catalogue.containers.back().id;
    const std::string link = share::write(recipe, catalogue).value();
    MESSAGE("characters after the sign: ", link.size() - 1);
    CHECK(link.size() - 1 <= 150);
    CHECK(share::read(link, catalogue).value() == recipe);
}

TEST_CASE("share: the frozen links of version 1 read as the frozen files, for ever") {
    std::istringstream lines(shipped::data("links_v1.txt"));
    int count = 0;
    for (std::string file, link; lines >> file >> link; ++count) {
        CAPTURE(file);
        const workspace::Recipe recipe = store::read_recipe(shipped::data(file)).value();
        CHECK(share::read(link, shipped::presets().catalogue).value() == recipe);
        CHECK(share::write(recipe, shipped::presets().catalogue).value() == link);  // version 1 carries them
    }
    CHECK(count >= 4);
}

TEST_CASE("share: a whole address, the text alone and space around it read alike") {
    const std::string link = share::write(salve(), shelf()).value();
    for (const std::string& given :
         {link, link.substr(1), "https://hollow-lane.example/bench/" + link, "  " + link + " \r\n",
          "file:///home/me/tarebench.html" + link, "\t" + link.substr(1) + "\n"})
        CHECK(share::read(given, shelf()).value() == salve());
}

TEST_CASE("share: a link uses only letters that survive in a message, and none of them is a full stop") {
    const std::string link = share::write(salve(), shelf()).value();
    CHECK(link.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_", 1) ==
          std::string::npos);
}

TEST_CASE("share: a number the catalogue does not know becomes a named line that keeps its percent") {
    catalogue::Catalogue older = shelf();
    std::erase_if(older.ingredients, [](const auto& one) { return one.id == "shea"; });
    older.containers.clear();
    older.products.clear();
    const std::string link = share::write(salve(), shelf()).value();
    const workspace::Recipe seen = share::read(link, older).value();
    CHECK(seen.formula.lines[1].ingredient.empty());
    CHECK(seen.formula.lines[1].name == "#3");
    CHECK(seen.formula.lines[1].percent == quantity::percent(12));
    CHECK(seen.product == "#1");
    CHECK(seen.batch.containers[0].id == "#2");
    SUBCASE("and passed on it is the same link, so that nothing is lost on the way") {
        CHECK(share::write(seen, older).value() == link);
    }
}

TEST_CASE(
    "share: an id the sender's catalogue does not know travels as text and is known where it is known") {
    catalogue::Catalogue older = shelf();
    std::erase_if(older.ingredients, [](const auto& one) { return one.id == "shea"; });
    const std::string link = share::write(salve(), older).value();
    CHECK(share::read(link, shelf()).value() == salve());
    CHECK(share::read(link, older).value() == salve());
}

TEST_CASE("share: an own ingredient goes before a shipped one of the same id") {
    workspace::Recipe recipe = salve();
    catalogue::Ingredient own;
    own.own = true;
    own.id = "shea";
    own.name = "Shea from the market";
    recipe.own = {own};
    CHECK(share::read(share::write(recipe, shelf()).value(), shelf()).value() == recipe);
}

TEST_CASE("share: every beginning of a link is called cut short") {
    for (const std::string& link :
         {share::write(salve(), shelf()).value(),
          share::write(store::read_recipe(shipped::data("v1_recipe_everything.json")).value(), shelf())
              .value()})
        for (std::size_t length = 2; length < link.size(); ++length) {
            CAPTURE(length);
            CHECK(refusal(link.substr(0, length)) == Code::link_truncated);
        }
}

TEST_CASE("share: a link with one bit changed is never read, and mostly called altered") {
    const std::string link = share::write(salve(), shelf()).value();
    const std::string bytes = base64url::decode(link.substr(1)).value();
    int altered = 0, truncated = 0;
    for (std::size_t bit = 0; bit < 8 * bytes.size(); ++bit) {
        std::string changed = bytes;
        changed[bit / 8] =
            static_cast<char>(static_cast<unsigned char>(changed[bit / 8]) ^ (1u << (bit % 8)));
        const Code code = refusal("#" + base64url::encode(changed));
        CHECK((code == Code::link_altered || code == Code::link_truncated));
        (code == Code::link_altered ? altered : truncated) += 1;
    }
    CHECK(altered > 9 * truncated);
}

TEST_CASE("share: an altered version byte is called altered, not newer") {
    const std::string bytes = base64url::decode(share::write(salve(), shelf()).value().substr(1)).value();
    for (int version : {0, 2, 3, 15, 16, 77, 255}) {
        std::string changed = bytes;
        changed[0] = static_cast<char>(version);
        CHECK(refusal("#" + base64url::encode(changed)) == Code::link_altered);
    }
}

TEST_CASE("share: a letter of another alphabet or one too many is an alteration, with its place") {
    const std::string link = share::write(salve(), shelf()).value();
    std::string changed = link;
    changed[10] = '%';
    CHECK(share::read(changed, shelf()).error() == result::Error{Code::link_altered, "character 10", ""});
    CHECK(refusal(link + ".") == Code::link_altered);
    CHECK(refusal(link + "A") != Code::link_truncated);
    CHECK(refusal(link + "AAAA") == Code::link_altered);
    CHECK(refusal(link + link) == Code::link_altered);
}

TEST_CASE("share: a newer version says so, and which") {
    const auto body = [](cbor::Writer& writer) {
        writer.array(1);
        writer.text("something else altogether");
    };
    CHECK(share::read(link_of(body, 3), shelf()).error() == result::Error{Code::link_newer, "", "3"});
    CHECK(refusal(link_of(body, 15)) == Code::link_newer);
}

TEST_CASE("share: what never was a link of ours says that") {
    for (const char* text :
         {"", "#", "  ", "hello", "#section-4", "#top", "#About", "#Back-to-top",
          "https://hollow-lane.example/", "https://hollow-lane.example/#", "Dear Anna, look at this",
          "\xC3\xBC\xC3\xBC\xC3\xBC", "#!/page/2", "{\"tarebench\":1}"}) {
        INFO("text: ", std::string(text));
        CHECK(refusal(text) == Code::link_not_ours);
    }
    CHECK(refusal(link_of([](cbor::Writer& writer) { writer.integer(1); }, 99)) == Code::link_not_ours);
}

TEST_CASE("share: the same recipe packed in another way is refused") {
    CHECK(share::read(link_with(3, [](cbor::Writer&) {}), shelf()).ok());
    CHECK(refusal(link_with(4, [](cbor::Writer& w) { w.array(0); })) ==
          Code::link_not_canonical);  // said, but empty
    CHECK(refusal(link_with(7, [](cbor::Writer& w) {
              for (int i = 0; i < 3; ++i)
                  w.array(0);
              w.text("");
          })) == Code::link_not_canonical);
    // 10 % in steps of 0.1 % where whole percents do, a head longer than its value, bytes behind the end.
    const auto one_line = [](std::uint64_t unit, std::uint64_t share) {
        return [=](cbor::Writer& w) {
            w.array(4);
            w.text("");
            w.integer(1);
            w.integer(unit);
            w.array(1);
            w.array(3);
            w.integer(0);
            w.integer(1);
            w.integer(share);
        };
    };
    CHECK(share::read(link_of(one_line(4, 11)), shelf()).ok());
    CHECK(refusal(link_of(one_line(3, 101))) == Code::link_not_canonical);
    CHECK(refusal(sealed(std::string("\x01\x98\x03\x60\x01\x04", 6))) == Code::link_not_canonical);
    CHECK(refusal(sealed(std::string("\x01\x83\x60\x01\x04\x00", 6))) == Code::link_not_canonical);
    const std::string link = share::write(salve(), shelf()).value();
    if ((link.size() - 1) % 4 != 0) {
        std::string stray = link;  // the last letter holds bits of no byte
        stray.back() = static_cast<char>(stray.back() + 1);
        CHECK(refusal(stray) == Code::link_not_canonical);
    }
}

TEST_CASE("share: a recipe too long for a link is offered as a file instead") {
    workspace::Recipe recipe = salve();
    for (unsigned n = 1; recipe.notes.size() < 7000; n = n * 75 % 65537)  // nothing to be put shorter
        recipe.notes += static_cast<char>('!' + n % 90);
    CHECK(share::write(recipe, shelf()).error().code == Code::link_too_long);
    CHECK(refusal("#" + std::string(share::kMostCharacters + 1, 'A')) == Code::link_too_long);
    CHECK(refusal(std::string(5'000'000, 'A')) == Code::link_too_long);
}

TEST_CASE("share: a recipe that could not be read back is not written") {
    workspace::Recipe recipe = salve();
    recipe.title = "cut \xC3";
    CHECK(share::write(recipe, shelf()).error().code == Code::link_content);
    recipe = salve();
    recipe.title = std::string(81, 'x');
    CHECK(share::write(recipe, shelf()).error() == result::Error{Code::text_too_long, "title", "80"});
    recipe = salve();
    recipe.formula.lines.push_back(support::rest("water", "B"));
    CHECK(share::write(recipe, shelf()).error().code == Code::rest_twice);
}

TEST_CASE("share: an unfinished formula may be sent") {
    workspace::Recipe recipe = salve();
    recipe.formula.lines[2] = support::line("sunflower", 10000, "B");
    CHECK(share::read(share::write(recipe, shelf()).value(), shelf()).value() == recipe);
}

}  // namespace test_share
