// The papers of the open recipe: what there is, one to be read with its deeds, the sheet of labels they are
// printed on.
#include <algorithm>

#include "app.h"
#include "engine/workspace_edits.h"
#include "screens.h"
#include "theme.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

constexpr float kBleed = 12;  // of a paper beyond the sheet's column, which is narrow on a phone

void paper_row(app::App& app, app::Paper paper, const std::string& under) {
    widget::RowSpec row;
    row.title = app::paper_title(app, paper);
    row.under = under;
    row.onward = true;
    if (widget::row(app.kit, row.title, row).pressed) app::read(app, paper);
    widget::hairline(app.kit);
}

std::string sheet_in_short(const app::App& app) {
    const auto& sheet = app.work.settings.label_sheet;
    if (!sheet) return app.say("papers.sheet_none");
    return app.say("papers.sheet_said",
                   {{"columns", std::to_string(sheet->columns)},
                    {"rows", std::to_string(sheet->rows)},
                    {"paper", app.say(sheet->paper == label_sheet::Paper::letter ? "label_sheet_ui.letter"
                                                                                 : "label_sheet_ui.a4")},
                    {"width", words::figure(app.words, sheet->width)},
                    {"height", words::figure(app.words, sheet->height)}});
}

// −20 to 20 mm, or 0 to the paper's length: label_sheet says what is too much.
result::Result<std::int64_t> read_length(std::string_view text) {
    std::string plain = typed::words(text);
    bool left = false;
    if (plain.rfind("\xE2\x88\x92", 0) == 0) plain = plain.substr(3), left = true;
    if (plain.rfind('-', 0) == 0) plain = plain.substr(1), left = true;
    auto value = typed::words(plain) == "0" ? result::Result<std::int64_t>(0) : typed::millimetres(plain);
    return value && left ? result::Result<std::int64_t>(-*value) : value;
}

bool length_field(app::App& app, const char* key, std::int64_t& value) {
    widget::NumberSpec spec;
    spec.name = app.say(key);
    spec.unit = "mm";
    spec.read = read_length;
    const auto change = widget::number_field(app.kit, key, value, spec);
    if (change.value) value = *change.value;
    return change.value.has_value();
}

bool whole_number(app::App& app, const char* key, std::int64_t& value) {
    widget::NumberSpec spec;
    spec.name = app.say(key);
    spec.read = typed::whole;
    const auto change = widget::number_field(app.kit, key, value * decimal::kOne, spec);
    if (change.value) value = *change.value / decimal::kOne;
    return change.value.has_value();
}

}  // namespace

void papers(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed || !app.analysis) return nothing_open(app);
    kit::Kit& kit = app.kit;
    widget::text(kit, app.say("papers.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(6);
    if (!app.analysis->batch)
        widget::finding_badge(kit, finding::Severity::note,
                              words::say(app.words, app.analysis->batch.error()), "");
    else
        paper_row(app, app::Paper::batch_sheet, app.say("papers.batch_sheet_about"));
    paper_row(app, app::Paper::handout, app.say("papers.handout_about"));
    if (app.analysis->batch) paper_row(app, app::Paper::shopping_list, app.say("papers.shopping_list_about"));
    paper_row(app, app::Paper::labels, app.say("papers.labels_about"));
    widget::RowSpec sheet;
    sheet.title = app.say("papers.sheet");
    sheet.under = sheet_in_short(app);
    sheet.onward = true;
    if (widget::row(kit, "sheet", sheet).pressed) app::show(app, app::Sheet::label_sheet);
    widget::hairline(kit);
    paper_row(app, app::Paper::customer_card, app.say("papers.customer_card_about"));
    paper_row(app, app::Paper::assessor_pack, app.say("papers.assessor_pack_about"));
    widget::RowSpec workshop;
    workshop.title = app.say("nav.workshop");
    workshop.under = app.say("workshop_ui.plan_about");
    workshop.onward = true;
    if (widget::row(kit, "workshop", workshop).pressed) {
        app.ui.screen = app::Screen::workshop;
        app.ui.to_top = true;
        app.ui.again = true;
    }
    widget::hairline(kit);
}

// Its deeds, and room for the host to lay it out in: the paper scrolls, the sheet does not.
void paper(app::App& app) {
    if (!app.ui.paper) return app::close_sheet(app);
    kit::Kit& kit = app.kit;
    const float whole = kit.width;
    widget::Columns columns = widget::begin_columns(kit);
    if (widget::button(kit, "print", app.say("papers.print"), widget::Look::primary, kit.width))
        app::give(app, *app.ui.paper, true);
    widget::next_column(kit, columns);
    if (widget::button(kit, "save", app.say("papers.save"), widget::Look::plain, kit.width))
        app::give(app, *app.ui.paper);
    widget::end_columns(kit, columns);
    widget::gap(12);
    const ImVec2 left = ImGui::GetCursorScreenPos();
    const ImVec2 at{left.x - kBleed, left.y};
    const float low = ImGui::GetWindowPos().y + ImGui::GetWindowHeight() - 40;
    const float height = std::max(80.0f, low - at.y);
    const float width = whole + 2 * kBleed;
    ImGui::GetWindowDrawList()->AddRectFilled(at, {at.x + width, at.y + height}, IM_COL32_WHITE);
    ImGui::Dummy({whole, height});
    const float place[] = {at.x, at.y, width, height};
    std::copy(std::begin(place), std::end(place), std::begin(app.ui.paper_at));
}

void label_sheet(app::App& app) {
    kit::Kit& kit = app.kit;
    std::optional<::label_sheet::Sheet> said = app.work.settings.label_sheet;
    widget::text(kit, app.say("label_sheet_ui.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    bool changed = false, test = false;
    const int kind =
        widget::choice(kit, "kind", app.say("label_sheet_ui.title"),
                       {app.say("label_sheet_ui.cut_out"), app.say("label_sheet_ui.bought")}, said ? 1 : 0);
    if (kind >= 0 && (kind == 1) != said.has_value()) {
        said = kind == 1 ? std::optional(::label_sheet::Sheet{}) : std::nullopt;
        changed = true;
    }
    if (said) {
        widget::gap(10);
        const int paper = widget::choice(kit, "paper", app.say("label_sheet_ui.title"),
                                         {app.say("label_sheet_ui.a4"), app.say("label_sheet_ui.letter")},
                                         said->paper == ::label_sheet::Paper::letter ? 1 : 0);
        if (paper >= 0) {
            said->paper = paper == 1 ? ::label_sheet::Paper::letter : ::label_sheet::Paper::a4;
            changed = true;
        }
        const auto two = [&](const auto& left, const auto& right) {
            widget::gap(10);
            widget::Columns columns = widget::begin_columns(kit);
            changed = left() || changed;
            widget::next_column(kit, columns);
            changed = right() || changed;
            widget::end_columns(kit, columns);
        };
        two([&] { return whole_number(app, "label_sheet_ui.columns", said->columns); },
            [&] { return whole_number(app, "label_sheet_ui.rows", said->rows); });
        two([&] { return length_field(app, "label_sheet_ui.width", said->width); },
            [&] { return length_field(app, "label_sheet_ui.height", said->height); });
        two([&] { return length_field(app, "label_sheet_ui.left", said->left); },
            [&] { return length_field(app, "label_sheet_ui.top", said->top); });
        two([&] { return length_field(app, "label_sheet_ui.across", said->across); },
            [&] { return length_field(app, "label_sheet_ui.down", said->down); });
        two([&] { return length_field(app, "label_sheet_ui.shift_right", said->shift_right); },
            [&] { return length_field(app, "label_sheet_ui.shift_down", said->shift_down); });
        widget::gap(4);
        widget::text(kit, app.say("label_sheet_ui.shift_about"), theme::Type::small, widget::Ink::soft);
        widget::gap(10);
        auto used = static_cast<std::int64_t>(app.ui.label.used);
        if (whole_number(app, "label_sheet_ui.used", used))
            app.ui.label.used = static_cast<std::size_t>(used);
        widget::gap(12);
        test = widget::button(kit, "test", app.say("papers.test_print"), widget::Look::plain, kit.width);
    } else {
        widget::gap(8);
        if (widget::tick(kit, "flap", app.say("label_sheet_ui.flap"), app.ui.label.flap))
            app.ui.label.flap = !app.ui.label.flap;
    }
    if (changed) {
        const auto kept = workspace::set_label_sheet(app.work.settings, said);
        if (kept)
            app::edit(app, kept);
        else
            app::tell(app, app.say("label_sheet_ui.beyond", {{"detail", kept.error().detail}}), true);
    }
    widget::gap(12);
    if (widget::button(kit, "done", app.say("sheet_ui.done"), widget::Look::primary, kit.width))
        app::close_sheet(app);
    if (test) app::read(app, app::Paper::test_print);
}

}  // namespace screens
