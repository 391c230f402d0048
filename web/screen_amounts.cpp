// The open recipe's formula said in grams or parts: an amount for each line, and the percents they are,
// before they are taken.
#include "app.h"
#include "engine/formula_amounts.h"
#include "engine/writing.h"
#include "mirror.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

result::Result<std::int64_t> read_parts(std::string_view text) {
    const auto number = decimal::calculate(text);
    if (number && *number < 0) return {result::Code::number_negative, "", decimal::print(*number)};
    return number;
}

// The grams of the batch where there is one, else those of 100 g.
void begin(app::App& app, const workspace::Recipe& recipe) {
    app::AmountsIn& in = app.ui.amounts_in;
    if (in.values.size() == recipe.formula.lines.size()) return;
    in.values.assign(recipe.formula.lines.size(), std::nullopt);
    const auto set = [&](std::size_t line, std::int64_t grid) {
        if (line < in.values.size() && grid > 0) in.values[line] = grid;
    };
    if (app.analysis->batch.ok()) {
        for (const batch::Line& line : app.analysis->batch->lines)
            set(line.line, line.grams.grid);
    } else {
        for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i)
            set(i, recipe.formula.lines[i].percent.grid);
        if (const auto rest = formula::rest_line(recipe.formula); rest && app.analysis->rest)
            set(*rest, app.analysis->rest->grid);
    }
}

}  // namespace

void in_amounts(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis || recipe->formula.lines.empty()) return app::close_sheet(app);
    begin(app, *recipe);
    app::AmountsIn& in = app.ui.amounts_in;
    widget::text(kit, app.say("amounts.help"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    if (const int pressed =
            widget::choice(kit, "unit", app.say("amounts.unit"),
                           {app.say("pasted_ui.grams"), app.say("pasted_ui.parts")}, in.parts ? 1 : 0);
        pressed >= 0) {
        in.parts = pressed == 1;
        app.ui.again = true;
    }
    std::vector<std::int64_t> amounts;
    std::int64_t sum = 0;
    for (const auto& value : in.values) {
        amounts.push_back(value.value_or(0));
        sum += amounts.back();
    }
    const formula::Changed changed = formula::set_amounts(recipe->formula, amounts);
    const auto percents = changed ? formula::percents(*changed)
                                  : result::Result<std::vector<quantity::Percent>>(changed.error());
    for (std::size_t i = 0; i < in.values.size(); ++i) {
        const formula::Line& line = recipe->formula.lines[i];
        ImGui::PushID(static_cast<int>(i));
        widget::gap(10);
        widget::NumberSpec spec;
        spec.label = writing::set_apart(workspace::display_name(app.known(), line));
        if (percents)
            spec.label += " \xC2\xB7 " +
                          app.say("amounts.is", {{"percent", words::figure(app.words, (*percents)[i].grid)}});
        spec.name = app.say("amounts.of", {{"name", workspace::display_name(app.known(), line)}});
        spec.unit = in.parts ? "" : "g";
        spec.read = in.parts ? read_parts : typed::mass_or_none;
        spec.may_be_empty = true;
        spec.hint = "0";
        if (const auto change = widget::number_field(kit, "amount", in.values[i], spec); change.changed) {
            in.values[i] = change.value;
            app.ui.again = true;
        }
        ImGui::PopID();
    }
    widget::gap(14);
    const std::string total = words::figure(app.words, sum);
    widget::text(kit,
                 in.parts ? app.say("amounts.total_parts", {{"sum", total}})
                          : app.say("amounts.total", {{"sum", total}}),
                 theme::Type::strong);
    if (!changed) {
        widget::gap(8);
        widget::finding_badge(kit, finding::Severity::caution, words::say(app.words, changed.error()), "");
    }
    widget::gap(12);
    if (!widget::button(kit, "take", app.say("amounts.take"), widget::Look::primary, kit.width,
                        !changed.ok()))
        return;
    app.undo.deed_done();
    kit.drafts.clear();
    app::edit(app, changed);
    app::close_sheet(app);
}

}  // namespace screens
