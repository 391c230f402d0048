// The label of the open recipe: as it will be printed, what each field says and by which rule, cautions, what
// is not certain, allergens, what a sale still needs. Nothing of it is worked out here.
#include <algorithm>

#include "app.h"
#include "engine/workspace_edits.h"
#include "kept_rows.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_label.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using label::Field;
using labelling::Labelled;

constexpr float kMostPrinted = 182;  // mm that A4 has between the paper's margins

float in_mm(std::int64_t grid) {
    return static_cast<float>(grid) / static_cast<float>(decimal::kOne);
}

void section(app::App& app, std::string_view key) {
    widget::gap(22);
    widget::heading(app.kit, 2, app.say(key));
}
void soft(app::App& app, const std::string& words) {
    widget::text(app.kit, words, theme::Type::small, widget::Ink::soft);
}
void add_line(std::string& text, const std::string& line) {
    if (!line.empty()) text += (text.empty() ? "" : "\n") + line;
}

// "Art. 19(1)(b); the regulation's name; read in a document"
std::string rule_words(const app::App& app, std::string_view rule, std::string_view source,
                       source::Standing standing) {
    const std::string from = app::source_words(app, source, standing);
    return rule.empty() ? from : std::string(rule) + "; " + from;
}

std::vector<widget::LabelLine> printed_lines(const app::App& app, const Labelled& made,
                                             const documents::LabelPaper& paper) {
    std::vector<widget::LabelLine> lines;
    for (documents::Printed& one : documents::printed(*app.analysed, made, paper))
        lines.push_back({std::move(one.text), in_mm(one.letters), one.strong,
                         static_cast<widget::LabelLine::Sign>(one.sign)});
    return lines;
}

void picture(app::App& app, const Labelled& made) {
    kit::Kit& kit = app.kit;
    app::LabelIn& in = app.ui.label;
    const documents::LabelPaper paper = app::label_paper(app);
    widget::LabelSpec spec;
    spec.round = paper.round;
    spec.width = in_mm(paper.width);
    spec.height = in_mm(paper.height);
    const float whole = spec.width * widget::kPixelsAMm;
    const bool wide = whole > kit.width;
    const bool smaller = wide && (in.smaller || spec.round);
    const std::string size = app.say("label_ui.size", {{"width", words::figure(app.words, paper.width)},
                                                       {"height", words::figure(app.words, paper.height)}});
    section(app, "label_ui.picture");
    if (app.analysed->market.empty()) widget::text(kit, app.say("label_ui.no_market"));
    soft(app, size);
    widget::gap(6);
    if (wide && !spec.round) {
        const int pressed =
            widget::choice(kit, "size", app.say("label_ui.picture"),
                           {app.say("label_ui.true_size"), app.say("label_ui.smaller")}, smaller ? 1 : 0);
        if (pressed >= 0) in.smaller = pressed == 1;
        widget::gap(8);
    }
    if (smaller) spec.scale = kit.width / whole;
    if (wide && !smaller) spec.along = in.along = std::clamp(in.along, 0.0f, whole - kit.width);
    spec.name = size;
    const float needed = widget::label_picture(kit, "label", spec, printed_lines(app, made, paper));
    if (wide && !smaller) {
        widget::gap(6);
        if (widget::button(kit, "along", app.say("label_ui.along")))
            in.along = in.along + kit.width >= whole - 1 ? 0 : in.along + 0.8f * kit.width;
    }
    widget::gap(10);
    if (!smaller) widget::millimetre_bar(kit, app.say("label_ui.bar"), 50);
    const auto caution = [&](const char* key, const words::Arguments& arguments = {}) {
        widget::gap(8);
        widget::finding_badge(kit, finding::Severity::caution, app.say(key, arguments), "");
    };
    if (needed > spec.height + 0.5f)
        caution("label_ui.too_high", {{"needed", std::to_string(static_cast<int>(needed + 0.999f))},
                                      {"height", words::figure(app.words, paper.height)}});
    if (spec.width > kMostPrinted) caution("label_ui.too_wide");
    if (!app.analysed->label.panel) soft(app, app.say("label_ui.no_panel"));
}

void label_deeds(app::App& app) {
    kit::Kit& kit = app.kit;
    widget::gap(12);
    widget::RowSpec said;
    said.title = app.say("label_ui.said");
    said.under = app.say("label_ui.said_about");
    said.onward = true;
    if (widget::row(kit, "said", said).pressed) app::show(app, app::Sheet::label_said);
    widget::gap(8);
    widget::NumberSpec copies;
    copies.name = app.say("label_ui.copies");
    copies.read = [](std::string_view text) -> result::Result<std::int64_t> {
        auto count = typed::whole(text);
        if (count && *count == 0) return {result::Code::batch_zero, "", "0"};
        if (count && *count > static_cast<std::int64_t>(documents::kMostCopies) * decimal::kOne)
            return {result::Code::number_too_large, "", decimal::print(*count)};
        return count;
    };
    const auto shown = static_cast<std::int64_t>(app::label_paper(app).copies) * decimal::kOne;
    if (const auto change = widget::number_field(kit, "copies", shown, copies); change.value)
        app.ui.label.copies = static_cast<std::size_t>(*change.value / decimal::kOne);
    widget::gap(12);
    if (widget::button(kit, "print", app.say("label_ui.print"), widget::Look::primary, kit.width))
        app::give(app, app::Paper::labels, true);
    widget::gap(8);
    if (widget::button(kit, "save", app.say("label_ui.save"), widget::Look::plain, kit.width))
        app::give(app, app::Paper::labels);
}

// The list can be selected in its field; what is typed into that is dropped.
void list_of_ingredients(app::App& app, const Labelled& made) {
    section(app, "label.field_list");
    widget::gap(6);
    const std::string list = declaration::text(made.list);
    widget::TextSpec field;
    field.name = app.say("label.field_list");
    field.bare = field.note = true;
    widget::text_field(app.kit, "list", list, field);
    widget::gap(8);
    if (widget::button(app.kit, "copy", app.say("label_ui.copy"))) app::copy_text(app, list);
}

app::Sheet sheet_of(Field field) {
    switch (field) {
        case Field::net:
            return app::Sheet::amount;
        case Field::responsible:
        case Field::origin:
        case Field::contact:
            return app::Sheet::maker;
        default:
            return app::Sheet::label_said;
    }
}

void field_row(app::App& app, const Labelled& made, const label::Entry& one) {
    static constexpr const char* kAsides[] = {"", "label_ui.on_packaging", "label_ui.on_leaflet",
                                              "label_ui.on_tag", "label_ui.on_page"};
    widget::RowSpec row;
    row.title = app.say(label::field_key(one.field));
    row.plain = one.field == Field::list;
    row.onward = !row.plain;
    if (one.state == label::State::missing) row.right = app.say("label_ui.missing");
    if (one.state == label::State::doubtful) row.right = app.say("label_ui.doubtful");
    add_line(row.under, one.field == Field::list ? "" : one.text);
    if (one.state == label::State::not_asked && one.text.empty())
        add_line(row.under, app.say("label_ui.not_asked"));
    if (!one.rule.empty()) add_line(row.under, rule_words(app, one.rule, one.source, one.standing));
    if (one.height)
        add_line(row.under,
                 app.say("label_ui.letters",
                         {{"height", std::string(one.height->printed)},
                          {"source", app::source_words(app, one.height->source, one.height->standing)}}));
    if (one.field == Field::net && made.label.heights) {
        if (made.label.heights->at_the_foot) add_line(row.under, app.say("label_ui.at_foot"));
        if (made.label.heights->bold) add_line(row.under, app.say("label_ui.bold"));
    }
    if (one.aside != label::Aside::none) add_line(row.under, app.say(kAsides[static_cast<int>(one.aside)]));
    if (widget::row(app.kit, label::field_name(one.field), row).pressed) app::show(app, sheet_of(one.field));
    widget::hairline(app.kit);
}

void fields(app::App& app, const Labelled& made) {
    section(app, "label.sheet_fields");
    if (!made.label.heights) soft(app, app.say("label_ui.no_letters"));
    for (const label::Entry& one : made.label.entries)
        kept_rows::row(app.kit, label::field_name(one.field), [&] { field_row(app, made, one); });
    widget::gap(4);
    label::Said said = app.analysed->label;
    if (widget::tick(app.kit, "leaflet", app.say("label_ui.leaflet"), said.leaflet)) {
        said.leaflet = !said.leaflet;
        app::edit(app, workspace::set_label(*app::open_recipe(app), said));
    }
}

// Those that a law asks for stand on the label; the others are offered.
void cautions(app::App& app, const Labelled& made) {
    if (made.warnings.empty()) return;
    section(app, "label_ui.cautions");
    soft(app, app.say("label_ui.cautions_about"));
    for (std::size_t i = 0; i < made.warnings.size(); ++i) {
        const labelling::Warning& one = made.warnings[i];
        ImGui::PushID(static_cast<int>(i));
        label::Said said = app.analysed->label;
        const auto at = std::find(said.warnings.begin(), said.warnings.end(), one.sentence);
        widget::gap(4);
        if (one.due) {
            widget::text(app.kit, one.sentence);
            soft(app, app.say("label_ui.due"));
        } else if (widget::tick(app.kit, "tick", one.sentence, at != said.warnings.end())) {
            if (at != said.warnings.end())
                said.warnings.erase(at);
            else
                said.warnings.push_back(one.sentence);
            app::edit(app, workspace::set_label(*app::open_recipe(app), said));
        }
        soft(app, rule_words(app, one.rule, one.source, one.standing));
        ImGui::PopID();
    }
}

void unsure(app::App& app, const Labelled& made) {
    bool headed = false;
    for (const std::string& one : made.label.remarks) {
        if (one == made.allergens.reason) continue;
        if (!headed) section(app, "label.sheet_unsure");
        headed = true;
        widget::gap(6);
        widget::text(app.kit, one);
    }
}

// "lavender_40_42, geranium" as a person calls them.
std::string names_of_sources(const app::App& app, std::string_view ids) {
    std::string names;
    while (!ids.empty()) {
        const std::size_t end = std::min(ids.find(", "), ids.size());
        finding::Finding about;
        about.subject = ids.substr(0, end);
        names += (names.empty() ? "" : ", ") + app::subject_name(app, about);
        ids.remove_prefix(std::min(end + 2, ids.size()));
    }
    return names;
}

void allergens(app::App& app, const Labelled& made) {
    section(app, "label_ui.allergens");
    if (!made.allergens.reason.empty()) widget::text(app.kit, made.allergens.reason);
    if (!made.allergens.named) return widget::text(app.kit, app.say("label.allergens_unknown"));
    if (made.allergens.named->empty()) widget::text(app.kit, app.say("label_ui.allergens_none"));
    for (const declaration::Named& one : *made.allergens.named)
        kept_rows::row(app.kit, "allergen " + one.label_name, [&] {
            widget::RowSpec row;
            row.title = one.label_name;
            row.right = app.say("card.percent", {{"range", words::trace(app.words, one.amount)}});
            row.under = names_of_sources(app, one.why);
            add_line(row.under, app::source_words(app, one.source, one.standing));
            row.plain = true;
            widget::row(app.kit, one.label_name, row);
            widget::hairline(app.kit);
        });
}

void sale(app::App& app, const Labelled& made) {
    section(app, "label.sheet_sale");
    for (const sale_needs::Need& one : made.needs)
        kept_rows::row(app.kit, "need " + std::string(one.id), [&] {
            widget::gap(8);
            widget::text(app.kit, app.say("sale." + std::string(one.id)));
            soft(app, rule_words(app, one.rule, one.source, one.standing));
        });
    widget::gap(14);
    if (widget::button(app.kit, "pack_print", app.say("label_ui.pack_print"), widget::Look::plain,
                       app.kit.width))
        app::give(app, app::Paper::assessor_pack, true);
    widget::gap(8);
    if (widget::button(app.kit, "pack", app.say("label_ui.pack"), widget::Look::plain, app.kit.width))
        app::give(app, app::Paper::assessor_pack);
}

}  // namespace

void label(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed || !app.analysis) return nothing_open(app);
    meant_row(app);
    widget::RowSpec card;
    card.title = app.say("ask.card");
    card.under = app.say("ask.card_about");
    card.onward = true;
    if (widget::row(app.kit, "card", card).pressed) app::show(app, app::Sheet::customer_card);
    const result::Result<Labelled>& made = app::labelled(app);
    if (!made) {
        widget::gap(8);
        return widget::finding_badge(app.kit, finding::Severity::stop, words::say(app.words, made.error()),
                                     app.say("label_ui.none"));
    }
    picture(app, *made);
    label_deeds(app);
    list_of_ingredients(app, *made);
    fields(app, *made);
    cautions(app, *made);
    unsure(app, *made);
    allergens(app, *made);
    sale(app, *made);
    widget::gap(14);
    soft(app, app.say("caution.defer"));
}

// In letters that are read across a table.
void customer_card(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed) return app::close_sheet(app);
    kit::Kit& kit = app.kit;
    const ::customer_card::Card& card = app::customer_card(app);
    widget::text(kit, card.title, theme::Type::title);
    for (const ::customer_card::Answer& one : card.answers) {
        widget::gap(16);
        widget::heading(kit, 2,
                        app.say("ask." + std::string(::customer_card::topic_name(one.topic)) + "_title"));
        for (const std::string& sentence : one.sentences)
            widget::text(kit, sentence, one.named ? theme::Type::title : theme::Type::body);
    }
    widget::gap(16);
    if (!card.unknown.empty()) {
        std::string names;
        for (const std::string& name : card.unknown)
            names += (names.empty() ? "" : ", ") + name;
        widget::text(kit, app.say("ask.unknown", {{"names", names}}), theme::Type::title);
        widget::gap(8);
    }
    widget::text(kit, app.say("ask.no_promise"));
    widget::gap(16);
    if (widget::button(kit, "print", app.say("ask.print"), widget::Look::primary, kit.width))
        app::give(app, app::Paper::customer_card, true);
    widget::gap(8);
    if (widget::button(kit, "save", app.say("recipe.save_file"), widget::Look::plain, kit.width))
        app::give(app, app::Paper::customer_card);
}

}  // namespace screens
