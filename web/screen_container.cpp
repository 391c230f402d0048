// One kind of container: which, how many, and how its fill is said; and the list to choose it from.
#include <algorithm>

#include "app.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

enum Way { by_weight, by_test_fill, by_volume, by_water };

Way way_of(const batch::Containers& one) {
    if (one.test_fill_g) return by_test_fill;
    if (one.fill_g) return by_weight;
    if (one.water_g) return by_water;
    return one.fill_percent ? by_volume : by_weight;
}

// What was measured is not guessed: its field begins empty.
void go(batch::Containers& one, Way way) {
    const batch::Containers before = one;
    one.fill_g.reset();
    one.test_fill_g.reset();
    one.water_g.reset();
    one.fill_percent.reset();
    if (way == by_test_fill) one.test_fill_g = quantity::Mass{0};
    if (way == by_water) one.water_g = quantity::Mass{0};
    if (way == by_volume || way == by_water)
        one.fill_percent = before.fill_percent.value_or(batch::kUsualShare);
}

std::string name_of(const app::App& app, const batch::Containers& one) {
    const catalogue::Container* known = catalogue::find_container(app.presets.catalogue, one.id);
    if (known) return known->name;
    return one.id.empty() ? app.say("batch.portion") : one.id;
}

void percent_field(app::App& app, batch::Containers& one, const std::string& name) {
    widget::NumberSpec fill;
    fill.name = app.say("batch.fill_percent_of", {{"name", name}});
    fill.label = app.say("batch.fill_percent");
    fill.unit = "%";
    fill.read = typed::percent;
    const quantity::Percent value = one.fill_percent.value_or(batch::kUsualShare);
    if (const auto change = widget::number_field(app.kit, "fill_percent", value.grid, fill); change.value)
        one.fill_percent = quantity::Percent{*change.value};
}

void measured_field(app::App& app, const char* key, const std::string& name, const std::string& label,
                    std::optional<quantity::Mass>& mass) {
    widget::NumberSpec spec;
    spec.name = name;
    spec.label = label;
    spec.unit = "g";
    spec.read = typed::mass;
    spec.may_be_empty = true;
    spec.hint = app.say("batch.to_weigh");
    std::optional<std::int64_t> value;
    if (mass && mass->grid > 0) value = mass->grid;
    if (const auto change = widget::number_field(app.kit, key, value, spec); change.changed)
        mass = quantity::Mass{change.value.value_or(0)};
}

void weight_field(app::App& app, batch::Containers& one, const catalogue::Container* known,
                  const std::string& name) {
    widget::NumberSpec fill;
    fill.name = app.say("batch.fill_each_of", {{"name", name}});
    fill.label = app.say("batch.fill_each");
    fill.unit = "g";
    fill.read = typed::mass;
    fill.may_be_empty = known != nullptr;
    if (known && known->fill_g)
        fill.hint = app.say("batch.fill_usual", {{"g", words::figure(app.words, known->fill_g->value.max)}});
    std::optional<std::int64_t> value;
    if (one.fill_g) value = one.fill_g->grid;
    if (const auto change = widget::number_field(app.kit, "fill_g", value, fill); change.changed) {
        one.fill_g.reset();
        if (change.value) one.fill_g = quantity::Mass{*change.value};
    }
}

// What goes into each container.
void fill_field(app::App& app, batch::Containers& one, const catalogue::Container* known,
                const std::string& name) {
    switch (way_of(one)) {
        case by_weight:
            return weight_field(app, one, known, name);
        case by_test_fill:
            return measured_field(app, "test_fill_g", app.say("batch.test_fill_of", {{"name", name}}),
                                  app.say("batch.test_fill"), one.test_fill_g);
        case by_volume:
            return percent_field(app, one, name);
        case by_water:
            return measured_field(app, "water_g", app.say("batch.water_of", {{"name", name}}),
                                  app.say("batch.water"), one.water_g);
    }
}

// "Usual fill 24 to 28 g (source)": which figure is taken, and where it comes from.
template <class Known>
void range_note(app::App& app, const char* one, const char* range, const Known& known) {
    widget::gap(8);
    widget::text(app.kit,
                 app.say(known.value.min == known.value.max ? one : range,
                         {{"min", words::figure(app.words, known.value.min)},
                          {"max", words::figure(app.words, known.value.max)},
                          {"source", app::source_words(app, known.source, known.standing)}}),
                 theme::Type::small, widget::Ink::soft);
}

void notes(app::App& app, const batch::Containers& one, const catalogue::Container* known) {
    const Way way = way_of(one);
    if (way == by_weight && known && known->fill_g && !one.fill_g)
        range_note(app, "batch.fill_source_one", "batch.fill_source", *known->fill_g);
    if (way == by_volume && known && known->nominal_ml)
        range_note(app, "batch.volume_source_one", "batch.volume_source", *known->nominal_ml);
    const char* about = way == by_test_fill ? "batch.test_fill_about"
                        : way == by_water   ? "batch.water_about"
                                            : "";
    if (*about) {
        widget::gap(8);
        widget::text(app.kit, app.say(about), theme::Type::small, widget::Ink::soft);
    }
    if (way == by_water && one.water_g && one.water_g->grid > 0) {
        widget::gap(8);
        widget::text(
            app.kit,
            app.say("batch.water_holds",
                    {{"ml", words::figure_fixed(app.words, batch::capacity_of(*one.water_g).grid, 1)},
                     {"source", app::source_words(app, density::kWaterSource, source::Standing::document)}}),
            theme::Type::small, widget::Ink::soft);
    }
}

}  // namespace

bool container_card(app::App& app, batch::Containers& one, std::size_t index, bool counted) {
    kit::Kit& kit = app.kit;
    const catalogue::Container* known = catalogue::find_container(app.presets.catalogue, one.id);
    const std::string name = name_of(app, one);
    widget::begin_card(kit);
    widget::RowSpec which;
    which.title = name;
    which.under = app.say("batch.container_change");
    which.onward = true;
    if (widget::row(kit, "which", which).pressed) {
        app.ui.line = index;
        app.ui.line_is_new = false;
        app.ui.for_unit = !counted;
        app::show(app, app::Sheet::container);
    }
    widget::gap(6);
    if (counted) {
        widget::Columns columns = widget::begin_columns(kit);
        widget::NumberSpec count;
        count.name = app.say("batch.count_of", {{"name", name}});
        count.label = app.say("batch.count");
        count.read = typed::whole;
        if (const auto change = widget::number_field(kit, "count", one.count * decimal::kOne, count);
            change.value)
            one.count = *change.value / decimal::kOne;
        widget::next_column(kit, columns);
        fill_field(app, one, known, name);
        widget::end_columns(kit, columns);
    } else {
        fill_field(app, one, known, name);
    }
    if (way_of(one) == by_water) {
        widget::gap(8);
        percent_field(app, one, name);
    }
    if (!one.id.empty()) {
        widget::gap(10);
        const Way way = way_of(one);
        const int pressed = widget::choice(kit, "by", app.say("batch.fill_by"),
                                           {app.say("batch.by_weight"), app.say("batch.by_test_fill"),
                                            app.say("batch.by_volume"), app.say("batch.by_water")},
                                           way);
        if (pressed >= 0 && pressed != way) go(one, static_cast<Way>(pressed));
    }
    notes(app, one, known);
    bool remove = false;
    if (counted) {
        widget::gap(6);
        remove = widget::button(kit, "remove", app.say("batch.container_remove", {{"name", name}}),
                                widget::Look::quiet);
    }
    widget::end_card(kit);
    return remove;
}

void container(app::App& app) {
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return app::close_sheet(app);
    batch::Request& request = recipe->batch;
    const auto choose = [&](const std::string& id) {
        app.undo.deed_done();
        if (app.ui.for_unit) {
            request.unit = batch::Containers{id, 1, {}, {}};
            if (id.empty()) request.unit->fill_g = quantity::grams(10);
        } else if (!app.ui.line_is_new && app.ui.line < request.containers.size()) {
            const std::int64_t count = request.containers[app.ui.line].count;
            const auto share = request.containers[app.ui.line].fill_percent;
            request.containers[app.ui.line] = {id, count, {}, share};  // weights belonged to the other one
        } else {
            request.containers.push_back({id, 1, std::nullopt, std::nullopt});
        }
        app::show(app, app::Sheet::amount);
    };
    if (app.ui.for_unit) {
        if (widget::row(app.kit, "portion",
                        {app.say("batch.portion"), app.say("batch.portion_about"), "", "", false, false})
                .pressed)
            choose("");
        widget::hairline(app.kit);
    }
    for (const catalogue::Container& one : app.presets.catalogue.containers) {
        std::string under;
        const auto add = [&](const std::string& words) {
            under += (under.empty() ? "" : " \xC2\xB7 ") + words;
        };
        if (one.nominal_ml) {
            const auto& range = one.nominal_ml->value;
            add(app.say(range.min == range.max ? "container.ml" : "container.ml_range",
                        {{"min", words::figure(app.words, range.min)},
                         {"max", words::figure(app.words, range.max)}}));
        }
        if (one.fill_g)
            add(app.say("container.usual", {{"g", words::figure(app.words, one.fill_g->value.max)}}));
        if (!one.material.empty()) add(app.say("material." + one.material));
        if (one.max_pour_c)
            add(app.say("container.max_pour", {{"c", words::figure(app.words, one.max_pour_c->value)}}));
        if (widget::row(app.kit, one.id, {one.name, under, "", "", false, false}).pressed) choose(one.id);
        widget::hairline(app.kit);
    }
}

}  // namespace screens
