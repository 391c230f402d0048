// Will it keep: the day by the raw materials' own, what drives oxidation, what a label carries, how it is
// stored. The part of Blend that looks at the shelf.
#include "app.h"
#include "engine/workspace_edits.h"
#include "kept_rows.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

using storing::By;
using storing::Storing;

std::string months_words(const app::App& app, std::int64_t months) {
    return app.say("blend_ui.months", {{"n", std::to_string(months)}});
}

void until_when(app::App& app, const Storing& made) {
    constexpr const char* kAnswers[] = {"blend_ui.dated", "blend_ui.past", "blend_ui.no_day",
                                        "blend_ui.only_a_test"};
    words::Arguments said;
    if (!made.materials.empty()) {
        const storing::Material& first = made.materials.front();
        said = {{"name", first.name}, {"lot", first.lot}, {"day", made.best_before}};
    }
    widget::text(app.kit, app.say(kAnswers[static_cast<int>(made.answer)], said), theme::Type::strong);
    if (made.answer == storing::Answer::dated && !made.dates.missing.empty())
        widget::text(app.kit, app.say("blend_ui.at_most") + " " + coverage_words(app, made.dates));
}

void material_row(app::App& app, const storing::Material& one) {
    constexpr const char* kBys[] = {"blend_ui.by_printed", "blend_ui.by_opened", "blend_ui.by_none",
                                    "blend_ui.by_no_lot"};
    std::string under = app.say(kBys[static_cast<int>(one.by)], {{"lot", one.lot}});
    if (one.opened) under += "\n" + app.say("blend_ui.is_open");
    if (one.date.empty() && one.sealed_months)
        under += "\n" + app.say("blend_ui.sealed", {{"range", range_words(app, *one.sealed_months)},
                                                    {"how", app::source_words(app, "", one.standing)}});
    if (one.months_left)
        under +=
            "\n" + (*one.months_left < 0 ? app.say("blend_ui.is_over") : months_words(app, *one.months_left));
    figure_row(app, one.name, one.date, under);
}

void on_the_label(app::App& app, const Storing& made) {
    constexpr const char* kMarks[] = {"blend_ui.mark_date",     "blend_ui.mark_jar",
                                      "blend_ui.mark_needless", "blend_ui.mark_unasked",
                                      "blend_ui.mark_unknown",  "blend_ui.mark_jar_unknown"};
    figure_row(app, app.say("label.field_durability"), "",
               app.say(kMarks[static_cast<int>(made.mark.mark)],
                       {{"date", made.mark.date}, {"n", std::to_string(made.mark.months)}}) +
                   "\n" + app::source_words(app, made.mark.source, made.mark.standing));
    label::Said said = app.analysed->label;
    if (made.answer != storing::Answer::dated || !made.months || said.keeping.months == *made.months) return;
    widget::gap(6);
    if (widget::button(app.kit, "to label",
                       app.say("blend_ui.to_label", {{"n", std::to_string(*made.months)}}))) {
        said.keeping.months = *made.months;
        app::edit(app, workspace::set_label(*app::open_recipe(app), said));
    }
}

void oxidation(app::App& app, const Storing& made) {
    const blend::Oxidisability& of = made.oxidisability;
    constexpr std::size_t kMost = 3;
    std::string names;
    for (std::size_t i = 0; i < of.drivers.size() && i < kMost; ++i)
        names +=
            (i == 0 ? "" : ", ") + of.drivers[i].name + " " +
            app.say("card.percent", {{"range", words::figure_fixed(app.words, of.drivers[i].share.grid, 0)}});
    std::string under = coverage_words(app, of.cox.of) + "\n" + app.say("blend_ui.cox_about");
    if (!names.empty()) under = app.say("blend_ui.driven", {{"names", names}}) + "\n" + under;
    figure_row(app, app.say("blend_ui.cox"),
               of.cox.value ? words::figure_fixed(app.words, *of.cox.value, 1) : "", under);
}

}  // namespace

void keeps(app::App& app) {
    const Storing& made = app::blend_view(app).made->storing;
    widget::gap(22);
    widget::heading(app.kit, 2, app.say("blend_ui.keeps"));
    widget::gap(6);
    until_when(app, made);
    ImGui::PushID("materials");
    for (std::size_t i = 0; i < made.materials.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));  // two may have one name
        kept_rows::row(app.kit, "row", [&] { material_row(app, made.materials[i]); });
        ImGui::PopID();
    }
    ImGui::PopID();
    widget::gap(8);
    widget::NumberSpec margin;
    margin.name = app.say("blend_ui.margin");
    margin.read = [](std::string_view text) -> result::Result<std::int64_t> {
        auto count = typed::whole(text);
        if (count && *count > 24 * decimal::kOne)
            return {result::Code::number_too_large, "", decimal::print(*count)};
        return count;
    };
    if (const auto change =
            widget::number_field(app.kit, "margin", app.ui.blend.margin * decimal::kOne, margin);
        change.value)
        app.ui.blend.margin = *change.value / decimal::kOne;
    widget::gap(8);
    on_the_label(app, made);
    const storing::PeriodAfterOpening& opened = made.after_opening;
    figure_row(app, app.say("blend_ui.after_opening"),
               app.say("blend_ui.range", {{"low", std::to_string(opened.min_months)},
                                          {"high", months_words(app, opened.max_months)}}),
               app.say("blend_ui.after_opening_about") + "\n" + app::source_words(app, "", opened.standing));
    oxidation(app, made);
    widget::gap(8);
    for (const storing::NoteAbout& note : made.notes) {
        widget::gap(4);
        widget::text(app.kit, storing::say(app.words, note));
    }
}

}  // namespace screens
