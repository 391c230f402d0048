// What a container takes and what a person gets, as links carry them.
#include "doctest/doctest.h"
#include "engine/share.h"
#include "shipped.h"

namespace test_share_fills {

using quantity::Mass;
using workspace::Recipe;

namespace {

Recipe recipe() {
    Recipe made = shipped::recipe("potting_shed_hand_salve");
    made.steps.clear();
    made.notes.clear();
    made.batch.containers = {{"tin_30ml", 8, {}, {}}, {"my_pot", 2, {}, quantity::percent(85)}};
    return made;
}

Recipe there_and_back(const Recipe& sent) {
    const auto link = share::write(sent, shipped::presets().catalogue);
    REQUIRE(link.ok());
    const auto back = share::read(*link, shipped::presets().catalogue);
    REQUIRE(back.ok());
    return *back;
}

}  // namespace

TEST_CASE("share: a test fill and the water a container takes travel") {
    Recipe sent = recipe();
    sent.batch.containers[0].test_fill_g = Mass{273000};
    sent.batch.containers[1].water_g = Mass{641200};
    CHECK(there_and_back(sent) == sent);
}

TEST_CASE("share: what a person gets travels, as a container or as a portion") {
    Recipe sent = recipe();
    sent.batch.amount = batch::Amount::people;
    sent.batch.people = 12;
    sent.batch.each = 2;
    sent.batch.unit = batch::Containers{"tin_30ml", 1, {}, {}};
    CHECK(there_and_back(sent) == sent);
    sent.batch.unit = batch::Containers{"", 1, Mass{75000}, {}};
    CHECK(there_and_back(sent) == sent);
    sent.batch.unit->water_g = Mass{641200};
    sent.batch.unit->test_fill_g = Mass{1};
    sent.batch.unit->fill_percent = quantity::percent(90);
    CHECK(there_and_back(sent) == sent);
}

}  // namespace test_share_fills
