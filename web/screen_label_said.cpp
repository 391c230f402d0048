// What a label needs that no formula says: of the recipe, of one printing, of this device. Every change is
// kept at once.
#include <algorithm>

#include "app.h"
#include "engine/workspace_edits.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using label::Said;
using type_height::Panel;
using type_height::Shape;

bool line_field(app::App& app, const char* key, std::string& value, const std::string& hint = "") {
    widget::gap(10);
    widget::TextSpec spec;
    spec.name = app.say(key);
    spec.hint = hint;
    spec.most_bytes = static_cast<int>(label::kMostLineBytes);
    const auto typed = widget::text_field(app.kit, key, value, spec);
    if (typed) value = *typed;
    return typed.has_value();
}

// A sentence a line. What is being typed stays as it is as long as it means what is kept.
void sentences(app::App& app, const char* key, std::string& typing, std::vector<std::string>& kept) {
    const auto lines_of = [](const std::string& text) {
        std::vector<std::string> lines;
        for (std::size_t start = 0; start <= text.size();) {
            const std::size_t end = std::min(text.find('\n', start), text.size());
            if (std::string line = typed::words(text.substr(start, end - start)); !line.empty())
                lines.push_back(std::move(line));
            start = end + 1;
        }
        return lines;
    };
    if (lines_of(typing) != kept) {
        typing.clear();
        for (const std::string& one : kept)
            typing += (typing.empty() ? "" : "\n") + one;
    }
    widget::gap(10);
    widget::TextSpec spec;
    spec.name = app.say(key);
    spec.note = true;
    if (const auto typed = widget::text_field(app.kit, key, typing, spec)) {
        typing = *typed;
        kept = lines_of(typing);
    }
}

bool number_of(app::App& app, const char* key, const char* unit, std::optional<std::int64_t>& value,
               result::Result<std::int64_t> (*read)(std::string_view), bool needed = false) {
    widget::gap(10);
    widget::NumberSpec spec;
    spec.name = app.say(key);
    spec.unit = unit;
    spec.read = read;
    spec.may_be_empty = !needed;
    if (!needed) spec.hint = app.say("settings.not_said");
    const auto change = widget::number_field(app.kit, key, value, spec);
    if (!change.changed || (needed && !change.value)) return false;
    value = change.value;
    return true;
}

void months(app::App& app, const char* key, std::optional<std::int64_t>& value) {
    std::optional<std::int64_t> grid = value;
    if (grid) *grid *= decimal::kOne;
    if (number_of(app, key, app.say("meant.age_unit").c_str(), grid, typed::whole))
        value = grid ? std::optional(*grid / decimal::kOne) : std::nullopt;
}

void turn(app::App& app, const char* key, bool& value) {
    widget::gap(2);
    if (widget::tick(app.kit, key, app.say(key), value)) value = !value;
}

void panel(app::App& app, std::optional<Panel>& said) {
    kit::Kit& kit = app.kit;
    widget::gap(16);
    widget::heading(kit, 3, app.say("label_ui.panel"));
    widget::text(kit, app.say("label_ui.panel_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(6);
    const int pressed = widget::choice(
        kit, "shape", app.say("label_ui.panel"),
        {app.say("settings.not_said"), app.say("label_ui.rectangle"), app.say("label_ui.cylinder"),
         app.say("label_ui.round_top"), app.say("label_ui.other_shape")},
        said ? static_cast<int>(said->shape) + 1 : 0);
    if (pressed == 0) said.reset();
    if (pressed > 0) {
        Panel changed = said.value_or(Panel{});
        changed.shape = static_cast<Shape>(pressed - 1);
        const documents::LabelPaper usual;  // what a label is until its panel is measured
        if (changed.width == 0) changed.width = usual.width;
        if (changed.shape == Shape::round_top) {
            if (!said || said->shape != Shape::round_top) changed.height = 0;  // of the strip: none
        } else if (changed.height == 0) {
            changed.height = usual.height;
        }
        said = changed;
    }
    if (!said) return;
    const bool round = said->shape == Shape::round_top;
    const char* across = round                            ? "label_ui.diameter"
                         : said->shape == Shape::cylinder ? "label_ui.around"
                                                          : "label_ui.width";
    std::optional<std::int64_t> width = said->width, height = said->height;
    if (number_of(app, across, "mm", width, typed::millimetres, true)) said->width = *width;
    if (round && *height == 0) height.reset();
    if (round && number_of(app, "label_ui.strip", "mm", height, typed::millimetres))
        said->height = height.value_or(0);
    if (!round && number_of(app, "label_ui.height", "mm", height, typed::millimetres, true))
        said->height = *height;
    turn(app, "label_ui.moulded", said->moulded);
}

// Of one batch: kept until another recipe is opened or the page is left.
void printing(app::App& app, const std::string& market) {
    kit::Kit& kit = app.kit;
    app::LabelIn& in = app.ui.label;
    widget::gap(20);
    widget::heading(kit, 3, app.say("label_ui.printing"));
    widget::text(kit, app.say("label_ui.printing_about"), theme::Type::small, widget::Ink::soft);
    line_field(app, "label.field_batch", in.details.batch_number);
    // A day is taken once it is one; until then what is typed stays in the field.
    if (line_field(app, "label_ui.made_on", in.made_on) &&
        (in.made_on.empty() || workspace::is_date(in.made_on)))
        in.details.made_on = in.made_on;
    if (in.made_on != in.details.made_on) {
        widget::gap(2);
        widget::text(kit, app.say("own.date_form"), theme::Type::small, widget::Ink::stop);
    }
    if (market == "us") {
        std::optional<std::int64_t> area = in.details.labelling_area;
        if (area) *area /= 100;
        if (number_of(app, "label_ui.area", "cm\xC2\xB2", area, typed::millimetres))
            in.details.labelling_area = area ? std::optional(*area * 100) : std::nullopt;
    }
    if (!app.analysis->batch || app.analysis->batch->fills.size() < 2) return;
    std::vector<std::string> names;
    for (const batch::Fill& fill : app.analysis->batch->fills) {
        const catalogue::Container* known = catalogue::find_container(app.presets.catalogue, fill.container);
        names.push_back(known ? known->name : app.say("batch.portion"));
    }
    widget::gap(10);
    widget::text(kit, app.say("label_ui.package"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    const int pressed = widget::choice(kit, "package", app.say("label_ui.package"), names,
                                       static_cast<int>(in.details.package));
    if (pressed >= 0) in.details.package = static_cast<std::size_t>(pressed);
}

// Ticks for which of these ingredients are in the list.
void ticks(app::App& app, const char* key, const std::vector<std::string>& ids,
           std::vector<std::string>& list) {
    if (ids.empty()) return;
    widget::gap(16);
    widget::heading(app.kit, 3, app.say(key));
    ImGui::PushID(key);
    for (const std::string& id : ids) {
        const auto at = std::find(list.begin(), list.end(), id);
        const catalogue::Ingredient* one = catalogue::find_ingredient(app.known(), id);
        if (!widget::tick(app.kit, id, one && !one->name.empty() ? one->name : id, at != list.end()))
            continue;
        if (at != list.end())
            list.erase(at);
        else
            list.push_back(id);
    }
    ImGui::PopID();
}

void finish(app::App& app, const Said& said) {
    if (said != app.analysed->label) app::edit(app, workspace::set_label(*app::open_recipe(app), said));
    widget::gap(20);
    if (widget::button(app.kit, "done", app.say("sheet_ui.done"), widget::Look::primary, app.kit.width))
        app::close_sheet(app);
}

}  // namespace

void label_said(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed || !app.analysis) return app::close_sheet(app);
    app::labelled(app);  // what is of one printing belongs to this recipe
    Said said = app.analysed->label;
    const catalogue::Product* kind = catalogue::find_product(app.presets.catalogue, app.analysed->product);
    line_field(app, "label.field_identity", said.identity, kind ? kind->name : "");
    if (app.analysed->market == "ca") line_field(app, "label_ui.french", said.identity_french);
    panel(app, said.panel);
    widget::gap(16);
    widget::heading(app.kit, 3, app.say("label.field_durability"));
    widget::text(app.kit, app.say("label_ui.keeping_about"), theme::Type::small, widget::Ink::soft);
    months(app, "label_ui.keeps", said.keeping.months);
    months(app, "label_ui.opened", said.keeping.opened_months);
    turn(app, "label_ui.never_opened", said.keeping.never_opened);
    widget::gap(16);
    widget::heading(app.kit, 3, app.say("label_ui.wording"));
    sentences(app, "label_ui.own_cautions", app.ui.label.cautions, said.warnings);
    sentences(app, "label.field_directions", app.ui.label.directions, said.directions);
    turn(app, "label_ui.scent_together", said.scent_together);
    turn(app, "label_ui.leaflet", said.leaflet);
    widget::gap(4);
    if (widget::button(app.kit, "colours", app.say("label_ui.colours")))
        app::show(app, app::Sheet::label_colours);
    printing(app, app.analysed->market);
    finish(app, said);
}

void label_colours(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed) return app::close_sheet(app);
    Said said = app.analysed->label;
    std::vector<std::string> held, shades = said.may_contain;
    const auto add = [](std::vector<std::string>& list, const std::string& id) {
        if (!id.empty() && std::find(list.begin(), list.end(), id) == list.end()) list.push_back(id);
    };
    for (const formula::Line& line : app.analysed->formula.lines)
        add(held, line.ingredient);
    for (const catalogue::Ingredient& one : app.known().ingredients)
        if (one.role == "colourant" && std::find(held.begin(), held.end(), one.id) == held.end())
            add(shades, one.id);
    widget::text(app.kit, app.say("label_ui.colours_about"), theme::Type::small, widget::Ink::soft);
    ticks(app, "label_ui.for_colour", held, said.colours);
    ticks(app, "label_ui.nano", held, said.nano);
    ticks(app, "label_ui.shades", shades, said.may_contain);
    finish(app, said);
}

void maker(app::App& app) {
    label::Maker maker = app.work.settings.maker;
    widget::text(app.kit, app.say("maker.about"), theme::Type::small, widget::Ink::soft);
    line_field(app, "maker.name", maker.name);
    line_field(app, "maker.address", maker.address);
    line_field(app, "maker.contact", maker.contact);
    line_field(app, "maker.country", maker.country);
    if (maker != app.work.settings.maker) app::edit_maker(app, maker);
    widget::gap(20);
    if (widget::button(app.kit, "done", app.say("sheet_ui.done"), widget::Look::primary, app.kit.width))
        app::close_sheet(app);
}

}  // namespace screens
