// A recipe's label: what the recipe, its batch and the person beside them say, brought together for label,
// assessor_pack and whatever shows them. Details that are of one device (who answers for the product) or of
// one batch (its number, its day) are handed in and never kept in a recipe here.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "assessor_pack.h"
#include "batch.h"
#include "catalogue.h"
#include "customer_card.h"
#include "declaration.h"
#include "label.h"
#include "result.h"
#include "safety.h"
#include "sale_needs.h"
#include "words.h"
#include "workspace.h"

namespace labelling {

struct Details {  // beside what the recipe says of its label
    label::Maker maker;
    std::string made_on, batch_number;
    std::optional<std::int64_t> labelling_area;  // mm² on the grid, of all that can carry letters
    net_contents::Digits digits = net_contents::Digits::three;
    std::size_t package = 0;  // which of the batch's kinds of containers
    bool operator==(const Details&) const = default;
};

struct Allergens {
    std::optional<std::vector<declaration::Named>> named;  // none: not worked out
    bool asked = true;                                     // a list is in force in this market on this day
    std::string reason;                                    // which list and why, a sentence
    std::vector<std::string> unknown;                      // names of what nothing is known of
};

// A sentence that the checks call for. Due: a law asks for it, and the label prints it; the others are
// offered.
struct Warning {
    std::string sentence;
    bool due = false;
    std::string rule, source;
    source::Standing standing = source::Standing::common_practice;
    bool operator==(const Warning&) const = default;
};

struct Labelled {
    declaration::Declaration list;
    std::optional<label::Net> net;
    label::Label label;
    std::vector<sale_needs::Need> needs;
    std::vector<Warning> warnings;  // due and offered ones; none where there was no report
    Allergens allergens;            // as handed in
};

// The market of a recipe: its own, the European Union where it says none; field_unknown_value for others.
result::Result<market::Market> market_of(const workspace::Recipe& recipe);

// What one package holds; none where the batch is no packages. A container's usual fill is taken at its lower
// end.
std::optional<label::Net> net_of(const batch::Batch& batch, std::size_t package,
                                 const catalogue::Catalogue& shipped);

// The allergens to be named on the recipe's market and day, by the book of limits; none: not worked out.
// `mine`: what this device has of its own (workspace::mine).
Allergens allergens_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                       const std::vector<catalogue::Ingredient>& mine, const limits::Book* book,
                       const words::Table& table);

// `findings`: of analysis::checks of the same recipe.
std::vector<Warning> warnings_of(const workspace::Recipe& recipe,
                                 const std::vector<finding::Finding>& findings,
                                 const catalogue::Catalogue& shipped, const words::Table& table);

// `batch`: none when the recipe has no batch that can be made. `report`: analysis::checks of the same recipe;
// none: no warnings are worked out.
result::Result<Labelled> of(const workspace::Recipe& recipe, const std::optional<batch::Batch>& batch,
                            const catalogue::Catalogue& shipped, const Details& details,
                            const Allergens& allergens, const words::Table& table,
                            const safety::Report* report = nullptr);

result::Result<assessor_pack::Pack> pack_of(const workspace::Recipe& recipe,
                                            const catalogue::Catalogue& shipped);

// What is answered at the stall. `report`: analysis::checks of the same recipe.
customer_card::Card card_of(const workspace::Recipe& recipe, const safety::Report& report,
                            const catalogue::Catalogue& shipped,
                            const std::vector<catalogue::Ingredient>& mine, const limits::Book* book,
                            const words::Table& table);

}  // namespace labelling
