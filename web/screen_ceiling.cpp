// How much of one line may be used: a ceiling that one tap lowers to, and upward the usual amount, never the
// ceiling. Shown where a line is looked at and where the checks found too much of it.
#include "app.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {

void ceiling_of_line(app::App& app, std::size_t line, bool reasons) {
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || line >= recipe->formula.lines.size()) return;
    const ceiling::Ceiling* ceiling = app::ceiling_of(app, line);
    if (ceiling == nullptr) return;
    kit::Kit& kit = app.kit;
    const quantity::Percent now = recipe->formula.lines[line].percent;
    const auto figure = [&](quantity::Percent percent) { return words::figure(app.words, percent.grid); };
    const auto set_to = [&](quantity::Percent percent) {
        app.undo.deed_done();
        app.kit.drafts.clear();
        app::edit(app, formula::set_percent(recipe->formula, line, percent));
    };
    if (ceiling->bound) {
        widget::gap(6);
        widget::text(kit, app.say("ceiling.most", {{"percent", figure(ceiling->most)}}));
        if (reasons && ceiling->why) {
            const finding::Finding& why = *ceiling->why;
            widget::text(
                kit,
                app.say("ceiling.why", {{"rule", why.rule.empty() ? why.constituent : why.rule},
                                        {"source", app::source_words(app, why.source, why.standing)}}),
                theme::Type::small, widget::Ink::soft);
        }
        if (reasons && ceiling->by_grams)
            widget::text(kit, app.say("ceiling.by_grams"), theme::Type::small, widget::Ink::soft);
        widget::gap(6);
    }
    for (const safety::NotMade& gap : ceiling->gaps)
        if (reasons)
            widget::text(kit, app.say("ceiling.gap", {{"rule", gap.row}}), theme::Type::small,
                         widget::Ink::soft);
    if (ceiling->bound && now > ceiling->most) {
        if (widget::button(kit, "lower", app.say("ceiling.lower", {{"percent", figure(ceiling->most)}}),
                           widget::Look::primary))
            set_to(ceiling->most);
    } else if (ceiling->bound && ceiling->usual && now < *ceiling->usual) {
        if (widget::button(kit, "usual", app.say("ceiling.usual", {{"percent", figure(*ceiling->usual)}})))
            set_to(*ceiling->usual);
    }
    widget::gap(6);
}

}  // namespace screens
