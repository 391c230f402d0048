// A formula with what the checks on constituents and oils ask: product kind, market, day, person, own
// bottles. For tests whose examples say what is in an oil, the book can be told so.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "doctest/doctest.h"
#include "engine/made.h"
#include "engine/safety_bounds.h"
#include "engine/safety_family.h"
#include "shipped.h"

namespace limited {

using quantity::Percent;
using quantity::Trace;

inline Percent percent(double value) {  // of a test: on the grid
    return {decimal::from_double(value).value()};
}
inline Trace trace(std::string_view text) {  // "0.00058"
    std::int64_t grid = 0, places = -1;
    for (const char c : text) {
        if (c == '.')
            places = 0;
        else {
            grid = grid * 10 + (c - '0');
            if (places >= 0) ++places;
        }
    }
    for (places = std::max<std::int64_t>(places, 0); places < quantity::kTracePlaces; ++places)
        grid *= 10;
    return {grid};
}

// Everything but a few lines is sunflower oil, which takes the rest.
struct Setup {
    formula::Formula formula;
    std::vector<catalogue::Ingredient> own;
    std::vector<std::string> mine;  // ids of own entries that are this person's; the others came along
    limits::Book book = shipped::book();
    std::string product = "salve", market = "eu", date = "2026-11-25", person;
    std::optional<std::int64_t> age_months;

    explicit Setup(const std::vector<std::pair<std::string, double>>& lines) {
        formula.phases = {{"A", {}, {}}};
        for (const auto& [ingredient, share] : lines)
            add(ingredient, "", percent(share));
        formula::Line rest;
        rest.ingredient = "sunflower";
        rest.rest = true;
        formula.lines.push_back(rest);
    }

    Setup& add(std::string ingredient, std::string name, Percent share) {
        formula::Line line;
        line.ingredient = std::move(ingredient);
        line.name = std::move(name);
        line.percent = share;
        const auto at = formula::rest_line(formula);
        formula.lines.insert(
            at ? formula.lines.begin() + static_cast<std::ptrdiff_t>(*at) : formula.lines.end(), line);
        return *this;
    }
    Setup& with(std::string kind) { return product = std::move(kind), *this; }
    Setup& in(std::string where, std::string day = "2026-11-25") {
        return market = std::move(where), date = std::move(day), *this;
    }
    Setup& child(std::int64_t months) { return person = "child", age_months = months, *this; }

    // The oil holds exactly this, in % of it, and nothing else; groups are the sums of their members.
    Setup& holding(const std::string& oil, const std::map<std::string, double>& content) {
        composition::Table& table = book.composition;
        std::map<composition::Id, Percent> known;
        for (const auto& [name, share] : content) {
            const composition::Id id = composition::find(table, name);
            REQUIRE_MESSAGE(id != composition::kNone, name);
            known[id] = known[id] + percent(share);
            if (const composition::Id group = table.constituents[id].sums_into; group != composition::kNone)
                known[group] = known[group] + percent(share);
        }
        for (composition::Carrier& carrier : table.carriers) {
            if (carrier.ingredient != oil) continue;
            carrier.rows.clear();
            for (const auto& [id, share] : known)
                carrier.rows.push_back({id, {share, share, share}, "test", source::Standing::document});
            return *this;
        }
        FAIL("no such oil: ", oil);
        return *this;
    }

    // An own bottle, based on a shipped oil or on none, with its paper.
    Setup& bottle(std::string id, std::string based_on, std::map<std::string, catalogue::Content> paper,
                  bool ours) {
        catalogue::Ingredient one;
        one.id = id;
        one.own = true;
        one.name = id;
        one.based_on = std::move(based_on);
        one.role = "essential_oil";
        one.analysis = catalogue::LotAnalysis{"lot 1", "2026-10-01", "the supplier", std::move(paper)};
        own.push_back(std::move(one));
        if (ours) mine.push_back(std::move(id));
        return *this;
    }

    safety::Case the() const {
        safety::Case made;
        const catalogue::Catalogue& shipped = shipped::presets().catalogue;
        made.formula = &formula;
        made.shipped = &shipped;
        made.book = &book;
        made.product = catalogue::find_product(shipped, product);
        made.market = market;
        made.date = date;
        made.person = person;
        made.age_months = age_months;
        made.stated_sum = formula::stated_sum(formula);
        const Percent rest = std::max(Percent{0}, quantity::kHundred - made.stated_sum);
        made.rest = rest;
        for (std::size_t i = 0; i < formula.lines.size(); ++i) {
            const formula::Line& line = formula.lines[i];
            made.percents.push_back(line.rest ? rest : line.percent);
            safety::Portion portion;
            portion.line = i;
            portion.ingredient = line.ingredient;
            portion.name = line.name;
            portion.percent = made.percents.back();
            portion.known = catalogue::find_ingredient(shipped, line.ingredient);
            for (const catalogue::Ingredient& one : own)
                if (one.id == line.ingredient && portion.known == nullptr) {
                    portion.own = &one;
                    portion.vouched_for = std::find(mine.begin(), mine.end(), one.id) != mine.end();
                    const auto* base = catalogue::find_ingredient(shipped, one.based_on);
                    portion.known = base != nullptr ? base : &one;
                }
            made.portions.push_back(portion);
        }
        return made;
    }

    safety::Report report() const {
        const safety::Case made = the();
        safety::Report found;
        safety::limited(made, found);
        return found;
    }

    // Worst case of a constituent in the product.
    Trace high(std::string_view constituent) const {
        const safety::Case made = the();
        const safety::Contents contents = safety::contents_of(made);
        return composition::total_of(contents.sums, contents.held,
                                     composition::find(book.composition, constituent))
            .high;
    }

    std::vector<std::string> named() const {
        std::vector<std::string> names;
        for (const declaration::Named& one : safety::allergens_of(the()).named)
            names.push_back(one.label_name);
        std::sort(names.begin(), names.end());
        return names;
    }
};

// The finding of a rule's row, or with a code; null: there is none.
inline const finding::Finding* found(const safety::Report& report, std::string_view rule) {
    for (const finding::Finding& one : report.findings)
        if (one.rule == rule) return &one;
    return nullptr;
}
inline const finding::Finding* found(const safety::Report& report, finding::Code code) {
    for (const finding::Finding& one : report.findings)
        if (one.code == code) return &one;
    return nullptr;
}
inline bool made(const safety::Report& report, std::string_view row) {
    return std::any_of(report.made.begin(), report.made.end(),
                       [&](const auto& one) { return one.row == row; });
}
inline const safety::NotMade* not_made(const safety::Report& report, std::string_view row) {
    for (const safety::NotMade& one : report.not_made)
        if (one.row == row) return &one;
    return nullptr;
}

}  // namespace limited
