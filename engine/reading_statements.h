// Statements out of what is known of the ingredients on a list: allergens that are declared or missing,
// through what the oils hold; measured properties; limits of law and what is usual. Nothing is judged: each
// says only what must be so if the list is right. An ingredient of which no figure is known may hold
// anything.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "limits_book.h"
#include "reading.h"

namespace reading {

// Where and as what the product was sold; "" not said.
struct Sold {
    std::string product, market, date;  // ids; YYYY-MM-DD
    bool operator==(const Sold&) const = default;
};

// An allergen by the name that is printed, or a constituent by id or name; null: neither is known.
struct Allergen {
    std::string name;  // as it is printed
    std::vector<composition::Id> constituents;
    std::vector<std::string> ingredients, names;  // that are it as a whole
    bool required = true;                         // on this market on this day
    std::string source;
    source::Standing standing = source::Standing::estimate;
};
std::optional<Allergen> find_allergen(std::string_view name, const Sold& sold, const limits::Book& book);
// The names of those that the market wants named on that day; none where it wants none or is not known.
std::vector<std::string> required_allergens(const Sold& sold, const limits::Book& book);

// Their terms may be empty: nothing on the list is known to hold it.
Statement declared(const std::vector<Item>& items, const Allergen& allergen, const Sold& sold,
                   const catalogue::Catalogue& known, const limits::Book& book);
Statement undeclared(const std::vector<Item>& items, const Allergen& allergen, const Sold& sold,
                     const catalogue::Catalogue& known, const limits::Book& book);

// "density" (g/mL), "iodine_value", "saponification_value", "wax_share" (%); none for any other.
std::optional<Statement> property(std::string_view name, const std::vector<Item>& items,
                                  std::optional<std::int64_t> min, std::optional<std::int64_t> max,
                                  const catalogue::Catalogue& known);

// Every limit that the list touches: on where it is law on that market, off where it is a standard, guidance
// or only what is usual.
std::vector<Statement> limits_of(const std::vector<Item>& items, const Sold& sold,
                                 const catalogue::Catalogue& known, const limits::Book& book);

}  // namespace reading
