// See widget_gallery.h. Leans on the app for the message and the sheet alone. Labels are the names in the
// code, which are what a contributor looks for; they are not in the table of words.
#include "widget_gallery.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>

#include "app.h"
#include "engine/decimal.h"
#include "theme.h"
#include "widget_button.h"
#include "widget_chart.h"
#include "widget_field.h"
#include "widget_keypad.h"
#include "widget_label.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_qr.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace widget {
namespace {

constexpr const char* kLooks[] = {"primary", "plain", "quiet", "danger"};
constexpr const char* kMarks[] = {"back",  "close", "undo",  "redo",    "dots",   "plus",
                                  "minus", "share", "book",  "formula", "batch",  "stock",
                                  "more",  "lock",  "check", "rub_out", "search", "onward"};
static_assert(std::size(kMarks) == static_cast<int>(Mark::onward) + 1);
constexpr const char* kInks[] = {"plain", "soft", "accent", "caution", "stop"};
constexpr const char* kTypes[] = {"body", "strong", "small", "title", "figure", "hero", "bench", "label"};
static_assert(std::size(kTypes) == static_cast<int>(theme::Type::label) + 1);

struct Swatch {
    const char* name;
    std::uint32_t theme::Colours::*colour;
    const char* ground_name;  // what it is meant to lie on
    std::uint32_t theme::Colours::*ground;
};
using theme::Colours;
constexpr Swatch kSwatches[] = {
    {"paper", &Colours::paper, "paper", &Colours::paper},
    {"card", &Colours::card, "paper", &Colours::paper},
    {"ink", &Colours::ink, "paper", &Colours::paper},
    {"ink_soft", &Colours::ink_soft, "paper", &Colours::paper},
    {"hairline", &Colours::hairline, "paper", &Colours::paper},
    {"edge", &Colours::edge, "paper", &Colours::paper},
    {"accent", &Colours::accent, "paper", &Colours::paper},
    {"on_accent", &Colours::on_accent, "accent", &Colours::accent},
    {"accent_soft", &Colours::accent_soft, "paper", &Colours::paper},
    {"on_accent_soft", &Colours::on_accent_soft, "accent_soft", &Colours::accent_soft},
    {"caution_ground", &Colours::caution_ground, "paper", &Colours::paper},
    {"caution", &Colours::caution, "caution_ground", &Colours::caution_ground},
    {"stop_ground", &Colours::stop_ground, "paper", &Colours::paper},
    {"stop", &Colours::stop, "stop_ground", &Colours::stop_ground},
    {"shade", &Colours::shade, "paper", &Colours::paper},
    {"link", &Colours::link, "paper", &Colours::paper},
    {"heading", &Colours::heading, "paper", &Colours::paper},
    {"chosen", &Colours::chosen, "paper", &Colours::paper},
    {"on_chosen", &Colours::on_chosen, "chosen", &Colours::chosen},
    {"button", &Colours::button, "paper", &Colours::paper},
    {"on_button", &Colours::on_button, "button", &Colours::button},
    {"field", &Colours::field, "paper", &Colours::paper},
    {"on_field", &Colours::on_field, "field", &Colours::field},
    {"on_field_soft", &Colours::on_field_soft, "field", &Colours::field},
    {"faint", &Colours::faint, "paper", &Colours::paper},
};

// WCAG 2.2, definitions "relative luminance" and "contrast ratio".
double luminance(std::uint32_t rgb) {
    const auto part = [&](int shift) {
        const double c = static_cast<double>(rgb >> shift & 255u) / 255;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(16) + 0.7152 * part(8) + 0.0722 * part(0);
}

double contrast(std::uint32_t a, std::uint32_t b) {
    const double one = luminance(a), other = luminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

void section(kit::Kit& kit, std::string_view name) {
    gap(24);
    heading(kit, 2, name);
    gap(4);
    hairline(kit);
    gap(10);
}

void texts(kit::Kit& kit, const std::string& sample) {
    section(kit, "theme::Type");
    for (std::size_t i = 0; i < std::size(kTypes); ++i) {
        const auto type = static_cast<theme::Type>(i);
        const bool figures =
            type == theme::Type::figure || type == theme::Type::hero || type == theme::Type::bench;
        text(kit, kTypes[i], theme::Type::small, Ink::soft);
        text(kit, figures ? words::figure(*kit.words, 2357900) : sample, type);
        gap(8);
    }
    section(kit, "Ink");
    for (std::size_t i = 0; i < std::size(kInks); ++i)
        text(kit, std::string(kInks[i]) + ": " + sample, theme::Type::body, static_cast<Ink>(i));
    section(kit, "heading");
    heading(kit, 2, sample);
}

void buttons(kit::Kit& kit) {
    section(kit, "button");
    for (std::size_t i = 0; i < std::size(kLooks); ++i) {
        const std::string name = kLooks[i];
        Columns columns = begin_columns(kit);
        button(kit, name, name, static_cast<Look>(i), kit.width);
        next_column(kit, columns);
        button(kit, name + " disabled", name + ", disabled", static_cast<Look>(i), kit.width, true);
        end_columns(kit, columns);
        gap(8);
    }
    button(kit, "narrow", "width 0");

    section(kit, "mark_button");
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const std::size_t across =
        std::max<std::size_t>(1, static_cast<std::size_t>(kit.width / theme::grown(72)));
    const ImVec2 cell{kit.width / static_cast<float>(across),
                      theme::kTarget + theme::line_height(theme::Type::small) + 8};
    const std::size_t count = std::size(kMarks) + 1;  // one more: disabled
    for (std::size_t i = 0; i < count; ++i) {
        const bool disabled = i == std::size(kMarks);
        const ImVec2 at{start.x + cell.x * static_cast<float>(i % across),
                        start.y + cell.y * static_cast<float>(i / across)};
        const std::string name = disabled ? "disabled" : kMarks[i];
        ImGui::SetCursorScreenPos({at.x + (cell.x - theme::kTarget) / 2, at.y});
        mark_button(kit, "mark " + name, disabled ? Mark::undo : static_cast<Mark>(i), name, disabled);
        const float wide = measure(name, theme::Type::small).x;
        draw_wrapped({at.x + (cell.x - wide) / 2, at.y + theme::kTarget}, name, theme::Type::small,
                     theme::paint(theme::colours().ink_soft), 0);
    }
    go_to(start.x, start.y + cell.y * static_cast<float>((count + across - 1) / across));
}

void choices(kit::Kit& kit, Tried& tried, const std::string& sample) {
    section(kit, "choice");
    const int few = choice(kit, "few", "choice", {"0", "1", "2"}, tried.chosen);
    gap(8);
    const int many =
        choice(kit, "many", "choice, wrapped", {kInks[0], kInks[1], kInks[2], sample}, tried.chosen);
    if (const int pressed = std::max(few, many); pressed >= 0) tried.chosen = pressed;
    section(kit, "tick");
    if (tick(kit, "ticked", "tick", tried.ticked)) tried.ticked = !tried.ticked;
    if (tick(kit, "tick long", sample, !tried.ticked)) tried.ticked = !tried.ticked;
    section(kit, "tab");
    const float bar = kit.width / 5;
    const ImVec2 start = ImGui::GetCursorScreenPos();
    for (int i = 0; i < 5; ++i) {
        const int mark = static_cast<int>(Mark::book) + i;
        ImGui::SetCursorScreenPos({start.x + bar * static_cast<float>(i), start.y});
        tab(kit, std::string("tab ") + kMarks[mark], static_cast<Mark>(mark), kMarks[mark], i == 0,
            {bar, theme::bar()}, false);
    }
    go_to(start.x, start.y + theme::bar() + 8);
    for (const bool current : {true, false})
        tab(kit, current ? "current" : "rail", Mark::stock, current ? "current" : "rail", current,
            {std::min(kit.width, theme::rail() - 20), theme::grown(50)}, true);
}

void fields(kit::Kit& kit, Tried& tried, const std::string& sample) {
    section(kit, "text_field");
    TextSpec text;
    const auto typed = [&](std::string_view key, const char* name) {
        text.name = name;
        if (const auto now = text_field(kit, key, tried.text, text)) tried.text = *now;
        gap(8);
    };
    text.hint = kit.say("gallery.hint");
    typed("text", "name, hint");
    text.bare = text.search = true;
    typed("search", "bare, search");
    text.bare = text.search = false;
    text.note = true;
    typed("note", "note");
    text.note = false;
    text.name = "value";
    text_field(kit, "value", sample, text);

    section(kit, "number_field");
    NumberSpec number;
    number.read = decimal::calculate;
    number.may_be_empty = true;
    number.unit = "%";
    number.hint = "0";
    const auto numbered = [&](std::string_view key, const char* name, std::optional<std::int64_t>& value) {
        number.name = name;
        const NumberChange change = number_field(kit, key, value, number);
        if (change.changed) value = change.value;
    };
    Columns columns = begin_columns(kit);
    numbered("number", "unit, hint", tried.number);
    next_column(kit, columns);
    std::optional<std::int64_t> fixed = 500000;
    numbered("fixed", "value", fixed);
    end_columns(kit, columns);
    gap(8);
    columns = begin_columns(kit);
    number.large = true;
    numbered("large", "large", tried.number);
    next_column(kit, columns);
    number.large = false;
    number.disabled = true;
    numbered("disabled", "disabled", fixed);
    end_columns(kit, columns);
    gap(8);
    number.disabled = false;
    number.hint = kit.say("gallery.hint");
    numbered("words", "hint in words", tried.number);
    gap(8);
    const std::string misread = "12..3";  // until something better is typed
    if (!tried.misread)
        kit.drafts.try_emplace(
            id_of("problem"),
            kit::Draft{misread, words::say(*kit.words, decimal::calculate(misread).error()), {}});
    numbered("problem", "problem", tried.misread);
}

void lists(kit::Kit& kit, const std::string& sample) {
    section(kit, "row");
    RowSpec spec;
    const auto shown = [&](const char* title) {
        spec.title = title;
        row(kit, title, spec);
        hairline(kit);
    };
    shown("title");
    spec.under = sample;
    shown("under");
    spec.right = words::figure(*kit.words, 125000) + "\u00A0g";
    shown("right");
    spec.menu_name = "menu";
    shown("menu_name");
    spec.chosen = true;
    shown("chosen");
    spec.chosen = false;
    spec.menu_name.clear();
    spec.plain = true;
    shown("plain");
    spec.plain = false;
    spec.onward = true;
    shown("onward");

    section(kit, "finding_badge");
    const std::string source = kit.say("standing.memory");
    finding_badge(kit, finding::Severity::note, sample, "");
    gap(8);
    finding_badge(kit, finding::Severity::caution, sample, source);
    gap(8);
    finding_badge(kit, finding::Severity::stop, sample, source);

    section(kit, "begin_card");
    begin_card(kit);
    heading(kit, 2, "heading");
    text(kit, sample);
    gap(8);
    button(kit, "in card", "button", Look::plain, kit.width);
    end_card(kit);

    section(kit, "label_picture");
    LabelSpec label;
    label.width = 60;
    label.height = 25;
    label.name = "label";
    label_picture(kit, "a label", label,
                  {{"strong", 3.6f, true}, {sample, 2.4f}, {"12 M", 2.4f, false, LabelLine::Sign::open_jar}});
    gap(8);
    label.round = true;
    label.width = label.height = 30;
    label.name = "round";
    label_picture(kit, "a round label", label,
                  {{"round", 3.6f, true}, {"", 2.4f, false, LabelLine::Sign::book}});
    gap(8);
    millimetre_bar(kit, "millimetre_bar", 50);

    section(kit, "shares");
    shares(kit, "parts", "shares",
           {{"kFull", 0.4, kFull},
            {"kRising", 0.2, kRising},
            {"kFalling", 0.15, kFalling},
            {"kUpright", 0.1, kUpright},
            {"kLevel", 0.1, kLevel},
            {"kEmpty", 0.05, kEmpty}});
    section(kit, "bar");
    bar(kit, "one bar", {"one", "1", {{1, kFull}}});
    bar(kit, "three bars", {"three", "1, 0.5, 0.7", {{1, kFull}, {0.5, kRising}, {0.7, kUpright}}});
    swatch(kit, "which", kRising, "swatch");

    section(kit, "draw_panel");
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float height = measure(sample, theme::Type::strong, kit.width - 32).y + 24;
    const theme::Colours& c = theme::colours();
    draw_panel({at, {at.x + kit.width, at.y + height}}, c.accent_soft, c.on_accent_soft);
    draw_wrapped({at.x + 16, at.y + 12}, sample, theme::Type::strong, theme::paint(c.on_accent_soft),
                 kit.width - 32);
    go_to(at.x, at.y + height);
}

void swatches(kit::Kit& kit) {
    section(kit, "theme::Colours");
    const theme::Colours& colours = theme::colours();
    for (const Swatch& one : kSwatches) {
        const std::uint32_t colour = colours.*one.colour, ground = colours.*one.ground;
        const ImVec2 at = ImGui::GetCursorScreenPos();
        std::string hex = "#";
        for (int shift = 20; shift >= 0; shift -= 4)
            hex += "0123456789ABCDEF"[colour >> shift & 15];
        const auto ratio =
            static_cast<std::int64_t>(std::lround(contrast(colour, ground) * 10)) * (decimal::kOne / 10);
        const std::string words = hex + ", " + words::figure(*kit.words, ratio) + ":1 on " + one.ground_name;
        constexpr float kBox = 56, kInset = 12;
        kit.width -= kBox + 12;
        ImGui::SetCursorScreenPos({at.x + kBox + 12, at.y + 4});
        ImGui::BeginGroup();
        text(kit, one.name, theme::Type::strong);
        text(kit, words, theme::Type::small, Ink::soft);
        ImGui::EndGroup();
        const float low = std::max(ImGui::GetItemRectMax().y, at.y + kBox);
        kit.width += kBox + 12;
        ImDrawList& list = *ImGui::GetWindowDrawList();
        list.AddRectFilled(at, {at.x + kBox, at.y + kBox}, theme::paint(ground), theme::kRound);
        list.AddRectFilled({at.x + kInset, at.y + kInset}, {at.x + kBox - kInset, at.y + kBox - kInset},
                           theme::paint(colour), 6);
        list.AddRect(at, {at.x + kBox, at.y + kBox}, theme::paint(colours.edge), theme::kRound);
        go_to(at.x, low + 8);
    }
}

}  // namespace

void gallery(app::App& app) {
    kit::Kit& kit = app.kit;
    const std::string sample = app.say("gallery.sample");
    text(kit, app.say("gallery.about"), theme::Type::body, Ink::soft);
    texts(kit, sample);
    buttons(kit);
    choices(kit, app.ui.tried, sample);
    fields(kit, app.ui.tried, sample);
    lists(kit, sample);

    section(kit, "qr_code");
    if (const auto code = qr::of(sample)) qr_code(kit, "code", *code, "name", 180);

    section(kit, "live, begin_sheet");
    if (button(kit, "status", "Role::status", Look::plain, kit.width)) app::tell(app, sample);
    gap(8);
    if (button(kit, "alert", "Role::alert", Look::plain, kit.width)) app::tell(app, sample, true);
    gap(8);
    if (button(kit, "sheet", "begin_sheet", Look::plain, kit.width)) app::show(app, app::Sheet::source_list);

    section(kit, "keypad");
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = kit.width;
    if (!kit.keypad.open()) {  // while a field has it, it lies over the page, and two would bear one name
        kit.keypad.name = "name";
        kit.width = std::min(width, 448.0f);  // as wide as a phone holds it
        ImGui::PushID("keys");
        keypad(kit);
        ImGui::PopID();
        kit.width = width;
    }
    go_to(at.x, at.y + keypad_height());
    swatches(kit);
}

}  // namespace widget
