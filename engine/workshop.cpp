#include "workshop.h"

#include <algorithm>
#include <array>

namespace workshop {
namespace {

using catalogue::Ingredient;
using quantity::Mass;
using quantity::Percent;

bool within(std::int64_t value, std::int64_t least, std::int64_t most) {
    return value >= least && value <= most;
}

// What one unit is: as the batch counts them.
std::optional<batch::Containers> unit_of(const batch::Request& said) {
    batch::Containers unit;
    if (said.amount == batch::Amount::people && said.unit) {
        unit = *said.unit;
    } else if (said.amount == batch::Amount::people && said.each > 0) {
        unit.fill_g = quantity::grams(said.each);
    } else if (!said.containers.empty()) {
        unit = said.containers.front();
    } else if (said.unit) {
        unit = *said.unit;
    } else {
        return std::nullopt;
    }
    unit.count = 1;
    return unit;
}

const Ingredient* ingredient_of(const catalogue::Catalogue& known, const formula::Line& line) {
    return find_ingredient(known, line.ingredient);
}

bool is_scent(const Ingredient* one) {
    return one != nullptr && (one->role == "essential_oil" || one->role == "extract");
}

struct Making {
    const Recipe& recipe;
    const Plan& plan;
    const catalogue::Catalogue& known;
    Workshop made = {};

    const std::vector<formula::Line>& lines() const { return recipe.formula.lines; }

    result::Result<Kit> kit(std::int64_t people, std::int64_t units, Mass samples) {
        batch::Request request = recipe.batch;
        request.amount = batch::Amount::containers;
        request.containers = {made.unit};
        request.containers.front().count = units;
        if (units == 0) request.containers.clear();
        if (samples.grid > 0) {
            batch::Containers portion;
            portion.fill_g = samples;
            request.containers.push_back(portion);
        }
        const auto batch = batch::make(recipe.formula, request, known, recipe.product);
        if (!batch) return batch.error();
        Kit kit{people, units, batch->total, {}, {}};
        kit.grams.resize(lines().size());
        for (const batch::Line& line : batch->lines)
            kit.grams[line.line] = line.grams;
        if (units > 0) made.unit_g = batch->fills.front().each;
        return kit;
    }

    std::optional<result::Error> kits() {
        for (std::int64_t i = 0; i < plan.stations; ++i) {
            const std::int64_t people =
                plan.people / plan.stations + (i < plan.people % plan.stations ? 1 : 0);
            if (!made.kits.empty() && made.kits.back().people == people) {
                made.kits.push_back(made.kits.back());
                continue;
            }
            auto one = kit(people, people * plan.each, {});
            if (!one) return one.error();
            made.kits.push_back(*one);
        }
        made.spare.assign(static_cast<std::size_t>(plan.spare), made.kits.front());
        if (plan.shown == 0 && plan.sample.grid == 0) return std::nullopt;
        auto one = kit(0, plan.shown, {plan.sample.grid * plan.people});
        if (!one) return one.error();
        made.demonstration = *one;
        return std::nullopt;
    }

    template <class Do>
    void each_kit(const Do& act) {
        for (Kit& one : made.kits)
            act(one);
        for (Kit& one : made.spare)
            act(one);
        if (made.demonstration) act(*made.demonstration);
    }

    // Where it can be, the rest line; else the largest of the liquid oils.
    std::optional<std::size_t> carrier(const std::vector<Percent>& percents) const {
        std::optional<std::size_t> best;
        for (std::size_t i = 0; i < lines().size(); ++i) {
            const Ingredient* one = ingredient_of(known, lines()[i]);
            if (one == nullptr || one->role != "liquid_oil" || lines()[i].strained) continue;
            if (lines()[i].rest) return i;
            if (!best || percents[i] > percents[*best]) best = i;
        }
        return best;
    }

    // The strongest that every kit's scale reads (scales::reads) and every kit has the oil for. What a kit
    // takes follows from the formula, not from its rounded drops.
    void dilute(const std::vector<Percent>& percents) {
        std::vector<std::size_t> scents;
        std::int64_t share = 0;
        for (std::size_t i = 0; i < lines().size(); ++i)
            if (is_scent(ingredient_of(known, lines()[i])) && percents[i].grid > 0 && !lines()[i].strained) {
                scents.push_back(i);
                share += percents[i].grid;
            }
        const std::optional<std::size_t> oil = carrier(percents);
        if (scents.empty() || !oil || !plan.diluted) return;
        const std::int64_t step = recipe.batch.division.grid;
        const auto mix_of = [&](const Kit& kit, std::int64_t strength) {
            return Mass{decimal::scale_nearest(kit.total.grid, share, strength * step) * step};
        };
        const auto neat = [&](const Kit& kit) {
            Mass sum;
            for (const std::size_t i : scents)
                sum = sum + kit.grams[i];
            return sum;
        };
        for (const std::int64_t whole : {25, 20, 10, 5, 4, 2, 1}) {
            const std::int64_t strength = whole * decimal::kOne;
            bool fits = true;
            each_kit([&](Kit& kit) {
                const Mass mix = mix_of(kit, strength);
                fits = fits && scales::reads(mix, recipe.batch.division) &&
                       mix - neat(kit) <= kit.grams[*oil] && mix >= neat(kit);
            });
            if (!fits) continue;
            Dilution made_of;
            made_of.oil = *oil;
            made_of.strength = {strength};
            each_kit([&](Kit& kit) {
                kit.mix = mix_of(kit, strength);
                kit.grams[*oil] = kit.grams[*oil] - (kit.mix - neat(kit));
                for (const std::size_t i : scents)
                    kit.grams[i] = {};
                made_of.total = made_of.total + kit.mix;
            });
            std::vector<std::int64_t> weights;
            for (const std::size_t i : scents)
                weights.push_back(percents[i].grid * whole);
            weights.push_back(share * (100 - whole));
            const auto parts = decimal::share_out(made_of.total.grid / step, weights);
            if (!parts) return;
            for (std::size_t i = 0; i < scents.size(); ++i)
                made_of.parts.push_back({scents[i], {(*parts)[i] * step}});
            made_of.with = {parts->back() * step};
            made.dilution = std::move(made_of);
            return;
        }
    }

    Ahead ahead_of(const formula::Line& line) const {
        const Ingredient* one = ingredient_of(known, line);
        if (one == nullptr) return Ahead::unknown;
        if (is_scent(one)) return Ahead::evaporates;
        if (one->role == "preservative") return Ahead::preservative;
        if (one->role == "antioxidant" || one->role == "skin_conditioner") return Ahead::active;
        if (one->role == "water") return Ahead::water;
        if (one->role == "powder" || one->role == "scrub") return Ahead::day_before;
        bool cool = one->phase == catalogue::Phase::cool_down;
        for (const formula::Phase& phase : recipe.formula.phases)
            cool = cool || (phase.id == line.phase && phase.add_below_c.has_value());
        return cool ? Ahead::heat_sensitive : Ahead::day_before;
    }

    void totals() {
        const auto add = [&](std::size_t line, Mass grams) {
            const formula::Line& said = lines()[line];
            for (Total& one : made.totals) {
                const formula::Line& other = lines()[one.line];
                if (other.ingredient != said.ingredient || other.name != said.name) continue;
                one.need = one.need + grams;
                return;
            }
            made.totals.push_back({line, grams, {}});
        };
        for (std::size_t i = 0; i < lines().size(); ++i) {
            add(i, {});
            each_kit([&](Kit& kit) { add(i, kit.grams[i]); });
        }
        if (made.dilution) {
            add(made.dilution->oil, made.dilution->with);
            for (const Dilution::Part& part : made.dilution->parts)
                add(part.line, part.grams);
        }
        for (Total& one : made.totals)
            one.bought = bought(one.need, pack_of(plan.packs, lines()[one.line]));
        each_kit([&](Kit& kit) {
            made.units += kit.units;
            made.total = made.total + kit.total;
        });
    }

    void power() {
        Power& power = made.power;
        power.usable = plan.volts * plan.amperes * kLoad.grid / quantity::kHundred.grid;
        power.plates = plan.stations + (made.demonstration ? 1 : 0);
        power.each = power.usable / plan.watts;
        if (power.each > 0) power.circuits = (power.plates + power.each - 1) / power.each;
    }

    void day() {
        made.day.push_back({Slot::Kind::set_up, plan.starts - kSetUp, kSetUp, 0});
        std::int64_t now = plan.starts;
        made.day.push_back({Slot::Kind::welcome, now, kWelcome, 0});
        now += kWelcome;
        for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
            made.day.push_back({Slot::Kind::step, now, recipe.steps[i].minutes, i});
            now += recipe.steps[i].minutes.value_or(0);
        }
        made.day.push_back({Slot::Kind::clear_up, now, kClearUp, 0});
    }

    // Down into made parts.
    bool holds(const Ingredient& one, std::string_view trait, int deep = 0) const {
        if (has_trait(one, trait)) return true;
        if (deep < 8)
            for (const catalogue::Part& part : one.parts)
                if (const Ingredient* inner = find_ingredient(known, part.ingredient))
                    if (inner != &one && holds(*inner, trait, deep + 1)) return true;
        return false;
    }

    void asked() {
        static constexpr std::array<std::pair<std::string_view, std::string_view>, 6> kTraits{
            {{"nut", "workshop.ask_nut"},
             {"soya", "workshop.ask_soya"},
             {"gluten", "workshop.ask_gluten"},
             {"sesame", "workshop.ask_sesame"},
             {"bee", "workshop.ask_bee"},
             {"wool", "workshop.ask_wool"}}};
        const auto ask = [&](std::string_view key, const auto& is_it) {
            Asked one{key, {}};
            for (std::size_t i = 0; i < lines().size(); ++i) {
                const Ingredient* ingredient = ingredient_of(known, lines()[i]);
                if (ingredient != nullptr && is_it(*ingredient)) one.lines.push_back(i);
            }
            if (!one.lines.empty()) made.asked.push_back(std::move(one));
        };
        for (const auto& [trait, key] : kTraits)
            ask(key, [&, held = trait](const Ingredient& one) { return holds(one, held); });
        ask("workshop.ask_scent", [](const Ingredient& one) { return is_scent(&one); });
        for (const std::string_view key :
             {"workshop.ask_allergy", "workshop.ask_pregnancy", "workshop.ask_asthma",
              "workshop.ask_epilepsy", "workshop.ask_skin", "workshop.ask_children", "workshop.ask_hands"})
            made.asked.push_back({key, {}});
    }
};

}  // namespace

std::optional<result::Error> fault_of(const Plan& plan, const std::string& at) {
    const auto wrong = [&](const char* field, std::int64_t value) {
        return result::Error{result::Code::field_unknown_value, at + field, std::to_string(value)};
    };
    if (!within(plan.people, 1, kMostPeople)) return wrong("people", plan.people);
    if (!within(plan.each, 1, kMostEach)) return wrong("each", plan.each);
    if (!within(plan.stations, 1, plan.people)) return wrong("stations", plan.stations);
    if (!within(plan.shown, 0, kMostEach)) return wrong("shown", plan.shown);
    if (!within(plan.spare, 0, kMostSpare)) return wrong("spare", plan.spare);
    if (!within(plan.sample.grid, 0, 1000 * decimal::kOne)) return wrong("sample_g", plan.sample.grid);
    if (!within(plan.starts, 0, 24 * 60 - 1)) return wrong("starts", plan.starts);
    if (!within(plan.watts, 1, 20'000)) return wrong("watts", plan.watts);
    if (!within(plan.volts, 1, 1000)) return wrong("volts", plan.volts);
    if (!within(plan.amperes, 1, 200)) return wrong("amperes", plan.amperes);
    if (plan.packs.size() > kMostPacks) return result::Error{result::Code::too_many, at + "packs", ""};
    for (std::size_t i = 0; i < plan.packs.size(); ++i)
        if (plan.packs[i].ingredient.empty() || plan.packs[i].ingredient.size() > formula::kMostNameBytes ||
            plan.packs[i].grams.grid <= 0 || plan.packs[i].grams > batch::kLargest)
            return wrong("packs", static_cast<std::int64_t>(i));
    return std::nullopt;
}

Mass pack_of(const std::vector<Pack>& packs, const formula::Line& line) {
    for (const Pack& one : packs)
        if (one.ingredient == (line.ingredient.empty() ? line.name : line.ingredient)) return one.grams;
    return {};
}

std::optional<Bought> bought(Mass need, Mass pack) {
    if (pack.grid <= 0) return std::nullopt;
    const std::int64_t count = (need.grid + pack.grid - 1) / pack.grid;
    return Bought{count, pack, Mass{count * pack.grid} - need};
}

result::Result<Workshop> of(const Recipe& recipe, const Plan& plan, const catalogue::Catalogue& known) {
    if (auto fault = fault_of(plan, "workshop.")) return *fault;
    const auto percents = formula::percents(recipe.formula);
    if (!percents) return percents.error();
    const std::optional<batch::Containers> unit = unit_of(recipe.batch);
    if (!unit) return {result::Code::amount_missing, "batch", ""};
    Making making{recipe, plan, known};
    making.made.unit = *unit;
    if (auto fault = making.kits()) return *fault;
    making.dilute(*percents);
    for (const formula::Line& line : recipe.formula.lines)
        making.made.ahead.push_back(making.ahead_of(line));
    making.totals();
    making.power();
    making.day();
    making.asked();
    return std::move(making.made);
}

}  // namespace workshop
