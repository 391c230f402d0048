#include "listed_recipe.h"

#include "utf8.h"

namespace listed_recipe {

workspace::Recipe of(const std::vector<reading_list::Entry>& entries,
                     const std::vector<quantity::Percent>& percents, const catalogue::Catalogue& known) {
    std::vector<formula::Line> parts[3];
    formula::Line* before = nullptr;  // what a carrier would go with
    for (std::size_t i = 0; i < entries.size() && i < percents.size(); ++i) {
        const reading_list::Entry& entry = entries[i];
        if (entry.as == reading_list::As::carrier && before != nullptr) {
            before->percent = before->percent + percents[i];
            continue;
        }
        before = nullptr;
        if (percents[i].grid == 0) continue;
        const auto* ingredient = catalogue::find_ingredient(known, entry.ingredient);
        const auto phase = ingredient != nullptr ? ingredient->phase : catalogue::Phase::either;
        formula::Line line;
        line.ingredient = entry.ingredient;
        if (ingredient == nullptr)
            line.name = std::string(utf8::start_within(entry.written, formula::kMostNameBytes));
        line.percent = percents[i];
        std::vector<formula::Line>& part = parts[phase == catalogue::Phase::water       ? 1
                                                 : phase == catalogue::Phase::cool_down ? 2
                                                                                        : 0];
        part.push_back(std::move(line));
        before = &part.back();
    }
    workspace::Recipe recipe;
    for (std::vector<formula::Line>& lines : parts) {
        if (lines.empty()) continue;
        formula::Phase phase;
        phase.id = std::string(1, static_cast<char>('A' + recipe.formula.phases.size()));
        for (formula::Line& line : lines) {
            line.phase = phase.id;
            recipe.formula.lines.push_back(std::move(line));
        }
        recipe.formula.phases.push_back(std::move(phase));
    }
    return recipe;
}

}  // namespace listed_recipe
