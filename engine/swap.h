// What can stand in the place of a line: by a factor that is known, by two factors over a third ingredient,
// or weight for weight where the role is the same; worked out in the formula, and the nearest formula without
// an ingredient. What that does to the product beyond its lines is comparison's.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"

namespace swap {

enum class Basis {
    factor,      // of the catalogue
    worked_out,  // from factors of the catalogue: turned round, or over a third ingredient
    same_role,   // none is known: weight for weight
};
std::string_view basis_name(Basis basis);
bool by_weight(std::string_view role);  // whether another of that role does as well, by weight

inline constexpr std::string_view kWorkedOut = "swap_worked_out";  // source key

struct StandIn {
    std::string ingredient;
    std::int64_t factor = decimal::kOne;  // grid: grams of it for one gram
    catalogue::Range range{decimal::kOne, decimal::kOne};
    Basis basis = Basis::same_role;
    std::string by_way_of;  // the third ingredient
    std::string note, source;
    source::Standing standing = source::Standing::estimate;
    bool operator==(const StandIn&) const = default;
};

// For an ingredient (an own one: as what it is based on, where it has no row), the best known first, then by
// name. Of what is there for its scent or for what it does (oils, preservatives, antioxidants, emulsifiers)
// nothing stands in by weight.
std::vector<StandIn> stand_ins(const catalogue::Catalogue& catalogue, std::string_view ingredient);

// `line` with the stand-in in its place, by its factor; what that leaves or takes over is taken up by the
// rest line, or where that is the line itself or there is none, by the unlocked liquid oil there is most of,
// then any line. Joins a line of the same ingredient. formula's errors; line_missing, line_locked,
// nothing_gives_way, gives_too_little (detail: what is lacking).
result::Result<formula::Formula> taken(const formula::Formula& formula, std::size_t line,
                                       const StandIn& stand_in, const catalogue::Catalogue& catalogue);

struct Wish {
    std::size_t without = 0;      // the line, and with it all lines of its ingredient
    std::vector<std::string> by;  // ids of what may come in its place
    bool others_move = false;     // unlocked waxes, fats and oils of the formula may change too
};
struct Share {        // of the whole product, what is compared
    std::string key;  // "18:1", or a role
    quantity::Percent was, is;
    bool operator==(const Share&) const = default;
};
struct Nearest {
    formula::Formula formula;
    std::vector<Share> acids, roles;         // of the lines that were free to change
    std::optional<quantity::Percent> apart;  // of their fatty acids, how much is other than it was; none: the
                                             // ingredient has no profile, and shares of roles alone decided
    std::vector<std::string> unprofiled;     // came in its place, and nobody knows their fatty acids
    bool operator==(const Nearest&) const = default;
};

// A percent of a role counts for as much as this many percents of a fatty acid (our choice: firmness is
// noticed before the oil is).
inline constexpr double kRoleWeight = 3;
inline constexpr std::size_t kMostBy = 20;

// Least squares over the lines that may change: fatty acids as they were where the ingredient has a profile,
// and shares of roles, in which a stand-in counts for what it stands in for by its factor. Of equally near
// ones the one that changes least. In steps of 0.1 %. Errors as of taken; name_empty (place "by"): nothing to
// take; field_unknown_value: an id nobody knows.
result::Result<Nearest> nearest(const formula::Formula& formula, const Wish& wish,
                                const catalogue::Catalogue& catalogue);

}  // namespace swap
