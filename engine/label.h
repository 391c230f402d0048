// What stands on a label in one market: the list, the net contents, dates, names and numbers, each with the
// rule that asks for it, how high its letters must be, whether it is there, and whether it may stand on a
// leaflet, tag or page instead. What is missing is shown as missing. Words that are printed come from the
// table of words; where Canada asks for English and French they stand there side by side, and are from memory
// but for those that the regulation prints.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "declaration.h"
#include "durability.h"
#include "label_said.h"
#include "market.h"
#include "net_contents.h"
#include "quantity.h"
#include "source.h"
#include "type_height.h"
#include "words.h"

namespace label {

struct Net {
    quantity::Mass mass;
    std::optional<quantity::Volume> volume;  // at room temperature
    bool usual = false;  // the container's usual fill, lower end: nobody has weighed one yet
    bool operator==(const Net&) const = default;
};

struct Content {  // what the label is made of; the market is the declaration's
    declaration::Declaration list;
    bool allergens_known = false;                // worked out and handed to the declaration
    std::string allergens_reason;                // which list holds and why, a sentence
    std::vector<std::string> allergens_unknown;  // names of what nothing is known of
    std::string title;                           // "Orchard lip balm"
    std::string identity;                        // what it is: "Lip balm"
    std::string identity_french;                 // Canada: "Baume à lèvres"
    std::optional<net_contents::Form> form;
    std::optional<Net> net;
    durability::Keeping keeping;
    std::string made_on;  // YYYY-MM-DD
    std::string batch_number;
    Maker maker;
    std::vector<std::string> warnings, directions;  // sentences
    std::optional<type_height::Panel> panel;
    std::optional<std::int64_t> labelling_area;  // mm² on the grid
    net_contents::Digits digits = net_contents::Digits::three;
};

enum class Field {
    identity,
    net,
    list,
    warnings,
    directions,
    durability,
    batch,
    responsible,
    origin,
    contact
};
enum class State {
    given,
    missing,    // the rule asks for it
    doubtful,   // it is there and not certain
    not_asked,  // by no rule of this market that is known here
};
// Where it may stand instead of on the container.
enum class Aside { none, packaging, leaflet, tag, tag_or_page };

struct Entry {
    Field field{};
    State state = State::missing;
    std::string text;  // as printed; "" nothing is printed
    Aside aside = Aside::none;
    std::optional<type_height::Height> height;
    std::string_view rule, source;  // "Art. 19(1)(g)"
    source::Standing standing = source::Standing::document;
    bool operator==(const Entry&) const = default;
};
struct Label {
    market::Market market = market::Market::eu;
    std::vector<Entry> entries;  // in the order they are printed
    std::optional<net_contents::Statement> net;
    durability::Durability durability;
    std::optional<type_height::Heights> heights;  // where the panel is known
    std::vector<std::string> remarks;             // sentences: what is not certain, and why
    std::string text;                             // all that is printed, a line an entry
    bool operator==(const Label&) const = default;
};

Label of(const Content& content, const words::Table& table);

std::string_view field_name(Field field);
std::string_view field_key(Field field);  // of its words
std::string_view state_name(State state);
std::string_view aside_name(Aside aside);

}  // namespace label
