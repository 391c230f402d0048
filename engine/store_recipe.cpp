// The recipe contract, key by key, in the order in which a file shows them.
#include "store_recipe.h"

#include <algorithm>
#include <array>

#include "store.h"
#include "store_label.h"
#include "store_migrations.h"

namespace store_recipe {
namespace {

using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;

constexpr std::array<std::pair<std::string_view, batch::Amount>, 5> kAmounts{{
    {"none", batch::Amount::none},
    {"grams", batch::Amount::grams},
    {"containers", batch::Amount::containers},
    {"people", batch::Amount::people},
    {"stock", batch::Amount::stock},
}};

std::int64_t counted(Fields& fields, std::string_view key, std::int64_t otherwise) {
    const std::optional<std::uint64_t> whole = fields.whole(key);
    if (!whole) return otherwise;
    if (*whole > static_cast<std::uint64_t>(decimal::kLargest)) {
        fields.failure().at(result::Code::number_too_large, fields.place(key), std::to_string(*whole));
        return otherwise;
    }
    return static_cast<std::int64_t>(*whole);
}

formula::Line line_from(const Json& value, const std::string& place, Failure& failure) {
    formula::Line line;
    Fields fields(value, place, failure);
    line.ingredient = fields.text("ingredient");
    line.name = fields.text("name");
    line.rest = fields.flag("rest");
    const std::optional<std::int64_t> percent = fields.figure("percent");
    if (line.rest && percent) failure.at(result::Code::field_unknown_value, fields.place("percent"), "rest");
    if (!line.rest) fields.need("percent");
    line.percent = quantity::Percent{percent.value_or(0)};
    if (fields.has("phase")) line.phase = fields.text("phase");
    fields.any("phase");
    line.locked = fields.flag("locked");
    if (const Json* hold = fields.any("hold")) {
        Fields held(*hold, fields.place("hold"), failure);
        held.need("percent");
        line.hold = formula::Hold{held.needed_text("constituent"),
                                  held.percent("percent").value_or(quantity::Percent{})};
        held.finish();
    }
    line.strained = fields.flag("strained");
    fields.finish();
    return line;
}

formula::Formula formula_from(Fields& fields, Failure& failure) {
    formula::Formula formula;
    fields.need("lines");
    if (const Json* lines = fields.list("lines")) {
        for (std::size_t i = 0; i < lines->size() && !failure.failed(); ++i) {
            formula.lines.push_back(
                line_from((*lines)[i], store_json::indexed(fields.place("lines"), i), failure));
        }
    }
    const auto find = [&](const std::string& id) {
        return std::find_if(formula.phases.begin(), formula.phases.end(),
                            [&](const formula::Phase& phase) { return phase.id == id; });
    };
    if (const Json* phases = fields.list("phases"); phases != nullptr && !phases->empty()) {
        for (std::size_t i = 0; i < phases->size() && !failure.failed(); ++i) {
            Fields phase((*phases)[i], store_json::indexed(fields.place("phases"), i), failure);
            formula.phases.push_back(
                {phase.needed_text("id"), phase.figure("hold_c"), phase.figure("add_below_c")});
            phase.finish();
        }
        if (formula.phases.size() > 1000) {  // before every line is held against every phase
            failure.at(result::Code::too_many, fields.place("phases"), std::to_string(formula::kMostPhases));
            return formula;
        }
        for (std::size_t i = 0; i < formula.lines.size(); ++i) {
            if (find(formula.lines[i].phase) != formula.phases.end()) continue;
            failure.at(result::Code::phase_missing,
                       store_json::joined(store_json::indexed(fields.place("lines"), i), "phase"),
                       formula.lines[i].phase);
        }
    } else {
        for (const formula::Line& line : formula.lines) {
            if (formula.phases.size() > formula::kMostPhases) break;  // refused for their number anyway
            if (find(line.phase) == formula.phases.end()) formula.phases.push_back({line.phase, {}, {}});
        }
    }
    return formula;
}

void read_fill(Fields& fields, batch::Containers& containers) {
    containers.fill_g = fields.mass("fill_g");
    containers.test_fill_g = fields.mass("test_fill_g");
    containers.water_g = fields.mass("water_g");
    containers.fill_percent = fields.percent("fill_percent");
}

batch::Containers containers_from(const Json& value, const std::string& place, Failure& failure) {
    batch::Containers containers;
    Fields fields(value, place, failure);
    containers.id = fields.needed_text("id");
    containers.count = counted(fields, "count", 1);
    read_fill(fields, containers);
    fields.finish();
    return containers;
}

// One of grams, containers, people, stock says the amount. A file that holds several, because a person went
// back and forth, says in "amount" which one is meant.
batch::Amount amount_from(Fields& fields, Failure& failure) {
    std::vector<batch::Amount> there;
    for (const auto& [word, amount] : kAmounts) {
        if (fields.has(word)) there.push_back(amount);
    }
    const std::string said = fields.text("amount");
    for (const auto& [word, amount] : kAmounts) {
        if (word == said) return amount;
    }
    if (!said.empty()) failure.at(result::Code::field_unknown_value, fields.place("amount"), said);
    if (there.size() > 1) failure.at(result::Code::field_missing, fields.place("amount"), "amount");
    return there.empty() ? batch::Amount::none : there.front();
}

batch::Request batch_from(const Json& value, const std::string& place, Failure& failure) {
    batch::Request request;
    Fields fields(value, place, failure);
    request.amount = amount_from(fields, failure);
    request.grams = fields.mass("grams").value_or(quantity::Mass{});
    if (const Json* containers = fields.list("containers")) {
        for (std::size_t i = 0; i < containers->size() && !failure.failed(); ++i) {
            request.containers.push_back(containers_from(
                (*containers)[i], store_json::indexed(fields.place("containers"), i), failure));
        }
    }
    request.people = counted(fields, "people", 0);
    request.each = counted(fields, "each", 0);
    if (const Json* unit = fields.any("unit")) {
        Fields one(*unit, fields.place("unit"), failure);
        request.unit.emplace();
        request.unit->id = one.text("id");
        read_fill(one, *request.unit);
        one.finish();
    }
    if (const Json* stock = fields.object("stock")) {
        for (auto item = stock->begin(); item != stock->end(); ++item) {
            const std::string where = store_json::joined(fields.place("stock"), item.key());
            const quantity::Mass grams{store_json::figure_of(*item, where, failure)};
            if (grams.grid < 0) failure.at(result::Code::number_negative, where);
            request.stock.push_back({item.key(), grams});
        }
    }
    request.loss = fields.percent("loss_percent");
    if (const auto division = fields.mass("division_g")) request.division = *division;
    fields.finish();
    return request;
}

void write_line(Writer& writer, const formula::Line& line) {
    writer.flat_object();
    if (!line.ingredient.empty()) writer.pair("ingredient", line.ingredient);
    if (!line.name.empty()) writer.pair("name", line.name);
    if (line.rest) {
        writer.key("rest");
        writer.flag(true);
    } else {
        writer.pair_figure("percent", line.percent.grid);
    }
    writer.pair("phase", line.phase);
    if (line.locked) {
        writer.key("locked");
        writer.flag(true);
    }
    if (line.hold) {
        writer.key("hold");
        writer.flat_object();
        writer.pair("constituent", line.hold->constituent);
        writer.pair_figure("percent", line.hold->percent.grid);
        writer.end();
    }
    if (line.strained) {
        writer.key("strained");
        writer.flag(true);
    }
    writer.end();
}

void write_formula(Writer& writer, const formula::Formula& formula) {
    writer.key("lines");
    writer.list();
    for (const formula::Line& line : formula.lines)
        write_line(writer, line);
    writer.end();
}

void write_phases(Writer& writer, const formula::Formula& formula) {
    writer.key("phases");
    writer.list();
    for (const formula::Phase& phase : formula.phases) {
        writer.flat_object();
        writer.pair("id", phase.id);
        if (phase.hold_c) writer.pair_figure("hold_c", *phase.hold_c);
        if (phase.add_below_c) writer.pair_figure("add_below_c", *phase.add_below_c);
        writer.end();
    }
    writer.end();
}

void write_steps(Writer& writer, const std::vector<formula::Step>& steps) {
    writer.key("steps");
    writer.list();
    for (const formula::Step& step : steps) {
        writer.flat_object();
        if (!step.phase.empty()) writer.pair("phase", step.phase);
        writer.pair("text", step.text);
        if (step.minutes) {
            writer.key("minutes");
            writer.whole(static_cast<std::uint64_t>(std::max<std::int64_t>(0, *step.minutes)));
        }
        writer.end();
    }
    writer.end();
}

void write_fill(Writer& writer, const batch::Containers& kind) {
    if (kind.fill_g) writer.pair_figure("fill_g", kind.fill_g->grid);
    if (kind.test_fill_g) writer.pair_figure("test_fill_g", kind.test_fill_g->grid);
    if (kind.water_g) writer.pair_figure("water_g", kind.water_g->grid);
    if (kind.fill_percent) writer.pair_figure("fill_percent", kind.fill_percent->grid);
}

void write_containers(Writer& writer, const std::vector<batch::Containers>& containers) {
    writer.key("containers");
    writer.list();
    for (const batch::Containers& kind : containers) {
        writer.flat_object();
        writer.pair("id", kind.id);
        writer.key("count");
        writer.whole(static_cast<std::uint64_t>(std::max<std::int64_t>(0, kind.count)));
        write_fill(writer, kind);
        writer.end();
    }
    writer.end();
}

void write_stock(Writer& writer, const std::vector<batch::Stock>& stock) {
    writer.key("stock");
    writer.flat_object();
    for (std::size_t i = 0; i < stock.size(); ++i) {
        const auto same = [&](const batch::Stock& other) { return other.ingredient == stock[i].ingredient; };
        if (std::any_of(stock.begin(), stock.begin() + static_cast<std::ptrdiff_t>(i), same)) continue;
        std::int64_t sum =
            0;  // two entries of one ingredient are one amount of it: an object holds a key once
        for (std::size_t k = i; k < stock.size(); ++k) {
            if (same(stock[k])) sum += stock[k].grams.grid;
        }
        writer.pair_figure(stock[i].ingredient, sum);
    }
    writer.end();
}

void write_batch(Writer& writer, const batch::Request& request) {
    using batch::Amount;
    const bool grams = request.amount == Amount::grams || request.grams != quantity::Mass{};
    const bool containers = request.amount == Amount::containers || !request.containers.empty();
    const bool people =
        request.amount == Amount::people || request.people != 0 || request.each != 0 || request.unit;
    const bool stock = request.amount == Amount::stock || !request.stock.empty();
    const int there = int{grams} + int{containers} + int{people} + int{stock};
    writer.key("batch");
    writer.object();
    if (there > 1 || (there == 1 && request.amount == Amount::none)) {
        for (const auto& [word, amount] : kAmounts) {
            if (amount == request.amount) writer.pair("amount", word);
        }
    }
    if (grams) writer.pair_figure("grams", request.grams.grid);
    if (containers) write_containers(writer, request.containers);
    if (people) {
        writer.key("people");
        writer.whole(static_cast<std::uint64_t>(std::max<std::int64_t>(0, request.people)));
        writer.key("each");
        writer.whole(static_cast<std::uint64_t>(std::max<std::int64_t>(0, request.each)));
        if (request.unit) {
            writer.key("unit");
            writer.flat_object();
            if (!request.unit->id.empty()) writer.pair("id", request.unit->id);
            write_fill(writer, *request.unit);
            writer.end();
        }
    }
    if (stock) write_stock(writer, request.stock);
    if (request.loss) writer.pair_figure("loss_percent", request.loss->grid);
    writer.pair_figure("division_g", request.division.grid);
    writer.end();
}

}  // namespace

workspace::Recipe recipe_from(const Json& value, const std::string& place, Failure& failure) {
    workspace::Recipe recipe;
    const result::Result<Json> document =
        store_migrations::lifted(value, "formula", place, store_migrations::steps());
    if (!document) {
        failure.at(document.error().code, document.error().place, document.error().detail);
        return recipe;
    }
    Fields fields(*document, place, failure);
    fields.any("tarebench");
    fields.any("kind");
    recipe.title = fields.text("title");
    if (fields.has("product")) recipe.product = fields.text("product");
    fields.any("product");
    recipe.market = fields.text("market");
    recipe.date = fields.text("date");
    recipe.person = fields.text("person");
    if (fields.has("age_months")) recipe.age_months = counted(fields, "age_months", 0);
    recipe.measured_ph = fields.figure("measured_ph");
    if (const Json* label = fields.any("label"))
        recipe.label = store_label::said_from(*label, fields.place("label"), failure);
    if (const Json* made = fields.any("made")) {
        Fields part(*made, fields.place("made"), failure);
        std::string id = part.needed_text("id");
        const MadeWords words = made_from(part);
        recipe.made = workspace::MadePart{std::move(id), words.as, words.yield};
        part.finish();
    }
    recipe.formula = formula_from(fields, failure);
    if (const Json* own = fields.list("ingredients")) {
        for (std::size_t i = 0; i < own->size() && !failure.failed(); ++i) {
            recipe.own.push_back(
                own_from((*own)[i], store_json::indexed(fields.place("ingredients"), i), failure));
        }
    }
    if (const Json* steps = fields.list("steps")) {
        for (std::size_t i = 0; i < steps->size() && !failure.failed(); ++i) {
            Fields step((*steps)[i], store_json::indexed(fields.place("steps"), i), failure);
            formula::Step read{step.text("phase"), step.needed_text("text"), {}};
            if (step.has("minutes")) read.minutes = counted(step, "minutes", 0);
            step.any("minutes");
            step.finish();
            recipe.steps.push_back(std::move(read));
        }
    }
    if (const Json* batch = fields.any("batch"))
        recipe.batch = batch_from(*batch, fields.place("batch"), failure);
    recipe.notes = fields.text("notes");
    fields.finish();
    return recipe;
}

void write(Writer& writer, const workspace::Recipe& recipe) {
    writer.object();
    writer.key("tarebench");
    writer.whole(store::kFormat);
    writer.pair("kind", "formula");
    writer.pair("title", recipe.title);
    writer.pair("product", recipe.product);
    if (!recipe.market.empty()) writer.pair("market", recipe.market);
    if (!recipe.date.empty()) writer.pair("date", recipe.date);
    if (!recipe.person.empty()) writer.pair("person", recipe.person);
    if (recipe.age_months) {
        writer.key("age_months");
        writer.whole(static_cast<std::uint64_t>(std::max<std::int64_t>(0, *recipe.age_months)));
    }
    if (recipe.measured_ph) writer.pair_figure("measured_ph", *recipe.measured_ph);
    if (recipe.label != label::Said{}) {
        writer.key("label");
        store_label::write(writer, recipe.label);
    }
    if (recipe.made) {
        writer.key("made");
        writer.flat_object();
        writer.pair("id", recipe.made->id);
        write_made(writer, recipe.made->as, recipe.made->yield);
        writer.end();
    }
    write_formula(writer, recipe.formula);
    if (!recipe.own.empty()) {
        writer.key("ingredients");
        writer.list();
        for (const catalogue::Ingredient& own : recipe.own)
            write_own(writer, own);
        writer.end();
    }
    write_phases(writer, recipe.formula);
    write_steps(writer, recipe.steps);
    write_batch(writer, recipe.batch);
    writer.pair("notes", recipe.notes);
    writer.end();
}

}  // namespace store_recipe
