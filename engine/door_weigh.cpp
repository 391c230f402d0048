// tarebench weigh: a recipe, what was poured and decided so far, to what stands, what is next, and every way
// on from a mistake worked out.
#include "analysis.h"
#include "door.h"
#include "store_json.h"
#include "store_limits.h"
#include "store_recipe.h"
#include "weigh_out_ways.h"
#include "weighed.h"
#include "workspace_weigh_out.h"

namespace door {
namespace {

using result::Code;
using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using weigh_out::Option;
using weigh_out::Standing;
using weigh_out::Way;
using weigh_out::WeighOut;

std::string_view word_of(Way way) {
    switch (way) {
        case Way::add_more:
            return "add_more";
        case Way::proportion:
            return "proportion";
        case Way::take_up:
            return "take_up";
        case Way::accept:
            return "accept";
    }
    return "";
}

// One act done on the weighing, or why it cannot be.
result::Result<WeighOut> done(const WeighOut& weighing, const Json& value, const std::string& place) {
    Failure failure;
    Fields fields(value, place, failure);
    const auto line = static_cast<std::size_t>(fields.whole("line").value_or(0));
    const auto by = fields.whole("by");
    const auto shows = fields.mass("shows_g"), jug = fields.mass("jug_g"), fill = fields.mass("fill_g");
    const auto percent = fields.percent("percent");
    const bool not_zeroed = fields.flag("not_zeroed"), rest_gives = fields.flag("rest_gives");
    const std::string choose = fields.text("choose");
    fields.finish();
    if (failure.failed()) return *failure.error;
    if (jug) return weigh_out::take_jug(weighing, *jug, "");
    if (fill) return weigh_out::fill(weighing, *fill, "");
    if (line >= weighing.plan.lines.size())
        return result::Error{Code::line_missing, store_json::joined(place, "line"), std::to_string(line)};
    if (shows) return weigh_out::pour(weighing, line, *shows, !not_zeroed, "");
    if (percent) {
        auto option = weigh_out::adjusted(weighing, line, *percent, rest_gives);
        if (!option) return result::Error{option.error().code, place, option.error().detail};
        return std::move(option.value().after);
    }
    for (Option& option : weigh_out::options(weighing, line))
        if (option.possible && word_of(option.way) == choose && (!by || option.other == *by))
            return std::move(option.after);
    return result::Error{choose.empty() ? Code::field_missing : Code::field_unknown_value,
                         store_json::joined(place, "choose"), choose.empty() ? "choose" : choose};
}

result::Result<workspace::KeptWeighOut> asked(std::string_view input, const store::Presets& presets,
                                              std::vector<scales::Scale>& bench) {
    const result::Result<Json> json = store_json::parse(input);
    if (!json) return json.error();
    Failure failure;
    Fields fields(*json, "", failure);
    workspace::KeptWeighOut kept;
    fields.need("recipe");
    if (const Json* recipe = fields.any("recipe"))
        kept.recipe = store_recipe::recipe_from(*recipe, "recipe", failure);
    if (const Json* list = fields.list("scales"))
        for (std::size_t i = 0; i < list->size() && !failure.failed(); ++i) {
            Fields one((*list)[i], store_json::indexed("scales", i), failure);
            one.need("division_g");
            scales::Scale scale;
            scale.division = one.mass("division_g").value_or(quantity::Mass{});
            scale.capacity = one.mass("capacity_g").value_or(quantity::Mass{});
            one.finish();
            bench.push_back(std::move(scale));
        }
    scales::Bench on{bench, std::nullopt};
    if (const auto jug = fields.mass("jug_g")) on.jug = scales::Jug{"", *jug};
    const auto pot = fields.mass("pot_g");
    const Json* acts = fields.list("acts");
    fields.finish();
    if (failure.failed()) return *failure.error;
    auto recipe = workspace::checked(std::move(kept.recipe));
    if (!recipe)
        return result::Error{recipe.error().code, store_json::joined("recipe", recipe.error().place),
                             recipe.error().detail};
    kept.recipe = std::move(recipe).value();
    const analysis::Analysis report = analysis::of(kept.recipe, presets.catalogue, on);
    if (!report.batch) return report.batch.error();
    const auto known = catalogue::with_own(presets.catalogue, kept.recipe.own);
    auto plan = workspace::plan_of(kept.recipe, *report.batch, known, on);
    if (!plan) return plan.error();
    kept.weighing.plan = std::move(plan).value();
    kept.weighing.plan.pot = pot;
    if (auto fault = weigh_out::fault_of(kept.weighing)) return *fault;
    for (std::size_t i = 0; acts && i < acts->size(); ++i) {
        auto next = done(kept.weighing, (*acts)[i], store_json::indexed("acts", i));
        if (!next) return next.error();
        kept.weighing = std::move(next).value();
    }
    return kept;
}

void write_index(store_json::Writer& writer, std::string_view key, std::size_t index) {
    writer.key(key);
    writer.whole(index);
}

void write_flag(store_json::Writer& writer, std::string_view key, bool value) {
    writer.key(key);
    writer.flag(value);
}

void write_standing(store_json::Writer& writer, const WeighOut& weighing, const Standing& standing) {
    writer.key("lines");
    writer.list();
    for (std::size_t i = 0; i < standing.rows.size(); ++i) {
        const weigh_out::Line& line = weighing.plan.lines[i];
        const weigh_out::Row& row = standing.rows[i];
        writer.flat_object();
        writer.pair(line.ingredient.empty() ? "name" : "ingredient",
                    line.ingredient.empty() ? line.name : line.ingredient);
        writer.pair("phase", line.phase);
        writer.pair_figure("percent", standing.percents[i].grid);
        writer.pair_figure("target_g", row.target.grid);
        writer.pair_figure("poured_g", row.poured.grid);
        writer.pair_figure("add_g", row.left.grid);
        writer.pair_figure("tolerance_g", row.tolerance.grid);
        write_flag(writer, "done", row.done);
        if (row.over) write_flag(writer, "over", true);
        writer.end();
    }
    writer.end();
}

void write_choice(store_json::Writer& writer, std::size_t line, const Option& option,
                  const workspace::Recipe& recipe, const store::Presets& presets, const limits::Book* book) {
    writer.object();
    write_index(writer, "line", line);
    writer.pair("choose", word_of(option.way));
    if (option.other) write_index(writer, "by", *option.other);
    write_flag(writer, "possible", option.possible);
    if (option.way == Way::proportion) write_flag(writer, "whole", option.whole);
    if (option.short_of) write_index(writer, "short_of", *option.short_of);
    if (option.pot_full) write_flag(writer, "pot_full", true);
    writer.pair_figure("total_g", option.then.total.grid);
    if (option.beyond.grid > 0) writer.pair_figure("beyond_g", option.beyond.grid);
    writer.key("lines");
    writer.list();
    for (std::size_t i = 0; i < option.then.rows.size(); ++i) {
        writer.flat_object();
        writer.pair_figure("add_g", option.then.rows[i].left.grid);
        writer.pair_figure("percent", option.then.percents[i].grid);
        writer.end();
    }
    writer.end();
    writer.key("findings");
    writer.list();
    if (option.possible)
        for (const finding::Finding& one : weighed::remarks(recipe, option.then, presets.catalogue, book))
            writer.text(finding::code_name(one.code));
    writer.end();
    writer.end();
}

}  // namespace

Answer weigh(std::string_view input, const store::Presets& presets, std::string_view limits) {
    std::vector<scales::Scale> bench;
    const auto kept = asked(input, presets, bench);
    if (!kept) return refuse(kept.error(), presets);
    result::Result<limits::Book> book = result::Error{};
    if (!limits.empty()) book = store::unpack_limits(limits);
    const WeighOut& weighing = kept->weighing;
    const Standing standing = weigh_out::standing_of(weighing);
    const auto order = weigh_out::order(weighing.plan);

    store_json::Writer writer(store_json::Layout::indented);
    writer.object();
    writer.pair_figure("total_g", standing.total.grid);
    writer.pair_figure("poured_g", standing.poured.grid);
    write_flag(writer, "finished", standing.finished);
    if (const auto next = weigh_out::next(weighing, standing, order.back())) {
        const weigh_out::Shows shows = weigh_out::shows(weighing, standing, *next, bench);
        writer.key("next");
        writer.flat_object();
        write_index(writer, "line", *next);
        writer.pair_figure("add_g", shows.zeroed.grid);
        writer.pair_figure("division_g", shows.place.division.grid);
        if (shows.not_zeroed) writer.pair_figure("not_zeroed_g", shows.not_zeroed->grid);
        writer.end();
    }
    if (weighing.plan.containers > 0)
        write_index(writer, "containers",
                    static_cast<std::size_t>(weigh_out::count_of(weighing.plan, standing)));
    write_standing(writer, weighing, standing);
    writer.key("choices");
    writer.list();
    for (const std::size_t line : order)
        if (standing.rows[line].over ||
            (!standing.rows[line].done && standing.rows[line].poured > quantity::Mass{}))
            for (const Option& option : weigh_out::options(weighing, line))
                write_choice(writer, line, option, kept->recipe, presets, book ? &*book : nullptr);
    writer.end();
    return {0, writer.finish(), ""};
}

}  // namespace door
