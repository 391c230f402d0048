#include "label_said.h"

#include <utility>

#include "bounds.h"

namespace label {
namespace {

using bounds::Fault;
using bounds::too_long;

Fault fault_of_list(const std::vector<std::string>& list, std::size_t most, std::size_t most_bytes,
                    const std::string& at) {
    if (list.size() > most) return result::Error{result::Code::too_many, at, std::to_string(most)};
    for (std::size_t i = 0; i < list.size(); ++i)
        if (auto fault = bounds::unnamed(list[i], most_bytes, at + "[" + std::to_string(i) + "]"))
            return fault;
    return std::nullopt;
}

}  // namespace

std::optional<result::Error> fault_of(const Said& said, const std::string& at) {
    if (auto fault = too_long(said.identity, kMostLineBytes, at + "identity")) return fault;
    if (auto fault = too_long(said.identity_french, kMostLineBytes, at + "identity_french")) return fault;
    for (const auto& [months, field] : {std::pair(said.keeping.months, "keeps_months"),
                                        std::pair(said.keeping.opened_months, "opened_months")})
        if (months)
            if (auto fault = bounds::whole_outside(*months, kMostMonths, at + field)) return fault;
    for (const auto& [list, field] : {std::pair(&said.colours, "colours"), std::pair(&said.nano, "nano"),
                                      std::pair(&said.may_contain, "may_contain")})
        if (auto fault = fault_of_list(*list, kMostIds, kMostLineBytes, at + field)) return fault;
    for (const auto& [list, field] :
         {std::pair(&said.warnings, "warnings"), std::pair(&said.directions, "directions")})
        if (auto fault = fault_of_list(*list, kMostSentences, kMostSentenceBytes, at + field)) return fault;
    if (said.panel && !type_height::area(*said.panel))
        return result::Error{result::Code::field_unknown_value, at + "panel", ""};
    return std::nullopt;
}

std::optional<result::Error> fault_of(const Maker& maker, const std::string& at) {
    for (const auto& [text, field] :
         {std::pair(&maker.name, "name"), std::pair(&maker.address, "address"),
          std::pair(&maker.contact, "contact"), std::pair(&maker.country, "country")})
        if (auto fault = too_long(*text, kMostLineBytes, at + field)) return fault;
    return std::nullopt;
}

}  // namespace label
