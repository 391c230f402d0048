// The checks of the open recipe: for whom and where it is meant, what was found and what to do about it, what
// was looked at and what could not be. Nothing here calls anything safe.
#include <algorithm>

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

using finding::Finding;
using finding::Severity;

struct Option {
    const char *id, *key;  // as a recipe has it; of its words
};
constexpr Option kMarkets[] = {{"", "market.unsaid"}, {"eu", "market.eu"}, {"gb", "market.gb"},
                               {"ni", "market.ni"},   {"us", "market.us"}, {"ca", "market.ca"}};
constexpr Option kPersons[] = {{"", "person.unsaid"},
                               {"adult", "person.adult"},
                               {"child", "person.child"},
                               {"pregnant", "person.pregnant"}};

std::string joined(const std::vector<std::string>& parts, const char* between = " \xC2\xB7 ") {
    std::string all;
    for (const std::string& part : parts)
        if (!part.empty()) all += (all.empty() ? "" : between) + part;
    return all;
}

template <std::size_t n>
std::string option_words(const app::App& app, const Option (&options)[n], const std::string& id) {
    for (const Option& option : options)
        if (id == option.id) return app.say(option.key);
    return id;  // of a newer page
}

void tell_finding(app::App& app, const Finding& one) {
    const std::string subject = app::subject_name(app, one), constituent = app::constituent_name(app, one);
    const std::string where = joined({one.rule, one.edition}, ", ");
    const std::string source = one.source.empty() ? "" : app::source_words(app, one.source, one.standing);
    widget::gap(8);
    widget::finding_badge(
        app.kit, one.severity, finding::say(app.words, one, subject, constituent),
        source.empty() ? where : app.say("finding_ui.source", {{"title", joined({where, source})}}),
        finding::advice(app.words, one, subject, constituent));
    if (!one.line) return;
    // Where there is too much of it, not where it is too hot or its paper is asked for.
    const bool too_much = (one.trace && one.trace_limit) || (one.value && one.limit && one.unit == "%");
    if (too_much) ceiling_of_line(app, *one.line, false);
    if (widget::button(app.kit, "line", app.say("finding_ui.to_line", {{"name", subject}}),
                       widget::Look::quiet)) {
        app.ui.line = *one.line;
        app::show(app, app::Sheet::line);
    }
}

void found(app::App& app, const safety::Report& report) {
    const auto list = [&](Severity severity, const char* title) {
        const auto count = std::count_if(report.findings.begin(), report.findings.end(),
                                         [&](const Finding& one) { return one.severity == severity; });
        if (count == 0) return;
        widget::gap(20);
        widget::heading(app.kit, 2, app.say(title, {{"n", std::to_string(count)}}));
        for (std::size_t i = 0; i < report.findings.size(); ++i) {
            if (report.findings[i].severity != severity) continue;
            ImGui::PushID(static_cast<int>(i));
            kept_rows::row(app.kit, "finding", [&] { tell_finding(app, report.findings[i]); });
            ImGui::PopID();
        }
    };
    list(Severity::stop, "checks_ui.stops");
    list(Severity::caution, "checks_ui.cautions");
    list(Severity::note, "checks_ui.notes");
}

// What a report calls an ingredient or a kind of constituent, as a person calls it.
std::string names(const app::App& app, const std::vector<std::string>& called) {
    std::vector<std::string> said;
    for (const std::string& one : called) {
        Finding about;
        about.subject = about.constituent = one;
        const std::string subject = app::subject_name(app, about);
        said.push_back(subject == one ? app::constituent_name(app, about) : subject);
    }
    return joined(said, ", ");
}

template <class Rows, class Under>
void listed(app::App& app, const char* key, const Rows& rows, const Under& under) {
    ImGui::PushID(key);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        kept_rows::row(app.kit, "check", [&] {
            widget::RowSpec row;
            row.title =
                joined({app.say("check." + std::string(safety::rule_name(rows[i].rule))), rows[i].row});
            row.under = under(rows[i]);
            row.plain = true;
            widget::row(app.kit, "row", row);
            widget::hairline(app.kit);
        });
        ImGui::PopID();
    }
    ImGui::PopID();
}

// Row by row where it is asked for; else one for each kind of check and reason: the rows of a table of limits
// whose figure was never read are dozens.
void not_made(app::App& app, const safety::Report& report) {
    if (report.not_made.empty()) return;
    const auto alike = [](const safety::NotMade& a, const safety::NotMade& b) {
        return a.rule == b.rule && a.reason == b.reason;
    };
    std::vector<safety::NotMade> folded;
    std::vector<std::size_t> rows;  // that each of them stands for
    for (const safety::NotMade& one : report.not_made) {
        const auto same = std::find_if(folded.begin(), folded.end(),
                                       [&](const safety::NotMade& other) { return alike(one, other); });
        if (same == folded.end()) {
            folded.push_back(one);
            rows.push_back(1);
            continue;
        }
        ++rows[static_cast<std::size_t>(same - folded.begin())];
        for (const std::string& about : one.about)
            if (std::find(same->about.begin(), same->about.end(), about) == same->about.end())
                same->about.push_back(about);
    }
    for (std::size_t i = 0; i < folded.size(); ++i)
        if (rows[i] > 1) folded[i].row = app.say("checks_ui.rows", {{"n", std::to_string(rows[i])}});
    widget::gap(20);
    widget::heading(app.kit, 2,
                    app.say("checks_ui.not_made", {{"n", std::to_string(report.not_made.size())}}));
    widget::text(app.kit, app.say("checks_ui.not_made_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    listed(app, "not_made", app.ui.all_unmade ? report.not_made : folded, [&](const safety::NotMade& one) {
        const std::string why = app.say("unmade." + std::string(safety::reason_name(one.reason)));
        return one.about.empty() ? why : names(app, one.about) + ": " + why;
    });
    if (folded.size() == report.not_made.size()) return;
    widget::gap(8);
    if (widget::button(app.kit, "all_unmade",
                       app.say(app.ui.all_unmade ? "checks_ui.unmade_fold" : "checks_ui.unmade_all")))
        app.ui.all_unmade = !app.ui.all_unmade;
}

void made(app::App& app, const safety::Report& report) {
    widget::gap(20);
    widget::heading(app.kit, 2, app.say("checks_ui.made", {{"n", std::to_string(report.made.size())}}));
    widget::text(app.kit, app.say("checks_ui.made_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    if (widget::button(app.kit, "all", app.say(app.ui.all_checks ? "checks_ui.hide" : "checks_ui.show")))
        app.ui.all_checks = !app.ui.all_checks;
    if (!app.ui.all_checks) return;
    listed(app, "made", report.made, [&](const safety::Made& one) {
        return one.looked_at.empty() ? app.say("checks_ui.none_in_it") : names(app, one.looked_at);
    });
}

}  // namespace

void meant_row(app::App& app) {
    const workspace::Recipe& recipe = *app.analysed;
    widget::RowSpec row;
    row.title = app.say("meant.title");
    row.under = joined(
        {option_words(app, kMarkets, recipe.market), recipe.date, option_words(app, kPersons, recipe.person),
         recipe.age_months ? app.say("meant.months", {{"n", std::to_string(*recipe.age_months)}}) : "",
         recipe.measured_ph ? app.say("meant.ph_is", {{"ph", words::figure(app.words, *recipe.measured_ph)}})
                            : ""});
    row.onward = true;
    if (widget::row(app.kit, "meant", row).pressed) app::show(app, app::Sheet::meant_for);
}

void checks(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed) return nothing_open(app);
    const safety::Report& report = app::checks(app);
    meant_row(app);
    found(app, report);
    not_made(app, report);
    made(app, report);
    widget::gap(20);
    widget::heading(app.kit, 2, app.say("checks_ui.always"));
    for (const std::string& key : report.cautions) {
        widget::gap(6);
        widget::text(app.kit, app.say(key));
    }
}

void meant_for(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return app::close_sheet(app);
    std::optional<workspace::Changed> changed;
    const auto choose = [&](const char* key, const char* name, const auto& options, const std::string& now) {
        std::vector<std::string> words;
        int chosen = 0;
        for (std::size_t i = 0; i < std::size(options); ++i) {
            words.push_back(app.say(options[i].key));
            if (now == options[i].id) chosen = static_cast<int>(i);
        }
        widget::text(kit, app.say(name), theme::Type::small, widget::Ink::soft);
        widget::gap(4);
        const int pressed = widget::choice(kit, key, app.say(name), words, chosen);
        widget::gap(14);
        return pressed;
    };
    widget::text(kit, app.say("meant.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(12);
    if (const int n = choose("market", "meant.market", kMarkets, recipe->market); n >= 0)
        changed = workspace::set_market(*recipe, kMarkets[n].id);
    // A day is taken once it is one; until then what is typed stays in the field.
    if (app.ui.meant_date_of != app.work.open) {
        app.ui.meant_date_of = app.work.open;
        app.ui.meant_date = recipe->date;
    }
    widget::TextSpec date;
    date.name = app.say("meant.date");
    date.most_bytes = 10;
    if (const auto typed = widget::text_field(kit, "date", app.ui.meant_date, date)) {
        app.ui.meant_date = *typed;
        if (typed->empty() || workspace::is_date(*typed)) changed = workspace::set_date(*recipe, *typed);
    }
    if (!app.ui.meant_date.empty() && app.ui.meant_date != recipe->date && !changed) {
        widget::gap(2);
        widget::text(kit, app.say("own.date_form"), theme::Type::small, widget::Ink::stop);
    }
    widget::gap(14);
    if (const int n = choose("person", "meant.person", kPersons, recipe->person); n >= 0)
        changed = workspace::set_person(*recipe, kPersons[n].id);
    widget::NumberSpec age;
    age.name = app.say("meant.age");
    age.unit = app.say("meant.age_unit");
    age.read = typed::whole;
    age.may_be_empty = true;
    std::optional<std::int64_t> months = recipe->age_months;
    if (months) *months *= decimal::kOne;
    if (const auto change = widget::number_field(kit, "age", months, age); change.changed)
        changed = workspace::set_age(
            *recipe, change.value ? std::optional(*change.value / decimal::kOne) : std::nullopt);
    widget::gap(14);
    widget::NumberSpec ph;
    ph.name = app.say("meant.ph");
    ph.read = typed::ph;
    ph.may_be_empty = true;
    if (const auto change = widget::number_field(kit, "ph", recipe->measured_ph, ph); change.changed)
        changed = workspace::set_ph(*recipe, change.value);
    widget::gap(20);
    if (changed) app::edit(app, *changed);
    if (widget::button(kit, "done", app.say("sheet_ui.done"), widget::Look::primary, kit.width))
        app::close_sheet(app);
}

}  // namespace screens
