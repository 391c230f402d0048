// Numbers where the catalogue has them, texts where it has not.
#include "share_reference.h"

#include <algorithm>

namespace share_reference {
namespace {

// "#70" -> 70, when that is how number_name writes it.
std::optional<std::uint32_t> named_number(std::string_view name) {
    if (name.size() < 2 || name.size() > 10 || name[0] != '#') return std::nullopt;
    std::uint64_t out = 0;
    for (const char c : name.substr(1)) {
        if (c < '0' || c > '9') return std::nullopt;
        out = out * 10 + static_cast<std::uint64_t>(c - '0');
    }
    if (number_name(out) != name) return std::nullopt;
    return static_cast<std::uint32_t>(out);
}

std::optional<std::uint32_t> number_of(const catalogue::Catalogue& shipped, Kind kind, std::string_view id) {
    if (kind == Kind::ingredient) {
        if (const auto* found = find_ingredient(shipped, id)) return found->number;
    } else if (kind == Kind::container) {
        if (const auto* found = find_container(shipped, id)) return found->number;
    } else if (const auto* found = find_product(shipped, id)) {
        return found->number;
    }
    return std::nullopt;
}

// "#70" stands for a number this catalogue does not know: passed on, it is that number again.
std::optional<std::uint32_t> unknown_number(const catalogue::Catalogue& shipped, Kind kind,
                                            std::string_view text) {
    const std::optional<std::uint32_t> number = named_number(text);
    return number && !id_of(shipped, kind, *number) ? number : std::nullopt;
}

Reference reference_of(const catalogue::Catalogue& shipped, Kind kind, std::string_view id) {
    std::optional<std::uint32_t> number = number_of(shipped, kind, id);
    if (!number) number = unknown_number(shipped, kind, id);
    if (!number) return {};
    return {true, *number, false};
}

}  // namespace

std::optional<std::string> id_of(const catalogue::Catalogue& shipped, Kind kind, std::uint32_t number) {
    if (kind == Kind::ingredient) {
        if (const auto* found = find_ingredient(shipped, number)) return found->id;
    } else if (kind == Kind::container) {
        if (const auto* found = find_container(shipped, number)) return found->id;
    } else if (const auto* found = find_product(shipped, number)) {
        return found->id;
    }
    return std::nullopt;
}

std::string number_name(std::uint64_t number) {
    return "#" + std::to_string(number);
}

References references_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped) {
    References references;
    references.product = reference_of(shipped, Kind::product, recipe.product);
    for (const formula::Line& line : recipe.formula.lines) {
        Reference reference;
        const auto own = std::find_if(recipe.own.begin(), recipe.own.end(),
                                      [&](const auto& mine) { return mine.id == line.ingredient; });
        if (!line.ingredient.empty() && own != recipe.own.end()) {
            reference = {true, static_cast<std::uint64_t>(own - recipe.own.begin()), false};
        } else {
            const std::optional<std::uint32_t> number =
                line.ingredient.empty() ? unknown_number(shipped, Kind::ingredient, line.name)
                                        : number_of(shipped, Kind::ingredient, line.ingredient);
            if (number) reference = {true, recipe.own.size() + *number, false};
        }
        reference.named = reference.numbered && !line.ingredient.empty() && !line.name.empty();
        references.lines.push_back(reference);
    }
    for (const batch::Containers& kind : recipe.batch.containers) {
        references.containers.push_back(reference_of(shipped, Kind::container, kind.id));
    }
    for (const batch::Stock& stock : recipe.batch.stock) {
        references.stock.push_back(reference_of(shipped, Kind::ingredient, stock.ingredient));
    }
    return references;
}

}  // namespace share_reference
