#include "documents_faults.h"

#include <algorithm>

namespace documents_faults {

std::vector<std::string_view> of(const formula::Formula& formula, std::string_view product,
                                 const catalogue::Catalogue& known) {
    const auto holds = [&](std::initializer_list<std::string_view> roles) {
        return std::any_of(formula.lines.begin(), formula.lines.end(), [&](const formula::Line& line) {
            const catalogue::Ingredient* one = find_ingredient(known, line.ingredient);
            return one != nullptr && std::find(roles.begin(), roles.end(), one->role) != roles.end();
        });
    };
    const bool water = holds({"water"}), emulsion = water && holds({"emulsifier"});
    const bool firm = holds({"wax", "hard_fat"}), butters = holds({"butter", "soft_fat"});
    const bool scrub =
        holds({"scrub"}) || (holds({"powder"}) && product.find("scrub") != std::string_view::npos);
    std::vector<std::string_view> keys;
    if (firm && !emulsion) keys.insert(keys.end(), {"fault.sink_holes", "fault.wax_lumps", "fault.sweating"});
    if (butters && !emulsion) keys.push_back("fault.grain");
    if ((firm || butters) && !emulsion) keys.insert(keys.end(), {"fault.too_soft", "fault.too_hard"});
    if (holds({"soft_wax"}) || holds({"wax"})) keys.push_back("fault.tacky");
    if (product == "whipped_butter") keys.push_back("fault.collapses");
    if (emulsion)
        keys.insert(keys.end(), {"fault.separates", "fault.lumps", "fault.too_thin", "fault.soaping"});
    if (water) keys.push_back("fault.spoils");
    if (scrub) keys.push_back("fault.scrub_oil");
    if (!water) keys.push_back("fault.rancid");
    if (!firm && !butters && !water) keys.push_back("fault.cloudy");
    return keys;
}

}  // namespace documents_faults
