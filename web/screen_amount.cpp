// How much is made: in containers, by weight, for so many people, or as far as what is at hand goes; and what
// it is weighed on.
#include <algorithm>

#include "app.h"
#include "engine/workspace_records.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

constexpr batch::Amount kAmounts[] = {batch::Amount::containers, batch::Amount::grams, batch::Amount::people,
                                      batch::Amount::stock};

void by_mass(app::App& app, batch::Request& request) {
    widget::NumberSpec mass;
    mass.name = app.say("batch.mass");
    mass.unit = "g";
    mass.read = typed::mass;
    mass.large = true;
    if (const auto change = widget::number_field(app.kit, "grams", request.grams.grid, mass); change.value)
        request.grams = quantity::Mass{*change.value};
}

void loss(app::App& app, batch::Request& request) {
    widget::NumberSpec loss;
    loss.name = app.say("batch.loss");
    loss.unit = "%";
    loss.read = typed::loss;
    loss.may_be_empty = true;
    loss.hint = app.say("batch.loss_usual", {{"percent", words::figure(app.words, batch::kUsualLoss.grid)}});
    std::optional<std::int64_t> value;
    if (request.loss) value = request.loss->grid;
    if (const auto change = widget::number_field(app.kit, "loss", value, loss); change.changed) {
        request.loss.reset();
        if (change.value) request.loss = quantity::Percent{*change.value};
    }
    const auto learned = workspace::usual_loss(app.work, app.work.open);
    if (!learned || request.loss == learned->median) return;
    widget::gap(6);
    if (widget::button(
            app.kit, "learned",
            app.say("batch.loss_learned", {{"n", std::to_string(learned->of)},
                                           {"percent", words::figure(app.words, learned->median.grid)}}),
            widget::Look::plain, app.kit.width))
        request.loss = learned->median;
}

void in_containers(app::App& app, batch::Request& request) {
    kit::Kit& kit = app.kit;
    std::optional<std::size_t> removed;
    for (std::size_t i = 0; i < request.containers.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        if (container_card(app, request.containers[i], i, true)) removed = i;
        widget::gap(10);
        ImGui::PopID();
    }
    if (removed) {
        request.containers.erase(request.containers.begin() + static_cast<std::ptrdiff_t>(*removed));
        kit.drafts.clear();  // they belong to containers by place
    }
    if (request.containers.size() < 20 && widget::button(kit, "add_container", app.say("batch.container_add"),
                                                         widget::Look::plain, kit.width)) {
        app.ui.line_is_new = true;
        app.ui.for_unit = false;
        app::show(app, app::Sheet::container);
    }
    widget::gap(12);
    loss(app, request);
}

void for_people(app::App& app, batch::Request& request) {
    kit::Kit& kit = app.kit;
    const auto count = [&](const char* key, const std::string& name, std::int64_t& value) {
        widget::NumberSpec spec;
        spec.name = name;
        spec.read = typed::whole;
        if (const auto change = widget::number_field(kit, key, value * decimal::kOne, spec); change.value)
            value = *change.value / decimal::kOne;
    };
    widget::Columns columns = widget::begin_columns(kit);
    count("people", app.say("batch.people"), request.people);
    widget::next_column(kit, columns);
    count("each", app.say("batch.each"), request.each);
    widget::end_columns(kit, columns);
    widget::gap(12);
    ImGui::PushID("unit");
    if (!request.unit) {  // a recipe that says no more: grams for each
        request.unit = batch::Containers{"", 1, quantity::grams(std::max<std::int64_t>(1, request.each)), {}};
        request.each = 1;
    }
    container_card(app, *request.unit, 0, false);
    ImGui::PopID();
    widget::gap(12);
    loss(app, request);
}

// A field for each ingredient of the formula; what a recipe brings along besides can be taken away.
void from_stock(app::App& app, const workspace::Recipe& recipe, batch::Request& request) {
    kit::Kit& kit = app.kit;
    widget::text(kit, app.say("batch.stock_about"), theme::Type::small, widget::Ink::soft);
    std::vector<std::string> keys;
    for (const formula::Line& line : recipe.formula.lines) {
        const std::string key = line.ingredient.empty() ? line.name : line.ingredient;
        if (key.empty() || std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
        keys.push_back(key);
        const auto at = std::find_if(request.stock.begin(), request.stock.end(),
                                     [&](const batch::Stock& one) { return one.ingredient == key; });
        widget::gap(8);
        ImGui::PushID(key.c_str());
        widget::NumberSpec spec;
        spec.name = app.say("batch.stock_of", {{"name", workspace::display_name(app.known(), line)}});
        spec.unit = "g";
        spec.read = typed::mass_or_none;
        spec.may_be_empty = true;
        spec.hint = app.say("batch.stock_unknown");
        std::optional<std::int64_t> value;
        if (at != request.stock.end()) value = at->grams.grid;
        const auto change = widget::number_field(kit, "stock", value, spec);
        if (change.changed && at != request.stock.end()) {
            if (change.value)
                at->grams = quantity::Mass{*change.value};
            else
                request.stock.erase(at);
        } else if (change.changed && change.value) {
            request.stock.push_back({key, quantity::Mass{*change.value}});
        }
        ImGui::PopID();
    }
    if (!app.analysis || !app.analysis->batch || !app.analysis->batch->reach) return;
    for (const std::string& name : app.analysis->batch->reach->not_needed) {
        widget::gap(4);
        ImGui::PushID(name.c_str());
        if (widget::button(kit, "forget", app.say("batch.stock_forget", {{"name", name}}),
                           widget::Look::quiet))
            request.stock.erase(
                std::remove_if(request.stock.begin(), request.stock.end(),
                               [&](const batch::Stock& one) { return one.ingredient == name; }),
                request.stock.end());
        ImGui::PopID();
    }
}

void how_much(app::App& app, const workspace::Recipe& recipe, batch::Request& request) {
    kit::Kit& kit = app.kit;
    const auto* at = std::find(std::begin(kAmounts), std::end(kAmounts), request.amount);
    const int chosen = at == std::end(kAmounts) ? -1 : static_cast<int>(at - kAmounts);
    const int pressed = widget::choice(kit, "amount", app.say("batch.how_much"),
                                       {app.say("batch.in_containers"), app.say("batch.by_mass"),
                                        app.say("batch.for_people"), app.say("batch.from_stock")},
                                       chosen);
    if (pressed >= 0 && pressed != chosen) {
        request.amount = kAmounts[pressed];
        if (request.amount == batch::Amount::containers && request.containers.empty()) {
            app.ui.line_is_new = true;
            app.ui.for_unit = false;
            app::show(app, app::Sheet::container);
        }
        if (request.amount == batch::Amount::grams && request.grams.grid == 0)
            request.grams = quantity::grams(100);
        if (request.amount == batch::Amount::people && request.people == 0) {
            request.people = 12;
            request.each = 1;
            if (!request.unit && !request.containers.empty()) request.unit = request.containers.front();
            if (request.unit) request.unit->count = 1;
        }
    }
    widget::gap(12);
    switch (request.amount) {
        case batch::Amount::grams:
            by_mass(app, request);
            break;
        case batch::Amount::containers:
            in_containers(app, request);
            break;
        case batch::Amount::people:
            for_people(app, request);
            break;
        case batch::Amount::stock:
            from_stock(app, recipe, request);
            break;
        case batch::Amount::none:
            break;
    }
}

void which_scale(app::App& app, batch::Request& request) {
    std::vector<std::string> options;
    int chosen = -1;
    for (std::size_t i = 0; i < app.work.settings.scales.size(); ++i) {
        const workspace::Scale& scale = app.work.settings.scales[i];
        options.push_back(
            scale.name.empty()
                ? app.grams(scale.division)
                : app.say("batch.scale_named", {{"name", scale.name}, {"g", app.grams(scale.division)}}));
        if (scale.division == request.division && chosen < 0) chosen = static_cast<int>(i);
    }
    if (chosen < 0) {  // a recipe from elsewhere, for a scale that is not on this bench
        options.push_back(app.grams(request.division));
        chosen = static_cast<int>(options.size()) - 1;
    }
    widget::text(app.kit, app.say("batch.scale"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    const int pressed = widget::choice(app.kit, "scale", app.say("batch.scale"), options, chosen);
    if (pressed >= 0 && static_cast<std::size_t>(pressed) < app.work.settings.scales.size())
        request.division = app.work.settings.scales[static_cast<std::size_t>(pressed)].division;
}

// Into a dish each, or into one of the bench's jugs. Belongs to the device, not to the recipe.
void which_jug(app::App& app) {
    workspace::Settings& settings = app.work.settings;
    if (settings.jugs.empty()) return;
    std::vector<std::string> options{app.say("batch.jug_none")};
    for (const workspace::Jug& jug : settings.jugs)
        options.push_back(app.say("batch.jug_named", {{"name", jug.name}, {"g", app.grams(jug.empty)}}));
    const int chosen =
        settings.jug && *settings.jug < settings.jugs.size() ? static_cast<int>(*settings.jug) + 1 : 0;
    widget::gap(14);
    widget::text(app.kit, app.say("batch.jug"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    const int pressed = widget::choice(app.kit, "jug", app.say("batch.jug"), options, chosen);
    if (pressed == 0) settings.jug.reset();
    if (pressed > 0) settings.jug = static_cast<std::size_t>(pressed) - 1;
}

}  // namespace

void amount(app::App& app) {
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis) return app::close_sheet(app);
    how_much(app, *recipe, recipe->batch);
    widget::gap(14);
    which_scale(app, recipe->batch);
    which_jug(app);
    widget::gap(18);
    const result::Result<batch::Batch>& made = app.analysis->batch;
    if (made) {
        batch_total(app);
        widget::gap(8);
        stock_left(app);
    } else if (recipe->batch.amount != batch::Amount::none) {
        widget::finding_badge(app.kit, finding::Severity::stop, words::say(app.words, made.error()), "");
    }
    widget::gap(14);
    if (widget::button(app.kit, "done", app.say("sheet_ui.done"), widget::Look::primary, app.kit.width))
        app::close_sheet(app);
}

}  // namespace screens
