// What is answered at the stall.
#include <algorithm>
#include <string>

#include "doctest/doctest.h"
#include "engine/customer_card.h"
#include "shipped.h"

namespace test_customer_card {

using customer_card::Answer;
using customer_card::Asked;
using customer_card::Card;
using customer_card::Topic;
using finding::Code;

namespace {

const catalogue::Ingredient* ingredient(std::string_view id) {
    const auto* one = catalogue::find_ingredient(shipped::presets().catalogue, id);
    REQUIRE(one != nullptr);
    return one;
}

finding::Finding found(Code code, const char* subject) {
    finding::Finding one;
    one.code = code;
    one.subject = subject;
    return one;
}

Asked asked(const std::vector<std::string>& ids, const std::vector<finding::Finding>& findings) {
    Asked made;
    made.title = "Orchard lip balm";
    made.findings = &findings;
    made.allergens = std::vector<declaration::Named>{};
    made.book = &shipped::book();
    for (const std::string& id : ids)
        made.held.push_back(ingredient(id));
    return made;
}

const Answer& answer(const Card& card, Topic topic) {
    return card.answers.at(static_cast<std::size_t>(topic));
}

bool says(const Card& card, Topic topic, std::string_view part) {
    const auto& all = answer(card, topic).sentences;
    return std::any_of(all.begin(), all.end(),
                       [&](const std::string& one) { return one.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("a balm with beeswax and shea: the nut and the bees are named, the rest is not listed") {
    const std::vector<finding::Finding> findings{found(Code::origin_nut, "shea"),
                                                 found(Code::origin_bee, "beeswax_yellow")};
    const Card card = customer_card::of(asked({"shea", "beeswax_yellow"}, findings), shipped::english());
    CHECK(says(card, Topic::nuts, "Shea butter"));
    CHECK(answer(card, Topic::nuts).named);
    CHECK(says(card, Topic::animal, "From bees"));
    CHECK(says(card, Topic::foods, "No soya, gluten or sesame ingredient is listed."));
    CHECK_FALSE(answer(card, Topic::foods).named);
    CHECK(says(card, Topic::pregnancy, "No essential oil"));
    CHECK(says(card, Topic::children, "No essential oil"));
}

TEST_CASE("it never says that a product is free of something") {
    for (const std::vector<finding::Finding>& findings :
         {std::vector<finding::Finding>{}, {found(Code::origin_nut, "shea")}}) {
        const Card card = customer_card::of(asked({"shea", "peppermint"}, findings), shipped::english());
        CHECK(card.text.find("-free") == std::string::npos);
        CHECK(card.text.find(" safe") == std::string::npos);
        CHECK(card.text.find("It is no promise") != std::string::npos);
    }
}

TEST_CASE("an oil with menthol is not for the youngest, and pregnancy asks for advice") {
    const Card card = customer_card::of(asked({"sunflower", "peppermint", "sage"}, {}), shipped::english());
    CHECK(says(card, Topic::children, "Peppermint"));
    CHECK(says(card, Topic::children, "under three months"));
    CHECK(says(card, Topic::pregnancy, "ask a midwife or doctor first"));
}

TEST_CASE("what was not looked at and what is not in the list are said") {
    Asked blank;
    blank.unknown = {"Grandmother's jar"};
    const Card card = customer_card::of(blank, shipped::english());
    CHECK(says(card, Topic::nuts, "not looked at"));
    CHECK(says(card, Topic::scents, "not worked out"));
    CHECK(card.text.find("Grandmother's jar") != std::string::npos);
    CHECK(card.answers.size() == customer_card::kTopics);
    for (const Answer& one : card.answers) {
        CHECK_FALSE(one.sentences.empty());
        CHECK(words::has(shipped::english(),
                         "ask." + std::string(customer_card::topic_name(one.topic)) + "_title"));
    }
}

TEST_CASE("allergens that have to be named are told") {
    Asked made = asked({"lavender"}, {});
    made.allergens = std::vector<declaration::Named>{
        {"Linalool", {5'000'000'000}, "lavender", "memory", source::Standing::memory}};
    CHECK(says(customer_card::of(made, shipped::english()), Topic::scents, "Linalool"));
    // Where no list is in force nothing has to be named, which is not the same as nothing being there.
    made.allergens = std::vector<declaration::Named>{};
    made.allergens_asked = false;
    CHECK(says(customer_card::of(made, shipped::english()), Topic::scents, "not worked out"));
}

}  // namespace test_customer_card
