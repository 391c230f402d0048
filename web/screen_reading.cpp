// What percentages can stand behind a list of ingredients: the list, what is said of it as sentences that can
// be switched off, a span for each ingredient, and formulas worth making. Answers follow every change.
#include <algorithm>
#include <cmath>

#include "app.h"
#include "kept_rows.h"
#include "mirror.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_span.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using ::reading::Answer;
using ::reading::Statement;

// The list of an invented product, an allergen at its end that one of its oils brings. Names of INCI are the
// same in every language.
constexpr const char* kExample =
    "Helianthus Annuus Seed Oil, Cera Alba, Butyrospermum Parkii Butter, Theobroma Cacao Seed Butter, "
    "Ricinus Communis Seed Oil, Tocopherol, Citrus Aurantium Dulcis Peel Oil, Limonene";

void part_of_list(app::App& app, const std::string& words) {
    widget::gap(22);
    widget::heading(app.kit, 2, words);
}
void aside(app::App& app, const std::string& words) {
    widget::text(app.kit, words, theme::Type::small, widget::Ink::soft);
}

// As a person holds them: tenths, below 1 % hundredths.
std::string about(const app::App& app, double percent) {
    return words::figure_fixed(app.words, decimal::rounded(percent), percent < 1 ? 2 : 1);
}

void paste(app::App& app) {
    kit::Kit& kit = app.kit;
    app::ReadingIn& in = app.ui.reading;
    widget::text(kit, app.say("reading_ui.about"));
    widget::gap(12);
    widget::TextSpec spec;
    spec.name = app.say("reading_ui.list");
    spec.hint = app.say("reading_ui.list_hint");
    spec.note = true;
    spec.most_bytes = static_cast<int>(declaration_read::kMostBytes);
    spec.most_drawn = 2000;
    if (const auto typed = widget::text_field(kit, "list", in.text, spec)) {
        in.text = *typed;
        in.trouble.clear();
        app::remember_reading(app);
    }
    if (!in.trouble.empty()) {
        widget::gap(8);
        widget::finding_badge(kit, finding::Severity::caution, in.trouble, "");
    }
    widget::gap(12);
    if (widget::button(kit, "read", app.say("reading_ui.read"), widget::Look::primary, kit.width))
        app::read_ingredients(app);
    widget::gap(8);
    if (in.text.empty() &&
        widget::button(kit, "example", app.say("reading_ui.example"), widget::Look::plain, kit.width)) {
        in.text = kExample;
        in.title = app.say("reading_ui.example_title");
        app::read_ingredients(app);
    }
}

void sold_row(app::App& app) {
    const app::ReadingIn& in = app.ui.reading;
    const catalogue::Product* product = catalogue::find_product(app.presets.catalogue, in.sold.product);
    widget::RowSpec row;
    row.title = product ? product->name : app.say("product.title");
    row.under = app.say(in.sold.market.empty() ? std::string("market.unsaid") : "market." + in.sold.market) +
                (in.sold.date.empty() ? "" : " \xC2\xB7 " + in.sold.date);
    row.onward = true;
    if (widget::row(app.kit, "for", row).pressed) app::show(app, app::Sheet::reading_for);
    widget::hairline(app.kit);
}

std::string entry_under(const app::App& app, const reading_list::Entry& entry) {
    static constexpr const char* kAs[] = {"", "reading_ui.as_free", "reading_ui.as_incidental",
                                          "reading_ui.as_carrier", "reading_ui.as_aside"};
    std::string under = entry.ingredient.empty() ? "" : entry.written;
    const auto add = [&](const std::string& more) {
        if (!more.empty()) under += (under.empty() ? "" : " \xC2\xB7 ") + more;
    };
    if (entry.as != reading_list::As::added) add(app.say(kAs[static_cast<int>(entry.as)]));
    if (entry.ingredient.empty() && entry.as != reading_list::As::incidental)
        add(app.say(entry.offered.empty() ? "line.unknown" : "reading_ui.several"));
    if (entry.other) add(app.say("reading_ui.look"));
    if (entry.twice) add(app.say("reading_ui.twice"));
    return under;
}

void listed(app::App& app) {
    app::ReadingIn& in = app.ui.reading;
    part_of_list(app, app.say("reading_ui.listed"));
    mirror::Node list;
    list.id = widget::id_of("entries");
    list.role = mirror::Role::list;
    list.name = app.say("reading_ui.listed");
    mirror::open(list);
    for (std::size_t i = 0; i < in.entries.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        kept_rows::row(app.kit, "entry", [&] {
            mirror::Node item;
            item.id = widget::id_of("item");
            item.role = mirror::Role::item;
            mirror::open(item);
            widget::RowSpec row;
            row.title = std::to_string(i + 1) + " " + app::entry_name(app, in.entries[i]);
            row.under = entry_under(app, in.entries[i]);
            row.onward = true;
            if (widget::row(app.kit, "row", row).pressed) {
                in.entry = i;
                app.ui.search.clear();
                app::show(app, app::Sheet::reading_item);
            }
            mirror::close();
            widget::hairline(app.kit);
        });
        ImGui::PopID();
    }
    mirror::close();
    widget::gap(8);
    if (widget::button(app.kit, "other", app.say("reading_ui.other"), widget::Look::quiet)) {
        in.entries.clear();
        app::ask_anew(app);
        app.ui.to_top = true;
    }
}

// What a statement bought: the ingredient it narrows most.
const ::reading::Gain* gain_of(const Answer& answer, std::size_t statement) {
    for (const ::reading::Gain& one : answer.gains)
        if (one.said.what == ::reading::Said::What::statement && one.said.at == statement) return &one;
    return nullptr;
}
const ::reading::Gain* gain_of_line(const Answer& answer) {
    for (const ::reading::Gain& one : answer.gains)
        if (one.said.what == ::reading::Said::What::line) return &one;
    return nullptr;
}

// True: it is to be turned on or off.
bool statement(app::App& app, std::size_t at, const ::reading::Names& names) {
    const ::reading::Problem& problem = app.reading->problem();
    const Statement& one = problem.statements[at];
    ImGui::PushID(static_cast<int>(at));
    const bool turned = widget::tick(app.kit, "on", ::reading::say(app.words, problem, names, one), one.on);
    const bool standing = at >= app.reading_said.size() && !one.source.empty();
    if (standing) aside(app, app::source_words(app, one.source, one.standing));
    if (const auto* gain = app.reading && one.on ? gain_of(app.reading->answer(), at) : nullptr)
        aside(app, ::reading::say(app.words, problem, names, *gain));
    if (at < app.reading_said.size() &&
        widget::button(app.kit, "change", app.say("reading_ui.change"), widget::Look::quiet)) {
        app.ui.reading.statement = app.reading_said[at];
        app.ui.reading.draft = app.ui.reading.said[app.reading_said[at]];
        app::show(app, app::Sheet::reading_sum);
    }
    widget::gap(4);
    ImGui::PopID();
    return turned;
}

void said(app::App& app) {
    kit::Kit& kit = app.kit;
    app::ReadingIn& in = app.ui.reading;
    const ::reading::Names names = app::item_names(app);
    part_of_list(app, app.say("reading_ui.said"));
    aside(app, app.say("reading_ui.said_about"));
    widget::RowSpec line;
    line.title = app.say("reading_ui.line");
    line.under = in.line_after ? ::reading::say(app.words, app.reading->problem(), names,
                                                ::reading::Said{::reading::Said::What::line, 0, false})
                               : app.say("reading_ui.line_unknown");
    if (const auto* gain = gain_of_line(app.reading->answer()))
        line.under += " " + ::reading::say(app.words, app.reading->problem(), names, *gain);
    line.onward = true;
    if (widget::row(kit, "line", line).pressed) app::show(app, app::Sheet::reading_line);
    widget::hairline(kit);
    widget::gap(8);
    std::size_t off = 0;
    std::optional<std::size_t> turned;
    for (std::size_t i = 0; i < app.reading->problem().statements.size(); ++i) {
        const bool hidden = i >= app.reading_said.size() && !app.reading->problem().statements[i].on;
        off += hidden ? 1 : 0;
        if ((!hidden || in.all_said) && statement(app, i, names)) turned = i;
    }
    if (off > 0 && widget::button(kit, "off",
                                  app.say(in.all_said ? "reading_ui.off_hide" : "reading_ui.off_show",
                                          {{"n", std::to_string(off)}})))
        in.all_said = !in.all_said;
    widget::gap(8);
    const auto begin = [&](const char* key, const char* words, ::reading::Kind kind) {
        if (!widget::button(kit, key, app.say(words), widget::Look::plain, kit.width)) return;
        in.statement.reset();
        in.draft = {};
        in.draft.kind = kind;
        if (kind == ::reading::Kind::property) in.draft.subject = "density";
        app::show(app, app::Sheet::reading_sum);
    };
    begin("sum", "reading_ui.say_sum", ::reading::Kind::group);
    widget::gap(8);
    begin("measured", "reading_ui.say_measured", ::reading::Kind::property);
    if (turned) app::turn_statement(app, *turned);
}

void progress(app::App& app) {
    app::ReadingIn& in = app.ui.reading;
    if (in.stopped && app.reading->progress() >= 1) return;
    const int percent = static_cast<int>(app.reading->progress() * 100);
    widget::gap(8);
    if (in.stopped) {
        aside(app, app.say("reading_ui.broken_off", {{"n", std::to_string(percent)}}));
        if (widget::button(app.kit, "go_on", app.say("reading_ui.go_on"))) {
            in.stopped = false;
            app.ui.again = true;
        }
        return;
    }
    aside(app, app.say("reading_ui.working", {{"n", std::to_string(percent)}}));
    if (widget::button(app.kit, "stop", app.say("reading_ui.stop"))) in.stopped = true;
}

void nothing_fits(app::App& app, const ::reading::Names& names) {
    kit::Kit& kit = app.kit;
    const ::reading::Problem& problem = app.reading->problem();
    const ::reading::Conflict& conflict = app.reading->answer().conflict;
    widget::gap(8);
    widget::finding_badge(kit, finding::Severity::stop, app.say("reading_ui.nothing_fits"), "");
    widget::gap(8);
    for (const ::reading::Said& one : conflict.said)
        widget::text(kit, "\xE2\x80\xA2 " + ::reading::say(app.words, problem, names, one));
    if (!conflict.beside.empty()) {
        widget::gap(6);
        aside(app, app.say("reading_ui.beside"));
        for (const ::reading::Said& one : conflict.beside)
            aside(app, "\xE2\x80\xA2 " + ::reading::say(app.words, problem, names, one));
    }
    if (conflict.mends.empty()) return;
    widget::gap(8);
    widget::text(kit, app.say("reading_ui.mend"), theme::Type::strong);
    std::optional<::reading::Mend> chosen;
    for (std::size_t i = 0; i < conflict.mends.size(); ++i) {
        const ::reading::Mend& one = conflict.mends[i];
        ImGui::PushID(static_cast<int>(i));
        widget::text(kit, ::reading::say(app.words, problem, names, one));
        if (app::may_mend(app, one) &&
            widget::button(kit, "mend", app.say("reading_ui.mend_take", {{"n", std::to_string(i + 1)}})))
            chosen = one;
        ImGui::PopID();
    }
    if (chosen) app::mend(app, *chosen);
}

// The method, so that nobody takes an assumption for a measurement.
void method(app::App& app, const Answer& answer) {
    if (answer.likely.empty()) return;
    aside(app, app.say("reading_ui.assumption"));
    if (answer.method == ::reading::Method::single) return aside(app, app.say("reading_ui.single"));
    if (answer.method == ::reading::Method::exact)
        aside(app, app.say("reading_ui.exact", {{"n", std::to_string(::reading::Wish{}.draws)}}));
    if (answer.method == ::reading::Method::walk) {
        double r_hat = 1, effective = 1e9;
        for (const ::reading::Likely& one : answer.likely) {
            r_hat = std::max(r_hat, one.r_hat);
            effective = std::min(effective, one.effective);
        }
        aside(app, app.say(answer.settled ? "reading_ui.walk" : "reading_ui.walk_unsettled",
                           {{"rhat", words::figure_fixed(app.words, decimal::rounded(r_hat), 3)},
                            {"n", std::to_string(static_cast<long>(effective))}}));
    }
    if (answer.places.size() > 1)
        aside(app, app.say("reading_ui.places", {{"n", std::to_string(answer.places.size())}}));
    if (answer.partial) aside(app, app.say("reading_ui.partial"));
}

void allowed(app::App& app) {
    const Answer& answer = app.reading->answer();
    const ::reading::Names names = app::item_names(app);
    part_of_list(app, app.say("reading_ui.allowed"));
    progress(app);
    if (answer.state == ::reading::State::nothing_fits) return nothing_fits(app, names);
    if (answer.state == ::reading::State::unknown)
        return widget::finding_badge(app.kit, finding::Severity::caution, app.say("reading_ui.beyond"), "");
    if (answer.state != ::reading::State::fits) return;
    double most = 1;
    for (const ::reading::Range& one : answer.items)
        most = std::max(most, one.max);
    aside(app, app.say("reading_ui.legend", {{"most", about(app, most)}}));
    widget::gap(6);
    for (std::size_t i = 0; i < answer.items.size() && i < names.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        widget::SpanSpec span;
        span.title = names[i];
        const ::reading::Range& range = answer.items[i];
        span.low = range.min / most;
        span.high = range.max / most;
        span.under =
            app.say("reading_ui.range", {{"min", about(app, range.min)}, {"max", about(app, range.max)}});
        if (i < answer.likely.size()) {
            const ::reading::Likely& likely = answer.likely[i];
            span.inner = {likely.p05 / most, likely.p95 / most, likely.mean / most};
            span.under +=
                " \xC2\xB7 " + app.say("reading_ui.likely", {{"low", about(app, likely.p05)},
                                                             {"high", about(app, likely.p95)},
                                                             {"mean", about(app, likely.mean)},
                                                             {"median", about(app, likely.median)}});
        }
        if (widget::span(app.kit, "span", span)) {
            app.ui.reading.entry = app.reading_entries[i];
            app.ui.search.clear();
            app::show(app, app::Sheet::reading_item);
        }
        ImGui::PopID();
    }
    widget::gap(8);
    method(app, answer);
}

void suggestions(app::App& app) {
    kit::Kit& kit = app.kit;
    const Answer& answer = app.reading->answer();
    if (answer.suggestions.empty()) return;
    const ::reading::Names names = app::item_names(app);
    part_of_list(app, app.say("reading_ui.suggestions"));
    aside(app, app.say("reading_ui.suggestions_about"));
    widget::gap(8);
    widget::TextSpec title;
    title.name = app.say("recipe.title");
    title.last = true;
    title.most_bytes = 60;
    if (const auto typed = widget::text_field(kit, "title", app.ui.reading.title, title)) {
        app.ui.reading.title = *typed;
        app::remember_reading(app);
    }
    std::optional<std::size_t> chosen;
    for (std::size_t i = 0; i < answer.suggestions.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        widget::gap(12);
        widget::heading(
            kit, 3,
            app.say(i == 0 ? "reading_ui.middle" : "reading_ui.suggestion", {{"n", std::to_string(i + 1)}}));
        std::string lines;
        const auto& percents = answer.suggestions[i].percents;
        for (std::size_t j = 0; j < percents.size() && j < names.size(); ++j)
            lines += (lines.empty() ? "" : "\n") + words::figure(app.words, percents[j].grid) + "\xC2\xA0% " +
                     names[j];
        widget::text(kit, lines);
        if (!answer.suggestions[i].fits) aside(app, app.say("reading_ui.near"));
        widget::gap(6);
        if (widget::button(kit, "keep", app.say("reading_ui.keep", {{"n", std::to_string(i + 1)}})))
            chosen = i;
        ImGui::PopID();
    }
    widget::gap(14);
    const bool all =
        widget::button(kit, "keep_all", app.say("reading_ui.keep_all"), widget::Look::plain, kit.width);
    widget::gap(8);
    const bool one = answer.suggestions.size() > 1 &&
                     widget::button(kit, "keep_versions", app.say("reading_ui.keep_versions"),
                                    widget::Look::plain, kit.width);
    if (chosen)
        app::keep_suggestion(app, *chosen);
    else if (all)
        app::keep_suggestions(app);
    else if (one)
        app::keep_as_versions(app);
}

}  // namespace

void reading(app::App& app) {
    if (app.ui.reading.entries.empty()) return paste(app);
    sold_row(app);
    if (app.reading) allowed(app);
    if (app.reading) said(app);
    if (!app.ui.reading.trouble.empty()) {
        widget::gap(8);
        widget::finding_badge(app.kit, finding::Severity::caution, app.ui.reading.trouble, "");
    }
    listed(app);
    if (app.reading) suggestions(app);
    part_of_list(app, app.say("reading_ui.cannot"));
    widget::text(app.kit, app.say("reading_ui.cannot_about"));
}

}  // namespace screens
