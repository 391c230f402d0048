// From shares to items: each share gives its names, equal names are added up, and only then is it asked on
// which side of one percent an item stands. A bought blend with several names and no shares is shared out
// evenly, which is a guess and said to be one. Allergens follow the ingredients, most first: common practice,
// for the law says that they are named and not where.
#include "declaration.h"

#include <algorithm>
#include <utility>

#include "made.h"
#include "sorting.h"

namespace declaration {
namespace {

using catalogue::Ingredient;
using market::Market;
using quantity::Percent;
using source::Standing;

bool is_scent(std::string_view role) {
    return role == "essential_oil" || role == "extract" || role == "fragrance" || role == "flavour";
}

const Ingredient* find(const std::vector<Ingredient>& own, std::string_view id) {
    for (const Ingredient& one : own)
        if (one.id == id) return &one;
    return nullptr;
}

bool begins(std::string_view text, std::string_view with) {
    return text.size() >= with.size() && same_name(text.substr(0, with.size()), with);
}

bool in_the_order(Market market, Percent percent) {
    return market::as_in_europe(market) ? percent >= quantity::percent(1) : percent > quantity::percent(1);
}

struct Gathered {
    Item item;
    bool colour = false;
    std::set<Doubt> doubts;
};

struct Gathering {
    const catalogue::Catalogue& shipped;
    const std::vector<Ingredient>& own;
    const Wish& wish;
    std::vector<Gathered> all = {};

    Gathered& at(const std::string& name, const std::string& from, bool colour) {
        for (Gathered& one : all)
            if (one.colour == colour && (name.empty() ? one.item.name.empty() && one.item.from.front() == from
                                                      : same_name(one.item.name, name))) {
                auto& sources = one.item.from;
                if (std::find(sources.begin(), sources.end(), from) == sources.end()) sources.push_back(from);
                return one;
            }
        all.push_back({});
        all.back().item.name = name;
        all.back().item.from = {from};
        all.back().colour = colour;
        return all.back();
    }

    void add(const std::string& name, const std::string& from, Percent percent, const Names& found,
             bool colour, Doubt doubt, bool doubtful) {
        Gathered& one = at(name, from, colour);
        one.item.percent = one.item.percent.value_or(Percent{0}) + percent;
        one.item.source = found.source;
        one.item.standing =
            std::max(one.item.from.size() > 1 ? one.item.standing : Standing::document, found.standing);
        one.item.nano = one.item.nano || wish.nano.count(from) == 1;
        if (doubtful) one.doubts.insert(doubt);
    }

    const Ingredient* known(const std::string& id) const {
        const Ingredient* mine = find(own, id);
        const Ingredient* theirs = catalogue::find_ingredient(shipped, id);
        return theirs != nullptr ? theirs : mine;
    }

    void take(const made::Share& share) {
        const std::string& from = share.ingredient.empty() ? share.name : share.ingredient;
        const Ingredient* one = share.ingredient.empty() ? nullptr : known(share.ingredient);
        if (one == nullptr) return add("", from, share.percent, {}, false, Doubt::name_missing, true);
        const bool bought = one->role == "fragrance" || one->role == "flavour";
        if (bought || (wish.scent == Scent::together && is_scent(one->role))) {
            const Names plain{{}, "eu_1223_19", Standing::document};
            return add(scent_name(wish.market, bought ? one->role == "flavour" : wish.lips), from,
                       share.percent, plain, false, {}, false);
        }
        bool colour = wish.colours.count(one->id) == 1 || one->role == "colourant";
        const Names found = names_of(*one, shipped, wish.market, colour);
        const bool in_part = one->own && !one->parts.empty();  // it is the rest, what its parts do not say
        const std::vector<std::string> names = in_part ? beside_parts(*one) : found.names;
        if (names.empty())
            return add("", from, share.percent, {}, colour,
                       in_part ? Doubt::parts_incomplete : Doubt::name_missing, true);
        colour = colour || begins(names.front(), "CI 7") || begins(names.front(), "CI 1");
        const auto shares =
            decimal::share_out(share.percent.grid, std::vector<std::int64_t>(names.size(), 1));
        for (std::size_t i = 0; i < names.size(); ++i)
            add(names[i], from, {shares ? (*shares)[i] : 0}, found, colour, Doubt::shares_unknown,
                names.size() > 1);
    }

    // The names that an own entry is declared under beside those of its parts.
    std::vector<std::string> beside_parts(const Ingredient& holder) const {
        std::vector<std::string> extra = names_of(holder, shipped, wish.market).names;
        for (const catalogue::Part& part : holder.parts)
            if (const Ingredient* one = known(part.ingredient))
                for (const std::string& name : names_of(*one, shipped, wish.market).names)
                    std::erase_if(extra, [&](const std::string& mine) { return same_name(mine, name); });
        return extra;
    }

    // What came over from plants that were strained out: by the names that the maker's own entry has beside
    // those of its parts, else as a gap under the plant's name.
    void plants_of(const Ingredient& holder) {
        const std::vector<std::string> extra = beside_parts(holder);
        if (!extra.empty()) {
            for (const std::string& name : extra)
                plant(name, holder.id, holder.source, holder.standing);
            return;
        }
        for (const std::string& plant_name : holder.made->infused_with)
            plant("", plant_name, "common_practice", Standing::common_practice);
    }
    void plant(const std::string& name, const std::string& from, const std::string& source,
               Standing standing) {
        Gathered& one = at(name, from, false);
        if (one.item.source.empty()) one.item.source = source, one.item.standing = standing;
        one.doubts.insert(Doubt::plant_strained);
        if (name.empty()) one.doubts.insert(Doubt::name_missing);
    }

    void plants_within(const std::string& id, std::size_t depth, std::set<std::string>& seen) {
        const Ingredient* one = depth > made::kDeepest ? nullptr : find(own, id);
        if (one == nullptr || catalogue::find_ingredient(shipped, id) != nullptr || !seen.insert(id).second)
            return;
        if (one->made && !one->made->infused_with.empty()) plants_of(*one);
        for (const catalogue::Part& part : one->parts)
            plants_within(part.ingredient, depth + 1, seen);
    }
};

void place(Gathered& one, Market market, bool together) {
    Item& item = one.item;
    if (one.colour) {
        item.block = Block::colour;
    } else if (item.percent && in_the_order(market, *item.percent)) {
        item.block = Block::ordered;
    } else {
        item.block = Block::free;
    }
    // Canada lets "parfum" and "aroma" stand at the end, whatever they come to (s. 21.4(3)).
    if (market == Market::ca && together && !one.colour) item.block = Block::scent_last;
    if (item.percent == quantity::percent(1) && !one.colour) one.doubts.insert(Doubt::close_to_line);
}

// "Mentha Piperita (Peppermint) Oil" is Mentha Piperita Oil.
std::string without_brackets(const std::string& name) {
    const std::size_t open = name.find(" ("), close = name.find(") ", open);
    if (open == std::string::npos || close == std::string::npos) return name;
    return name.substr(0, open) + name.substr(close + 1);
}

void add_allergens(Gathering& gathering, const std::vector<Named>& allergens) {
    std::vector<const Named*> sorted;
    for (const Named& one : allergens)
        sorted.push_back(&one);
    sorting::stable(sorted, [](const Named* a, const Named* b) { return b->amount < a->amount; });
    for (const Named* one : sorted) {
        const auto there = std::find_if(gathering.all.begin(), gathering.all.end(), [&](const Gathered& has) {
            return same_name(without_brackets(has.item.name), one->label_name);
        });
        if (there != gathering.all.end()) {
            there->item.allergen = true;
            if (!there->item.trace) there->item.trace = one->amount;
            continue;
        }
        Gathered made;
        made.item = {one->label_name, {one->why}, {},          one->amount,  Block::allergen,
                     false,           true,       one->source, one->standing};
        // "Lavandula Oil/Extract" beside "Lavandula Angustifolia Oil".
        const std::string_view genus = std::string_view(one->label_name).substr(0, one->label_name.find(' '));
        const bool group = one->label_name.find("Oil") != std::string::npos;
        for (const Gathered& has : gathering.all)
            if (group && has.item.percent && begins(has.item.name, genus))
                made.doubts.insert(Doubt::group_beside_oil);
        gathering.all.push_back(std::move(made));
    }
}

}  // namespace

result::Result<Declaration> of(const formula::Formula& formula, const catalogue::Catalogue& shipped,
                               const std::vector<Ingredient>& own, const Wish& wish,
                               const std::vector<Named>& allergens) {
    const auto percents = made::percents_of_product(formula);
    if (!percents) return percents.error();
    const auto split = made::split(formula, *percents, shipped, own);
    if (!split) return split.error();
    Gathering gathering{shipped, own, wish};
    for (const made::Share& share : split->shares)
        gathering.take(share);
    std::set<std::string> seen;
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        const formula::Line& line = formula.lines[i];
        if (line.strained) {
            const Ingredient* plant = gathering.known(line.ingredient);
            gathering.plant("", plant != nullptr ? plant->name : line.name, "common_practice",
                            Standing::common_practice);
        } else if ((*percents)[i] > Percent{0}) {
            gathering.plants_within(line.ingredient, 0, seen);
        }
    }
    const bool together = wish.scent == Scent::together;
    for (Gathered& one : gathering.all)
        place(one, wish.market, together && (one.item.name == "Parfum" || one.item.name == "Aroma"));
    add_allergens(gathering, allergens);
    for (const std::string& id : wish.may_contain) {
        const Ingredient* one = gathering.known(id);
        const Names found = one != nullptr ? names_of(*one, shipped, wish.market, true) : Names{};
        Gathered shade;
        shade.item.name = found.names.empty() ? "" : found.names.front();
        shade.item.from = {id};
        shade.item.block = Block::may_contain;
        shade.item.source = found.source;
        shade.item.standing = found.standing;
        if (found.names.empty()) shade.doubts.insert(Doubt::name_missing);
        gathering.all.push_back(std::move(shade));
    }

    sorting::stable(gathering.all, [](const Gathered& a, const Gathered& b) {
        if (a.item.block != b.item.block) return a.item.block < b.item.block;
        return a.item.percent.value_or(Percent{-1}) > b.item.percent.value_or(Percent{-1});
    });
    Declaration made;
    made.market = wish.market;
    for (Gathered& one : gathering.all) {
        for (const Doubt doubt : one.doubts)
            made.remarks.push_back({doubt, made.items.size()});
        made.items.push_back(std::move(one.item));
    }
    if (made.items.empty()) return result::Error{result::Code::formula_empty, "lines", ""};
    return made;
}

bool complete(const Declaration& declaration) {
    return std::none_of(declaration.items.begin(), declaration.items.end(),
                        [](const Item& item) { return item.name.empty(); });
}

std::string text(const Declaration& declaration, std::string_view may_contain) {
    std::string text, shades;
    for (const Item& item : declaration.items) {
        std::string& to = item.block == Block::may_contain ? shades : text;
        if (!to.empty()) to += ", ";
        to += item.name.empty() ? "[" + item.from.front() + "]" : item.name;
        if (item.nano && market::as_in_europe(declaration.market)) to += " (nano)";
    }
    if (!shades.empty()) text += " [" + std::string(may_contain) + " " + shades + "]";
    return text;
}

bool may_stand(const Declaration& declaration, const std::vector<std::size_t>& order) {
    const std::vector<Item>& items = declaration.items;
    std::vector<bool> seen(items.size(), false);
    if (order.size() != items.size()) return false;
    std::optional<Percent> last;
    bool ordered_over = false, colours = false, shades = false;
    for (const std::size_t at : order) {
        if (at >= items.size() || seen[at]) return false;
        seen[at] = true;
        const Item& item = items[at];
        if (shades && item.block != Block::may_contain) return false;
        switch (item.block) {
            case Block::ordered:
                if (ordered_over || colours || (last && *item.percent > *last)) return false;
                last = item.percent;
                break;
            case Block::colour:  // Canada mixes them with the free ones, elsewhere they stand last
                colours = colours || declaration.market != Market::ca;
                ordered_over = true;
                break;
            case Block::may_contain:
                shades = true;
                break;
            default:
                if (colours) return false;
                ordered_over = true;
        }
    }
    return true;
}

}  // namespace declaration
