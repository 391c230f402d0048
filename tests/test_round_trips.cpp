// Thousands of random recipes, fixed seeds: what is written as file, record or link comes back field by
// field, and what is damaged is never read.
#include <set>
#include <string>

#include "doctest/doctest.h"
#include "engine/base64url.h"
#include "engine/share.h"
#include "engine/store.h"
#include "shipped.h"
#include "support.h"

namespace test_round_trips {

namespace {

using workspace::Recipe;

const char* const kWords[] = {
    "plum",         "hazel",           "Ringelblume", "\xE3\x83\x90\xE3\x83\xBC\xE3\x83\xA0",
    "a \"b\" \\ c", "<b>&amp;",        "#70",         "tab\there",
    "line\nbreak",  "\xF0\x9F\xAB\x99"};

std::string word(chance::Generator& chance) {
    std::string out = kWords[chance.below(10)];
    if (chance.below(2) == 0) out += " " + std::to_string(chance.below(1000));
    return out;
}

quantity::Percent percent(chance::Generator& chance) {
    return {chance.between(0, 1'000'000)};
}

catalogue::Ingredient random_own(chance::Generator& chance, std::size_t index) {
    catalogue::Ingredient own;
    own.own = true;
    own.id = "own_" + std::to_string(index);
    own.name = word(chance);
    own.role = chance.below(2) == 0 ? "liquid_oil" : "essential_oil";
    own.source = word(chance);
    own.standing = static_cast<source::Standing>(chance.below(5));
    if (chance.below(2) == 0) own.inci["eu"] = word(chance);
    if (chance.below(3) == 0) own.inci["us"] = word(chance);
    if (chance.below(2) == 0)
        own.density =
            source::Sourced<catalogue::DensityAt>{{{chance.between(1, 15000)}, {}}, own.source, own.standing};
    if (chance.below(3) == 0) own.max_percent["lip_balm"] = percent(chance);
    if (chance.below(3) == 0) own.max_percent["5A"] = percent(chance);
    if (chance.below(3) == 0) own.based_on = "sunflower";
    for (std::uint64_t parts = chance.below(3); parts > 0; --parts)
        own.parts.push_back({word(chance), percent(chance)});
    if (chance.below(3) == 0) {
        own.analysis =
            catalogue::LotAnalysis{"L-" + std::to_string(chance.below(99)), "2026-08-01", word(chance), {}};
        if (chance.below(2) == 0)
            own.analysis->constituents["linalool"] = {percent(chance), percent(chance), percent(chance)};
        if (chance.below(2) == 0) own.analysis->constituents["camphor"] = {{}, {}, percent(chance)};
    }
    if (chance.below(4) == 0) {
        own.made = catalogue::Made{static_cast<catalogue::MadeAs>(chance.below(3)), quantity::kHundred, {}};
        if (chance.below(2) == 0) own.made->yield = {chance.between(1, 1'000'000)};
        for (std::uint64_t plants = chance.below(3); plants > 0; --plants)
            own.made->infused_with.push_back(word(chance));
    }
    if (chance.below(4) == 0) own.names = {{"de", word(chance)}, {"en", own.name}};
    return own;
}

batch::Request random_amounts(chance::Generator& chance, const catalogue::Catalogue& catalogue) {
    batch::Request request;
    request.amount = static_cast<batch::Amount>(chance.below(5));
    if (chance.below(2) == 0) request.grams.grid = chance.between(0, 100'000'000);
    for (std::uint64_t kinds = chance.below(3); kinds > 0; --kinds) {
        batch::Containers some{catalogue.containers[chance.below(catalogue.containers.size())].id,
                               chance.between(0, 300),
                               {},
                               {}};
        if (chance.below(4) == 0) some.id = word(chance);
        if (chance.below(2) == 0) some.fill_g = quantity::Mass{chance.between(0, 2'000'000)};
        if (chance.below(2) == 0) some.fill_percent = percent(chance);
        if (chance.below(4) == 0) some.test_fill_g = quantity::Mass{chance.between(0, 2'000'000)};
        if (chance.below(4) == 0) some.water_g = quantity::Mass{chance.between(0, 2'000'000)};
        request.containers.push_back(some);
    }
    if (chance.below(3) == 0) request.people = chance.between(0, 40);
    if (chance.below(3) == 0) request.each = chance.between(0, 4);
    if (chance.below(4) == 0) {
        request.unit.emplace();
        if (chance.below(2) == 0) request.unit->id = word(chance);
        if (chance.below(2) == 0) request.unit->fill_g = quantity::Mass{chance.between(0, 2'000'000)};
        if (chance.below(2) == 0) request.unit->water_g = quantity::Mass{chance.between(0, 2'000'000)};
        if (chance.below(2) == 0) request.unit->fill_percent = percent(chance);
    }
    std::set<std::string> stocked;
    for (std::uint64_t entries = chance.below(3); entries > 0; --entries) {
        const std::string name = chance.below(2) == 0
                                     ? word(chance)
                                     : catalogue.ingredients[chance.below(catalogue.ingredients.size())].id;
        if (stocked.insert(name).second) request.stock.push_back({name, {chance.between(0, 5'000'000)}});
    }
    if (chance.below(2) == 0) request.loss = quantity::Percent{chance.between(0, 999'999)};
    if (chance.below(2) == 0) request.division.grid = chance.between(1, 100'000);
    return request;
}

// Everything a recipe may hold, likely or not.
Recipe random_everything(chance::Generator& chance, const catalogue::Catalogue& catalogue) {
    Recipe recipe = support::random_recipe(chance, catalogue);
    if (chance.below(2) == 0) recipe.title = word(chance);
    for (std::uint64_t own = chance.below(4); own > 0; --own)
        recipe.own.push_back(random_own(chance, recipe.own.size()));
    for (formula::Line& line : recipe.formula.lines) {
        if (!recipe.own.empty() && chance.below(6) == 0) {
            line.ingredient = recipe.own[chance.below(recipe.own.size())].id;
            line.name = chance.below(2) == 0 ? word(chance) : "";
        } else if (chance.below(10) == 0) {
            line.ingredient = "not_in_any_catalogue";
            line.name = chance.below(2) == 0 ? word(chance) : "";
        }
        if (chance.below(10) == 0) line.hold = formula::Hold{word(chance), percent(chance)};
    }
    for (formula::Phase& phase : recipe.formula.phases) {
        if (chance.below(6) == 0) phase.hold_c = chance.between(-200'000, 2'000'000);
        if (chance.below(6) != 0) continue;
        const std::string renamed = "phase " + phase.id + word(chance);
        for (formula::Line& line : recipe.formula.lines)
            if (line.phase == phase.id) line.phase = renamed;
        for (formula::Step& step : recipe.steps)
            if (step.phase == phase.id) step.phase = renamed;
        phase.id = renamed;
    }
    if (chance.below(2) == 0) recipe.batch = random_amounts(chance, catalogue);
    if (chance.below(4) == 0) {
        recipe.made = workspace::MadePart{"own_" + std::to_string(chance.below(100)),
                                          static_cast<catalogue::MadeAs>(chance.below(3)),
                                          {chance.between(1, 1'000'000)}};
        for (formula::Line& line : recipe.formula.lines)
            line.strained = chance.below(5) == 0;
    }
    return recipe;
}

}  // namespace

TEST_CASE("round trips: a random recipe comes back from its file, field by field") {
    chance::Generator chance(20261125);
    const catalogue::Catalogue shelf = support::shelf();
    for (int round = 0; round < 2000; ++round) {
        CAPTURE(round);
        const Recipe recipe = random_everything(chance, shelf);
        REQUIRE(workspace::checked(recipe).ok());
        const std::string text = store::write_recipe(recipe);
        const auto back = store::read_recipe(text);
        REQUIRE(back.ok());
        CHECK(*back == recipe);
        CHECK(store::write_recipe(*back) == text);
    }
}

TEST_CASE("round trips: a random recipe comes back from its record, whichever slot holds it") {
    chance::Generator chance(7);
    const catalogue::Catalogue shelf = support::shelf();
    for (int round = 0; round < 2000; ++round) {
        CAPTURE(round);
        workspace::Kept kept;
        kept.id = "r-" + std::to_string(round);
        kept.recipe = random_everything(chance, shelf);
        kept.saves = chance.next() >> chance.below(64);
        if (kept.saves == 0) kept.saves = 1;
        kept.changed = "2026-11-25T12:00:00Z";
        if (chance.below(3) == 0) kept.binned = "2026-11-26T12:00:00Z";
        const std::string text = store::write_record({kept.saves, store::write_kept(kept)});
        workspace::Kept older = kept;
        older.recipe.title = "older";
        const std::string before = store::write_record({kept.saves - 1, store::write_kept(older)});
        const bool first = chance.below(2) == 0;
        const store::Chosen chosen = first ? store::choose({text, before}) : store::choose({before, text});
        REQUIRE(chosen.record.has_value());
        CHECK(chosen.next_slot == (first ? 'b' : 'a'));
        CHECK(store::read_kept(chosen.record->json).value() == kept);
    }
}

TEST_CASE("round trips: a random recipe comes back from its link, field by field") {
    chance::Generator chance(3986);
    const catalogue::Catalogue shelf = support::shelf();
    int written = 0;
    for (int round = 0; round < 1500; ++round) {
        CAPTURE(round);
        const Recipe recipe = random_everything(chance, shelf);
        const auto link = share::write(recipe, shelf);
        REQUIRE(link.ok());
        const auto back = share::read(*link, shelf);
        REQUIRE(back.ok());
        CHECK(*back == recipe);
        CHECK(share::write(*back, shelf).value() == *link);
        ++written;
    }
    CHECK(written == 1500);
}

TEST_CASE("round trips: the shipped recipes come back from file and link") {
    for (const auto& [name, recipe] : shipped::presets().recipes) {
        CAPTURE(name);
        CHECK(store::read_recipe(store::write_recipe(recipe)).value() == recipe);
        const std::string link = share::write(recipe, shipped::presets().catalogue).value();
        CHECK(share::read(link, shipped::presets().catalogue).value() == recipe);
    }
}

TEST_CASE("round trips: a link with bits turned over is never read") {
    chance::Generator chance(32);
    const catalogue::Catalogue shelf = support::shelf();
    for (int round = 0; round < 300; ++round) {
        const std::string link = share::write(random_everything(chance, shelf), shelf).value();
        const std::string bytes = base64url::decode(link.substr(1)).value();
        for (int damage = 0; damage < 40; ++damage) {
            std::string changed = bytes;
            for (std::uint64_t flips = 1 + chance.below(4); flips > 0; --flips) {
                const std::size_t at = chance.below(changed.size());
                changed[at] =
                    static_cast<char>(static_cast<unsigned char>(changed[at]) ^ (1u << chance.below(8)));
            }
            if (changed == bytes) continue;
            CHECK_FALSE(share::read("#" + base64url::encode(changed), shelf).ok());
        }
    }
}

TEST_CASE("round trips: a link with letters changed, left out, doubled or swapped is never read") {
    chance::Generator chance(64);
    const catalogue::Catalogue shelf = support::shelf();
    constexpr char kLetters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    for (int round = 0; round < 300; ++round) {
        const std::string link = share::write(random_everything(chance, shelf), shelf).value();
        for (int damage = 0; damage < 40; ++damage) {
            std::string changed = link;
            const std::size_t at = 1 + chance.below(link.size() - 1);
            switch (chance.below(4)) {
                case 0:
                    changed[at] = kLetters[chance.below(64)];
                    break;
                case 1:
                    changed.erase(at, 1 + chance.below(5));
                    break;
                case 2:
                    changed.insert(at, 1, kLetters[chance.below(64)]);
                    break;
                default:
                    std::swap(changed[at], changed[1 + chance.below(link.size() - 1)]);
                    break;
            }
            if (changed == link) continue;
            CAPTURE(link);
            CAPTURE(changed);
            CHECK_FALSE(share::read(changed, shelf).ok());
        }
    }
}

TEST_CASE("round trips: every beginning of a random link is called cut short") {
    chance::Generator chance(128);
    const catalogue::Catalogue shelf = support::shelf();
    for (int round = 0; round < 60; ++round) {
        const std::string link = share::write(random_everything(chance, shelf), shelf).value();
        for (std::size_t length = 2; length < link.size(); ++length) {
            const auto read = share::read(link.substr(0, length), shelf);
            REQUIRE_FALSE(read.ok());
            CHECK(read.error().code == result::Code::link_truncated);
        }
    }
}

TEST_CASE("round trips: a file with a byte changed is read or refused, and what is read can be written") {
    chance::Generator chance(256);
    const catalogue::Catalogue shelf = support::shelf();
    for (int round = 0; round < 1500; ++round) {
        std::string text = store::write_recipe(random_everything(chance, shelf));
        const std::size_t at = chance.below(text.size());
        text[at] = static_cast<char>(chance.below(256));
        const auto read = store::read_recipe(text);
        if (read) CHECK(store::read_recipe(store::write_recipe(*read)).value() == *read);
    }
}

}  // namespace test_round_trips
