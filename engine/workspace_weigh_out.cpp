// See workspace_weigh_out.h.
#include "workspace_weigh_out.h"

#include <algorithm>
#include <utility>

#include "batch_rounding.h"
#include "workspace_backup.h"
#include "workspace_lots.h"
#include "workspace_records.h"
#include "workspace_versions.h"

namespace workspace {
namespace {

using quantity::Mass;
using result::Code;
using result::Error;

// What is never rounded up: it has limits of its own wherever it goes (methods: essential oils,
// preservatives, vitamin E), or brings one.
bool is_capped(const catalogue::Ingredient& one) {
    return one.role == "essential_oil" || one.role == "preservative" || one.role == "antioxidant" ||
           !one.max_percent.empty();
}

KeptWeighOut* kept_weigh_out(Workspace& workspace, std::string_view id) {
    for (KeptWeighOut& kept : workspace.weighing)
        if (kept.id == id) return &kept;
    return nullptr;
}

}  // namespace

result::Result<weigh_out::Plan> plan_of(const Recipe& recipe, const batch::Batch& batch,
                                        const catalogue::Catalogue& known, const scales::Bench& bench) {
    if (batch.lines.size() != recipe.formula.lines.size()) return Error{Code::line_missing, "lines", ""};
    weigh_out::Plan plan;
    plan.phases = recipe.formula.phases;
    plan.division = batch.division;
    plan.fill = batch.fill;
    plan.loss = batch.loss;
    if (!batch.fills.empty()) plan.each = batch.fills.front().each;
    for (const batch::Fill& fill : batch.fills)
        plan.containers += fill.count;
    if (bench.jug) plan.jug = bench.jug->empty;
    for (const batch::Line& one : batch.lines) {
        const formula::Line& said = recipe.formula.lines[one.line];
        weigh_out::Line line;
        line.ingredient = said.ingredient;
        line.name = display_name(known, said);
        line.phase = said.phase;
        line.rest = said.rest;
        line.percent = one.percent;
        line.grams = one.grams;
        line.division = one.place.division;
        if (const auto* ingredient = catalogue::find_ingredient(known, said.ingredient)) {
            line.role = ingredient->role;
            line.capped = is_capped(*ingredient);
        }
        for (const batch::Stock& stock : recipe.batch.stock)
            if (stock.ingredient == line.ingredient || stock.ingredient == line.name)
                line.have = line.have.value_or(Mass{}) + stock.grams;
        plan.lines.push_back(std::move(line));
    }
    for (const batch::Cap& cap : batch::caps_of(recipe.formula, known, recipe.product))
        for (const std::size_t line : cap.lines)
            plan.lines[line].most = cap.most;
    return plan;
}

const KeptWeighOut* weigh_out_of(const Workspace& workspace, std::string_view recipe) {
    for (const KeptWeighOut& kept : workspace.weighing)
        if (kept.of == recipe) return &kept;
    return nullptr;
}

bool begin_weigh_out(Workspace& workspace, std::string id, std::string_view recipe, weigh_out::Plan plan,
                     std::string now) {
    const Kept* kept = find(std::as_const(workspace), recipe);
    if (!kept || weigh_out_of(workspace, recipe)) return false;
    KeptWeighOut begun;
    begun.id = std::move(id);
    begun.of = kept->id;
    begun.recipe = kept->recipe;
    begun.weighing.plan = std::move(plan);
    const auto first = weigh_out::order(begun.weighing.plan);
    if (!first.empty()) begun.weighing.at = first.front();
    for (std::size_t i = 0; i < begun.weighing.plan.lines.size(); ++i)  // where there is one lot, it is that
        if (const auto lot = only_lot(workspace, begun.weighing.plan.lines[i].ingredient)) {
            begun.weighing.lots.resize(i + 1);
            begun.weighing.lots[i] = {lot->number, lot->best_before};
        }
    begun.begun = std::move(now);
    workspace.weighing.push_back(std::move(begun));
    return true;
}

bool set_weigh_out(Workspace& workspace, std::string_view id, weigh_out::WeighOut weighing) {
    KeptWeighOut* kept = kept_weigh_out(workspace, id);
    if (kept) kept->weighing = std::move(weighing);
    return kept != nullptr;
}

bool drop_weigh_out(Workspace& workspace, std::string_view id) {
    return std::erase_if(workspace.weighing, [&](const KeptWeighOut& kept) { return kept.id == id; }) > 0;
}

void put_weigh_out(Workspace& workspace, KeptWeighOut kept) {
    if (KeptWeighOut* here = kept_weigh_out(workspace, kept.id))
        *here = std::move(kept);
    else
        workspace.weighing.push_back(std::move(kept));
}

record::Record record_of(const KeptWeighOut& kept, const catalogue::Catalogue& known) {
    record::Record record;
    record.recipe = kept.of;
    record.title = kept.recipe.title;
    record.product = kept.recipe.product;
    if (kept.recipe.made) record.makes = kept.recipe.made->id;
    const weigh_out::WeighOut& weighing = kept.weighing;
    const auto weighed_of = [&](std::size_t at, bool after) {
        const weigh_out::Line& line = weighing.plan.lines[at];
        const catalogue::Ingredient* one = catalogue::find_ingredient(known, line.ingredient);
        record.with_water = record.with_water || (one && one->role == "water");
        record::Weighed weighed;
        weighed.ingredient = line.ingredient;
        weighed.name = line.name;
        weighed.phase = line.phase;
        weighed.percent = line.percent;
        if (!after) weighed.planned = line.grams;
        weighed.weighed = Mass{};
        weighed.after = after;
        if (at < weighing.lots.size()) {
            weighed.lot = weighing.lots[at].lot;
            const std::string& best = weighing.lots[at].best_before;
            if (is_date(best))
                weighed.best_before = best;
            else if (!best.empty())  // typed in another way: not lost
                weighed.lot += (weighed.lot.empty() ? "" : ", ") + best;
        }
        return weighed;
    };
    struct Place {
        std::size_t line;
        bool after;
    };
    std::vector<Place> places;  // of the record's lines
    bool after = false;
    const auto place_of = [&](std::size_t line, bool late) {
        for (std::size_t i = 0; i < places.size(); ++i)
            if (places[i].line == line && places[i].after == late) return i;
        places.push_back({line, late});
        record.lines.push_back(weighed_of(line, late));
        return places.size() - 1;
    };
    for (const weigh_out::Act& act : weighing.acts) {
        after = after || act.deed == weigh_out::Deed::adjust;
        if (act.deed != weigh_out::Deed::pour) continue;
        record::Weighed& weighed = record.lines[place_of(act.line, after)];
        weighed.weighed = *weighed.weighed + act.amount;
    }
    for (std::size_t line = 0; line < weighing.plan.lines.size(); ++line) {  // never poured, or only then
        const bool there =
            std::any_of(places.begin(), places.end(), [&](const Place& place) { return place.line == line; });
        if (!there) place_of(line, false);
    }
    return record;
}

result::Result<std::string> finish_weigh_out(Workspace& workspace, std::string_view id,
                                             const catalogue::Catalogue& known, Finish finish) {
    const KeptWeighOut* found = kept_weigh_out(workspace, id);
    if (!found) return Error{Code::not_a_recipe, std::string(id), ""};
    const KeptWeighOut kept = *found;
    record::Record record = record_of(kept, known);
    record.day = std::move(finish.day);
    record.who = std::move(finish.who);
    auto filed = add_record(workspace, std::move(record), kept.recipe,
                            {std::move(finish.record_id), std::move(finish.version_id)}, finish.now);
    if (!filed) return filed;
    const auto adjusted = [](const weigh_out::Act& act) { return act.deed == weigh_out::Deed::adjust; };
    if (std::any_of(kept.weighing.acts.begin(), kept.weighing.acts.end(), adjusted)) {
        Recipe become = as_weighed(kept.recipe, weigh_out::standing_of(kept.weighing));
        become.batch = kept.recipe.batch;
        auto version = keep_version(workspace, kept.of, become, finish.adjusted_name,
                                    std::move(finish.adjusted_id), finish.now);
        if (!version) return version;
    }
    drop_weigh_out(workspace, kept.id);
    return filed;
}

Recipe as_weighed(const Recipe& recipe, const weigh_out::Standing& standing) {
    Recipe become = recipe;
    if (standing.percents.size() != become.formula.lines.size()) return become;
    for (std::size_t i = 0; i < standing.percents.size(); ++i)
        if (!become.formula.lines[i].rest) become.formula.lines[i].percent = standing.percents[i];
    become.batch = batch::of_grams(become.batch, standing.total);
    return become;
}

std::optional<std::int64_t> seconds_left(const weigh_out::Timer& timer, std::string_view now) {
    const auto gone = workspace_backup::seconds_between(timer.started, now);
    if (!gone) return std::nullopt;
    return timer.minutes * 60 - *gone;
}

}  // namespace workspace
