// See widget_field.h. The native twin is placed by the mirror from the rectangle registered here.
#include "widget_field.h"

#include <algorithm>

#include "engine/writing.h"
#include "theme.h"
#include "widget_button.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {
namespace {

void draw_frame(const Press& press, bool active, bool invalid, bool disabled) {
    const theme::Colours& c = theme::colours();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(disabled ? c.paper : c.field), 8);
    if (press.down) list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(c.on_field, 0.08f), 8);
    const std::uint32_t edge = invalid ? c.stop : active ? c.link : c.edge;
    list.AddRect(press.box.Min, press.box.Max,
                 disabled ? theme::paint_disabled(c.hairline, 1) : theme::paint(edge), 8, 0,
                 active || invalid ? 2.2f : 1.2f);
}

void label_above(kit::Kit& kit, const std::string& name) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size = measure(name, theme::Type::small, kit.width);
    ImGui::Dummy({kit.width, size.y + 4});
    draw_wrapped(at, name, theme::Type::small, theme::paint(theme::colours().ink_soft), kit.width);
}

void show_problem(const std::string& problem, float width) {
    if (problem.empty()) return;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size = measure(problem, theme::Type::small, width);
    ImGui::Dummy({width, size.y + 6});
    draw_wrapped({at.x, at.y + 3}, problem, theme::Type::small, theme::paint(theme::colours().stop), width);
}

// What was typed since the last frame, by the native field or the keypad, goes into the field's draft; a
// number that can be read is handed on, one that can't stays in the draft with the reason, and the number
// from before holds.
NumberChange read_typed(kit::Kit& kit, std::uint32_t id, std::optional<std::int64_t> value,
                        const NumberSpec& spec) {
    std::optional<std::string> typed = mirror::take_input(id);
    if (kit.keypad.target == id && kit.keypad.changed) {
        kit.keypad.changed = false;
        typed = kit.keypad.text;
    }
    if (!typed) return {};
    kit::Draft& draft = kit.drafts.try_emplace(id, kit::Draft{"", "", value}).first->second;
    draft.text = *typed;
    draft.problem.clear();
    if (typed->empty() && spec.may_be_empty) return {true, std::nullopt};
    const auto number = spec.read(*typed);
    if (number) return {true, *number};
    draft.problem = words::say(*kit.words, number.error());
    return {true, draft.before};  // "12" on the way to "12..3" was not meant
}

}  // namespace

std::optional<std::string> text_field(kit::Kit& kit, std::string_view key, std::string_view value,
                                      const TextSpec& spec) {
    if (!spec.bare) label_above(kit, spec.name);
    // What was typed is taken first: the register must hold the newest text, or the older one would overwrite
    // the twin.
    std::optional<std::string> typed = mirror::take_input(id_of(key));
    if (typed && spec.most_bytes > 0)  // the twin counts letters, what is kept counts bytes
        typed = std::string(writing::start_within(*typed, static_cast<std::size_t>(spec.most_bytes)));
    if (typed) value = *typed;
    mirror::Node node;
    node.role = spec.note      ? mirror::Role::field_note
                : spec.search  ? mirror::Role::field_search
                : spec.address ? mirror::Role::field_address
                               : mirror::Role::field_text;
    node.name = spec.name;
    node.value = std::string(value);
    node.last_field = spec.last;
    node.most_bytes = spec.most_bytes;
    std::string cut;
    if (spec.most_drawn > 0 && value.size() > spec.most_drawn) {
        cut = std::string(writing::start_within(value, spec.most_drawn)) + "\xE2\x80\xA6";
        value = cut;
    }
    float height = theme::field();
    if (spec.note)
        height = std::max(3 * theme::line_height(theme::Type::body),
                          measure(value, theme::Type::body, kit.width - 24).y +
                              theme::line_height(theme::Type::body)) +
                 20;
    const Press press = press_area(kit, key, {kit.width, height}, node);
    const bool active = mirror::focused(press.id);
    if (press.shown) {
        draw_frame(press, active, false, false);
        const bool empty = value.empty();
        const std::string_view shown = empty ? std::string_view(spec.hint) : value;
        const ImU32 ink = theme::paint(empty ? theme::colours().on_field_soft : theme::colours().on_field);
        if (spec.note)
            draw_wrapped({press.box.Min.x + 12, press.box.Min.y + 10}, shown, theme::Type::body, ink,
                         kit.width - 24, {kit.width - 24});
        else {
            const float glass = spec.search ? theme::mark(16) + 8 : 0, room = kit.width - 24 - glass;
            if (spec.search)
                draw_mark(Mark::search, {press.box.Max.x - 12 - theme::mark(16) / 2, press.box.GetCenter().y},
                          theme::mark(16), theme::paint(theme::colours().on_field_soft));
            // A hint in large letters is rather read whole than large.
            theme::Type type = theme::Type::body;
            for (const theme::Type smaller : {theme::Type::small, theme::Type::label})
                if (empty && measure(shown, type).x > room) type = smaller;
            draw_cut({press.box.Min.x + 12 + far_side(shown, type, room),
                      press.box.Min.y + (height - theme::line_height(type)) / 2},
                     shown, type, ink, room);
        }
    }
    if (press.clicked) kit.wish_focus = press.id;
    return typed;
}

NumberChange number_field(kit::Kit& kit, std::string_view key, std::optional<std::int64_t> value,
                          const NumberSpec& spec) {
    if (!spec.bare) label_above(kit, spec.label.empty() ? spec.name : spec.label);
    const std::uint32_t id = id_of(key);
    const float width = spec.width > 0 ? spec.width : kit.width;
    const theme::Type type = spec.large ? theme::Type::figure : theme::Type::body;
    const NumberChange change = read_typed(kit, id, value, spec);
    if (change.changed) value = change.value;
    auto draft = kit.drafts.find(id);
    const std::string settled = value ? words::figure(*kit.words, *value) : "";
    const std::string shown = draft != kit.drafts.end() ? draft->second.text : settled;
    const bool invalid = draft != kit.drafts.end() && !draft->second.problem.empty();

    mirror::Node node;
    node.role = mirror::Role::field_decimal;
    node.name = spec.name;
    node.value = shown;
    node.description = invalid ? draft->second.problem : spec.unit;
    node.invalid = invalid;
    node.large = spec.large;
    node.disabled = spec.disabled;
    const float height = spec.large ? theme::field() + 10 : theme::field();
    const Press press = press_area(kit, key, {width, height}, node);
    if (!spec.disabled) kit.order.push_back(id);
    const bool on_keypad = kit.keypad.target == id;
    const bool active = on_keypad || mirror::focused(id);

    if (press.shown) {
        draw_frame(press, active, invalid, spec.disabled);
        const theme::Colours& c = theme::colours();
        const bool says_words = shown.empty() && spec.hint.find_first_of("0123456789") == std::string::npos;
        const float unit_width =
            spec.unit.empty() || says_words ? 0 : measure(spec.unit, theme::Type::body).x + 6;
        const float right = press.box.Max.x - 10 - unit_width;
        const bool empty = shown.empty();
        const std::string& words = empty ? spec.hint : shown;
        const ImVec2 size = measure(words, type);
        const float room = right - press.box.Min.x - 8;
        const float y = press.box.GetCenter().y - size.y / 2;
        const bool replaced = on_keypad && kit.keypad.fresh && !empty;  // by the next key
        const ImU32 soft =
            spec.disabled ? theme::paint_disabled(c.ink_soft, 1) : theme::paint(c.on_field_soft);
        const ImU32 ink = empty || spec.disabled ? soft : theme::paint(replaced ? c.on_chosen : c.on_field);
        if (replaced)
            ImGui::GetWindowDrawList()->AddRectFilled({right - std::min(size.x, room) - 2, y},
                                                      {right + 2, y + size.y}, theme::paint(c.chosen), 3);
        draw_cut({right - std::min(size.x, room), y}, words, type, ink, room);
        if (on_keypad && !kit.keypad.fresh)
            ImGui::GetWindowDrawList()->AddRectFilled({right + 1.5f, y}, {right + 3.5f, y + size.y},
                                                      theme::paint(c.link));
        if (unit_width > 0)
            draw_wrapped({right + 6, press.box.GetCenter().y - theme::line_height(theme::Type::body) / 2},
                         spec.unit, theme::Type::body, soft, 0);
    }

    if (press.clicked && !spec.disabled) {
        if (kit.finger)
            kit.keypad.target = id, kit.keypad.arriving = true;
        else
            kit.wish_focus = id, kit.wish_all = true;
    }
    if (on_keypad && kit.keypad.arriving) {
        kit.keypad.arriving = false;
        kit.keypad.name = spec.name;
        kit.keypad.text = shown;
        kit.keypad.fresh = true;
        kit.keypad.changed = false;
        kit.wish_view = id;
    }

    if (draft != kit.drafts.end() && !active && draft->second.problem.empty()) kit.drafts.erase(draft);
    if (const int step = mirror::take_enter(id)) {
        kit.step_from = id;
        kit.step_back = step < 0;
    }
    // While it is being typed an unfinished number ("12,") is no fault yet; the sentence shows once the field
    // is left.
    const auto now = kit.drafts.find(id);
    if (now != kit.drafts.end() && !active) show_problem(now->second.problem, kit.width);
    return change;
}

}  // namespace widget
