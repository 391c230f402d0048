// A weigh-out that is under way, as a record of its own. It is written with every pour: what was typed and
// not said to be in yet stands in it too.
#include <array>

#include "store.h"
#include "store_json.h"
#include "store_migrations.h"
#include "store_recipe.h"

namespace store {
namespace {

using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;
using weigh_out::Act;
using weigh_out::Deed;

constexpr std::uint64_t kWeighOutFormat = 1;

constexpr std::array<std::pair<std::string_view, Deed>, 7> kDeeds{{{"pour", Deed::pour},
                                                                   {"proportion", Deed::proportion},
                                                                   {"take_up", Deed::take_up},
                                                                   {"accept", Deed::accept},
                                                                   {"adjust", Deed::adjust},
                                                                   {"jug", Deed::jug},
                                                                   {"fill", Deed::fill}}};

std::size_t index_of(Fields& fields, std::string_view key) {
    return static_cast<std::size_t>(fields.whole(key).value_or(0));
}

void write_flag(Writer& writer, std::string_view key, bool value) {
    if (!value) return;
    writer.key(key);
    writer.flag(true);
}

void write_whole(Writer& writer, std::string_view key, std::size_t number) {
    if (number == 0) return;
    writer.key(key);
    writer.whole(number);
}

template <class Each>
void each_of(Fields& fields, std::string_view key, const Each& each) {
    const Json* list = fields.list(key);
    for (std::size_t i = 0; list && i < list->size() && !fields.failure().failed(); ++i)
        each((*list)[i], store_json::indexed(fields.place(key), i));
}

void write_plan(Writer& writer, const weigh_out::Plan& plan) {
    writer.key("plan");
    writer.object();
    writer.pair_figure("division_g", plan.division.grid);
    writer.pair_figure("fill_g", plan.fill.grid);
    writer.pair_figure("each_g", plan.each.grid);
    write_whole(writer, "containers", static_cast<std::size_t>(std::max<std::int64_t>(0, plan.containers)));
    writer.pair_figure("loss_percent", plan.loss.grid);
    if (plan.jug) writer.pair_figure("jug_g", plan.jug->grid);
    if (plan.pot) writer.pair_figure("pot_g", plan.pot->grid);
    writer.key("lines");
    writer.list();
    for (const weigh_out::Line& line : plan.lines) {
        writer.flat_object();
        if (!line.ingredient.empty()) writer.pair("ingredient", line.ingredient);
        writer.pair("name", line.name);
        writer.pair("phase", line.phase);
        if (!line.role.empty()) writer.pair("role", line.role);
        write_flag(writer, "rest", line.rest);
        write_flag(writer, "capped", line.capped);
        writer.pair_figure("percent", line.percent.grid);
        writer.pair_figure("grams", line.grams.grid);
        writer.pair_figure("division_g", line.division.grid);
        if (line.most) writer.pair_figure("most_percent", line.most->grid);
        if (line.have) writer.pair_figure("have_g", line.have->grid);
        writer.end();
    }
    writer.end();
    writer.end();
}

weigh_out::Plan plan_from(const Json& value, const workspace::Recipe& recipe, Failure& failure) {
    weigh_out::Plan plan;
    Fields fields(value, "plan", failure);
    plan.phases = recipe.formula.phases;
    for (const char* needed : {"division_g", "lines"})
        fields.need(needed);
    plan.division = fields.mass("division_g").value_or(quantity::Mass{});
    plan.fill = fields.mass("fill_g").value_or(quantity::Mass{});
    plan.each = fields.mass("each_g").value_or(quantity::Mass{});
    plan.containers = static_cast<std::int64_t>(index_of(fields, "containers"));
    plan.loss = fields.percent("loss_percent").value_or(quantity::Percent{});
    plan.jug = fields.mass("jug_g");
    plan.pot = fields.mass("pot_g");
    each_of(fields, "lines", [&](const Json& one, const std::string& place) {
        Fields said(one, place, failure);
        for (const char* needed : {"percent", "grams", "division_g"})
            said.need(needed);
        weigh_out::Line line;
        line.ingredient = said.text("ingredient");
        line.name = said.text("name");
        line.phase = said.needed_text("phase");
        line.role = said.text("role");
        line.rest = said.flag("rest");
        line.capped = said.flag("capped");
        line.percent = said.percent("percent").value_or(quantity::Percent{});
        line.grams = said.mass("grams").value_or(quantity::Mass{});
        line.division = said.mass("division_g").value_or(quantity::Mass{});
        line.most = said.percent("most_percent");
        line.have = said.mass("have_g");
        said.finish();
        plan.lines.push_back(std::move(line));
    });
    fields.finish();
    return plan;
}

void write_act(Writer& writer, const Act& act) {
    writer.flat_object();
    for (const auto& [word, deed] : kDeeds)
        if (deed == act.deed) writer.pair("do", word);
    write_whole(writer, "line", act.line);
    write_whole(writer, "other", act.other);
    if (act.amount.grid != 0) writer.pair_figure("grams", act.amount.grid);
    if (act.percent.grid != 0) writer.pair_figure("percent", act.percent.grid);
    write_flag(writer, "rest", act.rest);
    write_flag(writer, "not_zeroed", !act.zeroed);
    if (act.shown.grid != 0) writer.pair_figure("shown_g", act.shown.grid);
    if (!act.at.empty()) writer.pair("at", act.at);
    writer.end();
}

Act act_from(const Json& value, const std::string& place, Failure& failure) {
    Act act;
    Fields fields(value, place, failure);
    const std::string word = fields.needed_text("do");
    bool known = false;
    for (const auto& [name, deed] : kDeeds)
        if (name == word) act.deed = deed, known = true;
    if (!known) failure.at(result::Code::field_unknown_value, fields.place("do"), word);
    act.line = index_of(fields, "line");
    act.other = index_of(fields, "other");
    act.amount = fields.mass("grams").value_or(quantity::Mass{});
    act.percent = fields.percent("percent").value_or(quantity::Percent{});
    act.rest = fields.flag("rest");
    act.zeroed = !fields.flag("not_zeroed");
    act.shown = fields.mass("shown_g").value_or(quantity::Mass{});
    act.at = fields.text("at");
    fields.finish();
    return act;
}

}  // namespace

std::string write_weigh_out(const workspace::KeptWeighOut& kept) {
    const weigh_out::WeighOut& weighing = kept.weighing;
    Writer writer(store_json::Layout::one_line);
    writer.object();
    writer.key("tarebench");
    writer.whole(kFormat);
    writer.pair("kind", "weigh_out");
    writer.key("weigh_out");
    writer.whole(kWeighOutFormat);
    writer.pair("id", kept.id);
    writer.pair("of", kept.of);
    writer.key("saves");
    writer.whole(kept.saves);
    if (!kept.changed.empty()) writer.pair("changed", kept.changed);
    if (!kept.begun.empty()) writer.pair("begun", kept.begun);
    writer.key("recipe");
    store_recipe::write(writer, kept.recipe);
    write_plan(writer, weighing.plan);
    writer.key("acts");
    writer.list();
    for (const Act& act : weighing.acts)
        write_act(writer, act);
    writer.end();
    write_whole(writer, "at", weighing.at);
    if (weighing.typed) writer.pair_figure("typed_g", weighing.typed->grid);
    write_flag(writer, "not_zeroed", !weighing.zeroed);
    writer.key("ticked");
    writer.list();
    for (const std::string& step : weighing.ticked)
        writer.text(step);
    writer.end();
    writer.key("timers");
    writer.list();
    for (const weigh_out::Timer& timer : weighing.timers) {
        writer.flat_object();
        writer.pair("what", timer.what);
        writer.pair("started", timer.started);
        write_whole(writer, "minutes", static_cast<std::size_t>(std::max<std::int64_t>(0, timer.minutes)));
        writer.end();
    }
    writer.end();
    writer.key("lots");
    writer.list();
    for (const weigh_out::Lot& lot : weighing.lots) {
        writer.flat_object();
        if (!lot.lot.empty()) writer.pair("lot", lot.lot);
        if (!lot.best_before.empty()) writer.pair("best_before", lot.best_before);
        writer.end();
    }
    writer.end();
    return writer.finish();
}

result::Result<workspace::KeptWeighOut> read_weigh_out(std::string_view json) {
    result::Result<Json> tree = store_json::parse(json);
    if (!tree) return tree.error();
    const result::Result<Json> document =
        store_migrations::lifted(std::move(tree).value(), "weigh_out", "", store_migrations::steps());
    if (!document) return document.error();
    Failure failure;
    Fields fields(*document, "", failure);
    fields.any("tarebench");
    fields.any("kind");
    fields.need("weigh_out");
    if (const auto format = fields.whole("weigh_out"); format && *format > kWeighOutFormat)
        return {result::Code::version_newer, "weigh_out", std::to_string(*format)};
    workspace::KeptWeighOut kept;
    weigh_out::WeighOut& weighing = kept.weighing;
    kept.id = fields.needed_text("id");
    kept.of = fields.text("of");
    for (const char* needed : {"saves", "recipe", "plan"})
        fields.need(needed);
    kept.saves = fields.whole("saves").value_or(0);
    kept.changed = fields.text("changed");
    kept.begun = fields.text("begun");
    if (const Json* recipe = fields.any("recipe"))
        kept.recipe = store_recipe::recipe_from(*recipe, "recipe", failure);
    if (const Json* plan = fields.any("plan")) weighing.plan = plan_from(*plan, kept.recipe, failure);
    each_of(fields, "acts", [&](const Json& one, const std::string& place) {
        weighing.acts.push_back(act_from(one, place, failure));
    });
    weighing.at = index_of(fields, "at");
    weighing.typed = fields.mass("typed_g");
    weighing.zeroed = !fields.flag("not_zeroed");
    each_of(fields, "ticked", [&](const Json& one, const std::string& place) {
        weighing.ticked.push_back(store_json::text_of(one, place, failure));
    });
    each_of(fields, "timers", [&](const Json& one, const std::string& place) {
        Fields timer(one, place, failure);
        std::string what = timer.needed_text("what"), started = timer.needed_text("started");
        weighing.timers.push_back({std::move(what), std::move(started),
                                   static_cast<std::int64_t>(std::min<std::uint64_t>(
                                       timer.whole("minutes").value_or(0), workspace::kMostStepMinutes))});
        timer.finish();
    });
    each_of(fields, "lots", [&](const Json& one, const std::string& place) {
        Fields lot(one, place, failure);
        std::string number = lot.text("lot");
        weighing.lots.push_back({std::move(number), lot.text("best_before")});
        lot.finish();
    });
    fields.finish();
    if (!failure.failed()) {
        if (const auto fault = weigh_out::fault_of(weighing))
            failure.at(fault->code, fault->place, fault->detail);
        if (weighing.plan.lines.size() != kept.recipe.formula.lines.size())
            failure.at(result::Code::line_missing, "plan.lines", "");
    }
    if (failure.failed()) return *failure.error;
    return kept;
}

}  // namespace store
