#include "version.h"

#include <algorithm>

#include "utf8.h"

namespace version {
namespace {

using quantity::Percent;

std::string key_of(const formula::Line& line) {
    return line.ingredient.empty() ? utf8::lowered(line.name) : line.ingredient;
}

std::vector<std::optional<Percent>> percents_of(const formula::Formula& formula) {
    std::vector<std::optional<Percent>> all;
    const auto whole = formula::percents(formula);
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        const formula::Line& line = formula.lines[i];
        if (whole)
            all.emplace_back((*whole)[i]);
        else
            all.push_back(line.rest ? std::nullopt : std::optional(line.percent));
    }
    return all;
}

}  // namespace

std::vector<Line> compare(const formula::Formula& one, const formula::Formula& other) {
    const auto was = percents_of(one), is = percents_of(other);
    std::vector<std::optional<std::size_t>> before(other.lines.size());
    std::vector<bool> taken(one.lines.size(), false);
    for (const bool of_one_phase : {true, false})
        for (std::size_t i = 0; i < other.lines.size(); ++i)
            for (std::size_t j = 0; j < one.lines.size() && !before[i]; ++j) {
                if (taken[j] || key_of(one.lines[j]) != key_of(other.lines[i])) continue;
                if (of_one_phase && one.lines[j].phase != other.lines[i].phase) continue;
                before[i] = j;
                taken[j] = true;
            }
    std::vector<Line> lines;
    for (std::size_t i = 0; i < other.lines.size(); ++i) {
        Line line{before[i], i, std::nullopt, is[i], Change::added, false};
        if (before[i]) {
            line.was = was[*before[i]];
            line.change = line.was == line.is ? Change::same : Change::percent;
            line.moved = one.lines[*before[i]].phase != other.lines[i].phase;
        }
        lines.push_back(line);
    }
    for (std::size_t j = 0; j < one.lines.size(); ++j)
        if (!taken[j]) lines.push_back({j, std::nullopt, was[j], std::nullopt, Change::gone, false});
    return lines;
}

std::size_t changes(const std::vector<Line>& lines) {
    return static_cast<std::size_t>(std::count_if(lines.begin(), lines.end(), [](const Line& line) {
        return line.change != Change::same || line.moved;
    }));
}

}  // namespace version
