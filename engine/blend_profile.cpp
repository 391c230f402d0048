// What fatty acids come to over a blend: profile, iodine and saponification value, oxidisability. Sums go by
// the weight of the materials that say something; the others are named.
#include <algorithm>
#include <utility>

#include "blend.h"
#include "blend_values.h"
#include "sorting.h"

namespace blend {
namespace {

using catalogue::FattyAcids;
using catalogue::Ingredient;
using catalogue::Range;
using quantity::kHundred;
using quantity::Percent;
using source::Standing;

constexpr std::int64_t kHundredth = decimal::kOne / 100;

const catalogue::Known<FattyAcids>* acids_of(const Part& part) {
    if (part.known == nullptr || !part.known->fatty_acids) return nullptr;
    return &part.known->fatty_acids;
}

using Formula = std::optional<double> (*)(const FattyAcids& acids);

// The mean over the fats by weight; `sums` gets what each of them brought.
Figure mean_of(const std::vector<Part>& parts, Formula formula, Standing standing,
               std::vector<std::pair<const Part*, double>>* sums = nullptr) {
    Figure figure;
    figure.of.standing = standing;
    double sum = 0, weight = 0;
    for (const Part& part : parts) {
        if (!is_fatty(kind_of(part.known))) continue;
        const auto* acids = acids_of(part);
        const std::optional<double> value = acids ? formula((*acids)->value) : std::nullopt;
        ask(figure.of, part, value ? std::optional((*acids)->standing) : std::nullopt);
        if (!value) continue;
        const double percent = decimal::to_double(part.percent.grid);
        sum += percent * *value;
        weight += percent;
        if (sums) sums->push_back({&part, percent * *value});
    }
    if (weight > 0) figure.value = decimal::rounded(sum / weight, decimal::Toward::nearest, kHundredth);
    return figure;
}

Span span_of(const std::vector<Part>& parts, catalogue::Known<Range> Ingredient::*printed) {
    Span span;
    std::int64_t low = 0, high = 0;
    for (const Part& part : parts) {
        if (!is_fatty(kind_of(part.known))) continue;
        const auto* range = part.known && part.known->*printed ? &(part.known->*printed) : nullptr;
        ask(span.of, part, range ? std::optional((*range)->standing) : std::nullopt);
        if (!range) continue;
        low += part.percent.grid * (*range)->value.min;
        high += part.percent.grid * (*range)->value.max;
    }
    if (const std::int64_t known = span.of.known.grid; known > 0)
        span.range = Range{decimal::scale_down(low, 1, known), decimal::scale_up(high, 1, known)};
    return span;
}

}  // namespace

Profile profile_of(const std::vector<Part>& parts) {
    Profile profile;
    std::vector<std::int64_t> sums;
    std::vector<std::string> names;
    for (std::size_t i = 0; const AcidFacts* acid = acid_at(i); ++i) {
        names.emplace_back(acid->name);
        sums.push_back(0);
    }
    names.emplace_back("other");
    sums.push_back(0);
    for (const Part& part : parts) {
        if (!is_fatty(kind_of(part.known))) continue;
        const auto* acids = acids_of(part);
        ask(profile.of, part, acids ? std::optional((*acids)->standing) : std::nullopt);
        if (!acids) continue;
        std::int64_t left = kHundred.grid;
        for (const auto& [name, percent] : (*acids)->value.percent)
            for (std::size_t i = 0; i + 1 < names.size(); ++i)
                if (names[i] == name) {
                    sums[i] += part.percent.grid * percent;
                    left -= percent;
                }
        sums.back() += part.percent.grid * std::max<std::int64_t>(left, 0);
    }
    if (profile.of.known <= Percent{0}) return profile;
    const auto shares = decimal::share_out(kHundred.grid, sums);
    if (!shares) return profile;
    for (std::size_t i = 0; i < names.size(); ++i)
        if ((*shares)[i] > 0) profile.acids.push_back({std::move(names[i]), {(*shares)[i]}});
    return profile;
}

Value iodine_of(const std::vector<Part>& parts) {
    return {mean_of(parts, iodine_value, Standing::document), span_of(parts, &Ingredient::iodine_value)};
}

Value saponification_of(const std::vector<Part>& parts) {
    return {mean_of(parts, saponification_value, Standing::memory),
            span_of(parts, &Ingredient::saponification_value)};
}

Oxidisability oxidisability_of(const std::vector<Part>& parts) {
    Oxidisability made;
    std::vector<std::pair<const Part*, double>> sums;
    made.cox = mean_of(parts, cox_value, Standing::memory, &sums);
    double whole = 0;
    for (const auto& [part, sum] : sums)
        whole += sum;
    for (const auto& [part, sum] : sums)
        if (sum > 0)
            made.drivers.push_back(
                {part->name, {decimal::rounded(100 * sum / whole, decimal::Toward::nearest, kHundredth)}});
    sorting::stable(made.drivers, [](const Driver& a, const Driver& b) { return a.share > b.share; });
    return made;
}

}  // namespace blend
