// What a customer asks at the stall, answered in a few lines: nuts, other foods people react to, animal
// origin, fragrance allergens, pregnancy, children. Made from what the checks found; it says what is listed,
// never that a product is free of anything, and names what could not be looked at.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "declaration.h"
#include "finding.h"
#include "limits_book.h"
#include "words.h"

namespace customer_card {

enum class Topic { nuts, foods, animal, scents, pregnancy, children };
inline constexpr int kTopics = static_cast<int>(Topic::children) + 1;
std::string_view topic_name(Topic topic);  // "ask.<name>_title" is its heading

struct Answer {
    Topic topic{};
    std::vector<std::string> sentences;  // at least one
    bool named = false;                  // something is named: not only "none is listed"
    bool operator==(const Answer&) const = default;
};
struct Card {
    std::string title;
    std::vector<Answer> answers;       // one for each topic, in their order
    std::vector<std::string> unknown;  // what is not in the list, so that nothing is known of it
    std::string text;                  // all of it, a line a sentence
    bool operator==(const Card&) const = default;
};

struct Asked {
    std::string title;
    const std::vector<finding::Finding>* findings = nullptr;   // of the report on safety
    std::optional<std::vector<declaration::Named>> allergens;  // none: not worked out
    bool allergens_asked = true;  // a list is in force in this market on this day
    const limits::Book* book = nullptr;
    std::vector<const catalogue::Ingredient*> held;  // what is in it in the end, made parts split
    std::vector<std::string> unknown;
};
Card of(const Asked& asked, const words::Table& table);

}  // namespace customer_card
